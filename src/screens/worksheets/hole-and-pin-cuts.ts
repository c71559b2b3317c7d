import { cutsOfRoutes } from '../../engine/worksheets/hole-and-pin/cuts-of-routes.ts';
import type { CutWay } from '../../engine/cut/cuts-of-way.ts';
import { holeAndPin } from '../../engine/worksheets/hole-and-pin/hole-and-pin.ts';
import { holeAndPinQuestion } from './hole-and-pin-question.ts';
import type { WorksheetData } from './worksheet-data.ts';
import { dialOf } from './worksheet-dial.ts';

export function holeAndPinCuts(data: WorksheetData): readonly CutWay[] {
  const question = holeAndPinQuestion(data);
  return question ? cutsOfRoutes(question, holeAndPin(question), dialOf(data)) : [];
}
