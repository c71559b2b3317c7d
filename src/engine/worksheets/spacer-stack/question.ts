import {
  dividedBy,
  isLess,
  isMore,
  largest,
  minus,
  negate,
  plus,
  smallest,
  zero,
} from '../../length/length.ts';
import { usualLeastLength } from '../../fit/tables/least-part.ts';
import { sizeStep } from '../../length/metal-on.ts';
import { mean, typedEstimate, type Estimate } from '../../reading/estimate.ts';
import { hangsOnLower, middleOf } from '../../reading/verdict.ts';
import type { Given, GivenPart } from '../given.ts';
import type { SpacerStackFields } from './fields.ts';
import { mayCut } from './may-cut.ts';
import {
  onePartInPlaceOf,
  rulingPlace,
  spacerStack,
  stackWantPreset,
  type StackPart,
  type StackQuestion,
  type StackWant,
} from './spacer-stack.ts';

export type StackGiven = Given<SpacerStackFields>;

export function stackWant(given: StackGiven): StackWant {
  const kind = given.choice('want');
  const preset = stackWantPreset(kind === 'end-play' || kind === 'clamp' ? kind : 'float', given.unit);
  const lower = given.exact('lower');
  const upper = given.exact('upper');
  const aim = given.exact('aim');
  const room = minus(preset.limits.upper, preset.limits.lower);
  // Down to nothing it would no longer be what is wanted: a float that is seized, a clamp that holds nothing. End play may
  // be nothing. A third of the most: chosen, common practice has no figure for so little.
  const leastBelow = upper && (kind === 'end-play' ? zero : dividedBy(upper, 3));
  const roomBelow = upper && leastBelow && largest(leastBelow, minus(upper, room));
  const limits = {
    lower: lower ?? (roomBelow ? smallest(preset.limits.lower, roomBelow) : preset.limits.lower),
    upper: upper ?? (lower ? largest(preset.limits.upper, plus(lower, room)) : preset.limits.upper),
    source: lower || upper ? 'your own limits' : preset.limits.source,
  };
  // An aim that was given for another want may lie outside now; then the middle stands in for it.
  const stands = aim && !isLess(aim, limits.lower) && !isMore(aim, limits.upper);
  return { ...preset, limits, aim: stands ? aim : lower || upper ? middleOf(limits) : preset.aim };
}

/**
 * The question a stack worksheet asks the engine, once all parts are in and the sleeve and every part have a size; a gap that
 * was read directly stands in for the sleeve.
 */
export function stackQuestion(given: StackGiven): StackQuestion | undefined {
  if (!given.has('parts')) return undefined;
  const { ids, leads } = mayCut(given);
  const want = stackWant(given);
  const parts = given.parts.flatMap((part) => stackPart(part, ids.has(part.id)) ?? []);
  if (parts.length === 0 || parts.length < given.parts.length) return undefined;
  const direct = directGap(given, want);
  const fixed = fixedLength(given, { want, parts, direct });
  const first = given.parts.findIndex(({ id }) => id === leads);
  if (!fixed) return undefined;
  const question = {
    fixed,
    parts,
    want,
    step: sizeStep('length', given.dialFor('length')),
    usualLeast: usualLeastLength[given.unit],
    ...(first >= 0 && { first }),
    ...(direct && { direct }),
  };
  const thin = given.parts.flatMap((part) => stackPart(part, ids.has(part.id), 'least') ?? []);
  return clampedAtItsThinnest(question, thin) ?? question;
}

/** A clamp that its parts hold where they are thick, and may not where they are thin, goes by the thin places. */
function clampedAtItsThinnest(
  question: StackQuestion,
  parts: readonly StackPart[],
): StackQuestion | undefined {
  if (question.want.kind !== 'clamp' || question.direct) return undefined;
  const thin = { ...question, parts };
  const atThin = spacerStack(thin);
  if (!hangsOnLower(atThin.verdict)) return undefined;
  const taper = minus(atThin.gap, spacerStack(question).gap);
  return { ...thin, want: { ...question.want, taper } };
}

function stackPart(
  { name, count, size, leastLength }: GivenPart,
  adjustable: boolean,
  place: 'least' | 'most' = 'most',
): StackPart | undefined {
  if (!size) return undefined;
  // Of four places the thickest binds.
  return { name, count, adjustable, thickness: size[place], ...(leastLength && { leastLength }) };
}

/** What the parts go into, in a word: the sleeve, or the opening between two faces. */
export function fixedNameOf(given: StackGiven): string {
  return given.choice('fixedName') ?? 'sleeve';
}

type WithRest = Pick<StackQuestion, 'want' | 'parts'> & { readonly direct: Estimate | undefined };

function fixedLength(
  given: StackGiven,
  { want, parts, direct }: WithRest,
): StackQuestion['fixed'] | undefined {
  const name = fixedNameOf(given);
  const fixed = given.size('fixed');
  // What floats or has end play binds at the shortest place of its sleeve; what is to be clamped, at the longest.
  if (fixed) return { name, length: want.kind === 'clamp' ? fixed.most : fixed.least };
  // Nothing is worked out from it: it is drawn, and shown as what it must be.
  return direct && { name, length: typedEstimate(plus(onePartInPlaceOf(parts).length, mean(direct))) };
}

/** The worksheet's size that reads what is wanted on the assembled stack. */
export function readInPlaceName({ kind }: Pick<StackWant, 'kind'>): 'direct' | 'directProud' {
  return kind === 'clamp' ? 'directProud' : 'direct';
}

/** The gap as it was read, at the place that rules; parts that stand proud leave less than none. */
function directGap(given: StackGiven, want: StackWant): Estimate | undefined {
  const proud = want.kind === 'clamp' ? given.size('directProud') : undefined;
  if (proud) {
    const ruling = rulingPlace(want, proud);
    return { ...ruling, sum: negate(ruling.sum) };
  }
  const gap = given.size('direct');
  // A gap says how far below the face parts lie that should stand proud: the widest rules.
  return gap && (want.kind === 'clamp' ? gap.most : rulingPlace(want, gap));
}
