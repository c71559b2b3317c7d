import { decimalMark } from './decimal-mark.ts';
import { marked } from './decimal-text.ts';
import { typedWithUnit, type Entry } from './entry.ts';
import {
  absolute,
  decimalText,
  dividedBy,
  isLess,
  isMore,
  isNegative,
  isZero,
  largest,
  leadingZeros,
  lengthOf,
  roundToStep,
  smallest,
  type Length,
  type Unit,
} from './length.ts';

/** The unit figures are shown in: a phone shows inches or millimetres; thou is a way of typing and of saying small differences. */
export type ShownUnit = 'in' | 'mm';

// Chosen, not published: a micrometer's finest usual reading in each unit, and the fewest places that still read as a measured size.
export const MOST_PLACES: Record<Unit, number> = { in: 4, thou: 1, mm: 3 };
const LEAST_PLACES: Record<Unit, number> = { in: 3, thou: 0, mm: 2 };

/**
 * A size as a machinist writes it: inches without the zero before the point and three or four places (`.4487`, `.970`),
 * millimetres two or three (`11.397`). Nothing at all is `0`; a size that only rounds to nothing keeps its places
 * (`.0000`), so that it can't be taken for it. Rounded half to even (ISO 80000-1 annex B, ASTM E29).
 */
export function figure(length: Length, unit: Unit): string {
  return figureTo(length, unit, MOST_PLACES[unit]);
}

/** `figure` with up to so many places. */
export function figureTo(length: Length, unit: Unit, most: number): string {
  return marked(plainFigure(length, unit, most));
}

function plainFigure(length: Length, unit: Unit, most: number, least?: number): string {
  return isZero(length) ? '0' : written(length, unit, most, least);
}

/** `figure` with its unit behind it: `.4487 in`. */
export function show(length: Length, unit: Unit): string {
  return `${figure(length, unit)} ${unit}`;
}

/**
 * A size as far as it is known: its places go as far as those of its band, and no further than `figure` goes, so that
 * `.4370` is told from `.437`. Size and uncertainty end at the same place: JCGM 100:2008 (GUM), 7.2.6.
 */
export function knownFigure(length: Length, halfWidth: Length, unit: Unit): string {
  const places = Math.min(placesOf(plainBand(halfWidth, unit)), MOST_PLACES[unit]);
  return isZero(halfWidth) ? figure(length, unit) : marked(written(length, unit, MOST_PLACES[unit], places));
}

/**
 * The limits a part is cut to, `1.1114 to 1.1146`: rounded inwards, so that a size on the shown limit is inside the
 * true one. Limits closer than the usual places can tell apart get a place or two more, and one limit has as many
 * places as the other (`.4484 to .4560`), as on a drawing: ASME Y14.5, from memory. Limits with nothing between them are one figure.
 */
export function showBetween(lower: Length, upper: Length, unit: Unit): string {
  for (const more of [0, 1, 2]) {
    const places = MOST_PLACES[unit] + more;
    const step = dividedBy(lengthOf(`1 ${unit}`), 10 ** places);
    const [from, to] = [roundToStep(lower, step, 'up'), roundToStep(upper, step, 'down')];
    if (isLess(from, to)) return evenFigures([from, to], unit, places).join(' to ');
  }
  return [...new Set(evenFigures([lower, upper], unit, MOST_PLACES[unit] + 2))].join(' to ');
}

/** `from .4489 to .4499`; `at .4489 only` of limits with nothing between them. An inch figure under one goes without its unit. */
export function sayFromTo(lower: Length, upper: Length, unit: ShownUnit): string {
  const between = showBetween(lower, upper, unit);
  const said = withUnit(between, unit);
  return between.includes(' to ') ? `from ${said}` : `at ${said} only`;
}

/**
 * A size between such limits, never shown past them: `.4489` of .44882 between `.4489 to .4499`, and to as many places where
 * the limits take more. One that is past its limits is shown as it is.
 */
export function figureBetween(size: Length, lower: Length, upper: Length, unit: Unit): string {
  if (isLess(size, lower) || isMore(size, upper)) return figure(size, unit);
  for (const more of [0, 1, 2]) {
    const places = MOST_PLACES[unit] + more;
    const step = dividedBy(lengthOf(`1 ${unit}`), 10 ** places);
    const [from, to] = [roundToStep(lower, step, 'up'), roundToStep(upper, step, 'down')];
    if (!isMore(from, to)) return figureTo(smallest(largest(size, from), to), unit, places);
  }
  return figure(size, unit);
}

/**
 * Limits a size is judged by, each to the nearest as the size beside them is, and one with as many places as the other:
 * `1.1810 to 1.1815`.
 */
export function showLimits(lower: Length, upper: Length, unit: Unit): string {
  return evenFigures([lower, upper], unit, MOST_PLACES[unit]).join(' to ');
}

/** Figures with as many places as the longest of them; a plain 0 stays one. */
export function evenFigures(lengths: readonly Length[], unit: Unit, most: number): readonly string[] {
  const least = Math.max(...lengths.map((length) => placesOf(plainFigure(length, unit, most))));
  return lengths.map((length) => marked(plainFigure(length, unit, most, least)));
}

function placesOf(text: string): number {
  return text.split('.')[1]?.length ?? 0;
}

function written(length: Length, unit: Unit, most: number, least = LEAST_PLACES[unit]): string {
  return tidy(decimalText(absolute(length), unit, most), unit, isNegative(length), least);
}

/** `figure` with one place more, for what is added up before the reader's eyes: the sum then comes to the figure shown. */
export function finerFigure(length: Length, unit: Unit): string {
  return figureTo(length, unit, MOST_PLACES[unit] + 1);
}

/** A difference with its sign: `+.0012`, `−.0044`. */
export function signedFigure(length: Length, unit: Unit): string {
  const text = figure(length, unit);
  return text.startsWith('−') || /^[.,0]+$/.test(text) ? text : `+${text}`;
}

/** A band's half width, two significant digits and never fewer places than a size has: `±.0012`, `±.012`, `±.00044`. */
export function showBand(halfWidth: Length, unit: Unit): string {
  return `±${marked(plainBand(halfWidth, unit))}`;
}

function plainBand(halfWidth: Length, unit: Unit): string {
  const places = leadingZeros(halfWidth, unit) + 1;
  const text = decimalText(halfWidth, unit, Math.max(places, LEAST_PLACES[unit]));
  return unit === 'in' ? text.replace(/^0\./, '.') : text;
}

/** What was typed, shown again as typed: `29/64 in`. */
export function asTyped(entry: Entry): string {
  return marked(typedWithUnit(entry));
}

function tidy(text: string, unit: Unit, negative: boolean, least: number): string {
  const [whole = '0', places = ''] = text.split('.');
  const isNothing = /^0*$/.test(whole + places);
  const kept = isNothing ? places : places.replace(/0+$/, '').padEnd(least, '0');
  const front = unit === 'in' && whole === '0' && kept !== '' ? '' : whole;
  return `${negative && !isNothing ? '−' : ''}${front}${kept === '' ? '' : `.${kept}`}`;
}

/** An inch figure under one is known by its leading point; from one inch up, behind a comma, and in millimetres, the unit is named. */
export function withUnit(text: string, unit: ShownUnit): string {
  return unit === 'in' && decimalMark() === '.' && !/(^|[^\d.])[1-9]/.test(text) ? text : `${text} ${unit}`;
}
