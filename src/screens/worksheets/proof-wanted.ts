import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import type { FeatureKind } from '../../engine/reading/measuring-tool.ts';
import type { Leg } from '../../engine/reading/settle.ts';
import type { Limits } from '../../engine/reading/verdict.ts';
import { givenOf } from './given-of.ts';
import type { WorksheetData } from './worksheet-data.ts';

/** What a worksheet wants of a sum of sizes, known or not yet. */
export type Wanted = {
  readonly limits: Limits;
  readonly legs: readonly Leg[];
  /** The legs are so many times the sum, where it holds halves; limits are of the sum itself. */
  readonly times?: number;
};

/**
 * What a worksheet wants that a size of this kind goes into, before it is read; undefined where it wants nothing yet.
 * `name` is the worksheet's name of the size, where it is known which one is read.
 */
export function wantedOf(data: WorksheetData, kind: FeatureKind, name?: string): Wanted | undefined {
  return worksheetOf(data.worksheet.kind)?.wanted(givenOf(data), kind, name);
}
