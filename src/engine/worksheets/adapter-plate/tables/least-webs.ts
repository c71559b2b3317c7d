import { marked } from '../../../length/decimal-text.ts';
import { lengthOf, plus, times, type Length } from '../../../length/length.ts';

const EUROCODE = 'EN 1993-1-8 table 3.3, from memory';

export const leastWebSource = {
  own: 'your own limit',
  get web() {
    return `${marked('2.2')} holes from middle to middle: ${EUROCODE}`;
  },
  get edge() {
    return `${marked('1.2')} holes from middle to edge: ${EUROCODE}`;
  },
  sliver: 'common practice, no source',
  floor: 'half the hole under its head: common practice, no source',
} as const;

/** Metal between two bolt holes: 2.2 · their mean diameter from middle to middle, less half of each. EN 1993-1-8, from memory. */
export function leastWeb(one: Length, other: Length): Length {
  return times(plus(one, other), '0.6');
}

/** Metal between a bolt hole and an edge: 1.2 diameters from its middle, less half of it. EN 1993-1-8, from memory. */
export function leastEdge(hole: Length): Length {
  return times(hole, '0.7');
}

/** Beside a counterbore, where the wall is only as deep as the head: common practice, no source. */
export const leastSliver = { in: lengthOf('.060 in'), mm: lengthOf('1.6 mm') } as const;

/** Under a counterbore. Common practice, no source. */
export function leastFloor(hole: Length): Length {
  return times(hole, '0.5');
}

/** How closely a careful hand sets a hole by the dials of a mill, whichever way it misses. Common practice, no source. */
export const usualWithin = { in: lengthOf('.003 in'), mm: lengthOf('0.08 mm') } as const;
