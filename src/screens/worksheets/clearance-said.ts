import type { HoleAndPinAnswer } from '../../engine/worksheets/hole-and-pin/hole-and-pin.ts';
import type { ShownUnit } from '../../engine/length/show.ts';

/** The clearance a hole-and-pin verdict hangs on: the tightest place or the loosest, whichever decides. */
export function clearanceSaid(
  { verdict, limits, tightest, loosest, band, tightestBand }: HoleAndPinAnswer,
  unit: ShownUnit,
) {
  const tight =
    (verdict.kind === 'no-good' && verdict.way === 'under') ||
    (verdict.kind === 'too-close' && verdict.near === 'lower');
  return tight
    ? { quantity: 'clearance', value: tightest, halfWidth: tightestBand.halfWidth, limits, unit }
    : { quantity: 'slop', value: loosest, halfWidth: band.halfWidth, limits, unit };
}
