import type { CutWay } from '../../../engine/cut/cuts-of-way.ts';
import { wayOfOnePart } from '../../../engine/worksheets/spacer-stack/cuts-of-stack.ts';
import { stackQuestion } from '../../../engine/worksheets/spacer-stack/question.ts';
import { givenOf } from '../given-of.ts';
import type { WorksheetData } from '../worksheet-data.ts';

/** One part made in place of several; `places` count the parts from the left, from 0. */
export function onePartWay(data: WorksheetData, places: readonly number[]): CutWay | undefined {
  const question = places.length > 0 ? stackQuestion(givenOf(data)) : undefined;
  return question && wayOfOnePart(question, places, onePartId(places));
}

const ONE_PART = 'one-part-';

/** How it stands in an address. */
export function onePartId(places: readonly number[]): string {
  return `${ONE_PART}${places.join('-')}`;
}

/** The parts an address means; none for any other way. */
export function onePartPlaces(wayId: string): readonly number[] {
  if (!/^one-part-\d+(?:-\d+)*$/.test(wayId)) return [];
  return wayId.slice(ONE_PART.length).split('-').map(Number);
}
