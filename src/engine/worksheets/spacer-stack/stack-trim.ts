import { mean, type Band } from '../../reading/estimate.ts';
import { stepsIn } from '../../cut/dial.ts';
import {
  isLess,
  isMore,
  largest,
  minus,
  sameLength,
  smallest,
  times,
  zero,
  type Length,
} from '../../length/length.ts';
import { cutTarget, metalOnTarget, roundMetalOn } from '../../length/metal-on.ts';
import { refuse, worked, type Result } from '../../length/refusal.ts';
import type { StackPart, StackQuestion, StackWant } from './spacer-stack.ts';
import {
  bandAfter,
  neededChange,
  outOfParallelBy,
  wantWithout,
  type Proof,
  type StackChange,
} from './stack-change.ts';
import { outOfStack, type LeftOut } from './stack-leave-out.ts';
import { usualLeastLength } from '../../fit/tables/least-part.ts';

/** A part faced shorter. Where it isn't proved its limits are those by the sizes alone. */
export type Trim = Proof & {
  readonly part: string;
  /** Of the part in the stack, from 0. */
  readonly place: number;
  readonly from: Length;
  readonly to: Length;
  readonly take: Length;
  readonly lower: Length;
  readonly upper: Length;
};

export type TrimOffer = {
  readonly part: string;
  /** Of the part in the stack, from 0. */
  readonly place: number;
  readonly result: Result<Trim>;
  /** Where no step of the dial lies inside: what it would be faced to all the same. */
  readonly figure?: Trim;
  /** Where it would be faced too short: what leaving it out comes to. */
  readonly instead?: LeftOut;
};

/**
 * A part of a stack with too little room, faced shorter.
 *
 * Units:   L − (aim − gap), rounded metal-on to the dial; limits are what the band leaves of the want, said as its length.
 * Range:   where the band leaves nothing the limits stand whole and it isn't proved. Never shorter than its least length,
 *          the usual one where none is given.
 * Refuses: below-least-length, with what stands instead; no-step-in-limits, with the figure.
 */
export function trimOffer(q: StackQuestion, gap: Length, place: number, part: StackPart): TrimOffer {
  const { name, thickness } = part;
  const from = mean(thickness);
  const least = leastLengthOf(q, part);
  const change = changeOf(q, gap, part);
  const after = lengthAfter(from, change);
  const aim = largest(after.aim, least);
  if (isMore(least, smallest(after.upper, from)) || !isLess(aim, from)) {
    const missing = minus(least, roundMetalOn(after.aim, 'length', q.step));
    const instead = outOfStack(q, { gap, place, part, mayShim: part.leastLength === undefined });
    return {
      part: name,
      place,
      result: refuse({ code: 'below-least-length', part: name, least, missing }),
      ...(instead && { instead }),
    };
  }
  const { halfWidth, proved } = change;
  const lower = largest(after.lower, least);
  const limits = { lower, upper: smallest(after.upper, from) };
  const trimTo = (to: Length): Trim => ({
    part: name,
    place,
    from,
    to,
    take: minus(from, to),
    ...limits,
    halfWidth,
    proved,
  });
  const cut = cutTarget({ aim, ...limits, present: from, kind: 'length', step: q.step });
  if (!cut.ok) return { part: name, place, result: cut, figure: trimTo(aim) };
  // Sizes that aren't proved may lie inside already: then the dial's step above the aim would ask for no cut at all.
  const { target } = cut.value;
  return { part: name, place, result: worked(trimTo(isLess(target, from) ? target : aim)) };
}

/** A part made new and longer, or of those that nobody said may give, each as it could be. */
export type LongerPart = Proof & {
  readonly part: string;
  readonly place: number;
  /** Whether it is a part that may give. */
  readonly mayGive: boolean;
  readonly from: Length;
  readonly to: Length;
  readonly lower: Length;
  readonly upper: Length;
};

/**
 * A part of a stack with too much room, made new and longer.
 *
 * Units:   L + (gap − aim), left full to the dial; where no step of it lies inside, the longest there may be.
 * Range:   undefined where even the longest that is wanted is shorter than a spacer can be: that is a shim's work; and of
 *          parts that are out of parallel where the others stay so by more than the limits are apart.
 */
export function longerPart(
  q: StackQuestion,
  gap: Length,
  place: number,
  part: StackPart,
): LongerPart | undefined {
  const { name, thickness, adjustable } = part;
  const from = mean(thickness);
  const change = changeOf(q, gap, part);
  const { upper, ...after } = lengthAfter(from, change);
  const least = leastLengthOf(q, part);
  if (isLess(upper, least) || staysOutOfParallel(q, part)) return undefined;
  const aim = largest(after.aim, least);
  const lower = largest(after.lower, from, least);
  const target = metalOnTarget({ aim, lower, upper }, 'length', q.step);
  const to = target.ok ? target.value : aim;
  const { halfWidth, proved } = change;
  return { part: name, place, mayGive: adjustable, from, to, lower, upper, halfWidth, proved };
}

/** What parts give together where none can alone: each line so many pieces of it, faced to the same length. */
export type SharedTrim = {
  readonly trims: readonly {
    readonly part: string;
    readonly pieces: number;
    readonly from: Length;
    readonly to: Length;
  }[];
  /** What is wanted still once every part is down to its least. */
  readonly missing?: Length;
};

/**
 * The cut shared out among parts none of which can give it all: the ones with most to spare first, to their least.
 *
 * Range:   undefined where no part has anything to spare.
 */
export function sharedTrim(
  q: StackQuestion,
  gap: Length,
  parts: readonly StackPart[],
  band: Band,
): SharedTrim | undefined {
  const sparing = parts
    .map((part) => ({ part, spare: minus(mean(part.thickness), leastLengthOf(q, part)) }))
    .filter(({ spare }) => isMore(spare, zero))
    .toSorted((a, b) => (isMore(a.spare, b.spare) ? -1 : isLess(a.spare, b.spare) ? 1 : 0));
  let left = neededChange({ gap, want: q.want, band }).aim;
  const faced: SharedTrim['trims'][number][] = [];
  const face = ({ name, thickness }: StackPart, pieces: number, take: Length) => {
    const from = mean(thickness);
    const to = minus(from, take);
    const last = faced.at(-1);
    if (last?.part === name && sameLength(last.to, to))
      faced[faced.length - 1] = { ...last, pieces: last.pieces + pieces };
    else faced.push({ part: name, pieces, from, to });
    left = minus(left, times(take, pieces));
  };
  for (const { part, spare } of sparing) {
    if (!isMore(left, zero)) break;
    // At once: of a thousand pieces each by itself would take a phone minutes.
    const whole = Math.min(part.count, stepsIn(left, spare));
    if (whole > 0) face(part, whole, spare);
    if (whole < part.count && isMore(left, zero)) face(part, 1, left);
  }
  if (faced.length === 0) return undefined;
  return { trims: faced, ...(isMore(left, zero) && { missing: left }) };
}

/** What one piece of the part has to change, which is parallel afterwards. */
function changeOf(q: StackQuestion, gap: Length, part: StackPart): StackChange {
  return neededChange({ gap, want: madeParallel(q, part), band: bandAfter(q, part) });
}

/** Whether the others are further out of parallel than the limits are apart once a piece of this part is parallel. */
export function staysOutOfParallel(q: StackQuestion, part: StackPart): boolean {
  return outOfParallelBy(madeParallel(q, part)) !== undefined;
}

function madeParallel({ want }: StackQuestion, part: StackPart): StackWant {
  return wantWithout(want, [{ part, count: 1 }]);
}

/** How short a part may become: as was said of it, else as is usual. */
export function leastLengthOf(
  { usualLeast = usualLeastLength.in }: Pick<StackQuestion, 'usualLeast'>,
  { leastLength = usualLeast }: Pick<StackPart, 'leastLength'>,
): Length {
  return leastLength;
}

/** The part's length after the change, and the limits for it: the shortest takes off the most. */
function lengthAfter(from: Length, change: StackChange) {
  return { aim: minus(from, change.aim), lower: minus(from, change.most), upper: minus(from, change.least) };
}

/** A spacer put in beside the parts there are. */
export type NewPart = Proof & { readonly to: Length; readonly lower: Length; readonly upper: Length };

/**
 * A spacer made new for what is too much, where that is more than a shim.
 *
 * Units:   gap − aim, left full to the dial.
 * Range:   undefined below the usual least length: that is a shim's work.
 */
export function newPart(
  { usualLeast = usualLeastLength.in, step }: StackQuestion,
  change: StackChange,
): NewPart | undefined {
  const { aim, upper, ...after } = lengthAfter(zero, change);
  if (isLess(aim, usualLeast)) return undefined;
  const lower = largest(after.lower, usualLeast);
  const target = metalOnTarget({ aim, lower, upper }, 'length', step);
  const { halfWidth, proved } = change;
  return { to: target.ok ? target.value : aim, lower, upper, halfWidth, proved };
}
