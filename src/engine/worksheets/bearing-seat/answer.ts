import { bearingInSeat, type SeatAnswer, type SeatQuestion } from './bearing-seat.ts';
import { innerSleeve, type SleeveAnswer, type SleeveQuestion, type SleeveRefusal } from './inner-sleeve.ts';
import { taperSetting, type TaperAnswer, type TaperQuestion } from './taper-setting.ts';
import { cutsOfSeat, cutsOfSleeve, cutsOfTaper } from './cuts-of-bearing-seat.ts';
import type { BearingQuestion } from './question.ts';
import { cutsOfRingSeat } from './cuts-of-ring-seat.ts';
import { ringSeat, type RingSeatAnswer, type RingSeatQuestion } from './ring-seat.ts';
import type { IsoRefusal } from '../../fit/fits-iso.ts';
import type { CutWay } from '../../cut/cuts-of-way.ts';
import type { Length } from '../../length/length.ts';
import { worked, type Refusal, type Result } from '../../length/refusal.ts';

export type BearingRefusal = SleeveRefusal | IsoRefusal | Refusal;

export type BearingAnswer =
  | { readonly kind: 'ball'; readonly ask: SleeveQuestion; readonly found: SleeveAnswer }
  | {
      readonly kind: 'taper';
      readonly ask: TaperQuestion;
      readonly found: TaperAnswer;
      readonly step: Length;
    }
  | { readonly kind: 'seat'; readonly ask: SeatQuestion; readonly found: SeatAnswer }
  | { readonly kind: 'ring'; readonly ask: RingSeatQuestion; readonly found: RingSeatAnswer };

/** Any of the four questions about bearings, answered as `innerSleeve`, `taperSetting`, `bearingInSeat` and `ringSeat` do. */
export function bearingAnswer(question: BearingQuestion): Result<BearingAnswer, BearingRefusal> {
  switch (question.kind) {
    case 'ball': {
      const found = innerSleeve(question.ask);
      return found.ok ? worked({ kind: 'ball', ask: question.ask, found: found.value }) : found;
    }
    case 'taper':
      return worked({
        kind: 'taper',
        ask: question.ask,
        step: question.step,
        found: taperSetting(question.ask),
      });
    case 'seat':
      return worked({ kind: 'seat', ask: question.ask, found: bearingInSeat(question.ask) });
    case 'ring': {
      const found = ringSeat(question.ask);
      return found.ok ? worked({ kind: 'ring', ask: question.ask, found: found.value }) : found;
    }
    default:
      return question satisfies never;
  }
}

/** What is cut for it, whatever was asked. */
export function cutsOfBearing(answer: BearingAnswer): readonly CutWay[] {
  switch (answer.kind) {
    case 'ball':
      return cutsOfSleeve(answer.ask, answer.found);
    case 'taper':
      return cutsOfTaper(answer.ask, answer.found, answer.step);
    case 'seat':
      return cutsOfSeat(answer.ask, answer.found);
    case 'ring':
      return cutsOfRingSeat(answer.ask, answer.found);
    default:
      return answer satisfies never;
  }
}
