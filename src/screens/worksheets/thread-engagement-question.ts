import type { GripQuestion, Held, TappedHole } from '../../engine/thread/bolt-grip.ts';
import { nutFactors } from '../../engine/thread/bolt-torque.ts';
import type { Length } from '../../engine/length/length.ts';
import { boltGrades } from '../../engine/thread/tables/bolt-grades.ts';
import { parentMetals } from '../../engine/thread/tables/parent-metals.ts';
import type { EngagementQuestion } from '../../engine/worksheets/thread-engagement/thread-engagement.ts';
import { threadNamed } from '../../engine/thread/threads.ts';
import { torqueIn, type StatedTorque } from '../../engine/thread/torque.ts';
import { LEG_NAMES } from './thread-engagement-plan.ts';
import { exactSize, givenNumber, knownSize, type WorksheetData } from './worksheet-data.ts';

/** The question a thread-engagement worksheet asks the engine, once thread, grade and metal are known. */
export function engagementQuestion(data: WorksheetData): EngagementQuestion | undefined {
  const { choices, sizes } = data.worksheet;
  const thread = choices['thread'] === undefined ? undefined : threadNamed(choices['thread']);
  const grade = boltGrades.find(({ id }) => id === choices['grade']);
  const strength = parentStrength(data);
  if (!thread || !grade || !strength) return undefined;
  // The shallowest place holds least.
  const engaged = knownSize(data, sizes['engaged'])?.least;
  return {
    thread,
    grade: grade.id,
    parentTensileMpa: strength.tensileMpa,
    withInsert: choices['insert'] === 'yes',
    ...(engaged && { engaged }),
  };
}

/** The part's least strength: the user's own figure before the table's. */
export function parentStrength(
  data: WorksheetData,
): { readonly tensileMpa: number; readonly source: string } | undefined {
  const own = givenNumber(data, 'parentTensile');
  if (own !== undefined) return { tensileMpa: own, source: 'your own figure' };
  const metal = parentMetals.find(({ id }) => id === data.worksheet.choices['parent']);
  return metal && { tensileMpa: metal.tensileLeastMpa, source: metal.source };
}

/** Legs, washers, nut, shank and bolt; undefined while no leg is given. */
export function gripQuestion(data: WorksheetData, least: Length | undefined): GripQuestion | undefined {
  const { choices, sizes } = data.worksheet;
  const thread = choices['thread'] === undefined ? undefined : threadNamed(choices['thread']);
  const legs = LEG_NAMES.flatMap((name) => {
    const known = knownSize(data, sizes[name]);
    return known ? [{ name: name.replace('leg', 'leg '), thickness: known.least, thickest: known.most }] : [];
  });
  if (!thread || legs.length === 0) return undefined;
  const [headWasher, nutWasher, nutHeight] = ['headWasher', 'nutWasher', 'nutHeight'].map((name) =>
    exactSize(data, sizes[name]),
  );
  const shank = knownSize(data, sizes['shank']);
  const nutRunsTo = knownSize(data, sizes['nutRunsTo'])?.most;
  const bolt = knownSize(data, sizes['boltLength']);
  const hole = tappedHole(data);
  return {
    thread,
    held: heldOf(choices['held']),
    legs,
    ...(headWasher && { headWasher }),
    ...(nutWasher && { nutWasher }),
    ...(nutHeight && { nutHeight }),
    ...(shank && { shank: shank.least, shankLongest: shank.most }),
    ...(nutRunsTo && { nutRunsTo }),
    ...(bolt && { boltLength: bolt.least, boltLongest: bolt.most }),
    ...(choices['insert'] === 'yes' && { withInsert: true }),
    ...(hole && { hole }),
    ...(least && { engagement: least }),
  };
}

/** Through, or so deep at its shallowest; undefined while it wasn't said. */
function tappedHole(data: WorksheetData): TappedHole | undefined {
  const { choices, sizes } = data.worksheet;
  if (choices['hole'] === 'through') return 'through';
  const depth = choices['hole'] === 'blind' ? knownSize(data, sizes['holeDepth'])?.least : undefined;
  return depth && { depth };
}

export function heldOf(choice: string | undefined): Held {
  return choice === 'nut' || choice === 'stud' ? choice : 'tapped';
}

export type TorqueGiven = {
  readonly manual: StatedTorque;
  readonly newtonMetres: number;
  readonly nutFactor: number;
};

/** The manual's torque as typed, and the nut factor for the estimate beside it. */
export function torqueGiven(data: WorksheetData): TorqueGiven | undefined {
  const { choices } = data.worksheet;
  const chosen = nutFactors.find(({ id }) => id === choices['nutFactor']) ?? nutFactors[0];
  for (const { name, unit } of TORQUES) {
    const stated = givenNumber(data, name);
    if (stated !== undefined)
      return {
        manual: { typed: choices[name] ?? '', unit },
        newtonMetres: torqueIn(stated, unit, 'Nm'),
        nutFactor: chosen.factor,
      };
  }
  return undefined;
}

const TORQUES = [
  { name: 'torqueNewtonMetres', unit: 'Nm' },
  { name: 'torquePoundFeet', unit: 'lbf-ft' },
] as const;
