import { lengthOf, roundToStep, times, type Length } from '../length/length.ts';
import { figure, showBand, withUnit, type ShownUnit } from '../length/show.ts';
import type { SetOver } from './cut.ts';

const FINEST: Readonly<Record<ShownUnit, Length>> = { in: lengthOf('.0001 in'), mm: lengthOf('0.001 mm') };

/** What an indicator on the outside reads over one turn of work that is set over: twice as much. */
export function totalReading(by: Length): Length {
  return times(by, 2);
}

/**
 * How work is set over and marked: said where the cut is offered, on its page, at the lathe and on the sheet.
 *
 * Units:   an indicator on the outside reads from the least to the most over one turn: twice the offset. What it may be off is
 *          rounded down.
 * Source:  geometry; to mark the thin side before it is unchucked: common practice, no source.
 */
export function saySetOver({ by, within }: SetOver, unit: ShownUnit): readonly string[] {
  const reads = withUnit(figure(totalReading(by), unit), unit);
  const off = within && roundToStep(totalReading(within), FINEST[unit], 'down');
  return [
    `Four-jaw chuck: set it over ${withUnit(figure(by, unit), unit)}.`,
    `Over a turn the indicator reads ${reads} in all${off ? `, ${showBand(off, unit)}` : ''}.`,
    'Mark the thin side before you unchuck it.',
  ];
}
