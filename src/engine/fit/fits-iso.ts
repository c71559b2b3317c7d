import { dividedBy, isMore, lengthOf, minus, negate, plus, zero, type Length } from '../length/length.ts';
import { refuse, worked, type Result } from '../length/refusal.ts';
import { toleranceMicrons, toleranceStepsMm } from './tables/iso286-it.ts';
import { deviationStepsMm, lowerDeviationMicrons, upperDeviationMicrons } from './tables/iso286-shafts.ts';

/** How far the limits of a hole or a pin lie from the nominal size; below zero is under it. */
export type Deviations = { readonly lower: Length; readonly upper: Length };

export type IsoGrade = 5 | 6 | 7 | 8 | 9 | 10 | 11 | 12 | 13 | 14;
type UpperLetter = keyof typeof upperDeviationMicrons;
type LowerLetter = keyof typeof lowerDeviationMicrons;
export type ShaftLetter = UpperLetter | LowerLetter | 'js';

export type IsoRefusal =
  | { readonly code: 'no-such-class'; readonly fitClass: string }
  | { readonly code: 'class-not-at-size'; readonly fitClass: string; readonly nominal: Length }
  | {
      readonly code: 'size-outside-fit-table';
      readonly nominal: Length;
      readonly upTo: Length;
      readonly standard: string;
    };

type Zone = { readonly letter: ShaftLetter; readonly grade: IsoGrade };

export const isoGrades = [5, 6, 7, 8, 9, 10, 11, 12, 13, 14] as const satisfies readonly IsoGrade[];
export const shaftLetters = [
  'c',
  'd',
  'e',
  'f',
  'g',
  'h',
  'js',
  'k',
  'm',
  'n',
  'p',
  'r',
  's',
  't',
  'u',
] as const satisfies readonly ShaftLetter[];
export const holeLetters = ['C', 'D', 'E', 'F', 'G', 'H', 'JS', 'K', 'M', 'N', 'P', 'R', 'S'] as const;

const STANDARD = 'ISO 286-1';
const GREATEST = lengthOf('500 mm');
// The delta of a hole is the difference of two tolerances, and there is none up to here.
const NO_DELTA_TO = lengthOf('3 mm');
const T_FROM = lengthOf('24 mm');
const N_COARSE_FROM = lengthOf('1 mm');

/**
 * The standard tolerance of a grade at a nominal size.
 *
 * Units:   Length; grade 5 to 14. The step holds up to and including its end.
 * Range:   over 0 to 500 mm.
 * Refuses: size-outside-fit-table.
 * Source:  ISO 286-1:2010 table 1.
 */
export function isoTolerance(nominal: Length, grade: IsoGrade): Result<Length, IsoRefusal> {
  return isInside(nominal) ? worked(toleranceOf(nominal, grade)) : refuse(outside(nominal));
}

/**
 * Limits of a pin of an ISO class, 'g6' say, from its nominal size.
 *
 * Units:   deviations; pin = nominal + deviation.
 * Range:   over 0 to 500 mm; c to u, grades 5 to 14; t above 24 mm.
 * Refuses: no-such-class, class-not-at-size, size-outside-fit-table.
 * Source:  ISO 286-1:2010 tables 1, 4, 5; js is half the tolerance to each side, not rounded.
 */
export function isoPin(nominal: Length, pinClass: string): Result<Deviations, IsoRefusal> {
  const zone = zoneOf(pinClass);
  if (!zone) return refuse({ code: 'no-such-class', fitClass: pinClass });
  if (!isInside(nominal)) return refuse(outside(nominal));
  if (zone.letter === 't' && !isMore(nominal, T_FROM))
    return refuse({ code: 'class-not-at-size', fitClass: pinClass, nominal });
  return worked(pinDeviations(nominal, zone));
}

/**
 * Limits of a hole of an ISO class, 'H7' or 'P7' say, from its nominal size.
 *
 * Units:   deviations; hole = nominal + deviation. C to H mirror the pin of the same letter. K, M, N to grade 8 and P, R,
 *          S to grade 7 are moved by delta = IT(n) − IT(n−1) above 3 mm; coarser ones mirror the pin (N: zero above 3 mm).
 * Range:   over 0 to 500 mm; C to S, grades 5 to 14; K to grade 8; N coarser than 8 above 1 mm.
 * Refuses: no-such-class, class-not-at-size, size-outside-fit-table.
 * Source:  ISO 286-1:2010 4.3.2.5 and tables 1 to 3; M6 over 250 to 315 mm is −9 µm, as the table says.
 */
export function isoHole(nominal: Length, holeClass: string): Result<Deviations, IsoRefusal> {
  const zone = zoneOf(holeClass.toLowerCase());
  if (!zone || holeClass !== holeClass.toUpperCase() || zone.letter === 't' || zone.letter === 'u')
    return refuse({ code: 'no-such-class', fitClass: holeClass });
  if (!isInside(nominal)) return refuse(outside(nominal));
  const { letter, grade } = zone;
  if (grade > 8 && (letter === 'k' || (letter === 'n' && !isMore(nominal, N_COARSE_FROM))))
    return refuse({ code: 'class-not-at-size', fitClass: holeClass, nominal });
  return worked(holeDeviations(nominal, zone));
}

/** 'g6' as letter and grade; undefined where it is no class of ISO 286 from c to u, grades 5 to 14. */
function zoneOf(text: string): Zone | undefined {
  const [, name, figures] = /^([a-z]{1,2})(\d{1,2})$/.exec(text) ?? [];
  const letter = shaftLetters.find((one) => one === name);
  const grade = isoGrades.find((one) => String(one) === figures);
  return letter && grade && { letter, grade };
}

function pinDeviations(nominal: Length, { letter, grade }: Zone): Deviations {
  const tolerance = toleranceOf(nominal, grade);
  if (letter === 'js') return eachSide(tolerance);
  if (isUpper(letter)) {
    const upper = deviation(upperDeviationMicrons[letter], nominal);
    return { lower: minus(upper, tolerance), upper };
  }
  const lower = lowerDeviation(nominal, letter, grade);
  return { lower, upper: plus(lower, tolerance) };
}

function holeDeviations(nominal: Length, { letter, grade }: Zone): Deviations {
  const tolerance = toleranceOf(nominal, grade);
  if (letter === 'js') return eachSide(tolerance);
  if (isUpper(letter)) {
    const lower = negate(deviation(upperDeviationMicrons[letter], nominal));
    return { lower, upper: plus(lower, tolerance) };
  }
  const upper = upperOfTightHole(nominal, letter, grade);
  return { lower: minus(upper, tolerance), upper };
}

function upperOfTightHole(nominal: Length, letter: LowerLetter, grade: IsoGrade): Length {
  const mirrored = negate(deviation(lowerDeviationMicrons[letter], nominal));
  const isMoved = grade <= (letter === 'k' || letter === 'm' || letter === 'n' ? 8 : 7);
  const hasDelta = isMore(nominal, NO_DELTA_TO);
  if (!isMoved) return letter === 'n' && hasDelta ? zero : mirrored;
  if (letter === 'm' && grade === 6 && isBetween(nominal, '250 mm', '315 mm')) return lengthOf('-0.009 mm');
  return hasDelta ? plus(mirrored, delta(nominal, grade)) : mirrored;
}

const NEXT_FINER = { 5: 4, 6: 5, 7: 6, 8: 7, 9: 8, 10: 9, 11: 10, 12: 11, 13: 12, 14: 13 } as const;

function delta(nominal: Length, grade: IsoGrade): Length {
  const finer = stepped(toleranceMicrons[NEXT_FINER[grade]], toleranceStepsMm, nominal);
  return minus(toleranceOf(nominal, grade), finer);
}

function lowerDeviation(nominal: Length, letter: LowerLetter, grade: IsoGrade): Length {
  return letter === 'k' && grade > 7 ? zero : deviation(lowerDeviationMicrons[letter], nominal);
}

function eachSide(tolerance: Length): Deviations {
  const half = dividedBy(tolerance, 2);
  return { lower: negate(half), upper: half };
}

function toleranceOf(nominal: Length, grade: IsoGrade): Length {
  return stepped(toleranceMicrons[grade], toleranceStepsMm, nominal);
}

function deviation(microns: string, nominal: Length): Length {
  return stepped(microns, deviationStepsMm, nominal);
}

function stepped(microns: string, stepsMm: string, nominal: Length): Length {
  const step = stepsMm.split(' ').findIndex((upTo) => !isMore(nominal, lengthOf(`${upTo} mm`)));
  return dividedBy(lengthOf(`${microns.split(' ')[step] ?? ''} mm`), 1000);
}

function isBetween(nominal: Length, over: string, upTo: string): boolean {
  return isMore(nominal, lengthOf(over)) && !isMore(nominal, lengthOf(upTo));
}

function isUpper(letter: UpperLetter | LowerLetter): letter is UpperLetter {
  return letter in upperDeviationMicrons;
}

function isInside(nominal: Length): boolean {
  return isMore(nominal, zero) && !isMore(nominal, GREATEST);
}

function outside(nominal: Length): IsoRefusal {
  return { code: 'size-outside-fit-table', nominal, upTo: GREATEST, standard: STANDARD };
}
