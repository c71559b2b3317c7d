import { sizeStep } from '../../length/metal-on.ts';
import { materialNamed } from '../../material/tables/materials.ts';
import { threadNamed, type Thread } from '../../thread/threads.ts';
import type { Fields } from '../fields.ts';
import type { Given } from '../given.ts';
import { threadCutFields, type ThreadCutFields } from './fields.ts';
import type { ThreadCutQuestion } from './thread-cut.ts';
import type { StudQuestion } from './stud.ts';

export type ThreadCutGiven = Given<ThreadCutFields>;
type Name = keyof ThreadCutFields;

export function isStud(given: Pick<ThreadCutGiven, 'choice'>): boolean {
  return given.choice('makes') === 'stud';
}

const endsOf = (given: Pick<ThreadCutGiven, 'choice'>) => (given.choice('ends') === 'part' ? 'part' : 'nuts');

/** What gets it, which thread, the metal there is; of a stud what it clamps, and how deep it stands in a part. */
export function threadCutNeeds(given: ThreadCutGiven): readonly Name[] {
  const inPart = endsOf(given) === 'part' ? (['inPart'] as const) : [];
  return ['makes', 'thread', 'outside', ...(isStud(given) ? (['ends', 'grip', ...inPart] as const) : [])];
}

const OF_A_STUD: ReadonlySet<string> = new Set<Name>(['ends', 'grip', 'inPart', 'washer', 'nutHeight']);

/** What is listed: a stud's own sizes only where it is one. */
export function threadCutFieldsFor(given: ThreadCutGiven): Fields {
  const isInPart = endsOf(given) === 'part';
  return Object.fromEntries(
    Object.entries(threadCutFields).filter(
      ([name]) => !OF_A_STUD.has(name) || (isStud(given) && (name !== 'inPart' || isInPart)),
    ),
  );
}

/** The thread that is named, if it is one. */
export function threadOf(given: Pick<ThreadCutGiven, 'choice'>): Thread | undefined {
  const name = given.choice('thread');
  return name === undefined ? undefined : threadNamed(name);
}

/** The question of a thread to be cut, once it is known which, on what, and what a stud clamps. */
export function threadCutQuestion(given: ThreadCutGiven): ThreadCutQuestion | undefined {
  const thread = threadOf(given);
  const outside = given.size('outside');
  const stud = studQuestion(given);
  if (!thread || !outside || (isStud(given) && !stud)) return undefined;
  const infeed = given.choice('infeed') === 'straight' ? 'straight' : 'flank';
  return {
    thread,
    outside: { least: outside.least, most: outside.most },
    wire: given.size('wire')?.tightest,
    infeed,
    hand: given.choice('hand') === 'left' ? 'left' : 'right',
    dial: given.dialFor('outside', infeed),
    steps: {
      outside: sizeStep('outside', given.dial),
      length: sizeStep('length', given.dialFor('length')),
    },
    material: materialNamed(given.choice('metal')),
    stud,
    unit: given.unit,
  };
}

function studQuestion(given: ThreadCutGiven): StudQuestion | undefined {
  const grip = given.size('grip');
  if (!isStud(given) || !grip) return undefined;
  const ends = endsOf(given);
  const inPart = given.exact('inPart');
  if (ends === 'part' && !inPart) return undefined;
  return {
    grip: { least: grip.least, most: grip.most },
    inPart: ends === 'part' ? inPart : undefined,
    washer: given.exact('washer'),
    nutHeight: given.exact('nutHeight'),
  };
}
