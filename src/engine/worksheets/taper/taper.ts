import {
  absolute,
  dividedBy,
  floatMm,
  isLess,
  isMore,
  lengthFromFloat,
  lengthOf,
  minus,
  negate,
  scaledBy,
  times,
  zero,
  type Length,
} from '../../length/length.ts';
import { refuse, worked, type Result } from '../../length/refusal.ts';
import { STATISTICS_STEP, type Estimate } from '../../reading/estimate.ts';
import { verdictOf } from '../../reading/verdict.ts';
import type { Judged } from '../proof.ts';
import { radians } from '../../length/angle.ts';
import { coneOf, grownOver, sizeAt, type Cone, type ConeRefusal, type TaperKnown } from './cone.ts';
import { sineStack, type BlocksOnHand, type SineStack } from './sine-bar.ts';
import { standardTapers, type StandardTaper } from './tables/standard-tapers.ts';

export type TaperQuestion = {
  readonly known: TaperKnown;
  readonly length: Estimate;
  readonly side: 'outside' | 'bore';
  /** From the big end. */
  readonly at?: Length | undefined;
  readonly blank?: Estimate | undefined;
  /** How far its sizes may be off, to each side. */
  readonly within: Length;
  readonly withinFrom: string;
  readonly mate?: StandardTaper | undefined;
  readonly mateWithin: Length;
  readonly mateWithinFrom: string;
  /** The whole work between centres. */
  readonly between?: Length | undefined;
  readonly sineBar: Length;
  readonly onHand: BlocksOnHand;
  /** An indicator reads over so much of the compound; the set-over stands for so much of the work. */
  readonly travel: Length;
};

export type TaperRefusal =
  | ConeRefusal
  | { readonly code: 'beyond'; readonly at: Length; readonly length: Length }
  | { readonly code: 'between-short'; readonly between: Length; readonly length: Length };

/** Beside a taper of a standard: how far this one is off it over its whole length, above zero where it is steeper. */
export type Beside = { readonly taper: StandardTaper; readonly off: Length };

export type TaperAnswer = {
  readonly cone: Cone;
  readonly perFoot: Length;
  /** Length over which the diameter grows by one; floating point. */
  readonly oneIn: number;
  /** What an indicator reads across while the compound goes so far, once it is set; floating point back to a step. */
  readonly indicator: { readonly travel: Length; readonly reads: Length };
  /** How far the compound goes for the whole taper. */
  readonly slant: Length;
  readonly setOver: SetOverBetween;
  readonly sine: { readonly included: SineStack | undefined; readonly half: SineStack | undefined };
  readonly at?: { readonly from: Length; readonly size: Length } | undefined;
  readonly nearest: Beside;
  readonly mate?: (Judged & Beside) | undefined;
};

export type SetOverBetween = {
  /** For each so much of the work's length. */
  readonly each: Length;
  readonly per: Length;
  readonly whole?: { readonly between: Length; readonly by: Length } | undefined;
  /** Too steep for it: the centres bear on an edge. */
  readonly isTooSteep: boolean;
};

// Centres in plain centre holes bear badly past it. Common practice, no source.
export const MOST_SET_OVER_DEGREES = 4;

const FOOT = lengthOf('12 in');

/**
 * A taper in every description, and how it is set up.
 *
 * Units:   per foot and sizes exact where the slope is. Tailstock set over = whole length between centres · sin(half), as the
 *          work turns about its centres; the handbooks' tan differs by less than .3 % up to 4°. An indicator across, while the
 *          compound goes one travel: travel · sin(half). Slant = length / cos(half).
 * Range:   as `coneOf`. Set-over is named up to a half angle of 4°, the sine bar up to 60°.
 * Refuses: what `coneOf` refuses; beyond, between-short.
 * Source:  geometry; floating point where a sine stands in it, back to a millionth of a micrometre.
 */
export function taper(q: TaperQuestion): Result<TaperAnswer, TaperRefusal> {
  const found = coneOf(q.known, q.length);
  if (!found.ok) return found;
  const cone = found.value;
  const { slope, halfDegrees, length } = cone;
  if (q.at && (isLess(q.at, zero) || isMore(q.at, length)))
    return refuse({ code: 'beyond', at: q.at, length });
  if (q.between && isLess(q.between, length))
    return refuse({ code: 'between-short', between: q.between, length });
  return worked({
    cone,
    perFoot: scaledBy(slope.rise, { numerator: FOOT, denominator: slope.over }),
    oneIn: floatMm(slope.over) / floatMm(slope.rise),
    indicator: { travel: q.travel, reads: sineOf(q.travel, halfDegrees) },
    slant: lengthFromFloat(floatMm(length) / Math.cos(radians(halfDegrees)), STATISTICS_STEP),
    setOver: {
      each: sineOf(q.travel, halfDegrees),
      per: q.travel,
      ...(q.between && { whole: { between: q.between, by: sineOf(q.between, halfDegrees) } }),
      isTooSteep: halfDegrees > MOST_SET_OVER_DEGREES,
    },
    sine: {
      included: sineStack({ bar: q.sineBar, degrees: 2 * halfDegrees, onHand: q.onHand }),
      half: sineStack({ bar: q.sineBar, degrees: halfDegrees, onHand: q.onHand }),
    },
    ...(q.at && { at: { from: q.at, size: sizeAt(cone, q.at) } }),
    nearest: nearestStandard(cone),
    ...(q.mate && { mate: heldAgainst(q, q.mate, cone) }),
  });
}

function sineOf(length: Length, degrees: number): Length {
  return lengthFromFloat(floatMm(length) * Math.sin(radians(degrees)), STATISTICS_STEP);
}

/** How far off a standard taper over this one's whole length. */
function besideOf({ slope, length }: Cone, standard: StandardTaper): Beside {
  return { taper: standard, off: minus(grownOver(slope, length), grownOver(standard.slope, length)) };
}

function nearestStandard(cone: Cone): Beside {
  const [first, ...others] = standardTapers.map((one) => besideOf(cone, one));
  if (!first) throw new Error('the table of tapers is empty');
  return others.reduce((so, one) => (isLess(absolute(one.off), absolute(so.off)) ? one : so), first);
}

/** Judged over its whole length: a difference of nothing is wanted, to both sides as much. */
function heldAgainst(q: TaperQuestion, mate: StandardTaper, cone: Cone): Judged & Beside {
  const beside = besideOf(cone, mate);
  const limits = { lower: negate(q.mateWithin), upper: q.mateWithin, source: q.mateWithinFrom };
  const { overLength = zero, doubt, legs = [] } = cone.known ?? {};
  return {
    ...beside,
    verdict: verdictOf({ value: beside.off, halfWidth: overLength, limits, doubt }),
    value: beside.off,
    halfWidth: overLength,
    limits,
    legs: legs.length > 0 && q.known.by === 'diameters' ? legs : [],
  };
}

/** Limits of a size that may be off to both sides, never below nothing. */
export function around(size: Length, within: Length): { readonly lower: Length; readonly upper: Length } {
  const lower = minus(size, within);
  return { lower: isLess(lower, zero) ? zero : lower, upper: minus(size, times(within, -1)) };
}

/** Half-way down the taper: where it is gauged when nobody said where. */
export function gaugePlace({ length }: Pick<Cone, 'length'>): Length {
  return dividedBy(length, 2);
}
