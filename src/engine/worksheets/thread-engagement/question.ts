import type { GripQuestion, Held, TappedHole } from '../../thread/grip-question.ts';
import { nutFactors } from '../../thread/bolt-torque.ts';
import { boltGrades } from '../../thread/tables/bolt-grades.ts';
import { parentMetals } from '../../thread/tables/parent-metals.ts';
import { threadNamed } from '../../thread/threads.ts';
import { torqueIn, type StatedTorque } from '../../thread/torque.ts';
import type { Fields } from '../fields.ts';
import type { Given } from '../given.ts';
import { engagementFields, legFields, metalsIn, studFields, type EngagementFields } from './fields.ts';
import type { EngagementQuestion } from './thread-engagement.ts';

type EngagementGiven = Given<EngagementFields>;
type Name = keyof EngagementFields;

/** The thread that holds, the joint it clamps, and the manual's torque. */
export type JointQuestion = {
  readonly thread: EngagementQuestion;
  /** Where the part's strength is from. */
  readonly parentSource: string;
  readonly held: Held;
  /** Legs, washers, nut, shank and bolt; left out while no leg is given. */
  readonly grip?: GripQuestion;
  readonly torque?: TorqueGiven;
};

/** The question a thread-engagement worksheet asks the engine, once thread, grade and metal are known. */
export function jointQuestion(given: EngagementGiven): JointQuestion | undefined {
  const name = given.choice('thread');
  const thread = name === undefined ? undefined : threadNamed(name);
  const grade = boltGrades.find(({ id }) => id === given.choice('grade'));
  const strength = parentStrength(given);
  if (!thread || !grade || !strength) return undefined;
  // The shallowest place holds least.
  const engaged = given.size('engaged')?.least;
  const grip = gripQuestion(given);
  const torque = torqueGiven(given);
  return {
    thread: {
      thread,
      grade: grade.id,
      parentTensileMpa: strength.tensileMpa,
      withInsert: given.choice('insert') === 'yes',
      ...(engaged && { engaged }),
    },
    parentSource: strength.source,
    held: heldOf(given),
    ...(grip && { grip }),
    ...(torque && { torque }),
  };
}

/** The part's least strength: the user's own figure before the table's. */
function parentStrength(
  given: EngagementGiven,
): { readonly tensileMpa: number; readonly source: string } | undefined {
  const own = given.number('parentTensile');
  if (own !== undefined) return { tensileMpa: own, source: 'your own figure' };
  const metal = parentMetals.find(({ id }) => id === given.choice('parent'));
  return metal && { tensileMpa: metal.tensileLeastMpa, source: metal.source };
}

/** Legs, washers, nut, shank and bolt; undefined while no leg is given. */
export function gripQuestion(given: EngagementGiven): GripQuestion | undefined {
  const name = given.choice('thread');
  const thread = name === undefined ? undefined : threadNamed(name);
  const legs = legFields.flatMap((leg) => {
    const known = given.size(leg);
    return known ? [{ name: leg.replace('leg', 'leg '), thickness: known.least, thickest: known.most }] : [];
  });
  if (!thread || legs.length === 0) return undefined;
  const [headWasher, nutWasher, nutHeight] = (['headWasher', 'nutWasher', 'nutHeight'] as const).map((size) =>
    given.exact(size),
  );
  const shank = given.size('shank');
  const nutRunsTo = given.size('nutRunsTo')?.most;
  const bolt = given.size('boltLength');
  const hole = tappedHole(given);
  return {
    thread,
    held: heldOf(given),
    legs,
    ...(headWasher && { headWasher }),
    ...(nutWasher && { nutWasher }),
    ...(nutHeight && { nutHeight }),
    ...(shank && { shank: shank.least, shankLongest: shank.most }),
    ...(nutRunsTo && { nutRunsTo }),
    ...(bolt && { boltLength: bolt.least, boltLongest: bolt.most }),
    ...(given.choice('insert') === 'yes' && { withInsert: true }),
    ...(hole && { hole }),
  };
}

/** Through, or so deep at its shallowest; undefined while it wasn't said. */
function tappedHole(given: EngagementGiven): TappedHole | undefined {
  if (given.choice('hole') === 'through') return 'through';
  const depth = given.choice('hole') === 'blind' ? given.size('holeDepth')?.least : undefined;
  return depth && { depth };
}

/** How it holds; a bolt into the part where nobody said. */
export function heldOf(given: Pick<EngagementGiven, 'choice'>): Held {
  const held = given.choice('held');
  return held === 'nut' || held === 'stud' ? held : 'tapped';
}

export type TorqueGiven = {
  readonly manual: StatedTorque;
  readonly newtonMetres: number;
  readonly nutFactor: number;
  /** Nobody said how the thread goes in. */
  readonly isDryAssumed: boolean;
};

const TORQUES = [
  { name: 'torqueNewtonMetres', unit: 'Nm' },
  { name: 'torquePoundFeet', unit: 'lbf-ft' },
] as const;

/** The manual's torque as given, and the nut factor for the estimate beside it. */
function torqueGiven(given: EngagementGiven): TorqueGiven | undefined {
  const chosen = nutFactors.find(({ id }) => id === given.choice('nutFactor')) ?? nutFactors[0];
  for (const { name, unit } of TORQUES) {
    const stated = given.number(name);
    if (stated !== undefined)
      return {
        manual: { typed: given.choice(name) ?? String(stated), unit },
        newtonMetres: torqueIn(stated, unit, 'Nm'),
        nutFactor: chosen.factor,
        isDryAssumed: given.choice('nutFactor') === undefined,
      };
  }
  return undefined;
}

/** The thread with its grade and metal, how it holds, and leg after leg until that is all of them. */
export function engagementNeeds(given: EngagementGiven): readonly Name[] {
  const metal = given.has('parentTensile') ? [] : (['parent'] as const);
  const isNew = asksForLegs(given) && nextLeg(given) === 'leg1';
  const next = asksForLegs(given) ? nextLeg(given) : undefined;
  return ['thread', 'grade', ...metal, ...(isNew ? (['held'] as const) : []), ...(next ? [next] : [])];
}

// Whoever has gone on to these has no further leg.
const GIVEN_LATER = ['legs', 'engaged', 'boltLength', 'shank', 'nutRunsTo', 'hole', 'holeDepth'] as const;

/** Whether leg after leg is asked for still. */
export function asksForLegs(given: Pick<EngagementGiven, 'has'>): boolean {
  return !GIVEN_LATER.some((name) => given.has(name));
}

function nextLeg(given: Pick<EngagementGiven, 'has'>): (typeof legFields)[number] | undefined {
  return legFields.find((name) => !given.has(name));
}

/** What is listed: the legs that are there and one more, washers, nut and hole by how it holds. */
export function engagementFieldsFor(given: EngagementGiven): Fields {
  const { legs: _legs, ...all } = engagementFields;
  const { parent } = all;
  const held = heldOf(given);
  const fields: Fields = {
    ...all,
    ...(held === 'stud' && studFields),
    parent: { ...parent, options: metalsIn(given.unit) },
  };
  const hidden = notAsked(given);
  return Object.fromEntries(Object.entries(fields).filter(([name]) => !hidden.has(name)));
}

function notAsked(given: EngagementGiven): ReadonlySet<string> {
  const held = heldOf(given);
  const next = nextLeg(given);
  const further = legFields.filter((name) => name !== next && !given.has(name));
  return new Set<string>([
    ...further,
    ...(held === 'stud' ? ['headWasher'] : []),
    ...(held === 'nut' ? ['hole', 'holeDepth'] : given.choice('hole') === 'blind' ? [] : ['holeDepth']),
    ...(held === 'tapped' ? ['nutWasher', 'nutHeight'] : []),
  ]);
}
