import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import type { RoundPart } from '../../engine/worksheets/round-part.ts';
import { givenOf } from '../worksheets/given-of.ts';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';

/** A round part a worksheet asks to be made. A stack knows only lengths: the diameters are the fitter's to give. */
export type RoundPartWanted = RoundPart;

/** The round parts that are still to be made by a worksheet's answer. */
export function roundPartsOf(data: WorksheetData): readonly RoundPartWanted[] {
  return worksheetOf(data.worksheet.kind)?.makes(givenOf(data)) ?? [];
}
