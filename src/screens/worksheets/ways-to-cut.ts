import type { CutWay } from '../../engine/cut/cuts-of-way.ts';
import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import { givenOf } from './given-of.ts';
import type { WorksheetData } from './worksheet-data.ts';

/** The ways a worksheet's answer can be cut; none where there is nothing to cut. */
export function waysToCut(data: WorksheetData): readonly CutWay[] {
  return worksheetOf(data.worksheet.kind)?.cuts(givenOf(data)) ?? [];
}
