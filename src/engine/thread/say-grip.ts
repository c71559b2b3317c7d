import type { GripAnswer, Held, ShearPlane } from './grip-question.ts';
import type { LengthToBuy } from './bolt-length.ts';
import { nearestFraction } from '../length/fraction.ts';
import { absolute, exactDecimalText, isNegative, isZero, minus, type Length } from '../length/length.ts';
import { figure, show, showBand, type ShownUnit } from '../length/show.ts';
import type { Verdict } from '../reading/verdict.ts';

/** Whether plain shank lies where two parts want to slide past each other. */
export function sayPlane(plane: ShearPlane, unit: ShownUnit): string {
  const { between, at, from } = plane;
  const where = isZero(at)
    ? between.join(' on ')
    : `${between.join(' on ')}, ${show(at, unit)} from ${from === 'head' ? 'under the head' : 'the part’s face'}`;
  return `${where}: ${sayInPlane(plane, unit)}`;
}

/** What lies in a shear plane, without where that is. */
export function sayInPlane({ shank, isThreadAlways }: ShearPlane, unit: ShownUnit): string {
  if (isThreadAlways) return 'thread lies in it. Let a dowel or a spigot take side load.';
  if (!shank) return 'the plain shank has to reach past it.';
  if (shank.verdict.kind === 'too-close')
    return `too close to call whether the shank reaches it, ${known(shank.halfWidth, unit)}.`;
  if (shank.verdict.kind === 'good') return `plain shank lies in it, ${past(shank.past, unit)}.`;
  return isZero(shank.past)
    ? 'threads lie in it, there is no plain shank.'
    : `threads lie in it, the shank ends ${show(absolute(shank.past), unit)} short of it.`;
}

function past(length: Length, unit: ShownUnit): string {
  return isZero(length) ? 'to the very face' : `${show(length, unit)} past it`;
}

function known(halfWidth: Length, unit: ShownUnit): string {
  return `known to ${showBand(halfWidth, unit)} ${unit}`;
}

/** Whether the nut clamps before it meets the run-out of the thread. */
export function sayBottoming({ nutBottoms }: GripAnswer, held: Held, unit: ShownUnit): string {
  if (!nutBottoms) return '';
  const what = held === 'tapped' ? 'bolt' : 'nut';
  const { room, runOut, usualThread, verdict } = nutBottoms;
  if (usualThread)
    return `With its usual ${show(usualThread, unit)} of thread the ${what} stops ${show(absolute(room), unit)} before it clamps. Give its plain shank.`;
  if (verdict.kind === 'no-good' && !isNegative(room))
    return `The ${what} clamps ${show(room, unit)} from the shank: it meets the run-out first. A shorter shank, or washers.`;
  if (verdict.kind === 'no-good')
    return `The ${what} meets the end of the thread ${show(absolute(room), unit)} before it clamps: a shorter shank, or washers.`;
  if (verdict.kind === 'good')
    return isZero(runOut)
      ? `The ${what} clamps with ${show(room, unit)} of thread left.`
      : `The ${what} clamps ${show(minus(room, runOut), unit)} clear of the thread’s run-out.`;
  if (isZero(runOut))
    return `Too close to call whether the ${what} clamps before it meets the end of the thread.`;
  return `Too close to call: ${show(room, unit)} from where it clamps to the shank, and run-out may take ${show(runOut, unit)} of it. Run a nut up by hand and give where it stops.`;
}

/** What sticks out past the nut, or what a part holds over what it must. */
export function sayPastEnd({ past: end }: GripAnswer, held: Held, unit: ShownUnit): string {
  if (!end) return '';
  const { over, least, point, verdict } = end;
  if (isNegative(over))
    return `The ${held === 'stud' ? 'stud' : 'bolt'} is ${show(absolute(over), unit)} too short to ${held === 'tapped' ? 'hold' : 'fill its nut'}.`;
  if (held === 'tapped')
    return verdict.kind === 'too-close'
      ? `Too close to call: ${show(over, unit)} more than the least, and its point may take ${show(point, unit)} of that.`
      : `${show(minus(over, point), unit)} of whole thread in it more than the least.`;
  const call = verdict.kind === 'too-close' ? ' Too close to call: count the whole threads, two wanted.' : '';
  return `${show(over, unit)} of it stands past the nut, ${show(least, unit)} of whole thread wanted.${call}`;
}

/** Whether a bolt into the part meets the end of its hole before it clamps. */
export function sayHoleEnd({ hole }: GripAnswer, unit: ShownUnit, held: Held = 'tapped'): string {
  if (!hole) return '';
  if (!hole.room) return 'Give how deep the hole’s thread is, or that it goes through.';
  if (held === 'stud') return sayStudInHole({ ...hole, room: hole.room }, unit);
  if (hole.verdict.kind === 'too-close')
    return 'Too close to call whether the bolt clamps before it meets the end of its hole.';
  return hole.verdict.kind === 'good'
    ? `The bolt ends ${show(hole.room, unit)} before its hole’s thread does.`
    : `The bolt meets the end of its hole ${show(absolute(hole.room), unit)} before it clamps: a shorter one.`;
}

function sayStudInHole(
  { room, verdict }: { readonly room: Length; readonly verdict: Verdict },
  unit: ShownUnit,
): string {
  if (verdict.kind === 'too-close')
    return 'Too close to call whether the stud holds before it meets the end of its hole.';
  return verdict.kind === 'good'
    ? `The hole’s thread is ${show(room, unit)} deeper than the stud must go in.`
    : `The hole’s thread is ${show(absolute(room), unit)} too shallow for what must be in it.`;
}

/** The lengths to ask for, as they are made; where none is made, the range itself. */
export function sayLengthToBuy(
  { made, least, most, soldBy, holeMissing }: LengthToBuy,
  unit: ShownUnit,
): string {
  if (holeMissing) return 'none fits';
  if (made) {
    const [from, to] = [made.least, made.most].map((length) => asSold(length, soldBy));
    return from === to ? `${from} ${soldBy}` : `${from} to ${to} ${soldBy}`;
  }
  return isNegative(minus(most, least)) ? 'none fits' : range({ least, most }, unit);
}

const LONGER: Readonly<Record<LengthToBuy['mostBy'], string>> = {
  hole: 'longer, it meets the end of its hole',
  'run-out': 'longer, the run-out is in the way',
  'more-thread': 'longer ones have more thread, into a plane',
};

/** Both ends of the range, and what sets them. */
export function sayLengthRange(q: LengthToBuy, held: Held, unit: ShownUnit): readonly string[] {
  const { least, most, mostBy, made, washersMissing, inPart, holeMissing } = q;
  if (holeMissing)
    return [
      `${show(inPart ?? least, unit)} of it must be in the part: thread the hole ${show(holeMissing, unit)} deeper.`,
    ];
  const end = LONGER[mostBy];
  const what = held === 'stud' ? 'stud' : 'bolt';
  return [
    `At least ${show(least, unit)}, at most ${show(most, unit)}: ${end}.`,
    ...(inPart ? [`${show(inPart, unit)} of it is in the part.`] : []),
    ...(isNegative(minus(most, least))
      ? [`No length of ${what} does both: more washers, a deeper hole, or one threaded further.`]
      : made
        ? []
        : ['No usual length lies between: cut a longer one down.']),
    ...(washersMissing
      ? [
          `Plain shank in every plane takes ${show(washersMissing, unit)} more of washers, or a bolt fitted by hand.`,
        ]
      : []),
  ];
}

/** `1-1/4`, `60`: as it stands on the box. */
function asSold(length: Length, unit: 'in' | 'mm'): string {
  return unit === 'in' ? nearestFraction(length, 8).text : exactDecimalText(length, 'mm');
}

function range({ least, most }: { readonly least: Length; readonly most: Length }, unit: ShownUnit): string {
  return `${figure(least, unit)} to ${show(most, unit)}`;
}
