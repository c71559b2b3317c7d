import { cutsOfRing } from '../../engine/worksheets/ring/cuts-of-ring.ts';
import type { CutWay } from '../../engine/cut/cuts-of-way.ts';
import { ring } from '../../engine/worksheets/ring/ring.ts';
import { ringQuestion } from './ring-question.ts';
import type { WorksheetData } from './worksheet-data.ts';

export function ringCuts(data: WorksheetData): readonly CutWay[] {
  const question = ringQuestion(data);
  const answer = question && ring(question);
  return question && answer?.ok === true ? cutsOfRing(question, answer.value) : [];
}
