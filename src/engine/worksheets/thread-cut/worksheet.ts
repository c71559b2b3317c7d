import { show } from '../../length/show.ts';
import { usualNutHeight } from '../../thread/grip-ends.ts';
import { bestWire } from '../../thread/three-wires.ts';
import { externalLimits, hasLimits } from '../../thread/thread-limits.ts';
import { mean } from '../../reading/estimate.ts';
import { dividedBy, minus, plus } from '../../length/length.ts';
import { worksheet, type Assumed, type Wanted } from '../worksheet.ts';
import { threadCutAccount } from './account.ts';
import { checksOfThreadCut } from './checks-of-thread-cut.ts';
import { cutsOfThread } from './cuts-of-thread.ts';
import { threadCutFields, type ThreadCutFields } from './fields.ts';
import { getsOfThreadCut } from './gets-of-thread-cut.ts';
import {
  isStud,
  threadCutFieldsFor,
  threadCutNeeds,
  threadCutQuestion,
  threadOf,
  type ThreadCutGiven,
} from './question.ts';
import { sayThreadCutRefusal } from './say-thread-cut.ts';
import { stepsOfThreadCut } from './steps-of-thread-cut.ts';
import { threadCut } from './thread-cut.ts';

/** A thread cut on the lathe, on a part or at both ends of a stud, and measured over the wires there are. */
export const threadCutWorksheet = worksheet({
  name: 'Thread on the lathe',
  asks: 'What do I turn it to, how deep does the thread go, what does it read over my wires?',
  fields: threadCutFields,
  fieldsFor: threadCutFieldsFor,
  needs: threadCutNeeds,
  starts: {},
  lacks: 'It needs the thread and the outside there is; a stud also what it clamps.',
  question: threadCutQuestion,
  answer: threadCut,
  sayRefusal: sayThreadCutRefusal,
  usual: usualWords,
  assumed: (given): readonly Assumed<keyof ThreadCutFields>[] => [
    { field: 'wire', words: 'best wires' },
    ...(isStud(given) ? [{ field: 'nutHeight', words: 'usual nut' } as const] : []),
  ],
  account: threadCutAccount,
  cuts: ({ question, answer }) => cutsOfThread(question, answer),
  checks: ({ question, answer }) => checksOfThreadCut(question, answer),
  makes: ({ answer: { stud, outside } }) =>
    stud ? [{ name: 'Stud', outside: outside.target, length: stud.lower }] : [],
  steps: ({ question, answer }) => stepsOfThreadCut(question, answer),
  gets: ({ question, answer, unit }) => getsOfThreadCut(question, answer, unit),
  wanted: wireWanted,
  demo: {
    title: 'Stud for the shock link',
    sizes: { outside: '.500 in', grip: '1.875 in', washer: '.090 in', wire: '.0300 in' },
    choices: {
      makes: 'stud',
      thread: '7/16-20 UNF',
      ends: 'nuts',
      infeed: 'flank',
      hand: 'right',
      metal: 'alloy-steel',
    },
  },
});

function usualWords(given: ThreadCutGiven): Readonly<Partial<Record<keyof ThreadCutFields, string>>> {
  const thread = threadOf(given);
  return {
    hand: 'usual: right hand',
    infeed: 'usual: along the flank',
    washer: 'usual: none',
    ...(thread && {
      wire: `usual: the best one, ${show(bestWire(thread.pitch), given.unit)}`,
      nutHeight: `usual: ${show(usualNutHeight(thread), given.unit)}`,
    }),
  };
}

/** A wire counts three times: it has to be known to a third of what the pitch diameter may have. */
function wireWanted(given: ThreadCutGiven, _kind: unknown, field: string | undefined): Wanted | undefined {
  const thread = threadOf(given);
  if (field !== 'wire' || !thread || !hasLimits(thread)) return undefined;
  const { pitchLeast, pitchMost } = externalLimits(thread);
  const wire = given.size('wire')?.tightest;
  const half = dividedBy(minus(pitchMost, pitchLeast), 6);
  const size = wire ? mean(wire) : bestWire(thread.pitch);
  return {
    limits: {
      lower: minus(size, half),
      upper: plus(size, half),
      source: 'the pitch diameter’s tolerance, a third for each of three wires',
    },
    legs: [{ kind: 'pin', size, coefficient: 1 }],
  };
}
