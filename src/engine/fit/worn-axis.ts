import { bandOf, mean, type Estimate } from '../reading/estimate.ts';
import { dividedBy, isMore, minus, plus, smallest, type Length } from '../length/length.ts';
import { show, type ShownUnit } from '../length/show.ts';
import { leastCleanUp } from './tables/least-walls.ts';

/** Where a worn bore's middle goes when it is opened. */
export type WornAxis = {
  /** A reamer follows the worn hole: its middle moves by as much as this. */
  readonly shift: Length;
  /** What it cleans up at on its old axis, at the most. */
  readonly onOldAxis: Length;
};

/**
 * What a bore that may have worn to one side does to its axis.
 *
 * Units:   worn = loosest − nominal, all of it on one side at the worst. The middle of the worn hole then lies worn / 2 off;
 *          on the old axis the far side is reached at the loosest + worn, with its band and metal to clean up.
 * Range:   nothing where the bore is no larger than the joint may be.
 * Source:  geometry of a circle worn on one side; metal to clean up is common practice, no source.
 */
export function wornAxis({
  loosest,
  nominal,
  most,
  unit = 'in',
}: {
  readonly loosest: Estimate;
  readonly nominal: Length;
  readonly most: Length;
  /** What the metal to clean up is round in. */
  readonly unit?: ShownUnit;
}): WornAxis | undefined {
  const worn = minus(mean(loosest), nominal);
  if (!isMore(worn, most)) return undefined;
  const known = plus(mean(loosest), bandOf(loosest).halfWidth);
  return { shift: dividedBy(worn, 2), onOldAxis: plus(plus(known, worn), leastCleanUp[unit]) };
}

/** What a cut that opens a worn bore is called behind its name, so that the machine, the sheet and every file say it. */
export const ON_OLD_AXIS = ', on its old axis';
export const FOLLOWS_WEAR = ', follows the wear';
/** A hole that is drilled up may be worn, or was made larger: either way the drill goes where it is. */
export const FOLLOWS_HOLE = ', follows the hole';

/** Where a worn bore is opened; nothing behind the name of one that isn't worn. */
export function sayWhereOpened(axis: WornAxis | undefined, keepsAxis: boolean | undefined): string {
  if (!axis) return '';
  return keepsAxis === true ? ON_OLD_AXIS : FOLLOWS_WEAR;
}

/** The same once it was opened: what the record keeps of it. */
export function sayWasOpened(
  { shift }: Pick<WornAxis, 'shift'>,
  keepsAxis: boolean | undefined,
  unit: ShownUnit,
): string {
  return keepsAxis === true
    ? 'Opened on its old axis.'
    : `Opened where the wear is: its middle may stand ${show(shift, unit)} off.`;
}

/**
 * What opening a hole to a size takes off the wall beside it, on the side where it takes most.
 *
 * Units:   half of finished − tightest place; on the old axis, half of finished − nominal: the side that isn't worn stands
 *          as near to that axis as the day it was made.
 * Source:  geometry of a circle worn on one side.
 */
export function takenFromWall({
  finished,
  tightest,
  oldAxis,
}: {
  readonly finished: Length;
  readonly tightest: Length;
  /** The nominal of a worn bore that is opened on its old axis. */
  readonly oldAxis?: Length | undefined;
}): Length {
  return dividedBy(minus(finished, oldAxis ? smallest(oldAxis, tightest) : tightest), 2);
}

/** Which of the two it is, and what the other would take. */
export function sayWornAxis(
  { shift, onOldAxis }: WornAxis,
  keepsAxis: boolean | undefined,
  unit: ShownUnit,
): string {
  return keepsAxis === true
    ? `Bored on the old axis it is clean at ${show(onOldAxis, unit)} at the most. A reamer alone follows the wear.`
    : `A reamer follows the wear: the middle may move ${show(shift, unit)}. On the old axis it is clean at ${show(onOldAxis, unit)}.`;
}

/** The same of an insert's hole: nothing but the hole that is there leads a drill and a tap. */
export function sayInsertAxis({ shift }: Pick<WornAxis, 'shift'>, unit: ShownUnit): string {
  return `Drill and tap follow the hole as it is. Worn to one side, it puts the bolt ${show(shift, unit)} off.`;
}
