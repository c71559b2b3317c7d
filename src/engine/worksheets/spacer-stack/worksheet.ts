import { carriesLoad } from '../../cut/say-strength.ts';
import type { FeatureKind } from '../../reading/measuring-tool.ts';
import { lengthOf, type Length } from '../../length/length.ts';
import { worked } from '../../length/refusal.ts';
import { figure, type ShownUnit } from '../../length/show.ts';
import { mean } from '../../reading/estimate.ts';
import type { Leg } from '../../reading/settle.ts';
import type { ChoiceField, Fields } from '../fields.ts';
import type { GivenPart } from '../given.ts';
import { inUseUsual } from '../in-use.ts';
import { laidSteps } from '../laid-steps.ts';
import type { RoundPart } from '../round-part.ts';
import { worksheet, type Assumed, type StepOffer, type Wanted } from '../worksheet.ts';
import { stackAccount, type StackAnswered } from './account.ts';
import { checksOfStack } from './checks-of-stack.ts';
import { cutsOfStack } from './cuts-of-stack.ts';
import { spacerStackFields, type SpacerStackFields } from './fields.ts';
import { getsOfStack } from './gets-of-stack.ts';
import { canBeCut, mayCut } from './may-cut.ts';
import { fixedNameOf, readInPlaceName, stackQuestion, stackWant, type StackGiven } from './question.ts';
import { spacerStack, type StackAnswer, type StackQuestion } from './spacer-stack.ts';

// Stands in for a size nothing is known of yet; it only decides which tools' range is asked for.
const SOME_SIZE = lengthOf('1/2 in');

/** Parts on a sleeve or in an opening: does it float, have end play or clamp, and what has to give. */
export const spacerStackWorksheet = worksheet<SpacerStackFields, StackQuestion, StackAnswer, never>({
  name: 'Spacer stack',
  asks: 'Does it float, have end play or clamp, and what has to be trimmed or shimmed?',
  fields: spacerStackFields,
  fieldsFor,
  // A gap that was read stands in for the sleeve.
  needs: (given) => (given.has(readInPlaceName(stackWant(given))) ? ['parts'] : ['fixed', 'parts']),
  starts: {},
  lacks: 'It needs the sleeve or opening, and a size of every part.',
  question: stackQuestion,
  answer: (question) => worked(spacerStack(question)),
  sayRefusal: (refusal) => refusal satisfies never,
  usual: usualWords,
  assumed: assumedOf,
  account: stackAccount,
  cuts: (answered) => (isToBeReadAgain(answered) ? [] : cutsOfStack(answered.question, answered.answer)),
  cutsHoldAnyway: () => true,
  checks: ({ question: { want } }) => checksOfStack(want),
  makes: (answered) => (isToBeReadAgain(answered) ? [] : partsToMake(answered)),
  steps: ({ given }) => stackSteps(given),
  gets: (answered, way) =>
    isToBeReadAgain(answered)
      ? []
      : getsOfStack(answered.question, answered.answer, {
          drawer: answered.given.drawer,
          way,
          unit: answered.unit,
        }),
  usualLimits: (given) => stackWant(given).limits,
  wanted: stackWanted,
  demo: {
    title: 'Bracket on its sleeve',
    sizes: { fixed: '2.412 in' },
    choices: { want: 'float' },
    parts: [
      { name: 'bracket', size: '.500 in' },
      { name: 'outer spacer', size: '1.155 in', adjustable: true },
      { name: 'washer', size: '1/16 in', count: 2 },
      { name: 'shim', size: '.032 in' },
      { name: 'inner spacer', size: '.622 in' },
    ],
  },
});

/** Of the two readings in place the one that reads what is wanted; which part may be cut by the parts there are. */
function fieldsFor(given: StackGiven): Fields {
  const { mayCut: field, ...others } = spacerStackFields;
  const readAs = readInPlaceName(stackWant(given));
  const shown = Object.entries(others).filter(
    ([name]) => name === readAs || (name !== 'direct' && name !== 'directProud') || given.has(name),
  );
  const withParts: ChoiceField = {
    ...field,
    options: [
      ...given.parts
        .filter(({ name }) => canBeCut(name))
        .map(({ id, name, size }) => ({ value: id, words: name, ...moreOf({ name, size }, given.unit) })),
      ...field.options,
    ],
  };
  // Where it was said of the part itself nothing is left to choose.
  const isAsked = given.parts.length > 0 && !given.parts.some(({ adjustable }) => adjustable);
  const [fixed, parts, ...more] = shown;
  return Object.fromEntries([
    ...(fixed ? [fixed] : []),
    ...(parts ? [parts] : []),
    ...(isAsked ? [['mayCut', withParts] as const] : []),
    ...more,
  ]);
}

/** How long a part is that may be chosen to be cut, and that it carries load. */
function moreOf(
  { name, size }: Pick<GivenPart, 'name' | 'size'>,
  unit: ShownUnit,
): { readonly more?: string } {
  const words = [size && figure(mean(size.most), unit), carriesLoad(name) && 'have its strength judged'];
  const more = words.filter((one) => typeof one === 'string').join('; ');
  return more === '' ? {} : { more };
}

function assumedOf(given: StackGiven): readonly Assumed<keyof SpacerStackFields>[] {
  const { assumed } = mayCut(given);
  const question = assumed && stackQuestion(given);
  // Only where something hangs on it.
  const isTooTight = question !== undefined && spacerStack(question).trims.length > 0;
  return [
    { field: 'want', words: 'float' },
    ...(assumed && isTooTight ? [{ field: 'mayCut', words: `${assumed.name} may be cut` } as const] : []),
  ];
}

function usualWords(given: StackGiven): Readonly<Partial<Record<keyof SpacerStackFields, string>>> {
  const { limits, aim } = stackWant(given);
  return {
    lower: `usual: ${figure(limits.lower, given.unit)} (${limits.source})`,
    upper: `usual: ${figure(limits.upper, given.unit)} (${limits.source})`,
    aim: figure(aim, given.unit),
    direct: 'not read; the sum counts',
    directProud: 'not read; the sum counts',
    mayCut: 'nobody said yet',
    fixedName: 'sleeve',
    ...inUseUsual,
  };
}

/** What was worked out by a gap that was read before its own cut is handed to no machine. */
function isToBeReadAgain({ given, question: { want } }: StackAnswered): boolean {
  return given.readBefore(readInPlaceName(want))?.byItsAnswer === true;
}

function partsToMake({ answer: { trims, longerParts, newPart, shim } }: StackAnswered): readonly RoundPart[] {
  return [
    ...trims.flatMap(({ part, result }) => (result.ok ? [{ name: part, length: result.value.to }] : [])),
    ...longerParts
      .filter(({ mayGive }) => mayGive)
      .map(({ part, to }) => ({ name: `${part}, longer`, length: to })),
    ...(newPart ? [{ name: 'One more spacer', length: newPart.to }] : []),
    ...(shim && !newPart ? [{ name: 'Shim', length: shim.thickness }] : []),
  ];
}

function stackSteps(given: StackGiven): readonly StepOffer[] {
  const inOrder = given.parts.map(({ name, count }) => ({
    name: count > 1 ? `${name} (${count} pieces)` : name,
  }));
  return laidSteps(inOrder, `on the ${fixedNameOf(given)}`);
}

function stackWanted(given: StackGiven, kind: FeatureKind): Wanted {
  const { limits } = stackWant(given);
  const fixed = sizeOr(given.size('fixed')?.tightest);
  if (kind === 'gap') return { limits, legs: [{ kind: 'gap', size: fixed, coefficient: 1 }] };
  const parts = given.parts.map(({ size, count }): Leg => ({
    kind: 'length',
    size: sizeOr(size?.tightest),
    coefficient: -count,
  }));
  return { limits, legs: [{ kind: 'length', size: fixed, coefficient: 1 }, ...parts] };
}

function sizeOr(known: Parameters<typeof mean>[0] | undefined): Length {
  return known ? mean(known) : SOME_SIZE;
}
