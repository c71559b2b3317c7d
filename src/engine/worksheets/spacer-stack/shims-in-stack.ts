import { combine, type Band } from '../../reading/estimate.ts';
import { minus, negate, type Length } from '../../length/length.ts';
import type { ShimPick, ShimQuestion } from '../../shim/shims.ts';
import { stackVerdict, type StackAnswer, type StackQuestion } from './spacer-stack.ts';
import { gapTerms, gapWanted } from './stack-change.ts';
import type { Verdict } from '../../reading/verdict.ts';

/**
 * What shims a stack with too much room wants: how thick in all, and from where to where.
 *
 * Units:   gap − aim, between what the band leaves of the limits; where it leaves nothing of them (no shim can be proved),
 *          between the limits themselves. A clamp wants the parts to stand proud, so its gap is below zero.
 * Range:   undefined where the stack is good, or has too little room.
 */
export function shimsWanted({ shim }: StackAnswer): Omit<ShimQuestion, 'drawer'> | undefined {
  return shim && { aim: shim.thickness, lower: shim.lower, upper: shim.upper };
}

/**
 * The same as it is asked of the drawer: between the whole limits, with the stack's own sizes beside, as each pick is judged
 * with the band that all of them have together.
 */
export function shimsAsked(q: StackQuestion, answer: StackAnswer): Omit<ShimQuestion, 'drawer'> | undefined {
  if (!answer.shim) return undefined;
  const { least, most } = gapWanted(q.want);
  return {
    aim: answer.shim.thickness,
    lower: minus(answer.gap, most),
    upper: minus(answer.gap, least),
    beside: gapTerms(q),
  };
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
  const verdict = stackVerdict({ want: q.want, wanted, band });
  return { gap: value, wanted, band, verdict };
}
