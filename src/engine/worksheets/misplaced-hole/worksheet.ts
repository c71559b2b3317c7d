import { bushingRunsWith, bushingUsual } from '../bushing/worksheet.ts';
import { worksheet, type Wanted } from '../worksheet.ts';
import { misplacedHoleAccount } from './account.ts';
import { checksOfMisplacedHole } from './checks-of-misplaced-hole.ts';
import { boreInChuck, cutsOfMisplacedHole } from './cuts-of-misplaced-hole.ts';
import { misplacedHoleFields } from './fields.ts';
import { getsOfMisplacedHole } from './gets-of-misplaced-hole.ts';
import { misplacedHole } from './misplaced-hole.ts';
import {
  misplacedHoleFieldsFor,
  misplacedHoleNeeds,
  misplacedHoleQuestion,
  type MisplacedGiven,
} from './question.ts';
import { sayMisplacedHoleRefusal } from './say-misplaced-hole.ts';
import { stepsOfMisplacedHole } from './steps-of-misplaced-hole.ts';

/** A hole in the wrong place, opened and bushed so that its pin stands in the right one. */
export const misplacedHoleWorksheet = worksheet({
  name: 'Hole off its place',
  asks: 'What do I open it to, and how far off its middle is its bushing bored?',
  fields: misplacedHoleFields,
  fieldsFor: misplacedHoleFieldsFor,
  needs: misplacedHoleNeeds,
  starts: {},
  lacks: 'It needs where the hole belongs, the hole, its pin, the wall, and both metals.',
  canKill: true,
  question: misplacedHoleQuestion,
  answer: misplacedHole,
  sayRefusal: sayMisplacedHoleRefusal,
  usual: (given: MisplacedGiven) => ({
    ...bushingUsual(given),
    axis: 'usual: where it is now',
    within: 'usual: half the clearance of the pin',
    lock: 'usual: a dowel in the joint (common practice, no source)',
  }),
  assumed: (given) => [
    ...(given.choice('axis') === 'right' ? [] : [{ field: 'lock', words: 'locked by a dowel' } as const]),
    { field: 'condition', words: 'not hardened or plated' },
  ],
  account: misplacedHoleAccount,
  cuts: ({ question, answer, given }) => cutsOfMisplacedHole(question, answer, given.dial),
  checks: ({ question, answer }) => checksOfMisplacedHole(question, answer),
  // As it leaves the chuck.
  makes: ({ question, answer: { press, off } }) => [
    {
      name: off ? 'Offset bushing' : 'Bushing',
      outside: press.turnTo,
      inside: boreInChuck(question, { press }).target,
      length: question.bushed.length,
      offCentre: off?.by,
    },
  ],
  steps: ({ question, answer, unit }) => stepsOfMisplacedHole(question, answer, unit),
  gets: ({ question, answer, unit }) => getsOfMisplacedHole(question, answer, unit),
  runsWith: (given: MisplacedGiven, of) => bushingRunsWith(given, of),
  wanted: (given, _kind, field) => placeWanted(given, field),
  demo: {
    title: 'Arm pivot drilled off',
    sizes: { offBy: '.0620 in', bore: '.5010 in', pin: '.4990 in', wall: '.750 in', length: '1.500 in' },
    choices: {
      found: 'offset',
      toward: '90',
      joint: 'turns',
      partMetal: 'low-carbon-steel',
      bushingMetal: 'bearing-bronze',
    },
  },
});

const OF_THE_PLACE: ReadonlySet<string> = new Set([
  'offBy',
  'apart',
  'apartWanted',
  'nowX',
  'wantX',
  'nowY',
  'wantY',
]);

/** How closely the place has to be known; once the rest is given, which says how close it has to come. */
function placeWanted(given: MisplacedGiven, field: string | undefined): Wanted | undefined {
  if (field === undefined || !OF_THE_PLACE.has(field)) return undefined;
  const question = misplacedHoleQuestion(given);
  const answer = question && misplacedHole(question);
  if (answer?.ok !== true) return undefined;
  const { limits, legs } = answer.value.judgedPlace;
  return { limits, legs };
}
