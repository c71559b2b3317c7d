import { marked } from '../../length/decimal-text.ts';
import { absolute, isNegative, lengthOf, roundToStep, type Length } from '../../length/length.ts';
import { figure, figureTo, show, showBand, withUnit, type ShownUnit } from '../../length/show.ts';
import type { SineStack } from './sine-bar.ts';
import type { Beside, TaperAnswer, TaperRefusal } from './taper.ts';

/** An angle to a thousandth of a degree: `1.438`. */
export function degreesFigure(degrees: number): string {
  return marked((Math.round(degrees * 1000) / 1000).toFixed(3).replace(/0{1,2}$/, ''));
}

/** `1 : 19.922`. */
export function sayOneIn(oneIn: number): string {
  return `1 : ${marked(Number(oneIn.toPrecision(5)))}`;
}

/** `.6024 in a foot`: a place more than a size has, as the tables print it. */
export function sayPerFoot(perFoot: Length): string {
  return figureTo(perFoot, 'in', 5);
}

/** What the readings know of the slope: `±.0004 over its length, ±0.9′`. */
export function sayKnown({ cone: { known } }: TaperAnswer, unit: ShownUnit): string {
  if (!known) return '';
  return `${withUnit(showBand(known.overLength, unit), unit)} over its length, ±${minutesFigure(known.minutes)}′`;
}

function minutesFigure(minutes: number): string {
  return marked(minutes < 0.1 ? minutes.toFixed(2) : minutes.toFixed(1));
}

/** `.0003 in steeper than Morse 3`. */
export function sayBeside({ taper: { name }, off }: Beside, unit: ShownUnit): string {
  const by = figure(absolute(off), unit);
  if (!/[1-9]/.test(by)) return `as ${name}`;
  return `${withUnit(by, unit)} ${isNegative(off) ? 'slimmer' : 'steeper'} than ${name}`;
}

/** Whether it fits the taper it is held against. */
export function sayMate(mate: NonNullable<TaperAnswer['mate']>, unit: ShownUnit): string {
  const want = `want ${withUnit(figure(mate.limits.upper ?? mate.off, unit), unit)} or less`;
  const is = sayBeside(mate, unit);
  switch (mate.verdict.kind) {
    case 'good':
      return `Good: ${is}, ${want}.`;
    case 'no-good':
      return `Won’t fit: ${is}, ${want}.`;
    case 'too-close':
      return `Too close to call: ${is}, known to ${showBand(mate.halfWidth, unit)}.`;
    default:
      return mate.verdict satisfies never;
  }
}

/** The blocks in the order they are taken, the last digits first: `.1002 + .126 + .750`. */
export function sayBlocks(blocks: readonly Length[], unit: ShownUnit): string {
  return blocks
    .toReversed()
    .map((block) => figureTo(block, unit, unit === 'in' ? 4 : 4))
    .join(' + ');
}

/** A stack in a few words; where a block goes under the low roll too, that first. */
export function sayStack(stack: SineStack, unit: ShownUnit): string {
  const high = sayBlocks(stack.high, unit);
  return stack.low ? `low roll ${figureTo(stack.low, unit, 4)}; high roll ${high}` : high;
}

const A_SECOND = 1 / 60;

/** How far such a stack is off the angle; nothing where that is under a second. */
export function sayOff({ offMinutes }: SineStack): string {
  const off = Math.abs(offMinutes);
  if (off < A_SECOND) return 'within a second';
  return off < 1 ? `${Math.ceil(off * 60)}″ off` : `${marked(off.toFixed(1))}′ off`;
}

export function sayTaperRefusal(refusal: TaperRefusal, unit: ShownUnit): string {
  switch (refusal.code) {
    case 'no-length':
      return 'A taper has a length: give how long it is along its axis.';
    case 'no-slope':
      return 'That is no taper: its diameter does not grow. Check the figure.';
    case 'not-larger':
      return `The big end, ${show(refusal.large, unit)}, is no larger than the small end, ${show(refusal.small, unit)}. Swap them, or read them again.`;
    case 'rollers-fall':
      return `Raised, the rollers read ${show(refusal.high, unit)}, low ${show(refusal.low, unit)}. Stand the small end down.`;
    case 'no-block':
      return 'Blocks lift the rollers: give how high they are.';
    case 'balls-alike':
      return 'The large ball has to be larger than the small one. Swap them, or read them again.';
    case 'balls-deep':
      return 'No taper puts the balls there: they would touch. Read both depths again.';
    case 'too-steep':
      return `Steeper than ${refusal.mostDegrees}° included is a face, not a taper. Check the figures.`;
    case 'to-a-point':
      return `It comes to a point after ${sayMost(refusal.most, unit)}. Give a shorter length, or a larger big end.`;
    case 'beyond':
      return `${show(refusal.at, unit)} from the big end is past the taper, ${show(refusal.length, unit)} long.`;
    case 'between-short':
      return `The whole work, ${show(refusal.between, unit)}, is shorter than its taper, ${show(refusal.length, unit)}.`;
    default:
      return refusal satisfies never;
  }
}

const FINEST: Readonly<Record<ShownUnit, Length>> = { in: lengthOf('.0001 in'), mm: lengthOf('0.001 mm') };

/** A most, never shown past what it is. */
function sayMost(most: Length, unit: ShownUnit): string {
  return show(roundToStep(most, FINEST[unit], 'down'), unit);
}
