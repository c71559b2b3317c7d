import { isMore, isZero, lengthOf, minus, negate, zero, type Length, type Unit } from './length.ts';

/** A size as it was typed and what it is exactly; the typed text is what is shown again. */
export type Entry = { readonly exact: Length; readonly typed: string; readonly unit: Unit };

type At = { readonly typed: string; readonly at: number };

/** Why a typed text is not a size. `at` is the place in the typed text, counted from 0. */
export type EntryRefusal =
  | ({ readonly code: 'nothing-typed' } & At)
  | ({ readonly code: 'no-digits' } & At)
  | ({ readonly code: 'strange-character'; readonly character: string } & At)
  | ({ readonly code: 'foreign-digit'; readonly character: string } & At)
  | ({ readonly code: 'too-many-digits'; readonly count: number } & At)
  | ({ readonly code: 'too-long'; readonly count: number } & At)
  | ({ readonly code: 'two-points' } & At)
  | ({ readonly code: 'comma-and-point' } & At)
  | ({ readonly code: 'point-without-digits' } & At)
  | ({ readonly code: 'power-of-ten' } & At)
  | ({ readonly code: 'base-sixteen' } & At)
  | ({ readonly code: 'unknown-unit'; readonly word: string } & At)
  | ({ readonly code: 'minus-behind' } & At)
  | ({ readonly code: 'minus-inside' } & At)
  | ({ readonly code: 'minus-without-meaning' } & At)
  | ({ readonly code: 'fraction-without-top' } & At)
  | ({ readonly code: 'fraction-without-bottom' } & At)
  | ({ readonly code: 'fraction-of-zero' } & At)
  | ({ readonly code: 'fraction-never-ends'; readonly bottom: string } & At)
  | ({ readonly code: 'fraction-with-point' } & At)
  | ({ readonly code: 'fraction-bar-twice' } & At)
  | ({ readonly code: 'fraction-over-one' } & At)
  | ({ readonly code: 'two-numbers' } & At)
  | ({ readonly code: 'out-of-reach' } & At);

export type EntryResult =
  | { readonly ok: true; readonly value: Entry }
  | { readonly ok: false; readonly refusal: EntryRefusal };

const LONGEST = lengthOf('10000 mm');
const MOST_DIGITS = 15;
// The longest accepted form is under 30 characters; past that it is a pasted text, not a size.
const MOST_CHARACTERS = 60;
const UNIT_WORDS: ReadonlyMap<string, Unit> = new Map([
  ['in', 'in'],
  ['in.', 'in'],
  ['inch', 'in'],
  ['inches', 'in'],
  ['"', 'in'],
  ['″', 'in'],
  ['thou', 'thou'],
  ['mm', 'mm'],
]);
// The bottoms a shop rule or a drill index has. Each ends as an inch decimal and so as exact millimetres.
const RULE_BOTTOMS = new Set(['1', '2', '4', '8', '16', '32', '64', '128']);

/**
 * The size a person, a keyboard or a gauge typed.
 *
 * Units:   `.4487`, `0,4487`, `29/64`, `1-1/2`, `1 1/2`, each with in, ", thou or mm behind it, else in `unit`.
 * Range:   0 to 10 m; with `signed`, −10 m to 10 m. At most 15 digits.
 * Refuses: anything else, with the place; never a NaN and never a silent 0.
 * Source:  25.4 mm to the inch exactly (NIST SP 811, B.8); fractions as on a shop rule, common practice.
 */
export function readEntry(
  typed: string,
  { unit, signed = false }: { unit: Unit; signed?: boolean },
): EntryResult {
  const text = plainMarks(typed);
  const fault = firstFault(text, typed);
  if (fault) return refused(fault);
  const start = text.length - text.trimStart().length;
  const body = text.trim();
  const [, sign = '', space = '', number = '', word = ''] =
    /^([+-]?)( *)(.*?) *([a-z"″]+\.?)?$/i.exec(body) ?? [];
  const at = start + sign.length + space.length;
  const ownUnit = word === '' ? unit : UNIT_WORDS.get(word.toLowerCase());
  if (ownUnit === undefined)
    return refused({ code: 'unknown-unit', word, typed, at: start + body.length - word.length });
  const shapeFault = numberFault(number, typed, at);
  if (shapeFault) return refused(shapeFault);
  const size = lengthOf(`${plainNumber(number)} ${ownUnit}`);
  if (sign === '-' && !signed) return refused({ code: 'minus-without-meaning', typed, at: start });
  if (isMore(size, LONGEST)) return refused({ code: 'out-of-reach', typed, at });
  return {
    ok: true,
    value: {
      exact: sign === '-' && !isZero(size) ? negate(size) : size,
      typed: withInchMarks(typed).trim().replace(/\s+/g, ' '),
      unit: ownUnit,
    },
  };
}

/** The text as it will be shown again: with its unit, should it have been typed without. */
export function typedWithUnit(entry: Pick<Entry, 'typed' | 'unit'>): string {
  return /[a-z"″]/i.test(entry.typed) ? entry.typed : `${entry.typed} ${entry.unit}`;
}

/** How far a size lies from another, as a pair for showing: never negative, with the side. */
export function offBy(
  a: Length,
  from: Length,
): { readonly by: Length; readonly side: 'over' | 'under' | 'same' } {
  const difference = minus(a, from);
  if (isMore(difference, zero)) return { by: difference, side: 'over' };
  return isMore(zero, difference) ? { by: negate(difference), side: 'under' } : { by: zero, side: 'same' };
}

function refused(refusal: EntryRefusal): EntryResult {
  return { ok: false, refusal };
}

// One character for one, so that places in the text stay places in what was typed.
function plainMarks(typed: string): string {
  return withInchMarks(typed)
    .replace(/\s/g, ' ')
    .replace(/[−‐‑‒–]/g, '-');
}

/** A phone that makes round quotes makes them of the inch mark too. */
function withInchMarks(typed: string): string {
  return typed.replace(/[“”]/g, '"');
}

function plainNumber(number: string): string {
  return number
    .replace(',', '.')
    .replace(/ *\/ */, '/')
    .replace(/ +/, ' ');
}

function firstFault(text: string, typed: string): EntryRefusal | undefined {
  if (text.trim() === '') return { code: 'nothing-typed', typed, at: 0 };
  const strange = /[^0-9A-Za-z.,/"″ +-]/u.exec(text);
  if (strange) {
    const character = strange[0];
    return {
      code: /\p{Nd}/u.test(character) ? 'foreign-digit' : 'strange-character',
      character,
      typed,
      at: strange.index,
    };
  }
  const digits = text.replace(/[^0-9]/g, '').length;
  const hexadecimal = /0x/i.exec(text);
  if (hexadecimal) return { code: 'base-sixteen', typed, at: hexadecimal.index + 1 };
  const power = /[0-9.]e[0-9+-]/i.exec(text);
  if (power) return { code: 'power-of-ten', typed, at: power.index + 1 };
  if (digits === 0) return text.includes('/') ? slashAlone(text, typed) : { code: 'no-digits', typed, at: 0 };
  if (digits > MOST_DIGITS) return { code: 'too-many-digits', count: digits, typed, at: 0 };
  return text.length > MOST_CHARACTERS ? { code: 'too-long', count: text.length, typed, at: 0 } : undefined;
}

function slashAlone(text: string, typed: string): EntryRefusal {
  return { code: 'fraction-without-top', typed, at: text.indexOf('/') };
}

function numberFault(number: string, typed: string, at: number): EntryRefusal | undefined {
  const place = (offset: number): At => ({ typed, at: at + Math.max(0, offset) });
  const behind = /-$/.exec(number);
  if (behind) return { code: 'minus-behind', ...place(behind.index) };
  const strayLetter = /[a-z"″+]/i.exec(number);
  if (strayLetter)
    return { code: 'strange-character', character: strayLetter[0], ...place(strayLetter.index) };
  return number.includes('/') ? fractionFault(number, place) : decimalFault(number, place);
}

function decimalFault(number: string, place: (offset: number) => At): EntryRefusal | undefined {
  const marks = [...number.matchAll(/[.,]/g)];
  if (number.includes(',') && number.includes('.'))
    return { code: 'comma-and-point', ...place(marks[0]?.index ?? 0) };
  const gap = /[0-9.,]\s+[0-9.,]/.exec(number);
  if (gap) return { code: 'two-numbers', ...place(gap.index + 1) };
  if (marks.length > 1) return { code: 'two-points', ...place(marks[1]?.index ?? 0) };
  if (number.includes('-')) return { code: 'minus-inside', ...place(number.indexOf('-')) };
  if (/[.,]$/.test(number)) return { code: 'point-without-digits', ...place(number.length - 1) };
  return /^[0-9]*[.,]?[0-9]+$/.test(number) ? undefined : { code: 'two-numbers', ...place(0) };
}

function fractionFault(number: string, place: (offset: number) => At): EntryRefusal | undefined {
  const bar = number.indexOf('/');
  if (number.indexOf('/', bar + 1) >= 0)
    return { code: 'fraction-bar-twice', ...place(number.indexOf('/', bar + 1)) };
  const point = /[.,]/.exec(number);
  if (point) return { code: 'fraction-with-point', ...place(point.index) };
  const top = number.slice(0, bar).trimEnd();
  const bottom = number.slice(bar + 1).trimStart();
  if (!/[0-9]$/.test(top)) return { code: 'fraction-without-top', ...place(bar) };
  if (bottom === '') return { code: 'fraction-without-bottom', ...place(bar) };
  if (!/^[0-9]+$/.test(bottom))
    return { code: bottom.includes('-') ? 'minus-inside' : 'two-numbers', ...place(bar + 1) };
  const parts = /^(?:([0-9]+)(?: +|-))?([0-9]+)$/.exec(top);
  if (!parts) return { code: top.includes('-') ? 'minus-inside' : 'two-numbers', ...place(0) };
  if (/^0+$/.test(bottom)) return { code: 'fraction-of-zero', ...place(bar + 1) };
  if (!RULE_BOTTOMS.has(bottom.replace(/^0+/, '')))
    return { code: 'fraction-never-ends', bottom, ...place(number.length - bottom.length) };
  const over = parts[1] !== undefined && BigInt(parts[2] ?? 0) >= BigInt(bottom);
  return over ? { code: 'fraction-over-one', ...place(bar) } : undefined;
}
