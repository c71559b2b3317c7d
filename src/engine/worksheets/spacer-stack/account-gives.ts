import { absolute, isNegative, isZero } from '../../length/length.ts';
import { say } from '../../length/say.ts';
import { figure, figureBetween, show, type ShownUnit } from '../../length/show.ts';
import type { Block, LeadBlock, WayBlock } from '../account.ts';
import { stackCutName } from './cuts-of-stack.ts';
import { canBeCut } from './may-cut.ts';
import { sayFrom, sayLeftOut, sayNeeded, sayOutOfParallel, sayShared, shimFigure } from './say-stack.ts';
import { spacerStack } from './spacer-stack.ts';
import type { LeftOut } from './stack-leave-out.ts';
import type { Trim, TrimOffer } from './stack-trim.ts';
import type { StackAnswered } from './account.ts';

/** What has to give, by how much, and what else could: the part that is faced, the shim that is added. */
export function whatGives(worked: StackAnswered): readonly Block[] {
  const { answer } = worked;
  if (answer.verdict.kind === 'good') return [];
  const { outOfParallel, needed } = answer;
  return [
    ...(outOfParallel
      ? [{ is: 'said', sentence: sayOutOfParallel(outOfParallel, worked.unit) } satisfies Block]
      : []),
    ...(isNegative(needed.aim) ? whereTooLoose(worked) : whereTooTight(worked)),
  ];
}

function whereTooLoose({ answer, unit }: StackAnswered): readonly Block[] {
  const { shim, outOfParallel } = answer;
  return [
    ...(shim
      ? [
          {
            is: 'lead',
            label: 'Add a shim of',
            figure: shimFigure(shim, unit),
            unit,
            limits: sayFrom(shim, unit),
          } satisfies Block,
        ]
      : []),
    ...answer.longerParts.map((longer): WayBlock => {
      const { part, mayGive, from, to } = longer;
      return {
        is: 'way',
        title: `Make ${part} new, ${outOfParallel ? 'parallel' : 'longer'}`,
        detail: `${show(to, unit)} in place of ${figure(from, unit)}; ${sayFrom(longer, unit)}.`,
        stands: 'open',
        ...(mayGive && { cut: stackCutName(part, 'new') }),
      };
    }),
    ...(answer.newPart
      ? [
          {
            is: 'way',
            title: 'Put one more spacer in',
            detail: `${show(answer.newPart.to, unit)}; ${sayFrom(answer.newPart, unit)}.`,
            stands: 'open',
            cut: stackCutName('one more spacer', 'new'),
          } satisfies Block,
        ]
      : []),
  ];
}

function whereTooTight(worked: StackAnswered): readonly Block[] {
  const { question, answer, unit } = worked;
  const mayGive = question.parts.some(({ adjustable }) => adjustable);
  if (!mayGive && !isZero(answer.needed.aim)) return nobodySaid(worked);
  const [first, ...others] = ledFirst(answer.trims);
  return [
    ...(first ? leadOf(first, worked) : []),
    ...others.map((offer) => wayOf(offer, unit)),
    ...(answer.shared && (answer.shared.trims.length > 1 || answer.trims.length > 1)
      ? [{ is: 'said', sentence: sayShared(answer.shared, unit) } satisfies Block]
      : []),
  ];
}

/** What can be done comes before what can't. */
function ledFirst(trims: readonly TrimOffer[]): readonly TrimOffer[] {
  return [...trims.filter((offer) => facedOf(offer)), ...trims.filter((offer) => !facedOf(offer))];
}

/** As it would be faced, also where no step of the dial lies inside its limits: a figure is never withheld. */
export function facedOf({ result, figure: off }: TrimOffer): Trim | undefined {
  return result.ok ? result.value : off;
}

function leadOf(offer: TrimOffer, { unit }: StackAnswered): readonly Block[] {
  const trim = facedOf(offer);
  const { result, instead, part } = offer;
  if (trim)
    return [
      {
        is: 'lead',
        label: `Face ${part}`,
        figure: figure(trim.take, unit),
        unit: `${unit} off`,
        change: `${figure(trim.from, unit)} → ${figureBetween(trim.to, trim.lower, trim.upper, unit)}`,
        limits: sayFrom(trim, unit),
        ...(result.ok && { cut: stackCutName(part, 'faced') }),
      },
      ...(result.ok ? [] : [{ is: 'said', sentence: say(result.refusal, unit) } satisfies Block]),
    ];
  if (instead) return [leftOutLead(part, instead, unit)];
  return result.ok ? [] : [{ is: 'said', sentence: say(result.refusal, unit) }];
}

/** Where it would be faced too short: what goes out, and what goes into its place or still has to come off. */
function leftOutLead(part: string, instead: LeftOut, unit: ShownUnit): LeadBlock {
  const { put, still, leaves } = instead;
  const [sized, word] = put
    ? [shimFigure({ thickness: put.aim, ...put }, unit), `${unit} shim instead`]
    : still
      ? [figure(still, unit), `${unit} more to come off`]
      : [figure(leaves, unit), `${unit} left`];
  return {
    is: 'lead',
    label: `Leave ${instead.pieces > 1 ? `${instead.pieces} of ` : ''}${part} out`,
    figure: sized,
    unit: word,
    limits: sayLeftOut(part, instead, unit),
  };
}

function wayOf(offer: TrimOffer, unit: ShownUnit): WayBlock {
  const { result, instead, part } = offer;
  const trim = facedOf(offer);
  if (trim)
    return {
      is: 'way',
      title: `Face ${part}`,
      detail: `${show(trim.take, unit)} off: ${figure(trim.from, unit)} → ${figureBetween(trim.to, trim.lower, trim.upper, unit)}; ${sayFrom(trim, unit)}.`,
      stands: 'open',
      ...(result.ok && { cut: stackCutName(part, 'faced') }),
    };
  if (instead)
    return { is: 'way', title: `Without ${part}`, detail: sayLeftOut(part, instead, unit), stands: 'open' };
  return {
    is: 'way',
    title: `Face ${part}`,
    detail: result.ok ? '' : say(result.refusal, unit),
    stands: 'out',
  };
}

/** Too tight, and nobody said which part may give: how much in all, and what each that could would come to. */
function nobodySaid(worked: StackAnswered): readonly Block[] {
  const { question, answer, given, unit } = worked;
  const isAsked = given.choice('mayCut') !== 'none';
  const parts = question.parts.map((part) => ({ ...part, adjustable: canBeCut(part.name) }));
  const candidates = isAsked ? spacerStack({ ...question, parts }).trims : [];
  const ways = candidates.map((offer) => wayOf(offer, unit)).filter(({ stands }) => stands === 'open');
  return [
    ...(answer.outOfParallel ? [] : [offInAll(worked)]),
    ...(isAsked
      ? [
          {
            is: 'ask',
            sentence: 'which part may be cut?',
            field: 'mayCut',
            key: 'Which may be cut?',
          } satisfies Block,
        ]
      : []),
    ...ways.map((way, index): Block => ({
      ...way,
      cut: undefined,
      stands: 'asks',
      asks: 'mayCut',
      rank: index + 1,
    })),
    { is: 'said', on: 'paper', sentence: sayNeeded(answer, unit) },
  ];
}

function offInAll({ answer: { needed }, unit }: StackAnswered): LeadBlock {
  const { aim, least, most, proved } = needed;
  return {
    is: 'lead',
    label: 'Off the parts, in all',
    figure: figureBetween(absolute(aim), least, most, unit),
    unit: `${unit} off`,
    limits: sayFrom({ lower: least, upper: most, proved }, unit),
  };
}
