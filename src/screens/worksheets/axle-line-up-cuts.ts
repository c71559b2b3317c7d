import { cutsOfLineUp } from '../../engine/worksheets/axle-line-up/cuts-of-line-up.ts';
import type { CutWay } from '../../engine/cut/cuts-of-way.ts';
import { lineUp } from '../../engine/worksheets/axle-line-up/line-up.ts';
import { axleLineUpQuestion } from './axle-line-up-question.ts';
import type { WorksheetData } from './worksheet-data.ts';

export function axleLineUpCuts(data: WorksheetData): readonly CutWay[] {
  const question = axleLineUpQuestion(data);
  const answer = question && lineUp(question);
  return question && answer?.ok === true ? cutsOfLineUp(question, answer.value) : [];
}
