import { cutsOfStack, wayOfOnePart } from '../../engine/worksheets/spacer-stack/cuts-of-stack.ts';
import type { CutWay } from '../../engine/cut/cuts-of-way.ts';
import { spacerStack } from '../../engine/worksheets/spacer-stack/spacer-stack.ts';
import { spacerStackQuestion } from './spacer-stack-question.ts';
import type { WorksheetData } from './worksheet-data.ts';

export function spacerStackCuts(data: WorksheetData): readonly CutWay[] {
  const question = spacerStackQuestion(data);
  return question ? cutsOfStack(question, spacerStack(question)) : [];
}

/** One part made in place of several; `places` count the parts from the left, from 0. */
export function onePartWay(data: WorksheetData, places: readonly number[]): CutWay | undefined {
  const question = spacerStackQuestion(data);
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
