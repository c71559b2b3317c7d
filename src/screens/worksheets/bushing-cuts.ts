import { bushing } from '../../engine/press/bushing.ts';
import { cutsOfBushing } from '../../engine/worksheets/bushing/cuts-of-bushing.ts';
import type { CutWay } from '../../engine/cut/cuts-of-way.ts';
import { bushingQuestion } from './bushing-question.ts';
import type { WorksheetData } from './worksheet-data.ts';
import { dialOf } from './worksheet-dial.ts';

export function bushingCuts(data: WorksheetData): readonly CutWay[] {
  const question = bushingQuestion(data);
  const answer = question && bushing(question);
  return question && answer?.ok === true ? cutsOfBushing(question, answer.value, dialOf(data)) : [];
}
