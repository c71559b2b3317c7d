import {
  dividedBy,
  floatMm,
  hypotenuse,
  isLess,
  isMore,
  isZero,
  lengthFromFloat,
  minus,
  plus,
  scaledBy,
  zero,
  type Length,
} from '../../length/length.ts';
import { refuse, worked, type Result } from '../../length/refusal.ts';
import { bandOf, combine, mean, STATISTICS_STEP, type Estimate } from '../../reading/estimate.ts';
import { legOf, type Leg } from '../../reading/settle.ts';
import { degreesOf, radians } from '../../length/angle.ts';
import type { Slope } from './tables/standard-tapers.ts';

/** What is known of a taper: ends, a slope with one end, or read over rollers or over balls. */
export type TaperKnown =
  | { readonly by: 'diameters'; readonly large: Estimate; readonly small: Estimate }
  | { readonly by: 'slope'; readonly large: Estimate; readonly slope: Slope }
  | { readonly by: 'angle'; readonly large: Estimate; readonly includedDegrees: number }
  | {
      readonly by: 'rollers';
      readonly roller: Estimate;
      readonly block: Estimate;
      readonly low: Estimate;
      readonly high: Estimate;
    }
  | {
      readonly by: 'balls';
      readonly large: Estimate;
      readonly small: Estimate;
      /** From the mouth down to the top of each ball; below zero the ball stands proud. */
      readonly toLarge: Estimate;
      readonly toSmall: Estimate;
    };

export type ConeRefusal =
  | { readonly code: 'no-length' }
  | { readonly code: 'no-slope' }
  | { readonly code: 'not-larger'; readonly large: Length; readonly small: Length }
  | { readonly code: 'rollers-fall'; readonly low: Length; readonly high: Length }
  | { readonly code: 'no-block' }
  | { readonly code: 'balls-alike' }
  | { readonly code: 'balls-deep' }
  | { readonly code: 'too-steep'; readonly mostDegrees: number }
  | { readonly code: 'to-a-point'; readonly most: Length };

/** What is known of the slope: from its readings, not from the drawing. */
export type SlopeKnown = {
  /** Half width of what the diameter grows over the whole length. */
  readonly overLength: Length;
  /** The same of the included angle, in minutes; floating point. */
  readonly minutes: number;
  readonly doubt?: true | undefined;
  /** The sizes that were read for it: what another tool would make of them, where the difference of two of them is the slope. */
  readonly legs: readonly Leg[];
};

export type Cone = {
  readonly slope: Slope;
  readonly halfDegrees: number;
  readonly large: Length;
  readonly small: Length;
  readonly length: Length;
  /** Left out where it is as the drawing says. */
  readonly known?: SlopeKnown | undefined;
};

/** Half of the included angle that a turned or bored taper may have. Chosen: past it it is a face. */
export const MOST_HALF_DEGREES = 85;

/**
 * A taper by its slope and both ends, whatever it is known by.
 *
 * Units:   slope as growth of the diameter over a length, exact from diameters, per foot, 1 in n and rollers:
 *          (over raised − over low) / block. From an angle growth = 2 · tan(half) · length; from balls of radius R and r whose
 *          middles lie L apart sin(half) = (R − r)/L; both floating point, back to a millionth of a micrometre.
 *          Ends: over rollers of diameter d lying on the plate the small end is M − d · (1 + tan + 1/cos); at the mouth of a bore
 *          2 · (R/cos + depth of R's middle · tan).
 * Range:   half angle above 0 to 85°; a length above nothing; the small end above nothing, or a point.
 * Refuses: no-length, no-slope, not-larger, rollers-fall, no-block, balls-alike, balls-deep, too-steep, to-a-point.
 * Source:  geometry of tangents; the same as the formulas of the handbooks for rollers and balls.
 */
export function coneOf(known: TaperKnown, length: Estimate): Result<Cone, ConeRefusal> {
  if (!isMore(mean(length), zero)) return refuse({ code: 'no-length' });
  switch (known.by) {
    case 'diameters':
      return byDiameters(known, length);
    case 'slope':
      return fromLarge(known.slope, mean(known.large), mean(length));
    case 'angle':
      return byAngle(known, mean(length));
    case 'rollers':
      return byRollers(known, mean(length));
    case 'balls':
      return byBalls(known, mean(length));
    default:
      return known satisfies never;
  }
}

function byDiameters(
  { large, small }: Extract<TaperKnown, { by: 'diameters' }>,
  length: Estimate,
): Result<Cone, ConeRefusal> {
  const { value: rise, band } = difference(large, small);
  if (!isMore(rise, zero)) return refuse({ code: 'not-larger', large: mean(large), small: mean(small) });
  const slope = { rise, over: mean(length) };
  const overLength = hypotenuse(
    band.halfWidth,
    scaledBy(bandOf(length).halfWidth, { numerator: rise, denominator: slope.over }),
  );
  return coneWith(
    { slope, large: mean(large), small: mean(small), length: slope.over },
    { overLength, doubt: band.doubt, legs: [legOf('pin', large, 1), legOf('pin', small, -1)] },
  );
}

function byAngle(
  { large, includedDegrees }: Extract<TaperKnown, { by: 'angle' }>,
  length: Length,
): Result<Cone, ConeRefusal> {
  const half = includedDegrees / 2;
  if (half > MOST_HALF_DEGREES) return tooSteep();
  const rise = lengthFromFloat(2 * Math.tan(radians(half)) * floatMm(length), STATISTICS_STEP);
  return fromLarge({ rise, over: length }, mean(large), length);
}

function byRollers(
  { roller, block, low, high }: Extract<TaperKnown, { by: 'rollers' }>,
  length: Length,
): Result<Cone, ConeRefusal> {
  const { value: rise, band } = difference(high, low);
  const over = mean(block);
  if (!isMore(over, zero)) return refuse({ code: 'no-block' });
  if (!isMore(rise, zero)) return refuse({ code: 'rollers-fall', low: mean(low), high: mean(high) });
  const slope = { rise, over };
  const half = halfAngle(slope);
  const beside = 1 + Math.tan(half) + 1 / Math.cos(half);
  const small = minus(mean(low), lengthFromFloat(floatMm(mean(roller)) * beside, STATISTICS_STEP));
  const onBlock = hypotenuse(
    band.halfWidth,
    scaledBy(bandOf(block).halfWidth, { numerator: rise, denominator: over }),
  );
  return coneWith(
    { slope, large: plus(small, grownOver(slope, length)), small, length },
    {
      overLength: scaledBy(onBlock, { numerator: length, denominator: over }),
      doubt: band.doubt,
      legs: [legOf('length', high, 1), legOf('length', low, -1)],
    },
  );
}

function byBalls(
  { large, small, toLarge, toSmall }: Extract<TaperKnown, { by: 'balls' }>,
  length: Length,
): Result<Cone, ConeRefusal> {
  const balls = difference(large, small);
  const depths = difference(toSmall, toLarge);
  const largerBy = dividedBy(balls.value, 2);
  if (!isMore(largerBy, zero)) return refuse({ code: 'balls-alike' });
  const apart = minus(depths.value, largerBy);
  if (!isLess(largerBy, apart)) return refuse({ code: 'balls-deep' });
  const sine = floatMm(largerBy) / floatMm(apart);
  const half = Math.asin(sine);
  if (degreesOf(half) > MOST_HALF_DEGREES) return tooSteep();
  const rise = lengthFromFloat(2 * Math.tan(half) * floatMm(length), STATISTICS_STEP);
  const radius = floatMm(mean(large)) / 2;
  const middle = floatMm(mean(toLarge)) + radius;
  const mouth = lengthFromFloat(2 * (radius / Math.cos(half) + middle * Math.tan(half)), STATISTICS_STEP);
  // d(half) = ((1 + sin) · d(R − r) − sin · d(depths)) / (L · cos), and the growth over the length goes by 2 / cos².
  const share = (2 * floatMm(length)) / (floatMm(apart) * Math.cos(half) ** 3);
  const bands = Math.hypot(
    ((1 + sine) * floatMm(balls.band.halfWidth)) / 2,
    sine * floatMm(depths.band.halfWidth),
  );
  const slope = { rise, over: length };
  return coneWith(
    { slope, large: mouth, small: minus(mouth, rise), length },
    {
      overLength: lengthFromFloat(share * bands, STATISTICS_STEP),
      doubt: balls.band.doubt ?? depths.band.doubt,
      legs: [],
    },
  );
}

function fromLarge(slope: Slope, large: Length, length: Length): Result<Cone, ConeRefusal> {
  if (!isMore(slope.rise, zero)) return refuse({ code: 'no-slope' });
  return coneWith({ slope, large, small: minus(large, grownOver(slope, length)), length });
}

type Ends = Omit<Cone, 'halfDegrees' | 'known'>;

function coneWith(
  ends: Ends,
  known?: Omit<SlopeKnown, 'minutes'> & { readonly doubt?: true | undefined },
): Result<Cone, ConeRefusal> {
  const half = halfAngle(ends.slope);
  if (degreesOf(half) > MOST_HALF_DEGREES) return tooSteep();
  if (isLess(ends.small, zero)) return refuse({ code: 'to-a-point', most: toPoint(ends) });
  return worked({
    ...ends,
    halfDegrees: degreesOf(half),
    ...(known && !isZero(known.overLength) && { known: { ...known, minutes: minutesOf(known, ends, half) } }),
  });
}

/** The included angle goes by cos² of its half times the growth over the length. */
function minutesOf(
  { overLength }: Pick<SlopeKnown, 'overLength'>,
  { length }: Pick<Ends, 'length'>,
  half: number,
): number {
  return degreesOf((floatMm(overLength) / floatMm(length)) * Math.cos(half) ** 2) * 60;
}

/** What the diameter grows over a length; exact. */
export function grownOver({ rise, over }: Slope, length: Length): Length {
  return scaledBy(rise, { numerator: length, denominator: over });
}

/** Diameter at a place so far from the big end; exact where the slope is. */
export function sizeAt({ slope, large }: Pick<Cone, 'slope' | 'large'>, fromBigEnd: Length): Length {
  return minus(large, grownOver(slope, fromBigEnd));
}

/** tan(half) = half the growth over its length; radians, floating point. */
export function halfAngle({ rise, over }: Slope): number {
  return Math.atan(floatMm(rise) / (2 * floatMm(over)));
}

function toPoint({ slope: { rise, over }, large }: Ends): Length {
  return isMore(large, zero) ? scaledBy(large, { numerator: over, denominator: rise }) : zero;
}

function tooSteep() {
  return refuse({ code: 'too-steep' as const, mostDegrees: 2 * MOST_HALF_DEGREES });
}

function difference(from: Estimate, less: Estimate) {
  return combine([
    { estimate: from, coefficient: 1 },
    { estimate: less, coefficient: -1 },
  ]);
}
