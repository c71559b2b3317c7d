import { marked } from '../../length/decimal-text.ts';
import { sayDegrees, sayPlateRefusal } from './say-plate.ts';
import { worksheet, type Assumed } from '../worksheet.ts';
import { show } from '../../length/show.ts';
import { plateAccount } from './account.ts';
import { checksOfPlate } from './checks-of-plate.ts';
import { cutsOfPlate } from './cuts-of-plate.ts';
import { adapterPlateFields } from './fields.ts';
import { adapterPlate } from './plate.ts';
import {
  adapterPlateFieldsFor,
  adapterPlateNeeds,
  adapterPlateQuestion,
  knownBy,
  type PlateGiven,
} from './question.ts';
import { getsOfPlate } from './gets-of-plate.ts';
import { stepsOfPlate } from './steps-of-plate.ts';
import { usualWithin } from './tables/least-webs.ts';

/** An adapter plate: two hole patterns in one plate, every hole by its coordinates. */
export const adapterPlateWorksheet = worksheet({
  name: 'Adapter plate',
  asks: 'Where does every hole go, and is enough left between them?',
  fields: adapterPlateFields,
  fieldsFor: adapterPlateFieldsFor,
  needs: adapterPlateNeeds,
  starts: {},
  lacks: 'It needs the holes of both patterns, how wide they are, and the plate.',
  canKill: true,
  question: adapterPlateQuestion,
  answer: adapterPlate,
  sayRefusal: sayPlateRefusal,
  usual: (given: PlateGiven) => ({
    aStart: 'usual: 0, at 3 o’clock',
    bStart: 'usual: 0, at 3 o’clock',
    turn: 'usual: none, or what leaves most between the holes',
    shiftX: 'usual: on A’s middle',
    shiftY: 'usual: on A’s middle',
    fromLeft: 'usual: the middle of the plate',
    fromBelow: 'usual: the middle of the plate',
    zero: 'usual: the middle of A',
    within: `usual: ${show(usualWithin[given.unit], given.unit)} (common practice, no source)`,
    leastWeb: `usual: ${marked('.6')} of both holes together`,
    leastEdge: `usual: ${marked('.7')} of the hole`,
  }),
  assumed: turnAssumed,
  account: plateAccount,
  cuts: ({ answer, unit }) => cutsOfPlate(answer, unit),
  checks: ({ question, answer }) => checksOfPlate(question, answer),
  steps: ({ answer, unit }) => stepsOfPlate(answer, unit),
  gets: ({ question, unit }) => getsOfPlate(question, unit),
  demo: {
    title: 'Wheel adapter',
    sizes: {
      aCircle: '4.500 in',
      aHole: '17/32 in',
      bCircle: '5.500 in',
      bHole: '1/2 in',
      round: '7.250 in',
    },
    choices: { aBy: 'circle', aCount: '5', bBy: 'circle', bCount: '5' },
  },
});

/** A turn that nobody said, where it isn't none. */
function turnAssumed(given: PlateGiven): readonly Assumed<'turn'>[] {
  if (given.number('turn') !== undefined || knownBy(given, 'b') === 'none') return [];
  const question = adapterPlateQuestion(given);
  const answer = question && adapterPlate(question);
  const turn = answer?.ok ? answer.value.b?.turnDegrees : undefined;
  return turn === undefined || turn === 0 ? [] : [{ field: 'turn', words: `B turned ${sayDegrees(turn)}` }];
}
