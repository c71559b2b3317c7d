import { capital } from '../../engine/length/say-words.ts';
import { sayAssumed } from '../../engine/reading/say-assumed.ts';
import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import type { Assumed } from '../../engine/worksheets/worksheet.ts';
import { givenOf } from './given-of.ts';
import type { WorksheetData } from './worksheet-data.ts';

/**
 * What a worksheet's answer takes for granted as nobody has chosen it, in the order in which it matters. Limits that are
 * common practice are none of it: they are shown with their source.
 */
export function assumedChoices(data: WorksheetData): readonly Assumed[] {
  return worksheetOf(data.worksheet.kind)?.assumed(givenOf(data)) ?? [];
}

/** `Assumed: float`, for the row of that field; undefined where nothing is taken for granted. */
export function assumedFor(data: WorksheetData, field: string): string | undefined {
  const assumed = assumedChoices(data).find((one) => one.field === field);
  return assumed && capital(sayAssumed([assumed.words]));
}
