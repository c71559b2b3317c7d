import { bandOf, mean } from '../../reading/estimate.ts';
import { threadNamed } from '../../thread/threads.ts';
import type { Fields } from '../fields.ts';
import type { Given } from '../given.ts';
import { insertFields, legFields, type InsertFields } from './fields.ts';
import type { InsertLegQuestion, LeggedQuestion } from './insert-in-legs.ts';

type InsertGiven = Given<InsertFields>;
type LegField = (typeof legFields)[number];

/** The question a thread-insert worksheet asks the engine; a hole that isn't given is solid metal. */
export function insertQuestion(given: InsertGiven): LeggedQuestion | undefined {
  const name = given.choice('thread');
  const thread = name === undefined ? undefined : threadNamed(name);
  if (!thread) return undefined;
  const hole = given.size('hole');
  const leastFloor = given.exact('leastFloor');
  const leastWall = given.exact('leastWall');
  const wall = wallOf(given);
  return {
    thread,
    metal: given.choice('metal') === 'steel' ? 'steel' : 'aluminium',
    ...(hole && { hole: { tightest: hole.tightest, loosest: hole.loosest } }),
    ...(wall && { wall }),
    shop: given.unit,
    ...(leastFloor && { leastFloor }),
    ...(leastWall && { leastWall }),
    legs: legsOf(given),
  };
}

/** The legs that were given, each where its metal is thinnest: there the floor under a blind hole is least, and so is its hold. */
function legsOf(given: InsertGiven): readonly InsertLegQuestion[] {
  const known = legsGiven(given).map((name): InsertLegQuestion => {
    const metal = given.size(name)?.least;
    return metal ? { thickness: mean(metal), thicknessOff: bandOf(metal).halfWidth } : {};
  });
  const legs = known.length === 0 ? [{}] : known;
  const tap = given.choice('tap') === 'plug' ? 'plug' : 'bottoming';
  const bottom = given.choice('bottom');
  return legs.map((leg, index) => {
    const isBlind = bottom === 'blind' || (bottom === 'last-blind' && index === legs.length - 1);
    return isBlind ? { ...leg, blind: { tap } } : leg;
  });
}

function legsGiven(given: InsertGiven): readonly LegField[] {
  return legFields.filter((name) => given.has(name));
}

// From the centre is the surer of the two: it doesn't move when the hole does.
function wallOf(given: InsertGiven): LeggedQuestion['wall'] {
  const distance = given.exact('centreToEdge');
  if (distance) return { kind: 'centre-to-edge', distance };
  const wall = given.exact('wall');
  return wall && { kind: 'present', wall };
}

/** The thread, the hole unless there is none yet, and leg after leg until that is all of them. */
export function insertNeeds(given: InsertGiven): readonly (keyof InsertFields)[] {
  const hole = given.has('noHole') && !given.has('hole') ? [] : (['hole'] as const);
  const next = asksForLegs(given) ? nextLeg(given) : undefined;
  return ['thread', ...hole, ...(next ? [next] : [])];
}

// Whoever has gone on to these has no further leg; so has a worksheet from when there was only one.
const GIVEN_LATER = ['legs', 'wall', 'centreToEdge', 'metal', 'bottom'] as const;

/** Whether leg after leg is asked for still. */
export function asksForLegs(given: Pick<InsertGiven, 'has'>): boolean {
  return !GIVEN_LATER.some((name) => given.has(name));
}

/** The first leg that has no thickness; none once all four have. */
function nextLeg(given: InsertGiven): LegField | undefined {
  return legFields.find((name) => !given.has(name));
}

/** What is listed: the legs that are there and one more, tap and floor of a blind hole only. */
export function insertFieldsFor(given: InsertGiven): Fields {
  const { noHole: _noHole, legs: _legs, wallIs: _wallIs, ...fields } = insertFields;
  const next = nextLeg(given);
  const isBlind = given.choice('bottom') === 'blind' || given.choice('bottom') === 'last-blind';
  const isListed = (name: string) => {
    if (legFields.some((leg) => leg === name)) return name === next || given.has(nameOfLeg(name));
    return isBlind || (name !== 'tap' && name !== 'leastFloor');
  };
  return Object.fromEntries(Object.entries(fields).filter(([name]) => isListed(name)));
}

function nameOfLeg(name: string): LegField {
  return legFields.find((leg) => leg === name) ?? 'thickness';
}
