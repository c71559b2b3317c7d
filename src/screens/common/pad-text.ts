import { decimalMark } from '../../engine/length/decimal-mark.ts';
import type { Unit } from '../../engine/length/length.ts';

/** What stands in a size field while it is being typed: the text and the unit it is meant in. */
export type HalfTyped = {
  readonly typed: string;
  readonly unit: Unit;
  /** The unit a fraction bar took the place of, until the bar goes again. */
  readonly lent?: Unit;
};
export type PadKey =
  | '0'
  | '1'
  | '2'
  | '3'
  | '4'
  | '5'
  | '6'
  | '7'
  | '8'
  | '9'
  | '.'
  | '/'
  | ' '
  | '-'
  | 'delete';

export const nothingTyped = (unit: Unit): HalfTyped => ({ typed: '', unit });

const LONGEST = 60;

/** The field after a key of the pad. A key that can't mean anything here changes nothing. */
export function afterKey(half: HalfTyped, key: PadKey): HalfTyped {
  const { typed } = half;
  switch (key) {
    case 'delete':
      return retyped(typed.slice(0, -1).trimEnd(), half);
    case '-':
      return retyped(/^[-−]/.test(typed) ? typed.slice(1) : `-${typed}`, half);
    case ' ':
      return canTakeSpace(typed) ? retyped(`${typed} `, half) : half;
    case '.':
      return /[.,/]|\d[ -]/.test(typed) ? half : retyped(`${typed}${decimalMark()}`, half);
    case '/':
      return /^[-−]?(\d+[ -])?\d+$/.test(typed) ? retyped(`${typed}/`, half) : half;
    default:
      return retyped(`${typed}${key}`, half);
  }
}

/**
 * The field after a keyboard, a gauge or a paste: text as it came. Fractions are inch sizes in a shop: a bar turns the
 * unit to inches, and a bar that is taken out again turns it back.
 */
export function retyped(text: string, { typed: before, unit, lent }: HalfTyped): HalfTyped {
  const typed = cutToLength(text);
  if (!typed.includes('/')) return { typed, unit: lent ?? unit };
  if (before.includes('/')) return { typed, unit, ...(lent && { lent }) };
  return unit === 'in' ? { typed, unit } : { typed, unit: 'in', lent: unit };
}

/** Blanks go first: cut through, a size behind or between many of them would leave another size. */
function cutToLength(text: string): string {
  return text.length > LONGEST ? text.replace(/\s+/g, ' ').trim().slice(0, LONGEST) : text;
}

/** The field after a unit key: the figures stay, a unit that was typed behind them gives way. */
export function inUnit({ typed }: HalfTyped, unit: Unit): HalfTyped {
  return { typed: typed.replace(/\s*[a-z"″”“]+\.?$/i, ''), unit };
}

/** After a whole number a space may follow, for sizes like 1 1/2. */
export function canTakeSpace(typed: string): boolean {
  return /^[-−]?\d+$/.test(typed);
}

/** Whether the unit is the fitter's own choice, to be remembered; a fraction bar only lends inches to this one size. */
export function isUnitKey(half: HalfTyped, remembered: Unit | undefined): boolean {
  return half.unit !== remembered && !half.typed.includes('/');
}
