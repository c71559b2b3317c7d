import { marked } from '../length/decimal-text.ts';
import { dividedBy, floatMm, lengthFromFloat, lengthOf, minus, plus, times } from '../length/length.ts';
import type { Length } from '../length/length.ts';
import { printedPitchLeast } from './tables/threads-inch.ts';
import { minorToleranceGrade5 } from './tables/threads-metric.ts';
import { percentOfHeight, threadNamed, type Thread } from './threads.ts';

/** Limits of the hole that is tapped for a wire insert, exact; rounded to print only where they are shown. */
export type InsertLimits = {
  readonly minorLeast: Length;
  readonly minorMost: Length;
  readonly minorMostSource: string;
  readonly pitchLeast: Length;
  /** Where the standard prints another last digit than its formula gives. */
  readonly pitchLeastPrinted?: { readonly size: Length; readonly source: string };
  readonly majorLeast: Length;
  /** How far out the tap may cut: what the wall has to allow for. */
  readonly majorMost: Length;
  readonly majorMostSource: string;
};

const MINOR_FACTOR = '0.216506';
const PITCH_FACTOR = '0.649519';
const MAJOR_FACTOR = '1.299038';

// 1/4-20: tap major .3187 at most over .3150 at least, .075 of the pitch (NASM33537).
const TAP_OVER_LEAST = '0.075';
const TAP_SOURCE =
  'tap allowance of 0.075 of the pitch, inferred from one printed row (NASM33537, 1/4-20: .3187 in at most)';

const INCH_SOURCE = 'inferred from ASME B1.1, confirmed on one row';
const METRIC_SOURCE = 'memory of DIN 8140-2';

// A millionth of a micrometre: the cube root is floating point, and the limit is printed to .0001 in.
const TOLERANCE_STEP = lengthOf('0.000000001 mm');
const MM_PER_INCH = 25.4;

/**
 * Limits of the hole tapped for a wire thread insert.
 *
 * Units:  least minor D + 0.216506P, least pitch diameter D + 0.649519P, least major D + 1.299038P.
 * Range:  the threads of `insertThreads`.
 * Source: ASME B18.29.1 and B18.29.2M, note 3; greatest minor diameter as `minorMostSource` says.
 */
export function insertLimits(thread: Thread): InsertLimits {
  const { major, pitch, designation } = thread;
  const minorLeast = plus(major, times(pitch, MINOR_FACTOR));
  const majorLeast = plus(major, times(pitch, MAJOR_FACTOR));
  const printed = printedPitchLeast[designation];
  return {
    minorLeast,
    minorMost: plus(minorLeast, minorTolerance(thread, majorLeast)),
    minorMostSource: thread.threadsPerInch === undefined ? METRIC_SOURCE : INCH_SOURCE,
    pitchLeast: plus(major, times(pitch, PITCH_FACTOR)),
    ...(printed !== undefined && {
      pitchLeastPrinted: { size: lengthOf(`${printed} in`), source: 'NASM33537' },
    }),
    majorLeast,
    majorMost: plus(majorLeast, times(pitch, TAP_OVER_LEAST)),
    majorMostSource: marked(TAP_SOURCE),
  };
}

/**
 * Percent of the insert thread's full height that a hole leaves: 83.3 at the least minor diameter.
 *
 * Units:  a percentage (floating point, for showing); below zero where the hole is past the thread.
 * Source: (major − hole) / 1.299038P, with the insert thread's least major.
 */
export function percentOfThread(thread: Thread, hole: Length): number {
  const major = plus(thread.major, times(thread.pitch, MAJOR_FACTOR));
  return percentOfHeight({ major, pitch: thread.pitch, hole });
}

function minorTolerance(thread: Thread, majorLeast: Length): Length {
  if (thread.threadsPerInch !== undefined)
    return lengthFromFloat(
      MM_PER_INCH * class3BToleranceInches(thread.threadsPerInch, floatMm(majorLeast) / MM_PER_INCH),
      TOLERANCE_STEP,
    );
  const tolerance = minorToleranceGrade5[thread.designation.slice(thread.designation.indexOf('x') + 1)];
  if (tolerance === undefined) throw new Error(`no minor diameter tolerance for ${thread.designation}`);
  return lengthOf(`${tolerance} mm`);
}

/**
 * Class 3B internal minor diameter tolerance of ASME B1.1, worked with the insert thread's major as the diameter and
 * not rounded: added to the exact minimum and rounded once it gives the printed .2704 of 1/4-20, and .5186 for
 * 1/2-20. (Minimum and tolerance rounded one by one would give .2703.)
 */
function class3BToleranceInches(threadsPerInch: number, majorInches: number): number {
  const pitchInches = 1 / threadsPerInch;
  const bySize = 0.05 * Math.cbrt(pitchInches) ** 2 + (0.03 * pitchInches) / majorInches - 0.002;
  const fineFloor = 0.23 * pitchInches - 1.5 * pitchInches ** 2;
  const coarseFloor = threadsPerInch <= 12 ? 0.12 * pitchInches : 0;
  return Math.max(Math.min(bySize, 0.394 * pitchInches), fineFloor, coarseFloor);
}

/** What one side of a tapped hole takes from the wall, at the most. */
export function tapReach(limits: InsertLimits, hole: Length): Length {
  return dividedBy(minus(limits.majorMost, hole), 2);
}

/** How large an insert's tap is outside, by the thread its insert takes: the largest diameter in its cut. */
export function insertTapSize(designation: string): Length | undefined {
  const thread = threadNamed(designation);
  return thread && insertLimits(thread).majorLeast;
}
