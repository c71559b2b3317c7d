import { dialFor } from '../common/slides.ts';
import {
  bearingInSeat,
  innerSleeve,
  taperSetting,
} from '../../engine/worksheets/bearing-seat/bearing-seat.ts';
import {
  cutsOfSeat,
  cutsOfSleeve,
  cutsOfTaper,
} from '../../engine/worksheets/bearing-seat/cuts-of-bearing-seat.ts';
import type { CutWay } from '../../engine/cut/cuts-of-way.ts';
import { sizeStep } from '../../engine/length/metal-on.ts';
import { bearingQuestion } from './bearing-seat-question.ts';
import type { WorksheetData } from './worksheet-data.ts';

export function bearingSeatCuts(data: WorksheetData): readonly CutWay[] {
  const question = bearingQuestion(data);
  switch (question?.kind) {
    case undefined:
      return [];
    case 'ball': {
      const answer = innerSleeve(question.ask);
      return answer.ok ? cutsOfSleeve(question.ask, answer.value) : [];
    }
    case 'taper':
      return cutsOfTaper(
        question.ask,
        taperSetting(question.ask),
        sizeStep('length', dialFor('length', data.dial)),
      );
    case 'seat':
      return cutsOfSeat(question.ask, bearingInSeat(question.ask));
    default:
      return question satisfies never;
  }
}
