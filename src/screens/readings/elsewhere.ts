import type { ShownUnit } from '../../engine/length/show.ts';
import type { Feature, ReadElsewhere, ReadingRecord } from '../../store/base/records.ts';
import { dayWords } from '../common/day-words.ts';
import { formOfReadings, summaryOf } from './feature-summary.ts';

/** Whether a size stands on another one's readings: none of its own counts. */
export function isElsewhere(
  feature: Feature,
  records: readonly ReadingRecord[],
): feature is Feature & { readonly elsewhere: ReadElsewhere } {
  const { readings = [] } = feature.elsewhere ?? {};
  return readings.length > 0 && !records.some(({ struckOut }) => struckOut === undefined);
}

/** What a size is worked out from: its own readings, and where none of them counts those of another one. */
export function countedRecords(
  feature: Feature,
  records: readonly ReadingRecord[],
): readonly ReadingRecord[] {
  return isElsewhere(feature, records) ? recordsElsewhere(feature, feature.elsewhere) : records;
}

/** They stand in for readings, and are none: their ids are of no record. */
export function recordsElsewhere(
  { id, jobId }: Feature,
  { readings }: ReadElsewhere,
): readonly ReadingRecord[] {
  return readings.map((one, index) => ({ ...one, id: `${id}/elsewhere/${index}`, featureId: id, jobId }));
}

/** `another one, read Nov 3, 2026 in Outfit 6`. */
export function whereElsewhere({ jobName, readings }: ReadElsewhere): string {
  return `another one, read ${dayWords(Math.max(...readings.map(({ at }) => at)))} in ${jobName}`;
}

/** The size of another one with where and when: `4.4120 in ±.0010: another one, read …`. */
export function sayElsewhere(feature: Feature, elsewhere: ReadElsewhere, unit: ShownUnit): string {
  const form = formOfReadings(feature.kind, recordsElsewhere(feature, elsewhere), feature.material);
  const summary = form && summaryOf(form, unit);
  return [summary && `${summary.size} ${summary.band}`, whereElsewhere(elsewhere)].filter(Boolean).join(': ');
}
