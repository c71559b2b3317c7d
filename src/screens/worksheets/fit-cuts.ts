import { cutsOfFit } from '../../engine/worksheets/fit/cuts-of-fit.ts';
import type { CutWay } from '../../engine/cut/cuts-of-way.ts';
import { fitAnswer, fitQuestion } from './fit-question.ts';
import type { WorksheetData } from './worksheet-data.ts';
import { dialOf } from './worksheet-dial.ts';

export function fitCuts(data: WorksheetData): readonly CutWay[] {
  const question = fitQuestion(data);
  const answer = question && fitAnswer(question);
  if (!question || answer?.ok !== true) return [];
  const { fit, clearance, pinForBore, boreForPin } = answer.value;
  const { bore, pin } = question;
  return cutsOfFit(
    {
      fit,
      ...(bore && { bore }),
      ...(pin && { pin }),
      ...(clearance && { verdict: clearance.verdict }),
      ...(pinForBore && { pinForBore }),
      ...(boreForPin && { boreForPin }),
    },
    dialOf(data),
  );
}
