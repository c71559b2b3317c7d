import { combine, type Band, type Term } from './estimate.ts';
import { isMore, minus, negate, type Length } from './length.ts';
import type { ShimPick, ShimQuestion } from './shims.ts';
import type { StackAnswer, StackQuestion, StackWant } from './spacer-stack.ts';
import { verdictOf, type Verdict } from './verdict.ts';

/**
 * What shims a stack with too much room wants: how thick in all, and from where to where.
 *
 * Units:   gap − aim, between what the band leaves of the limits; where it leaves nothing of them (no shim can be proved),
 *          between the limits themselves. A clamp wants the parts to stand proud, so its gap is below zero.
 * Range:   undefined where the stack is good, or has too little room.
 */
export function shimsWanted(
  { want }: StackQuestion,
  { gap, shim, verdict, provable }: StackAnswer,
): Omit<ShimQuestion, 'drawer'> | undefined {
  if (shim) return { aim: shim.thickness, lower: shim.lower, upper: shim.upper };
  const wanted = gapWanted(want);
  if (provable || verdict.kind === 'good' || !isMore(gap, wanted.aim)) return undefined;
  const aim = minus(gap, wanted.aim);
  return { aim, lower: minus(gap, wanted.most), upper: minus(gap, wanted.least) };
}

/**
 * What is left of the stack's gap with the shims in it, and whether that is what is wanted.
 *
 * Units:   gap less the shims; the band is that of all parts and every shim together, so it grows with each piece.
 */
export function stackWithShims(
  q: StackQuestion,
  { picked }: Pick<ShimPick, 'picked'>,
): { readonly gap: Length; readonly wanted: Length; readonly band: Band; readonly verdict: Verdict } {
  const shims = picked.map(({ piece, count }) => ({ estimate: piece.thickness, coefficient: -count }));
  const { value, band } = combine([...gapTerms(q), ...shims]);
  const wanted = q.want.kind === 'clamp' ? negate(value) : value;
  const verdict = verdictOf({ value: wanted, ...band, limits: q.want.limits });
  return { gap: value, wanted, band, verdict };
}

function gapTerms({ direct, fixed, parts }: StackQuestion): readonly Term[] {
  if (direct) return [{ estimate: direct, coefficient: 1 }];
  return [
    { estimate: fixed.length, coefficient: 1 },
    ...parts.map(({ thickness, count }) => ({ estimate: thickness, coefficient: -count })),
  ];
}

function gapWanted({ kind, limits, aim }: StackWant) {
  return kind === 'clamp'
    ? { least: negate(limits.upper), most: negate(limits.lower), aim: negate(aim) }
    : { least: limits.lower, most: limits.upper, aim };
}
