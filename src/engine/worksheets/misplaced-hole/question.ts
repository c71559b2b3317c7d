import { finest } from '../../length/finest.ts';
import type { Estimate } from '../../reading/estimate.ts';
import { bushingFields } from '../bushing/fields.ts';
import { bushingFieldsFor, bushingQuestion } from '../bushing/question.ts';
import type { Fields, NamesOf } from '../fields.ts';
import type { Given } from '../given.ts';
import { misplacedHoleFields, type MisplacedHoleFields } from './fields.ts';
import type { Lock, MisplacedHoleQuestion } from './misplaced-hole.ts';
import type { Spot, WhereAsked } from './place.ts';

export type MisplacedGiven = Given<MisplacedHoleFields>;
type Name = keyof MisplacedHoleFields;

/** What it takes to know where the hole belongs, by how that is known. */
const WHERE = {
  offset: ['offBy'],
  apart: ['apart', 'apartWanted'],
  edges: ['nowX', 'wantX', 'nowY', 'wantY'],
} as const satisfies Record<WhereAsked['by'], readonly Name[]>;

const BESIDE_IT: Readonly<Record<WhereAsked['by'], readonly Name[]>> = {
  offset: ['toward', 'apart'],
  apart: [],
  edges: ['otherX', 'otherY', 'otherWantX', 'otherWantY'],
};

const ofAnyWay = new Set<string>([WHERE, BESIDE_IT].flatMap((ways) => Object.values(ways).flat()));

export function foundBy(given: MisplacedGiven): WhereAsked['by'] {
  const found = given.choice('found');
  return found === 'apart' || found === 'edges' ? found : 'offset';
}

/** Asked one after the other: where it belongs first. No metal and no joint is taken for granted. */
export function misplacedHoleNeeds(given: MisplacedGiven): readonly Name[] {
  return ['found', ...WHERE[foundBy(given)], 'bore', 'pin', 'joint', 'wall', 'partMetal', 'bushingMetal'];
}

/** What is listed: what goes with how the place is known, and the classes of the system in hand. */
export function misplacedHoleFieldsFor(given: MisplacedGiven): Fields {
  const by = foundBy(given);
  const here: readonly string[] = [...WHERE[by], ...BESIDE_IT[by]];
  const bushings = bushingFieldsFor(given);
  return Object.fromEntries(
    Object.entries(misplacedHoleFields).filter(([name]) =>
      ofAnyWay.has(name) ? here.includes(name) : name in bushings || !(name in bushingFields),
    ),
  );
}

/** The question of a hole in the wrong place, once its place, its bushing's question and its wall are known. */
export function misplacedHoleQuestion(given: MisplacedGiven): MisplacedHoleQuestion | undefined {
  const where = whereAsked(given);
  const bushed = bushingQuestion(given);
  const wall = given.size('wall')?.least;
  if (!where || !bushed || !wall) return undefined;
  return {
    where,
    bushed,
    wall,
    inRightPlace: given.choice('axis') === 'right',
    within: given.exact('within'),
    lock: lockOf(given.choice('lock')),
    finest: finest[given.unit],
  };
}

export function whereAsked(given: MisplacedGiven): WhereAsked | undefined {
  const size = (name: NamesOf<MisplacedHoleFields, 'size'>) => given.size(name)?.tightest;
  const spot = (across: Estimate | undefined, up: Estimate | undefined): Spot | undefined =>
    across && up && { across, up };
  const by = foundBy(given);
  if (by === 'edges') {
    const now = spot(size('nowX'), size('nowY'));
    const wanted = spot(size('wantX'), size('wantY'));
    const other = spot(size('otherX'), size('otherY'));
    const otherWanted = spot(size('otherWantX'), size('otherWantY'));
    return now && wanted && { by, now, wanted, other, otherWanted };
  }
  const apart = size('apart');
  if (by === 'apart') {
    const wanted = size('apartWanted');
    return apart && wanted && { by, apart, wanted };
  }
  const offBy = size('offBy');
  return offBy && { by, offBy, towardDegrees: given.number('toward'), apart };
}

function lockOf(value: string | undefined): Lock {
  return value === 'screw' || value === 'bond' ? value : 'dowel';
}
