import { cutsOfInsert } from '../../engine/worksheets/thread-insert/cuts-of-insert.ts';
import type { CutWay } from '../../engine/cut/cuts-of-way.ts';
import { threadInsert } from '../../engine/worksheets/thread-insert/thread-insert.ts';
import { threadInsertQuestion } from './thread-insert-question.ts';
import type { WorksheetData } from './worksheet-data.ts';

export function threadInsertCuts(data: WorksheetData): readonly CutWay[] {
  const question = threadInsertQuestion(data);
  const answer = question && threadInsert(question);
  return question && answer?.ok === true ? cutsOfInsert(question, answer.value) : [];
}
