import { show } from '../../length/show.ts';
import { capital } from '../../length/say-words.ts';
import { sayAssumed } from '../../reading/say-assumed.ts';
import { usualNutHeight } from '../../thread/grip-ends.ts';
import { threadNamed } from '../../thread/threads.ts';
import type { Given } from '../given.ts';
import { worksheet, type Assumed } from '../worksheet.ts';
import { jointAccount } from './account.ts';
import { checksOfEngagement } from './checks-of-threads.ts';
import { engagementFields, legFields, type EngagementFields } from './fields.ts';
import { getsOfJoint } from './gets-of-joint.ts';
import { joint } from './joint.ts';
import { engagementFieldsFor, engagementNeeds, heldOf, jointQuestion } from './question.ts';
import { sayEngagementRefusal } from './say-engagement.ts';

/** Whether a bolt breaks before its thread strips, and which bolt its legs want. */
export const threadEngagementWorksheet = worksheet({
  name: 'Thread engagement',
  asks: 'Does the bolt break before its thread strips, and how long must it be?',
  fields: engagementFields,
  fieldsFor: engagementFieldsFor,
  needs: engagementNeeds,
  starts: {},
  lacks: 'It needs a thread, the bolt’s grade and the part’s metal.',
  question: jointQuestion,
  answer: joint,
  sayRefusal: sayEngagementRefusal,
  assumed: assumedOfJoint,
  usual: usualWords,
  account: jointAccount,
  checks: ({ question }) => checksOfEngagement(question.held),
  gets: ({ question, answer, unit }) => getsOfJoint(question, answer, unit),
  demo: {
    title: 'Link bolt in the arm',
    sizes: { engaged: '.750 in', leg1: '.375 in', boltLength: '1.500 in' },
    choices: {
      thread: '7/16-20 UNF',
      grade: 'sae-5',
      parent: 'low-carbon-steel',
      insert: 'no',
      held: 'tapped',
      hole: 'through',
      nutFactor: 'dry',
    },
  },
});

function assumedOfJoint(given: Given<EngagementFields>): readonly Assumed<keyof EngagementFields>[] {
  const hasLegs = legFields.some((name) => given.has(name));
  return [
    { field: 'insert', words: 'no insert' },
    ...(hasLegs ? [{ field: 'held' as const, words: 'bolt into the part' }] : []),
    ...(hasLegs && heldOf(given) !== 'tapped' ? [{ field: 'nutHeight' as const, words: 'usual nut' }] : []),
  ];
}

function usualWords(
  given: Given<EngagementFields>,
): Readonly<Partial<Record<keyof EngagementFields, string>>> {
  const name = given.choice('thread');
  const thread = name === undefined ? undefined : threadNamed(name);
  return {
    parentTensile: 'usual: the metal’s least figure',
    ...(thread && { nutHeight: `usual: ${show(usualNutHeight(thread), given.unit)}` }),
    nutFactor: capital(sayAssumed(['dry'])),
  };
}
