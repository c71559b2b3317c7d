import { decimalMark } from '../../engine/length/decimal-mark.ts';
import { inPoints, marked } from '../../engine/length/decimal-text.ts';
import type { Entry } from '../../engine/length/entry.ts';
import { goesInSteps, nextThatStops } from '../../engine/reading/reading.ts';
import { asTyped, figure, type ShownUnit } from '../../engine/length/show.ts';
import type { ReadingRecord } from '../../store/base/records.ts';

type Shown = Pick<ReadingRecord, 'typed' | 'unit' | 'exact'> & Partial<Pick<ReadingRecord, 'tool' | 'stops'>>;

/**
 * A reading as it was typed where it was typed as a decimal of the unit shown (`.4490` keeps its last place), else worked
 * out. Of leaves and plugs what goes and what doesn't: `.011–.012`.
 */
export function readingFigure(reading: Shown, shown: ShownUnit): string {
  const stops = stopsOf(reading);
  return stops ? `${plainFigure(reading, shown)}–${plainFigure(stops, shown)}` : plainFigure(reading, shown);
}

/** A reading in a list or on paper, as typed: `.011 in goes, .012 in doesn’t`. */
export function readingWords(reading: Shown): string {
  const stops = stopsOf(reading);
  return stops ? `${asTyped(reading)} goes, ${asTyped(stops)} doesn’t` : asTyped(reading);
}

/** The leaf or plug that doesn't go, worked out as the next of the set where it wasn't typed. */
export function stopsOf({ exact, unit, tool, stops }: Shown): Entry | undefined {
  if (!tool || !goesInSteps(tool)) return undefined;
  if (stops) return stops;
  const next = nextThatStops({ exact, tool });
  const shown = unit === 'mm' ? 'mm' : 'in';
  return next && { exact: next, typed: inPoints(() => figure(next, shown)), unit: shown };
}

function plainFigure(
  { typed, unit, exact }: Pick<ReadingRecord, 'typed' | 'unit' | 'exact'>,
  shown: ShownUnit,
): string {
  const isDecimal = decimalMark() === ',' ? /^[.,0-9]+$/ : /^[.0-9]+$/;
  return unit === shown && isDecimal.test(typed) ? marked(typed) : figure(exact, shown);
}
