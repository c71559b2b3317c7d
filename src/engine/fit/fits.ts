import { ansiFit, isAnsiClass } from './fits-ansi.ts';
import { isoHole, isoPin, type Deviations, type IsoRefusal } from './fits-iso.ts';
import type { Joint } from './joint-limits.ts';
import {
  isMore,
  isNegative,
  lengthOf,
  minus,
  plus,
  roundForShow,
  scaledBy,
  zero,
  type Length,
} from '../length/length.ts';
import { refuse, worked, type Result } from '../length/refusal.ts';
import { jointClasses } from './tables/joint-classes.ts';

export type FitSystem = 'iso' | 'ansi';
export type Range = { readonly lower: Length; readonly upper: Length };

export type FitLimits = {
  readonly system: FitSystem;
  /** 'H7/g6', 'RC5'. */
  readonly fitClass: string;
  readonly nominal: Length;
  readonly hole: Range;
  readonly pin: Range;
  /** Bore less pin at its least and its most; below zero the pin is the larger. */
  readonly clearance: Range;
  readonly kind: FitKind;
  /** The standard with the class, and whether the row is from memory. */
  readonly source: string;
  readonly standard: string;
  readonly isFromMemory: boolean;
};

export const STANDARDS = { ansi: 'ANSI B4.1', iso: 'ISO 286-1' } as const satisfies Record<FitSystem, string>;

/** Always room; room or grip as the parts fall out; always grip. */
export type FitKind = 'clearance' | 'transition' | 'interference';

/** The class a joint that runs this way usually gets; common practice, changeable. */
export function jointClass(joint: Joint, system: FitSystem): string {
  return jointClasses[joint][system];
}

/** Which standard a class belongs to: 'RC5' is ANSI, anything else is read as ISO. */
export function systemOf(fitClass: string): FitSystem {
  return isAnsiClass(fitClass) ? 'ansi' : 'iso';
}

/**
 * Limits of hole and pin of a class at a nominal size, and the clearance they leave.
 *
 * Units:   clearance = hole − pin: least = smallest hole less largest pin, greatest = largest hole less smallest pin.
 * Range:   'H7/g6' over 0 to 500 mm, 'RC5' over 0 to 4.73 in.
 * Refuses: no-such-class, class-not-at-size, size-outside-fit-table.
 * Source:  ISO 286-1; ANSI B4.1.
 */
export function fitLimits({
  fitClass,
  nominal,
}: {
  readonly fitClass: string;
  readonly nominal: Length;
}): Result<FitLimits, IsoRefusal> {
  const system = systemOf(fitClass);
  const found = system === 'ansi' ? ansiDeviations(nominal, fitClass) : isoDeviations(nominal, fitClass);
  if (!found.ok) return found;
  const { hole, pin, isFromMemory } = found.value;
  const standard = STANDARDS[system];
  return worked({
    system,
    fitClass,
    nominal,
    ...limitsOf({ hole: about(nominal, hole), pin: about(nominal, pin) }),
    source: `${standard}, ${fitClass}${isFromMemory ? ', this row from memory' : ''}`,
    standard,
    isFromMemory,
  });
}

/**
 * The same ISO class as inch textbooks print it: size steps and deviations of the millimetre table turned to inches.
 *
 * Units:   steps at one twenty-fifth of the millimetre step (50 mm is 2.00 in), deviations to .0001 in.
 * Source:  inch tables of ISO 286 as printed in Shigley, Mechanical Engineering Design, tables.
 */
export function fitLimitsInchForm({
  fitClass,
  nominal,
}: {
  readonly fitClass: string;
  readonly nominal: Length;
}): Result<FitLimits, IsoRefusal> {
  const stepAt = scaledBy(nominal, { numerator: lengthOf('25 mm'), denominator: lengthOf('1 in') });
  const found = isoDeviations(stepAt, fitClass);
  if (!found.ok) return found;
  const { hole, pin, isFromMemory } = found.value;
  const standard = `${STANDARDS.iso}, inch form`;
  const printed = (range: Range) => about(nominal, toTenths(range));
  return worked({
    system: 'iso',
    fitClass,
    nominal,
    ...limitsOf({ hole: printed(hole), pin: printed(pin) }),
    source: `${STANDARDS.iso}, ${fitClass}, inch form`,
    standard,
    isFromMemory,
  });
}

/**
 * A fit made without a class: the pin stays at its basic size, the hole is made larger by the allowance (below zero:
 * smaller), and each has its own tolerance, the pin's downwards and the hole's upwards.
 *
 * Source:  basic shaft system, general drafting practice.
 */
export function fitByAllowance(q: {
  readonly basic: Length;
  readonly allowance: Length;
  readonly holeTolerance: Length;
  readonly pinTolerance: Length;
}): Pick<FitLimits, 'hole' | 'pin' | 'clearance' | 'kind'> {
  const least = plus(q.basic, q.allowance);
  return limitsOf({
    hole: { lower: least, upper: plus(least, q.holeTolerance) },
    pin: { lower: minus(q.basic, q.pinTolerance), upper: q.basic },
  });
}

type Found = { readonly hole: Deviations; readonly pin: Deviations; readonly isFromMemory: boolean };

function ansiDeviations(nominal: Length, fitClass: string): Result<Found, IsoRefusal> {
  const fit = ansiFit(nominal, fitClass);
  if (!fit.ok) return fit;
  const { hole, pin, fromMemory } = fit.value;
  return worked({ hole, pin, isFromMemory: fromMemory });
}

function isoDeviations(nominal: Length, fitClass: string): Result<Found, IsoRefusal> {
  const [holeClass, pinClass, more] = fitClass.split('/');
  if (holeClass === undefined || pinClass === undefined || more !== undefined)
    return refuse({ code: 'no-such-class', fitClass });
  const hole = isoHole(nominal, holeClass);
  if (!hole.ok) return hole;
  const pin = isoPin(nominal, pinClass);
  if (!pin.ok) return pin;
  return worked({ hole: hole.value, pin: pin.value, isFromMemory: false });
}

function limitsOf({ hole, pin }: { readonly hole: Range; readonly pin: Range }) {
  const clearance = { lower: minus(hole.lower, pin.upper), upper: minus(hole.upper, pin.lower) };
  return { hole, pin, clearance, kind: kindOf(clearance) };
}

// A fit that is line to line at its tightest is a clearance fit; one that never leaves room is an interference fit.
function kindOf({ lower, upper }: Range): FitKind {
  if (!isNegative(lower)) return 'clearance';
  return isMore(upper, zero) ? 'transition' : 'interference';
}

function about(nominal: Length, { lower, upper }: Range): Range {
  return { lower: plus(nominal, lower), upper: plus(nominal, upper) };
}

function toTenths({ lower, upper }: Range): Range {
  const tenth = lengthOf('.0001 in');
  return { lower: roundForShow(lower, tenth), upper: roundForShow(upper, tenth) };
}
