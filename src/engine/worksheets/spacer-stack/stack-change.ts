import { aimedInside, type Change } from '../../shim/change-wanted.ts';
import { combine, type Band, type Term } from '../../reading/estimate.ts';
import {
  isMore,
  largest,
  minus,
  negate,
  plus,
  smallest,
  sum,
  times,
  zero,
  type Length,
} from '../../length/length.ts';
import type { StackPart, StackQuestion, StackWant } from './spacer-stack.ts';

/** How far a figure is proved: to ± halfWidth, and whether that leaves anything of what is wanted. */
export type Proof = { readonly halfWidth: Length; readonly proved: boolean };

/** How much shorter the parts have to become, below zero longer; from least to most it does. */
export type StackChange = Change & Proof;

/**
 * How much shorter the parts of a stack have to become for what is wanted of it.
 *
 * Units:   aim − gap, a clamp's aim and limits counted as −gap. Least and most are what ± halfWidth leaves of the limits; an
 *          aim closer to one of them than the band counts as what is left there.
 * Range:   where the band leaves nothing, or a size is in doubt, the limits stand whole, the aim as it is, and it isn't proved: the figure is
 *          never withheld.
 */
export function neededChange({
  gap,
  want,
  band: { halfWidth, doubt },
}: {
  readonly gap: Length;
  readonly want: StackWant;
  readonly band: Pick<Band, 'halfWidth' | 'doubt'>;
}): StackChange {
  const { aim, least, most } = gapWanted(want);
  const whole = { aim: minus(aim, gap), least: minus(least, gap), most: minus(most, gap) };
  const left = { ...whole, least: plus(whole.least, halfWidth), most: minus(whole.most, halfWidth) };
  const proved = doubt !== true && !isMore(left.least, left.most);
  return { ...(proved ? aimedInside(left) : whole), halfWidth, proved };
}

/**
 * What is wanted, said as a gap: a clamp's parts stand proud, so its gap is below zero.
 *
 * Range:   judged at the side where there is least of it, the most is what may be there without too much at the other;
 *          judged where there is most, the least is what leaves enough at the other. Where no change does both, the limit
 *          of the side that it is judged at.
 */
export function gapWanted({ kind, limits, aim, taper }: StackWant): {
  readonly aim: Length;
  readonly least: Length;
  readonly most: Length;
} {
  const by = taper?.by ?? zero;
  const lower = taper?.at === 'most' ? smallest(limits.upper, plus(limits.lower, by)) : limits.lower;
  const upper = taper?.at === 'least' ? largest(limits.lower, minus(limits.upper, by)) : limits.upper;
  const inside = largest(lower, smallest(aim, upper));
  return kind === 'clamp'
    ? { aim: negate(inside), least: negate(upper), most: negate(lower) }
    : { aim: inside, least: lower, most: upper };
}

/** Parts that are further out of parallel than the limits are apart. */
export type OutOfParallel = { readonly by: Length; readonly room: Length };

export function outOfParallelBy({ limits, taper }: StackWant): OutOfParallel | undefined {
  const room = minus(limits.upper, limits.lower);
  return taper && isMore(taper.by, room) ? { by: taper.by, room } : undefined;
}

/** What is wanted once so many pieces are others, or faced all over: what they were out of parallel is gone with them. */
export function wantWithout(
  want: StackWant,
  pieces: readonly { readonly part: StackPart; readonly count: number }[],
): StackWant {
  const { taper, ...rest } = want;
  if (!taper) return want;
  const gone = sum(pieces.map(({ part, count }) => times(part.taper ?? zero, count)));
  const by = minus(taper.by, gone);
  return isMore(by, zero) ? { ...rest, taper: { ...taper, by } } : rest;
}

/**
 * What the gap is known by: the sleeve and its parts, or its own reading.
 *
 * Range:   with some pieces of a part out of the stack: the gap that was read without them is known as badly as that and
 *          those pieces together.
 */
export function gapTerms(
  { direct, fixed, parts }: StackQuestion,
  out?: { readonly place: number; readonly pieces: number },
): readonly Term[] {
  const gone = (place: number) => (out?.place === place ? out.pieces : 0);
  if (!direct)
    return [
      { estimate: fixed.length, coefficient: 1 },
      ...parts.map(({ thickness, count }, place) => ({
        estimate: thickness,
        coefficient: gone(place) - count,
      })),
    ].filter(({ coefficient }) => coefficient !== 0);
  const part = out && parts[out.place];
  return [
    { estimate: direct, coefficient: 1 },
    ...(part ? [{ estimate: part.thickness, coefficient: out.pieces }] : []),
  ];
}

/**
 * How closely the gap will be known once a part has another length.
 *
 * Range:   of a sum the part's own band is in it already, and the new length is taken to be known as well as the old. A gap
 *          that was read is the gap with the old length: the part's own band goes in beside it.
 */
export function bandAfter(q: StackQuestion, { thickness }: StackPart): Band {
  const { direct } = q;
  const own: readonly Term[] = direct ? [{ estimate: thickness, coefficient: 1 }] : [];
  return combine([...gapTerms(q), ...own]).band;
}
