import { lengthOf } from '../../../length/length.ts';
import type { SettingWant } from '../bearing-seat.ts';

const SOURCE = 'common practice, no source';

/**
 * By how much the sleeve between the inner races is longer than the distance between their faces. A little long costs a
 * little play; short, the nut pulls the inner races together and loads the balls sideways.
 */
export const usualSleeveExcess: Readonly<Record<'in' | 'mm', SettingWant>> = {
  in: {
    limits: { lower: lengthOf('0 in'), upper: lengthOf('.005 in'), source: SOURCE },
    aim: lengthOf('.002 in'),
  },
  mm: {
    limits: { lower: lengthOf('0 mm'), upper: lengthOf('0.12 mm'), source: SOURCE },
    aim: lengthOf('0.05 mm'),
  },
};
