import { dividedBy, lengthOf, minus, ratioOf, sameLength, times, type Length } from '../length/length.ts';
import { inchThreadRows, type InchThreadRow } from './tables/threads-inch.ts';
import { metricThreadRows } from './tables/threads-metric.ts';

export type ThreadSeries = 'UNC' | 'UNF' | 'UNS' | 'UNEF' | 'coarse' | 'fine';

/** A thread: '7/16-20 UNF', 'M8x1.25'. The inch pitch is 1 in over the threads per inch, 40 places. */
export type Thread = {
  readonly designation: string;
  readonly series: ThreadSeries;
  readonly major: Length;
  readonly pitch: Length;
  readonly threadsPerInch?: number;
};

const ONE_INCH = lengthOf('1 in');

const inchThreads: readonly Thread[] = (['UNC', 'UNF', 'UNS', 'UNEF'] as const).flatMap((series) =>
  inchThreadRows.flatMap((row) => inchThread(row, series) ?? []),
);

const metricThreads: readonly Thread[] = (['coarse', 'fine'] as const).flatMap((series) =>
  metricThreadRows.flatMap((row) => {
    const pitches = series === 'coarse' ? [row.coarse] : [...(row.fine ?? []), ...(row.without ?? [])];
    return pitches.map((pitch) => metricThread(row.major, pitch, series));
  }),
);

const withoutInsert = new Set([
  ...inchThreadRows.flatMap(({ size, without = [] }) => without.map((count) => `${size}-${count}`)),
  ...metricThreadRows.flatMap(({ major, without = [] }) => without.map((pitch) => `M${major}x${pitch}`)),
]);

/** Whether wire inserts are usually made for a thread (from memory for the few that have none). */
export function hasInserts(thread: Thread): boolean {
  return thread.series !== 'UNEF' && !withoutInsert.has(thread.designation.replace(/ .*/, ''));
}

/**
 * Every thread known here: UNC, UNF, 1-14 UNS, UNEF, then metric coarse and fine, each smallest first.
 *
 * Source: tables/threads-inch.ts, tables/threads-metric.ts.
 */
export const allThreads: readonly Thread[] = [...inchThreads, ...metricThreads];

/**
 * Every thread that has wire inserts: UNC, UNF, 1-14 UNS, then metric coarse and fine, each smallest first.
 *
 * Source: tables/threads-inch.ts, tables/threads-metric.ts.
 */
export const insertThreads: readonly Thread[] = allThreads.filter(hasInserts);

/**
 * The thread meant by a designation, however it is written: '7/16-20', '.4375-20 UNF', 'no. 10-24', '7/16 UNF', 'm8',
 * 'M8 x 1.25'.
 *
 * Range:   #0 to 1 in, M2 to M24.
 * Refuses: by undefined, also where two threads fit ('7/16' alone) or the series named isn't that pitch's.
 */
export function threadNamed(designation: string): Thread | undefined {
  const text = designation
    .trim()
    .toLowerCase()
    .replaceAll(',', '.')
    .replace(/[×*]/g, 'x')
    .replace(/[–−‐]/g, '-');
  return text.startsWith('m') ? metricNamed(text) : inchNamed(text);
}

/**
 * Percent of a 60° thread's full height that a hole leaves.
 *
 * Units:  a percentage (floating point, for showing); below zero where the hole is past the thread.
 * Source: (major − hole) / 1.299038P, handbook formula; 1.299038 is 3/4 of √3.
 */
export function percentOfHeight(q: {
  readonly major: Length;
  readonly pitch: Length;
  readonly hole: Length;
}): number {
  return 100 * ratioOf(minus(q.major, q.hole), times(q.pitch, '1.299038'));
}

/** An inch thread is spoken of in inches and drilled with inch drills, a metric one in millimetres. */
export function isInchThread(thread: Thread): boolean {
  return thread.threadsPerInch !== undefined;
}

function inchThread(row: InchThreadRow, series: 'UNC' | 'UNF' | 'UNS' | 'UNEF'): Thread | undefined {
  const threadsPerInch = { UNC: row.unc, UNF: row.unf, UNS: row.uns, UNEF: row.unef }[series];
  if (threadsPerInch === undefined) return undefined;
  return {
    designation: `${row.size}-${threadsPerInch} ${series}`,
    series,
    major: lengthOf(`${row.major} in`),
    pitch: dividedBy(ONE_INCH, threadsPerInch),
    threadsPerInch,
  };
}

function metricThread(major: string, pitch: string, series: 'coarse' | 'fine'): Thread {
  return {
    designation: `M${major}x${pitch}`,
    series,
    major: lengthOf(`${major} mm`),
    pitch: lengthOf(`${pitch} mm`),
  };
}

function metricNamed(text: string): Thread | undefined {
  const [, major, pitch] = /^m ?(\d+(?:\.\d+)?)(?: ?[x-] ?(\d*\.?\d+))?$/.exec(text) ?? [];
  if (major === undefined) return undefined;
  const size = lengthOf(`${major} mm`);
  const pitchSize = pitch === undefined ? undefined : lengthOf(`${pitch} mm`);
  return metricThreads.find(
    (thread) =>
      sameLength(thread.major, size) &&
      (pitchSize ? sameLength(thread.pitch, pitchSize) : thread.series === 'coarse'),
  );
}

function inchNamed(text: string): Thread | undefined {
  const parts =
    /^(?:#|no\.? ?)?(\d*\.\d+|\d+(?:\/\d+)?)"?(?: ?[-x ] ?(\d+))?(?: ?-? ?(?:un|n)(ef|[cfs]))?$/.exec(text);
  const [, size, count, letter] = parts ?? [];
  if (size === undefined) return undefined;
  const fitting = inchThreads.filter(
    (thread) =>
      isSize(thread, size) &&
      (count === undefined || thread.threadsPerInch === Number(count)) &&
      (letter === undefined || isSeries(thread, letter)),
  );
  return fitting.length === 1 ? fitting[0] : undefined;
}

// '10' means #10; '.4375' and '7/16' mean inches; '1' is the inch size or #1, which the pitch tells apart.
function isSize(thread: Thread, size: string): boolean {
  const own = thread.designation.slice(0, thread.designation.indexOf('-'));
  if (own === size || own === `#${size}`) return true;
  return size.startsWith('.') || size.startsWith('0.')
    ? sameLength(thread.major, lengthOf(`${size} in`))
    : false;
}

// 1-14 is UNS by the standard and still called UNF (NF) on many boxes.
function isSeries(thread: Thread, letter: string): boolean {
  const own = thread.series.slice(2).toLowerCase();
  return own === letter || (thread.series === 'UNS' && letter === 'f');
}
