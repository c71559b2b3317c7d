import type { FitSystem } from '../../engine/fit/fits.ts';
import type { HoleAndPinQuestion } from '../../engine/worksheets/hole-and-pin/hole-and-pin.ts';
import { jointNominal, usualLimits } from '../../engine/worksheets/hole-and-pin/hole-and-pin-limits.ts';
import type { InsertMetal } from '../../engine/thread/insert-drill.ts';
import { isZero, zero, type Length } from '../../engine/length/length.ts';
import { legOf } from '../../engine/reading/settle.ts';
import { materialNamed } from '../../engine/material/tables/materials.ts';
import type { Limits } from '../../engine/reading/verdict.ts';
import { isJoint } from './fit-fields.ts';
import { exactSize, knownSize, ownLimits, type KnownSize, type WorksheetData } from './worksheet-data.ts';

/** The question a hole-and-pin worksheet asks the engine, once bore, pin and how it runs are known. */
export function holeAndPinQuestion(data: WorksheetData): HoleAndPinQuestion | undefined {
  const { sizes, choices } = data.worksheet;
  const bore = knownSize(data, sizes['bore']);
  const pin = knownSize(data, sizes['pin']);
  const joint = choices['joint'];
  if (!bore || !pin || !isJoint(joint)) return undefined;
  const own = ownLimits(data);
  const arm = armOf(data);
  const direct = directPlay(data, arm !== undefined);
  const { thread, shankPasses, facesCarry, pinSkin } = choices;
  const metal = insertMetal(choices);
  const fitSystem = fitSystemOf(choices['fitSystem']);
  const nominal = exactSize(data, sizes['nominal']);
  const offBy = holeOffBy(data);
  const partMetal = materialNamed(choices['partMetal']);
  const bushingMetal = materialNamed(choices['bushingMetal']);
  const wall = exactSize(data, sizes['wall']);
  const thickness = exactSize(data, sizes['thickness']);
  const leastWall = exactSize(data, sizes['leastWall']);
  return {
    bore: places(bore),
    pin: places(pin),
    joint,
    ...(own && { ownLimits: own }),
    ...(arm && { arm }),
    ...(direct && { direct }),
    ...(thread !== undefined && { pinThread: thread }),
    ...(shankPasses !== undefined && { shankPasses: shankPasses === 'yes' }),
    ...(choices['axis'] !== undefined && { keepsAxis: choices['axis'] === 'old' }),
    ...(pinSkin !== undefined && { pinCaseHardened: pinSkin === 'hard' }),
    ...(facesCarry !== undefined && { clampedFacesCarry: facesCarry === 'yes' }),
    ...(metal && { metal }),
    ...(fitSystem && { fitSystem }),
    ...(nominal && { nominal }),
    ...(offBy && { offBy }),
    ...(partMetal && { partMetal }),
    ...(bushingMetal && { bushingMetal }),
    ...(wall && { wall }),
    ...(thickness && { thickness }),
    ...(leastWall && { leastWall }),
  };
}

/** The limits a hole-and-pin worksheet wants, known as soon as how it runs and a nominal size are. */
export function wantedClearance(data: WorksheetData): Limits | undefined {
  const ownWanted = ownLimits(data);
  if (ownWanted) return ownWanted;
  const { joint, thread } = data.worksheet.choices;
  const { sizes } = data.worksheet;
  const known = knownSize(data, sizes['pin']) ?? knownSize(data, sizes['bore']);
  if (!isJoint(joint) || !known) return undefined;
  const fitSystem = fitSystemOf(data.worksheet.choices['fitSystem']);
  const own = exactSize(data, sizes['nominal']);
  const nominal = jointNominal({
    pin: places(known),
    ...(own && { nominal: own }),
    ...(thread !== undefined && { pinThread: thread }),
    ...(fitSystem && { fitSystem }),
  }).size;
  return usualLimits({ joint, ...(fitSystem && { fitSystem }) }, nominal);
}

type Choices = WorksheetData['worksheet']['choices'];

function fitSystemOf(choice: string | undefined): FitSystem | undefined {
  if (choice === 'ISO 286') return 'iso';
  return choice === 'ANSI B4.1' ? 'ansi' : undefined;
}

// An insert's drill knows two kinds of metal, soft and hard; the part's own metal says which where it is one of these.
function insertMetal({ metal, partMetal }: Choices): InsertMetal | undefined {
  if (metal === 'aluminium' || metal === 'steel') return metal;
  if (partMetal?.startsWith('aluminium')) return 'aluminium';
  return partMetal?.endsWith('-steel') || partMetal?.startsWith('stainless') ? 'steel' : undefined;
}

/** How far the hole is out of place; zero where it is said to be off and nobody knows by how much. */
function holeOffBy(data: WorksheetData): Length | undefined {
  const { sizes, choices } = data.worksheet;
  if (choices['holeOff'] === 'no') return undefined;
  const by = exactSize(data, sizes['offBy']);
  if (by && !isZero(by)) return by;
  return choices['holeOff'] === 'yes' ? zero : undefined;
}

function places({ tightest, loosest, places: all }: KnownSize) {
  return { tightest, loosest, places: all };
}

function armOf(data: WorksheetData): HoleAndPinQuestion['arm'] {
  const { sizes } = data.worksheet;
  const boreLength = exactSize(data, sizes['boreLength']);
  const reach = exactSize(data, sizes['reach']);
  const bellMouth = exactSize(data, sizes['bellMouth']);
  return boreLength && reach && { boreLength, reach, ...(bellMouth && { bellMouth }) };
}

/** The rock, where the arm it was read at is known; else the slop at the bore. */
function directPlay(data: WorksheetData, hasArm: boolean): HoleAndPinQuestion['direct'] {
  const rock = hasArm ? knownSize(data, data.worksheet.sizes['rockInAll']) : undefined;
  if (rock) return { kind: 'rock', read: rock.loosest, tightest: rock.tightest };
  const slop = knownSize(data, data.worksheet.sizes['slop']);
  return slop && { kind: 'slop', read: slop.loosest, tightest: slop.tightest };
}

/** The sizes the clearance is made of, for asking which tools would settle it. */
export function clearanceLegs(question: HoleAndPinQuestion) {
  return [legOf('bore', question.bore.loosest, 1), legOf('pin', question.pin.loosest, -1)];
}
