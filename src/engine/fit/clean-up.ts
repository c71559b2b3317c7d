import { bandOf, mean, type Estimate } from '../reading/estimate.ts';
import { plus, type Length } from '../length/length.ts';
import type { ShownUnit } from '../length/show.ts';
import { leastCleanUp } from './tables/least-walls.ts';

/**
 * The least size at which a worn bore is clean all round: the reamer must find metal there even if the loosest place is as
 * large as its readings allow. The metal is round in the shop's unit, inches where that is left out.
 */
export function cleanUpSize(loosest: Estimate, unit: ShownUnit = 'in'): Length {
  return plus(plus(mean(loosest), bandOf(loosest).halfWidth), leastCleanUp[unit]);
}
