import { dividedBy, lengthOf } from '../../length/length.ts';
import type { Length } from '../../length/length.ts';

const PRACTICE = 'common practice, no source';

/** What stands beside a least wall when it is shown. */
export const leastWallSource = {
  own: 'your own limit',
  besideHole: `half the hole's diameter, ${PRACTICE}`,
  besideInsert: `half the bolt's diameter, ${PRACTICE}`,
  bushing: PRACTICE,
  sleeve: PRACTICE,
  pinCore: `nine tenths of the pin, ${PRACTICE}`,
} as const;

/** A usual figure by the shop's unit: round in each, the metric one on the safe side of the inch one. */
export type InShop = Readonly<Record<'in' | 'mm', Length>>;

/** The thinnest a pressed-in bushing is made. Common practice, no source. */
export const leastBushingWall: InShop = { in: lengthOf('.060 in'), mm: lengthOf('1.6 mm') };

/** The thinnest sleeve that is turned to go over a pin and bonded to it. Common practice, no source. */
export const leastSleeveWall: InShop = { in: lengthOf('.020 in'), mm: lengthOf('0.6 mm') };

/** A pin is turned down to nine tenths at the most: .9³ = 73 % of its strength in bending stays. Common practice, no source. */
export const leastPinShare = '0.9';

/** Metal a reamer must find all round, on the diameter, to leave a clean bore. Common practice, no source. */
export const leastCleanUp: InShop = { in: lengthOf('.002 in'), mm: lengthOf('0.06 mm') };

/** Metal between a hole's edge and the part's edge: half the hole's diameter. Common practice, no source. */
export function leastParentWall(hole: Length): Length {
  return dividedBy(hole, 2);
}
