import { bandOf, mean, type Estimate } from '../reading/estimate.ts';
import { dividedBy, isMore, minus, plus, type Length } from '../length/length.ts';
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
}: {
  readonly loosest: Estimate;
  readonly nominal: Length;
  readonly most: Length;
}): WornAxis | undefined {
  const worn = minus(mean(loosest), nominal);
  if (!isMore(worn, most)) return undefined;
  const known = plus(mean(loosest), bandOf(loosest).halfWidth);
  return { shift: dividedBy(worn, 2), onOldAxis: plus(plus(known, worn), leastCleanUp) };
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
