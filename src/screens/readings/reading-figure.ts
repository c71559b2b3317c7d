import { figure, type ShownUnit } from '../../engine/show.ts';
import type { ReadingRecord } from '../../store/records.ts';

/** A reading as it was typed where it was typed as a decimal of the unit shown (`.4490` keeps its last place), else worked out. */
export function readingFigure(
  { typed, unit, exact }: Pick<ReadingRecord, 'typed' | 'unit' | 'exact'>,
  shown: ShownUnit,
): string {
  return unit === shown && /^[.0-9]+$/.test(typed) ? typed : figure(exact, shown);
}
