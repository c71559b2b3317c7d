import { degreesOf, radians } from '../../length/angle.ts';
import { floatMm, lengthFromFloat, lengthOf, minus, type Length } from '../../length/length.ts';
import { mean, STATISTICS_STEP, type Estimate } from '../../reading/estimate.ts';
import { verdictOf, type Verdict } from '../../reading/verdict.ts';

export type LeanAsked = {
  readonly degrees: number;
  readonly withinDegrees: number;
  readonly want: { readonly lower: number; readonly upper: number; readonly source: string };
  /** Upper fitting above the lower ones, and how far across its strut reaches. */
  readonly strut?: { readonly up: Estimate; readonly across: Estimate } | undefined;
};

export type Lean = {
  readonly degrees: number;
  readonly withinDegrees: number;
  readonly want: LeanAsked['want'];
  readonly verdict: Verdict;
  readonly aimDegrees: number;
  /** How much longer the strut gets for the aim, and how closely that is known; below zero it gets shorter. */
  readonly strut?: { readonly by: Length; readonly halfWidth: Length } | undefined;
};

const PER = 1000;

/** How far out of plumb so many degrees are, over so high: for a plumb line. Floating point, back to a micrometre. */
export function outOfPlumb(degrees: number, over: Length): Length {
  return lengthFromFloat(Math.tan(radians(degrees)) * floatMm(over), lengthOf('0.001 mm'));
}

/**
 * Lean-out of the machine, and how much longer its upper strut gets for what is wanted.
 *
 * Units:   degrees from upright, above zero away from the sidecar; floating point. The machine leans about its lower fittings:
 *          a strut from a fitting h above them to a foot as high as they are, a across, is √(h² + a² + 2·h·a·sin(lean)) long.
 *          Judged as out of plumb over a metre, so that the verdict is that of any other size.
 * Range:   −15° to 15°.
 * Source:  law of cosines.
 */
export function leanOut({ degrees, withinDegrees, want, strut }: LeanAsked): Lean {
  const plumb = (angle: number) => lengthFromFloat(Math.tan(radians(angle)) * PER, STATISTICS_STEP);
  const value = plumb(degrees);
  const halfWidth = minus(plumb(Math.abs(degrees) + withinDegrees), plumb(Math.abs(degrees)));
  const limits = { lower: plumb(want.lower), upper: plumb(want.upper), source: want.source };
  const aimDegrees = (want.lower + want.upper) / 2;
  return {
    degrees,
    withinDegrees,
    want,
    verdict: verdictOf({ value, halfWidth, limits }),
    aimDegrees,
    ...(strut && { strut: strutChange(strut, { degrees, aimDegrees, withinDegrees }) }),
  };
}

function strutChange(
  { up, across }: NonNullable<LeanAsked['strut']>,
  { degrees, aimDegrees, withinDegrees }: Record<'degrees' | 'aimDegrees' | 'withinDegrees', number>,
) {
  const [h, a] = [floatMm(mean(up)), floatMm(mean(across))];
  const long = (angle: number) => Math.sqrt(h * h + a * a + 2 * h * a * Math.sin(radians(angle)));
  const grows = long(aimDegrees) - long(degrees);
  const within = long(degrees + withinDegrees) - long(degrees);
  return {
    by: lengthFromFloat(grows, STATISTICS_STEP),
    halfWidth: lengthFromFloat(Math.abs(within), STATISTICS_STEP),
  };
}

/** How far a strut turns its foot, for the words of Why. */
export function strutDegrees({ up, across }: NonNullable<LeanAsked['strut']>): number {
  return degreesOf(Math.atan2(floatMm(mean(up)), floatMm(mean(across))));
}
