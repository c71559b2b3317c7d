import { hrefOf } from '../address.ts';
import type { WorksheetData } from './worksheet-data.ts';

/** A place behind a worksheet. */
export function fieldAt({ job, worksheet }: WorksheetData, field: string) {
  return { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id, field } as const;
}

export function backTo({ job, worksheet }: WorksheetData) {
  return { href: hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id }), to: 'the worksheet' };
}
