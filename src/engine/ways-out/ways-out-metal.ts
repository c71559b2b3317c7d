import { bondedPair } from '../press/bonded-sleeve.ts';
import { bushing, type BushingAnswer } from '../press/bushing.ts';
import { jointLimits } from '../fit/joint-limits.ts';
import { dividedBy, isLess, isMore, minus, plus, roundToStep, smallest, times } from '../length/length.ts';
import type { Range } from '../fit/fits.ts';
import { bushingClasses } from '../fit/tables/joint-classes.ts';
import { leastPinShare, leastSleeveWall, leastWallSource } from '../fit/tables/least-walls.ts';
import { materialNamed, type Material } from '../material/tables/materials.ts';
import { classFor, pairOf, systemFor } from './ways-out-fit.ts';
import { ruledOut, type WayOut } from './ways-out-kinds.ts';
import type { WaysOutQuestion } from './ways-out.ts';

/**
 * The bore opened up and a bushing pressed in, for the pin that is there.
 *
 * Units:   diameters, and walls of bushing and part. Opened: 1, pressed: 2 steps that can't be undone.
 * Range:   a bushing that the engine warns must not be pressed is ruled out with its warnings.
 * Refuses: (as out) mate-not-known, what a bushing refuses, bushing-warned.
 * Source:  bushing.ts.
 */
export function bushWay(q: WaysOutQuestion): WayOut {
  const pair = pairOf(q);
  if (!pair) return ruledOut('bush', { code: 'mate-not-known' });
  const answer = bushing({
    ...pair,
    insideClass: classFor(q, pair),
    pressClass: bushingClasses[systemFor(q)],
    part: q.partMetal ?? metal('low-carbon-steel'),
    bushing: q.bushingMetal ?? metal('bearing-bronze'),
    ...(q.wall && { wall: q.wall }),
    ...(q.depth && { length: q.depth }),
    finish: 'usual',
    condition: 'plain',
    cold: 'freezer',
    shopCelsius: 20,
    step: q.step,
    ...(q.unit && { shop: q.unit }),
  });
  if (!answer.ok) return ruledOut('bush', answer.refusal);
  const { warnings } = knownOf(answer.value, q);
  const stops = warnings.filter(({ weighs }) => weighs === 'stop');
  if (stops.length > 0) return ruledOut('bush', { code: 'bushing-warned', warnings: stops });
  return bushed(knownOf(answer.value, q), q.partMetal === undefined);
}

// Of a part whose metal nobody named, only its sizes are known: no stress, force or heat is judged by a metal taken for it.
function knownOf(answer: BushingAnswer, { partMetal }: WaysOutQuestion): BushingAnswer {
  if (partMetal) return answer;
  return { ...answer, warnings: answer.warnings.filter(({ code }) => OF_SIZES.has(code)) };
}

const OF_SIZES: ReadonlySet<BushingAnswer['warnings'][number]['code']> = new Set([
  'thin-bushing',
  'thin-part',
  'no-grip',
  'pin-read-too-coarse',
  'band-too-wide',
] as const);

function bushed(answer: BushingAnswer, metalAssumed: boolean): WayOut {
  return {
    kind: 'bush',
    state: 'open',
    irreversibleSteps: 2,
    openTo: answer.ream.size,
    takes: answer.reamTakes,
    outside: answer.turn,
    inside: answer.inside,
    wall: answer.bushingWall,
    ...(answer.partWall && { partWall: answer.partWall }),
    fit: answer.insideFit,
    pressFit: answer.pressFit,
    warnings: answer.warnings,
    metalAssumed,
  };
}

/**
 * A thin sleeve bonded over the shaft and turned to what the shaft should have been.
 *
 * Units:   diameters. Shaft turned to ≤ least outside − two walls − the bond's clearance, rounded down to a step.
 * Range:   never under nine tenths of the target; not on a ring.
 * Refuses: (as out) no-sleeve-on-ring, core-too-thin.
 * Source:  tables/least-walls.ts, tables/running-clearances.ts (slides): common practice, no source.
 */
export function sleeveWay(q: WaysOutQuestion): WayOut {
  if (q.operation === 'ring') return ruledOut('sleeve', { code: 'no-sleeve-on-ring' });
  const bond = jointLimits('slides', q.target);
  const room = minus(minus(q.lower, times(leastSleeveWall[q.unit ?? 'in'], 2)), bond.upper);
  const needed = roundToStep(room, q.step, 'down');
  const turnTo = smallest(q.present, needed);
  const least = times(q.target, leastPinShare);
  if (isLess(turnTo, least))
    return ruledOut('sleeve', { code: 'core-too-thin', turnTo, least, source: leastWallSource.pinCore });
  const isTurned = isMore(q.present, turnTo);
  const pair = bondedPair(turnTo);
  const inside = isTurned
    ? pair.inside
    : { lower: plus(turnTo, bond.lower), upper: plus(turnTo, bond.upper) };
  const outside: Range = { lower: q.lower, upper: q.upper };
  return {
    kind: 'sleeve',
    state: 'open',
    irreversibleSteps: isTurned ? 1 : 0,
    ...(isTurned && { turnTo, turn: pair.shaft }),
    inside,
    outside,
    wall: dividedBy(minus(outside.lower, inside.upper), 2),
  };
}

function metal(id: 'low-carbon-steel' | 'bearing-bronze'): Material {
  const found = materialNamed(id);
  if (!found) throw new Error(`${id} is in the table`);
  return found;
}
