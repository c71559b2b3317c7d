/**
 * How far the mean diameter of a bearing's ring may lie under its nominal, micrometres; it is never over. Up to and
 * including each size.
 *
 * Source: ISO 492, normal class, radial bearings but taper rollers, as makers print it: the bore's steps seen up to
 *         50 mm and, in the thrust bearings' table that shares them, further; the outside's from memory.
 */
export const ringBoreMicrons: readonly (readonly [upToMm: string, under: string])[] = [
  ['18', '8'],
  ['30', '10'],
  ['50', '12'],
  ['80', '15'],
  ['120', '20'],
  ['180', '25'],
  ['250', '30'],
];

export const ringOutsideMicrons: readonly (readonly [upToMm: string, under: string])[] = [
  ['18', '8'],
  ['30', '9'],
  ['50', '11'],
  ['80', '13'],
  ['120', '15'],
  ['150', '18'],
  ['180', '25'],
  ['250', '30'],
];

/** Which ring of a bearing: the inner one on its shaft, the outer one in its housing. */
export type Ring = 'inner' | 'outer';

/** Whether the load goes round on this ring, and how hard it is. */
export type RingLoad = 'stands' | 'light' | 'normal' | 'heavy';

export function isRingLoad(value: string | undefined): value is RingLoad {
  return value === 'stands' || value === 'light' || value === 'normal' || value === 'heavy';
}

/**
 * The class of a ring's seat. A ring that the load goes round on creeps unless it is held; one that the load stands still
 * on may slide.
 *
 * Source: bearing makers' tables of fits, as they agree: common practice. A maker's own figure rules.
 */
export const ringSeatClasses: Readonly<Record<Ring, Readonly<Record<RingLoad, string>>>> = {
  inner: { stands: 'g6', light: 'js6', normal: 'k6', heavy: 'm6' },
  outer: { stands: 'H7', light: 'M7', normal: 'N7', heavy: 'P7' },
};
export const RING_SEAT_SOURCE = 'common practice of bearing makers’ tables; the maker’s own figure rules';
