import type { CheckBy } from '../../reading/check.ts';
import { lengthOf } from '../../length/length.ts';
import type { System } from '../safety.ts';
import type { Limits } from '../../reading/verdict.ts';
import { chainLine } from '../../fit/tables/chain-line.ts';

// No paper at hand states these for every machine: what most service manuals allow, chosen round in each unit.
const PRACTICE = 'common practice, no source; the service manual rules';
const MANUAL = 'the service manual states it';

export type UsualCheck = {
  readonly id: string;
  readonly name: string;
  readonly by: CheckBy;
  /** What of the machine it belongs to; on a job that touches it, it is listed first. */
  readonly systems: readonly System[];
  readonly limits: Readonly<Record<'in' | 'mm', Limits>>;
  readonly how: string;
};

type Row = Omit<UsualCheck, 'limits'>;

function atMost(row: Row, inches: string, millimetres: string): UsualCheck {
  const limits = (upper: string): Limits => ({ upper: lengthOf(upper), source: PRACTICE });
  return { ...row, limits: { in: limits(inches), mm: limits(millimetres) } };
}

function atLeast(row: Row, inches: string, millimetres: string): UsualCheck {
  const limits = (lower: string): Limits => ({ lower: lengthOf(lower), source: PRACTICE });
  return { ...row, limits: { in: limits(inches), mm: limits(millimetres) } };
}

/** Only the maker knows the limits: they are asked for. */
function byManual(row: Row): UsualCheck {
  return { ...row, limits: { in: { source: MANUAL }, mm: { source: MANUAL } } };
}

function seen(row: Omit<Row, 'by'>): UsualCheck {
  return { ...row, by: 'by-eye', limits: { in: { source: 'by eye' }, mm: { source: 'by eye' } } };
}

/** Checks of the trade that no worksheet works out, in the order of the work; every limit is the user's to change. */
export const usualChecks: readonly UsualCheck[] = [
  atMost(
    {
      id: 'disc-runout',
      name: 'Runout of the disc',
      by: 'runout',
      systems: ['brake'],
      how: 'Disc bolted and torqued. Indicator on its face near the rim of the track, foot on what stands still. Turn the wheel once: read from least to most.',
    },
    '.010 in',
    '0.25 mm',
  ),
  atMost(
    {
      id: 'rim-side-runout',
      name: 'Wheel rim, side to side',
      by: 'runout',
      systems: ['wheel'],
      how: 'Wheel on its bearings. Indicator on the side of the rim, off any weld. Turn it once: read from least to most.',
    },
    '.080 in',
    '2.0 mm',
  ),
  atMost(
    {
      id: 'rim-up-runout',
      name: 'Wheel rim, up and down',
      by: 'runout',
      systems: ['wheel'],
      how: 'Wheel on its bearings. Indicator on the rim where the tyre’s bead sits, pointing at the axle. Turn it once: read from least to most.',
    },
    '.080 in',
    '2.0 mm',
  ),
  atMost(
    {
      id: 'axle-runout',
      name: 'Runout of the axle',
      by: 'runout',
      systems: ['axle', 'wheel'],
      how: 'Axle on two V-blocks at its bearing seats. Indicator in the middle. Turn it once: read from least to most; the bend is half of it.',
    },
    '.008 in',
    '0.20 mm',
  ),
  byManual({
    id: 'bearing-end-play',
    name: 'End play of the wheel bearings',
    by: 'gap',
    systems: ['wheel', 'axle'],
    how: 'Axle nut torqued. Indicator in line with the axle on the hub. Push and pull the wheel: read the whole swing.',
  }),
  atLeast(
    {
      id: 'left-stop',
      name: 'Clearance at the left steering stop',
      by: 'gap',
      systems: ['steering'],
      how: 'Bars hard to the left. Find what comes closest to tank, frame, brake or lamp, and read that gap.',
    },
    '.200 in',
    '5.0 mm',
  ),
  atLeast(
    {
      id: 'right-stop',
      name: 'Clearance at the right steering stop',
      by: 'gap',
      systems: ['steering'],
      how: 'Bars hard to the right. Find what comes closest to tank, frame, brake or lamp, and read that gap.',
    },
    '.200 in',
    '5.0 mm',
  ),
  seen({
    id: 'hose-lock',
    name: 'Hose and cables at both full locks',
    systems: ['brake', 'steering'],
    how: 'Out of gear, in the open. Bars hard left, then hard right, suspension out and in: no hose or cable is pulled, kinked or caught, and the engine doesn’t change its speed.',
  }),
  seen({
    id: 'hose-travel',
    name: 'Hose over the whole travel',
    systems: ['brake', 'wheel'],
    how: 'Machine held so that it can’t fall; springs off, or tied down: a tied-down spring is loaded. Suspension fully out, then fully in: the hose is not pulled, touches no tyre, chain or exhaust.',
  }),
  atLeast(
    {
      id: 'tyre-clearance',
      name: 'Tyre clear at full travel',
      by: 'gap',
      systems: ['wheel', 'axle'],
      how: 'Tyre at its pressure, suspension fully in. Turn the wheel: read the least gap to arm, guard, chain or body.',
    },
    '.200 in',
    '5.0 mm',
  ),
  {
    id: 'chain-line',
    name: 'Chain or sprocket line',
    by: 'gap',
    systems: ['wheel', 'axle', 'engine'],
    limits: {
      in: { upper: chainLine.in, source: PRACTICE },
      mm: { upper: chainLine.mm, source: PRACTICE },
    },
    how: 'Chain tight. Straight bar along the face of one sprocket to the other: read the gap that is left, thickness of the sprockets allowed for.',
  },
  byManual({
    id: 'chain-slack',
    name: 'Slack of the chain at its tightest place',
    by: 'gap',
    systems: ['wheel', 'axle'],
    how: 'Engine off, fingers clear of chain and sprocket. Rider’s weight on, axle, arm and front sprocket in one line. Turn to the tightest place: read the whole swing in the middle of the lower run.',
  }),
  seen({
    id: 'brake-free',
    name: 'Brake lets go',
    systems: ['brake'],
    how: 'Work the brake hard and let go: the wheel turns free at once, with no more than a whisper of the pads.',
  }),
  seen({
    id: 'brake-hot',
    name: 'Brake lets go when hot',
    systems: ['brake'],
    how: 'On a stand or a closed yard. Heat it with several hard stops, then spin the wheel: it still turns free, and the bracket still slides. The disc burns: don’t touch it.',
  }),
  seen({
    id: 'brake-hard',
    name: 'Lever stays hard, nothing weeps',
    systems: ['brake'],
    how: 'Hold the lever hard for a minute: it doesn’t sink. Look at every joint of the line with a dry rag: no wet spot.',
  }),
  seen({
    id: 'head-play',
    name: 'Steering head, no play',
    systems: ['steering'],
    how: 'Held on a stand, front wheel off the ground. Pull and push the fork’s lower ends fore and aft: nothing is felt at the head.',
  }),
  seen({
    id: 'head-free',
    name: 'Steering head, turns free',
    systems: ['steering'],
    how: 'Held on a stand, front wheel off the ground. From the middle it falls to either stop by itself, with no notch on the way.',
  }),
  seen({
    id: 'cotter-pin',
    name: 'Cotter pins and lock wires fitted',
    systems: ['axle', 'steering', 'brake', 'wheel'],
    how: 'Every castle nut has a new pin of the right thickness, both legs bent, and it can’t be turned. Every wire pulls its bolt tight.',
  }),
  seen({
    id: 'torque-marks',
    name: 'Every nut torqued and marked',
    systems: ['axle', 'steering', 'brake', 'wheel', 'engine'],
    how: 'Go round with the wrench and the manual’s figures. A line of paint over each nut and its face, put there when it was torqued.',
  }),
];
