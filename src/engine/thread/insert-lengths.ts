import { isLess, isMore, minus, plus, times, lengthOf, zero, type Length } from '../length/length.ts';
import type { ShownUnit } from '../length/show.ts';
import type { Thread } from './threads.ts';

const DIAMETERS = [
  { times: '1D', factor: '1' },
  { times: '1.5D', factor: '1.5' },
  { times: '2D', factor: '2' },
  { times: '2.5D', factor: '2.5' },
  { times: '3D', factor: '3' },
] as const;

export type InsertLength = {
  readonly times: (typeof DIAMETERS)[number]['times'];
  readonly nominal: Length;
  readonly installedLeast: Length;
  readonly installedMost: Length;
  /** How much longer than the metal: to be trimmed or ground flush. */
  readonly trimOff?: Length;
  readonly chosen: boolean;
};

export type BlindTap = 'plug' | 'bottoming';

export type BlindDepth = {
  readonly fullThread: Length;
  /** To the drill's full diameter; its point goes `point` deeper. */
  readonly drilling: Length;
  readonly point: Length;
  /** What stays under the point where the metal is thinnest and its reading furthest off; below zero it comes through. */
  readonly floor?: Length;
  readonly leastFloor: Length;
  /** How much of the least floor is missing. */
  readonly floorMissing?: Length;
  readonly source: string;
};

type LengthQuestion = {
  readonly thread: Thread;
  readonly drill: Length;
  readonly thickness?: Length;
  /** How far the metal's thickness may be off its reading. */
  readonly thicknessOff?: Length;
  /** The fitter's own least floor under a blind hole. */
  readonly leastFloor?: Length;
  /** What the usual one is round in; millimetres where it is left out. */
  readonly shop?: ShownUnit;
  readonly tap?: BlindTap;
};

// Where the metal's thickness isn't known. Common practice, no source.
const USUAL = '1.5D';
// Less than this bulges or breaks out as the drill's point comes near: common practice, no source.
export const LEAST_FLOOR = { in: lengthOf('.060 in'), mm: lengthOf('1.5 mm') } as const;
const PLUG_TAP_SHORT_LEAD = lengthOf('8 mm');
// Half the diameter over tan 59°: how far a 118° point reaches, by geometry.
const POINT_FACTOR = '0.3004';

const DEPTH_SOURCE = 'ASME B18.29.2M notes';
const INCH_DEPTH_SOURCE = 'ASME B18.29.2M notes, taken over for inch sizes by diameter';

/**
 * The five lengths an insert comes in, and the one for this metal: the longest that fits, else 1D, trimmed.
 *
 * Units:  nominal length is a multiple of the thread's diameter and the least metal it needs; wound in it is 0.5 to
 *         0.75 of a pitch shorter.
 * Range:  in a blind hole it fits where the least floor stays under the drill's point, the metal taken as thin as its
 *         reading allows; with no thickness 1.5D is taken.
 * Source: ASME B18.29.1 and B18.29.2M; the choice of the longest that fits, and 1.5D, are common practice, no source.
 */
export function insertLengths(q: LengthQuestion): readonly InsertLength[] {
  const all = DIAMETERS.map((row) => ({ times: row.times, nominal: times(q.thread.major, row.factor) }));
  const fitting = all.findLast(({ nominal }) => fits(q, nominal));
  const chosen = q.thickness ? (fitting?.times ?? '1D') : USUAL;
  return all.map((length) => ({
    ...length,
    installedLeast: minus(length.nominal, times(q.thread.pitch, '0.75')),
    installedMost: minus(length.nominal, times(q.thread.pitch, '0.5')),
    ...(q.thickness &&
      isMore(length.nominal, q.thickness) && { trimOff: minus(length.nominal, q.thickness) }),
    chosen: length.times === chosen,
  }));
}

/** How far below the face the insert's first coil goes: 0.75 to 1.5 pitches (ASME B18.29.1 and B18.29.2M). */
export function setDown(thread: Thread): { readonly least: Length; readonly most: Length } {
  return { least: times(thread.pitch, '0.75'), most: times(thread.pitch, '1.5') };
}

/**
 * How deep a blind hole is drilled and tapped for an insert.
 *
 * Units:  full thread = nominal + 1P. Drilling: nominal + 4P with a bottoming tap; + 6P with a plug tap, and half the
 *         diameter more up to 8 mm. Under the point a least floor of 1.5 mm or .060 in, or the fitter's own.
 * Source: as `source` says; the floor: common practice, no source.
 */
export function blindDepth(
  q: LengthQuestion & { readonly tap: BlindTap; readonly nominal: Length },
): BlindDepth {
  const { thread, nominal, tap } = q;
  const drilling = plus(plus(nominal, times(thread.pitch, tap === 'plug' ? 6 : 4)), plugLead(thread, tap));
  const point = times(q.drill, POINT_FACTOR);
  const leastFloor = q.leastFloor ?? LEAST_FLOOR[q.shop ?? 'mm'];
  const floor = q.thickness && minus(minus(q.thickness, q.thicknessOff ?? zero), plus(drilling, point));
  return {
    fullThread: plus(nominal, thread.pitch),
    drilling,
    point,
    leastFloor,
    ...(floor && { floor }),
    ...(floor && isLess(floor, leastFloor) && { floorMissing: minus(leastFloor, floor) }),
    source: thread.threadsPerInch === undefined ? DEPTH_SOURCE : INCH_DEPTH_SOURCE,
  };
}

function plugLead(thread: Thread, tap: BlindTap): Length {
  const isLong = tap === 'plug' && !isMore(thread.major, PLUG_TAP_SHORT_LEAD);
  return times(thread.major, isLong ? '0.5' : 0);
}

function fits(q: LengthQuestion, nominal: Length): boolean {
  if (!q.thickness) return false;
  if (q.tap) return blindDepth({ ...q, tap: q.tap, nominal }).floorMissing === undefined;
  return !isMore(nominal, q.thickness);
}
