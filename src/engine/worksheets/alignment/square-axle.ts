import { degreesOf } from '../../length/angle.ts';
import {
  absolute,
  dividedBy,
  floatMm,
  isMore,
  lengthFromFloat,
  minus,
  negate,
  plus,
  ratioOf,
  scaledBy,
  times,
  zero,
  type Length,
} from '../../length/length.ts';
import { refuse, worked, type Result } from '../../length/refusal.ts';
import { bandOf, combine, mean, STATISTICS_STEP, type Estimate } from '../../reading/estimate.ts';
import { legOf } from '../../reading/settle.ts';
import { verdictOf } from '../../reading/verdict.ts';
import type { Judged } from '../proof.ts';
import type { Move } from './toe.ts';

export type AxleAsked = {
  readonly left: Estimate;
  readonly right: Estimate;
  /** From end to end, where the diagonals go. */
  readonly track: Estimate;
  /** Where it slides on its springs; the ends themselves where nobody said. */
  readonly seats?: Estimate | undefined;
  /** From the frame to each end: whether the axle stands in the middle. */
  readonly sides?: { readonly left: Estimate; readonly right: Estimate } | undefined;
  readonly within: Length;
  readonly withinFrom: string;
};

export type SquareAxle = {
  /** Left less right, without what the axle's place across makes of it. */
  readonly judged: Judged;
  /** Coupling to the middle of the axle. */
  readonly reach: Length;
  /** The axle out of square; above zero its left end stands back. Floating point. */
  readonly degrees: number;
  /** How far the seat on the side with the longer diagonal goes forward. */
  readonly slide: Move & { readonly side: 'left' | 'right' };
  /** The axle's middle right of the coupling's line; known only where both sides were read. */
  readonly offCentre?: Length | undefined;
};

export type AxleRefusal = { readonly code: 'no-triangle' };

/**
 * Whether an axle stands square to its coupling, by both diagonals, and how far one end slides.
 *
 * Units:   coupling to the middle of the axle = √(2·left² + 2·right² − track²) / 2; out of square sin = (left² − right²) /
 *          (2 · reach · track), and a seat slides seats · sin: floating point, back to a millionth of a micrometre. An axle that
 *          stands e to the right of the coupling's line makes left² − right² less by 2 · track · e · cos: put back where
 *          both sides were read. Judged is the difference of the diagonals that is left.
 * Range:   the diagonals and the axle make a triangle.
 * Refuses: no-triangle.
 * Source:  Apollonius (length of a median), law of cosines.
 */
export function squareAxle(q: AxleAsked): Result<SquareAxle, AxleRefusal> {
  const [left, right, track] = [mean(q.left), mean(q.right), mean(q.track)];
  if (!isMore(plus(left, right), track) || !isMore(track, absolute(minus(left, right))))
    return refuse({ code: 'no-triangle' });
  const [l, r, t] = [floatMm(left), floatMm(right), floatMm(track)];
  const reach = Math.sqrt(2 * l * l + 2 * r * r - t * t) / 2;
  const off = q.sides && offCentre(q.sides);
  const skew = skewOf({ l, r, t, reach, off: off ? floatMm(off) : 0 });
  const sum = combine([
    { estimate: q.left, coefficient: 1 },
    { estimate: q.right, coefficient: -1 },
  ]);
  // What a square axle in the same place would make of the diagonals is no fault of it.
  const value = lengthFromFloat((skew * 2 * reach * t) / (l + r), STATISTICS_STEP);
  const limits = { lower: negate(q.within), upper: q.within, source: q.withinFrom };
  const halfWidth = plus(sum.band.halfWidth, ofSides(q, reach));
  const seats = q.seats ? mean(q.seats) : track;
  const by = lengthFromFloat(Math.abs(skew) * floatMm(seats), STATISTICS_STEP);
  return worked({
    judged: {
      verdict: verdictOf({ value, halfWidth, limits, doubt: sum.band.doubt }),
      value,
      halfWidth,
      limits,
      legs: [legOf('length', q.left, 1), legOf('length', q.right, -1)],
    },
    reach: lengthFromFloat(reach, STATISTICS_STEP),
    degrees: degreesOf(Math.asin(skew)),
    slide: {
      side: skew >= 0 ? 'left' : 'right',
      by,
      // A seat slides seats · (left + right) / (2 · reach · track) as far as the diagonals differ.
      halfWidth: lengthFromFloat(
        (floatMm(halfWidth) * floatMm(seats) * (l + r)) / (2 * reach * t),
        STATISTICS_STEP,
      ),
    },
    ...(off && { offCentre: off }),
  });
}

type Triangle = Readonly<Record<'l' | 'r' | 't' | 'reach' | 'off', number>>;

/** The sine of how far out of square it stands: the place across turns with the axle, so it is met in a few steps. */
function skewOf({ l, r, t, reach, off }: Triangle): number {
  let skew = (l * l - r * r) / (2 * reach * t);
  for (let turn = 0; turn < 40; turn += 1) {
    const cosine = Math.sqrt(Math.max(0, 1 - skew * skew));
    const along = Math.sqrt(Math.max(0, reach * reach - off * off));
    skew = (l * l - r * r + 2 * t * off * cosine) / (2 * t * along);
    skew = Math.max(-1, Math.min(1, skew));
  }
  return skew;
}

function offCentre({ left, right }: NonNullable<AxleAsked['sides']>): Length {
  return dividedBy(minus(mean(right), mean(left)), 2);
}

/** What the sides' own bands add to the difference of the diagonals. */
function ofSides({ sides, track }: AxleAsked, reach: number): Length {
  if (!sides) return zero;
  const { band } = combine([
    { estimate: sides.right, coefficient: 1 },
    { estimate: sides.left, coefficient: -1 },
  ]);
  return lengthFromFloat((floatMm(band.halfWidth) * floatMm(mean(track))) / (2 * reach), STATISTICS_STEP);
}

export type TwoAxles = {
  readonly judged: Judged;
  readonly slide: Move & { readonly side: 'left' | 'right' };
};

/**
 * Whether two axles stand side by side, by their distance on both sides, and how far the rear one slides on the longer side.
 *
 * Units:   left less right; the seat slides difference · seats / track, exact.
 * Source:  similar triangles.
 */
export function twoAxles(
  { left, right }: { readonly left: Estimate; readonly right: Estimate },
  { track, seats, within, withinFrom }: Pick<AxleAsked, 'track' | 'seats' | 'within' | 'withinFrom'>,
): TwoAxles {
  const { value, band } = combine([
    { estimate: left, coefficient: 1 },
    { estimate: right, coefficient: -1 },
  ]);
  const limits = { lower: times(within, -1), upper: within, source: withinFrom };
  const ratio = { numerator: mean(seats ?? track), denominator: mean(track) };
  return {
    judged: {
      verdict: verdictOf({ value, halfWidth: band.halfWidth, limits, doubt: band.doubt }),
      value,
      halfWidth: band.halfWidth,
      limits,
      legs: [legOf('length', left, 1), legOf('length', right, -1)],
    },
    slide: {
      side: ratioOf(value, mean(track)) >= 0 ? 'left' : 'right',
      by: scaledBy(absolute(value), ratio),
      halfWidth: scaledBy(bandOf(left).halfWidth, ratio),
    },
  };
}
