import { radians, sayAngle } from '../length/angle.ts';
import { floatMm, lengthFromFloat, lengthOf, type Length } from '../length/length.ts';
import { figure, type ShownUnit } from '../length/show.ts';

const TRAVEL: Readonly<Record<ShownUnit, { readonly along: Length; readonly words: string }>> = {
  in: { along: lengthOf('1 in'), words: '1 in' },
  mm: { along: lengthOf('10 mm'), words: '10 mm' },
};
const FINEST: Readonly<Record<ShownUnit, Length>> = { in: lengthOf('.0001 in'), mm: lengthOf('0.001 mm') };

/**
 * How the compound is set over for a taper: said where the cut is offered, on its page, at the lathe and on the sheet.
 *
 * Units:   degrees from the work's axis; an indicator across reads travel · sin(angle), floating point back to the finest
 *          figure shown.
 * Source:  geometry; that depth is the cross slide's and feed the compound's: lathe practice, no source.
 */
export function sayCompound(degrees: number, unit: ShownUnit): readonly string[] {
  const { along, words } = TRAVEL[unit];
  const reads = lengthFromFloat(floatMm(along) * Math.sin(radians(degrees)), FINEST[unit]);
  return [
    `Compound over ${sayAngle(degrees)} from the axis.`,
    `By indicator: ${figure(reads, unit)} across, over ${words} of its travel.`,
    'Depth by the cross slide, feed by the compound alone.',
  ];
}
