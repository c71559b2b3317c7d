import {
  floatMm,
  isLess,
  isMore,
  lengthFromFloat,
  lengthOf,
  minus,
  plus,
  roundForShow,
  times,
} from '../length/length.ts';
import type { Length } from '../length/length.ts';
import { metricToleranceRows, pitchDiameterRows, printedAllowances } from './tables/thread-tolerances.ts';
import type { Thread } from './threads.ts';

export type ExternalLimits = {
  readonly fitClass: '2A' | '6g';
  readonly majorLeast: Length;
  readonly majorMost: Length;
  readonly pitchLeast: Length;
  readonly pitchMost: Length;
};

export type InternalLimits = {
  readonly fitClass: '2B' | '6H';
  readonly minorLeast: Length;
  readonly minorMost: Length;
  readonly pitchLeast: Length;
  readonly pitchMost: Length;
};

/** What the limits need of a thread: any thread of the 60° systems has it, listed or not. */
export type ThreadForm = Pick<Thread, 'designation' | 'series' | 'major' | 'pitch' | 'threadsPerInch'>;

const MM_PER_INCH = 25.4;
const TEN_THOUSANDTH = lengthOf('.0001 in');
const THOUSANDTH = lengthOf('.001 in');
const MICROMETRE = lengthOf('.001 mm');
const QUARTER_INCH = lengthOf('1/4 in');
const THREE_PLACES_FROM = lengthOf('.138 in');
// 5/8 times √3, and 3/8 times √3: heights of the 60° profile.
const MINOR_FACTOR = '1.082531755';
const PITCH_FACTOR = '0.649519053';

/**
 * Limits of a bolt's thread in the usual class, rounded as the standards print them.
 *
 * Units:  inch to .0001 in, metric to .001 mm.
 * Range:  class 2A, for UNC and UNF at one diameter of engagement, other series at nine pitches; class 6g, M2 to M24.
 * Source: ASME B1.1: Td2 = .0015 D^⅓ + .0015 √LE + .015 P^⅔, allowance .300 Td2, major tolerance .060 P^⅔.
 *         ISO 965-1, tolerances from memory (tables/thread-tolerances.ts).
 */
export function externalLimits(thread: ThreadForm): ExternalLimits {
  return isInch(thread) ? inchExternal(thread) : metricExternal(thread);
}

/**
 * Limits of a tapped hole in the usual class, rounded as the standards print them.
 *
 * Units:  inch minor to .001 in, below .138 in and pitch diameters to .0001 in; metric to .001 mm.
 * Range:  class 2B; class 6H, M2 to M24.
 * Source: ASME B1.1: minor D − 1.08253P, tolerance .25P − .40P²; below 1/4 in .05 P^⅔ + .03 P/D − .002, not over
 *         .394P, not under .25P − .40P². Pitch diameter 1.3 times the bolt's tolerance, from memory.
 *         ISO 965-1: TD1 as listed, TD2 from memory.
 */
export function internalLimits(thread: ThreadForm): InternalLimits {
  return isInch(thread) ? inchInternal(thread) : metricInternal(thread);
}

/** Whether the tables have limits for a thread: every inch one, and the metric pitches listed for its size. */
export function hasLimits(thread: ThreadForm): boolean {
  if (isInch(thread)) return true;
  const pitch = pitchText(thread);
  const row = pitchDiameterRows.find(({ upTo }) => !isMore(thread.major, lengthOf(upTo)));
  return row?.pitches[pitch] !== undefined && metricToleranceRows.some((one) => one.pitch === pitch);
}

function isInch(thread: ThreadForm): boolean {
  return thread.threadsPerInch !== undefined;
}

function basicPitchDiameter(thread: ThreadForm): Length {
  const diameter = minus(thread.major, times(thread.pitch, PITCH_FACTOR));
  return roundForShow(diameter, isInch(thread) ? TEN_THOUSANDTH : MICROMETRE);
}

function inchExternal(thread: ThreadForm): ExternalLimits {
  const toleranceInches = pitchToleranceInches(thread);
  const printed = printedAllowances[thread.designation];
  const allowance = printed === undefined ? tenThousandths(0.3 * toleranceInches) : lengthOf(`${printed} in`);
  const majorMost = minus(roundForShow(thread.major, TEN_THOUSANDTH), allowance);
  const pitchMost = minus(basicPitchDiameter(thread), allowance);
  return {
    fitClass: '2A',
    majorMost,
    majorLeast: minus(majorMost, tenThousandths(0.06 * Math.cbrt(pitchInches(thread)) ** 2)),
    pitchMost,
    pitchLeast: minus(pitchMost, tenThousandths(toleranceInches)),
  };
}

function inchInternal(thread: ThreadForm): InternalLimits {
  const exact = minus(thread.major, times(thread.pitch, MINOR_FACTOR));
  const step = isLess(thread.major, THREE_PLACES_FROM) ? TEN_THOUSANDTH : THOUSANDTH;
  const tolerance = tenThousandths(minorToleranceInches(thread));
  const pitchLeast = basicPitchDiameter(thread);
  return {
    fitClass: '2B',
    minorLeast: roundForShow(exact, step),
    // Minimum and tolerance are rounded one by one before the sum is: the printed maxima come out so.
    minorMost: roundForShow(plus(roundForShow(exact, TEN_THOUSANDTH), tolerance), step),
    pitchLeast,
    pitchMost: plus(pitchLeast, tenThousandths(1.3 * pitchToleranceInches(thread))),
  };
}

/** Class 2A pitch diameter tolerance, Td2; the standard rounds it to six places before it goes on to 2B. */
function pitchToleranceInches(thread: ThreadForm): number {
  const majorInches = inches(thread.major);
  const isStandardSeries = thread.series === 'UNC' || thread.series === 'UNF';
  const engagementInches = isStandardSeries ? majorInches : 9 * pitchInches(thread);
  const toleranceInches =
    0.0015 * Math.cbrt(majorInches) +
    0.0015 * Math.sqrt(engagementInches) +
    0.015 * Math.cbrt(pitchInches(thread)) ** 2;
  return Math.round(toleranceInches * 1e6) / 1e6;
}

function minorToleranceInches(thread: ThreadForm): number {
  const pitch = pitchInches(thread);
  const usual = 0.25 * pitch - 0.4 * pitch ** 2;
  if (!isLess(thread.major, QUARTER_INCH)) return usual;
  const bySize = 0.05 * Math.cbrt(pitch) ** 2 + (0.03 * pitch) / inches(thread.major) - 0.002;
  return Math.max(Math.min(bySize, 0.394 * pitch), usual);
}

function metricExternal(thread: ThreadForm): ExternalLimits {
  const { allowance, majorExternal } = metricRow(thread);
  const majorMost = minus(thread.major, micrometres(allowance));
  const pitchMost = minus(basicPitchDiameter(thread), micrometres(allowance));
  return {
    fitClass: '6g',
    majorMost,
    majorLeast: minus(majorMost, micrometres(majorExternal)),
    pitchMost,
    pitchLeast: minus(pitchMost, micrometres(pitchRow(thread).external)),
  };
}

function metricInternal(thread: ThreadForm): InternalLimits {
  const exact = minus(thread.major, times(thread.pitch, MINOR_FACTOR));
  const minorLeast = roundForShow(exact, MICROMETRE);
  const pitchLeast = basicPitchDiameter(thread);
  return {
    fitClass: '6H',
    minorLeast,
    minorMost: plus(minorLeast, micrometres(metricRow(thread).minorInternal)),
    pitchLeast,
    pitchMost: plus(pitchLeast, micrometres(pitchRow(thread).internal)),
  };
}

function metricRow(thread: ThreadForm) {
  const pitch = pitchText(thread);
  const row = metricToleranceRows.find((one) => one.pitch === pitch);
  if (!row) throw new Error(`no metric tolerances for pitch ${pitch}`);
  return row;
}

function pitchRow(thread: ThreadForm) {
  const row = pitchDiameterRows.find(({ upTo }) => !isMore(thread.major, lengthOf(upTo)));
  const found = row?.pitches[pitchText(thread)];
  if (!found) throw new Error(`no pitch diameter tolerances for pitch ${pitchText(thread)}`);
  return found;
}

function pitchText(thread: ThreadForm): string {
  return String(floatMm(thread.pitch));
}

function inches(length: Length): number {
  return floatMm(length) / MM_PER_INCH;
}

function pitchInches(thread: ThreadForm): number {
  return inches(thread.pitch);
}

function tenThousandths(sizeInches: number): Length {
  return lengthFromFloat(sizeInches * MM_PER_INCH, TEN_THOUSANDTH);
}

function micrometres(count: number): Length {
  return times(MICROMETRE, count);
}
