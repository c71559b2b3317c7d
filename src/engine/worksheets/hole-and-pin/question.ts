import type { FitSystem } from '../../fit/fits.ts';
import { isJoint, type Joint } from '../../fit/joint-limits.ts';
import { isZero, zero, type Length } from '../../length/length.ts';
import { materialNamed } from '../../material/tables/materials.ts';
import { legOf, type Leg } from '../../reading/settle.ts';
import type { Limits } from '../../reading/verdict.ts';
import type { InsertMetal } from '../../thread/insert-drill.ts';
import type { Given, GivenSize } from '../given.ts';
import { ownLimitsIn } from '../own-limits.ts';
import type { HoleAndPinFields } from './fields.ts';
import type { HoleAndPinQuestion } from './hole-and-pin.ts';
import { jointNominal, usualLimits } from './hole-and-pin-limits.ts';

type HoleGiven = Given<HoleAndPinFields>;

/** The question a hole-and-pin worksheet asks, once bore, pin and how it runs are known. */
export function holeAndPinQuestion(given: HoleGiven): HoleAndPinQuestion | undefined {
  const bore = given.size('bore');
  const pin = given.size('pin');
  const joint = jointOf(given);
  if (!bore || !pin || !joint) return undefined;
  const own = ownLimitsIn(given);
  const arm = armOf(given);
  const direct = directPlay(given, arm !== undefined);
  const nominal = given.exact('nominal');
  const offBy = holeOffBy(given);
  return {
    bore: places(bore),
    pin: places(pin),
    joint,
    shop: shopOf(given),
    ...(own && { ownLimits: own }),
    ...(arm && { arm }),
    ...(direct && { direct }),
    ...(nominal && { nominal }),
    ...(offBy && { offBy }),
    ...fitSystemOf(given),
    ...boltOf(given),
    ...partOf(given),
  };
}

function shopOf({ unit }: HoleGiven): NonNullable<HoleAndPinQuestion['shop']> {
  return unit === 'in' ? 'inch' : 'metric';
}

/** How it runs; a bolt that nobody said more of is taken to be held by its nut. */
export function jointOf(given: HoleGiven): Joint | undefined {
  const joint = given.choice('joint');
  if (isJoint(joint)) return joint;
  return joint === undefined && given.choice('thread') !== undefined ? 'located' : undefined;
}

/** The limits a hole-and-pin worksheet wants, known as soon as how it runs and a nominal size are. */
export function wantedClearance(given: HoleGiven): Limits | undefined {
  const own = ownLimitsIn(given);
  if (own) return own;
  const joint = jointOf(given);
  const known = given.size('pin') ?? given.size('bore');
  if (!joint || !known) return undefined;
  const system = fitSystemOf(given);
  const nominal = given.exact('nominal');
  const thread = given.choice('thread');
  const { size } = jointNominal({
    pin: places(known),
    ...(nominal && { nominal }),
    ...(thread !== undefined && { pinThread: thread }),
    ...system,
  });
  return usualLimits({ joint, ...system, shop: shopOf(given) }, size);
}

/** The sizes the clearance is made of, for asking which tools would settle it. */
export function clearanceLegs({ bore, pin }: Pick<HoleAndPinQuestion, 'bore' | 'pin'>): readonly Leg[] {
  return [legOf('bore', bore.loosest, 1), legOf('pin', pin.loosest, -1)];
}

function boltOf(given: HoleGiven) {
  const thread = given.choice('thread');
  const shankPasses = given.choice('shankPasses');
  const facesCarry = given.choice('facesCarry');
  const pinSkin = given.choice('pinSkin');
  return {
    ...(thread !== undefined && { pinThread: thread }),
    ...(shankPasses !== undefined && { shankPasses: shankPasses === 'yes' }),
    ...(facesCarry !== undefined && { clampedFacesCarry: facesCarry === 'yes' }),
    ...(pinSkin !== undefined && { pinCaseHardened: pinSkin === 'hard' }),
  };
}

/** The part round the hole: where its middle may go, its walls and what it is made of. */
function partOf(given: HoleGiven) {
  const axis = given.choice('axis');
  const partMetal = materialNamed(given.choice('partMetal'));
  const bushingMetal = materialNamed(given.choice('bushingMetal'));
  const metal = insertMetal(given.choice('partMetal'));
  const wall = given.exact('wall');
  const thickness = given.exact('thickness');
  const leastWall = given.exact('leastWall');
  return {
    ...(axis !== undefined && { keepsAxis: axis === 'old' }),
    ...(metal && { metal }),
    ...(partMetal && { partMetal }),
    ...(bushingMetal && { bushingMetal }),
    ...(wall && { wall }),
    ...(thickness && { thickness }),
    ...(leastWall && { leastWall }),
  };
}

function fitSystemOf(given: HoleGiven): { readonly fitSystem?: FitSystem } {
  const from = given.choice('fitSystem');
  if (from === 'ISO 286') return { fitSystem: 'iso' };
  return from === 'ANSI B4.1' ? { fitSystem: 'ansi' } : {};
}

// An insert's drill knows two kinds of metal, soft and hard; the part's own metal says which where it is one of these.
function insertMetal(partMetal: string | undefined): InsertMetal | undefined {
  if (partMetal?.startsWith('aluminium')) return 'aluminium';
  return partMetal?.endsWith('-steel') || partMetal?.startsWith('stainless') ? 'steel' : undefined;
}

/** How far the hole is out of place; zero where it is said to be off and nobody knows by how much. */
function holeOffBy(given: HoleGiven): Length | undefined {
  const isOff = given.choice('holeOff');
  if (isOff === 'no') return undefined;
  const by = given.exact('offBy');
  if (by && !isZero(by)) return by;
  return isOff === 'yes' ? zero : undefined;
}

function places({ tightest, loosest, places: all }: GivenSize) {
  return { tightest, loosest, places: all };
}

function armOf(given: HoleGiven): HoleAndPinQuestion['arm'] {
  const boreLength = given.exact('boreLength');
  const reach = given.exact('reach');
  const bellMouth = given.exact('bellMouth');
  return boreLength && reach && { boreLength, reach, ...(bellMouth && { bellMouth }) };
}

/** The rock, where the arm it was read at is known; else the slop at the bore. */
function directPlay(given: HoleGiven, hasArm: boolean): HoleAndPinQuestion['direct'] {
  const rock = hasArm ? given.size('rockInAll') : undefined;
  if (rock) return { kind: 'rock', read: rock.loosest, tightest: rock.tightest };
  const slop = given.size('slop');
  return slop && { kind: 'slop', read: slop.loosest, tightest: slop.tightest };
}
