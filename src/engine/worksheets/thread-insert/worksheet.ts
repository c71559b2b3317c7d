import { LEAST_FLOOR } from '../../thread/insert-lengths.ts';
import { show } from '../../length/show.ts';
import { worksheet } from '../worksheet.ts';
import { insertAccount } from './account.ts';
import { checksOfInsert } from './checks-of-insert.ts';
import { cutsOfInsert } from './cuts-of-insert.ts';
import { insertFields } from './fields.ts';
import { getsOfInsert } from './gets-of-insert.ts';
import { insertInLegs } from './insert-in-legs.ts';
import { insertFieldsFor, insertNeeds, insertQuestion } from './question.ts';
import { sayLegRefusal } from './say-insert-refusal.ts';
import { stepsOfInsert } from './steps-of-insert.ts';
import { insertVerdicts } from './verdict-of-insert.ts';

/** A wire thread insert in one leg or several: the drill or none, the STI tap, what is bought and trimmed, the wall left. */
export const threadInsertWorksheet = worksheet({
  name: 'Thread insert',
  asks: 'Which drill, or none, which tap, what length, and what wall is left?',
  fields: insertFields,
  fieldsFor: insertFieldsFor,
  needs: insertNeeds,
  starts: {},
  lacks: 'It needs a thread.',
  question: insertQuestion,
  answer: insertInLegs,
  sayRefusal: sayLegRefusal,
  usual: ({ unit }) => ({
    hole: 'solid metal',
    thickness: 'not given; the usual length is 1.5D',
    leastWall: 'usual: half the bolt’s diameter (common practice, no source)',
    leastFloor: `usual: ${show(LEAST_FLOOR[unit], unit)} (common practice, no source)`,
  }),
  assumed: (given) => [
    { field: 'metal', words: 'aluminium' },
    { field: 'bottom', words: 'through hole' },
    ...(given.choice('bottom') === 'blind' || given.choice('bottom') === 'last-blind'
      ? [{ field: 'tap' as const, words: 'bottoming tap' }]
      : []),
  ],
  account: insertAccount,
  cuts: ({ question, answer }) => cutsOfInsert(question, answer),
  // The listed drill run through anyway is what a close call asks for; wall and floor have to be known before it.
  cutsHoldAnyway: ({ answer, unit }) =>
    answer.hole.state === 'run-drill-through-anyway' &&
    insertVerdicts(undefined, answer, unit).every(({ kind }) => kind === 'good'),
  checks: () => checksOfInsert(),
  steps: ({ question, answer, unit }) => stepsOfInsert(question, answer, unit),
  gets: ({ question, answer, unit }) => getsOfInsert(question, answer, unit),
  // With the insert in nobody can read the drilled hole again.
  provedByCut: { drill: 'hole' },
  demo: {
    title: 'Insert for the link bolt',
    sizes: { hole: '.4487 in', wall: '.310 in', thickness: '.750 in', thickness2: '.500 in' },
    choices: { thread: '7/16-20 UNF', metal: 'steel', bottom: 'through' },
  },
});
