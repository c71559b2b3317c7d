import { metalBetween } from './cut.ts';
import { combine, typedEstimate } from '../reading/estimate.ts';
import { absolute, dividedBy, isMore, minus, plus, sameLength, zero, type Length } from '../length/length.ts';
import type { ToolInForce } from '../reading/measuring-tool.ts';
import type { CutKind } from '../length/metal-on.ts';

/** One measurement at the machine, and what was asked for since the one before. */
export type MeasuredPass = {
  readonly measured: Length;
  readonly tool?: ToolInForce;
  /** Of one measured warm, handed in at 20 °C: what is not known of that. */
  readonly warmthDoubt?: Length;
  /** Of one of which nobody said how warm it was: see `unsaidWarmth`. */
  readonly warmthUnsaid?: Length;
  /** Off the size. */
  readonly asked?: Length;
  readonly struckOut: boolean;
};

export type Spring =
  | {
      readonly kind: 'learnt';
      /** Asked less got, off the size, of one such pass; below zero the tool takes more than it is asked. */
      readonly springs: Length;
      readonly halfWidth: Length;
      readonly asked: Length;
    }
  /** The difference is smaller than what these measurements can tell. */
  | { readonly kind: 'inside-band'; readonly difference: Length; readonly halfWidth: Length }
  /** The two passes came out differently by more than the measurements can explain. */
  | { readonly kind: 'unsteady'; readonly first: Length; readonly second: Length }
  | { readonly kind: 'not-learnt'; readonly why: 'no-two-equal-light' | 'no-measuring-tool' };

export type SpringQuestion = {
  readonly of: CutKind;
  /** In the order they were made, struck-out ones in their places. */
  readonly passes: readonly MeasuredPass[];
  /** Off the size: a pass that was asked for more is roughing. */
  readonly largestLight: Length;
};

/**
 * What the tool springs away from a light cut.
 *
 * Units:   off the size, one pass. Learnt from the last two measurements alone, and only where both passes asked for the
 *          same light take: (asked twice − metal gone in both) / 2. Roughing, unequal passes and struck-out
 *          measurements teach nothing, and neither do the passes beside one: nobody knows what was taken in which.
 * Range:   no more than the measuring tool's band: inside-band, and nothing is corrected. Two passes that differ from
 *          each other by more than their band: unsteady, and nothing is corrected.
 * Source:  lathe practice; the band by JCGM 100:2008.
 */
export function springOf(q: SpringQuestion): Spring {
  const pair = lastEqualPair(q);
  if (!pair) return { kind: 'not-learnt', why: 'no-two-equal-light' };
  const { before, between, after, asked } = pair;
  const first = minus(asked, metalBetween(q.of, before.measured, between.measured));
  const second = minus(asked, metalBetween(q.of, between.measured, after.measured));
  const bands = bandsOf(before, between, after);
  if (!bands) return { kind: 'not-learnt', why: 'no-measuring-tool' };
  if (isMore(absolute(minus(first, second)), bands.apart)) return { kind: 'unsteady', first, second };
  const springs = dividedBy(plus(first, second), 2);
  if (!isMore(absolute(springs), bands.mean))
    return { kind: 'inside-band', difference: springs, halfWidth: bands.mean };
  return { kind: 'learnt', springs, halfWidth: bands.mean, asked };
}

type EqualPair = {
  readonly before: MeasuredPass;
  readonly between: MeasuredPass;
  readonly after: MeasuredPass;
  readonly asked: Length;
};

function lastEqualPair({ passes, largestLight }: SpringQuestion): EqualPair | undefined {
  for (let last = passes.length - 1; last >= 2; last -= 1) {
    const [before, between, after] = passes.slice(last - 2, last + 1);
    if (!before || !between?.asked || !after?.asked) continue;
    if (before.struckOut || between.struckOut || after.struckOut) continue;
    const isLight = isMore(after.asked, zero) && !isMore(after.asked, largestLight);
    if (isLight && sameLength(between.asked, after.asked))
      return { before, between, after, asked: after.asked };
  }
  return undefined;
}

/** How closely the mean spring is known, and how far apart the two may lie by measuring alone. */
function bandsOf(
  before: MeasuredPass,
  between: MeasuredPass,
  after: MeasuredPass,
): { readonly mean: Length; readonly apart: Length } | undefined {
  if (!before.tool || !between.tool || !after.tool) return undefined;
  const [first, middle, last] = [
    typedEstimate(before.measured, before.tool),
    typedEstimate(between.measured, between.tool),
    typedEstimate(after.measured, after.tool),
  ];
  const gone = combine([
    { estimate: first, coefficient: 1 },
    { estimate: last, coefficient: -1 },
  ]);
  const apart = combine([
    { estimate: first, coefficient: 1 },
    { estimate: middle, coefficient: -2 },
    { estimate: last, coefficient: 1 },
  ]);
  return { mean: dividedBy(gone.band.halfWidth, 2), apart: apart.band.halfWidth };
}
