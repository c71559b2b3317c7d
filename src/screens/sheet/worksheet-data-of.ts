import type { Worksheet } from '../../store/base/records.ts';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';
import type { SheetData } from './sheet-data.ts';

/** One worksheet of a job that was read whole, as its own screen would have read it. */
export function worksheetDataOf(
  worksheet: Worksheet,
  data: Pick<SheetData, 'job' | 'features' | 'readings' | 'tools' | 'drawer' | 'unit' | 'dial'>,
): WorksheetData {
  const { job, features, readings, tools, drawer, unit, dial } = data;
  return { job, worksheet, features, readings, tools, drawer, unit, dial };
}
