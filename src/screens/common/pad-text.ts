import type { Unit } from '../../engine/length.ts';

/** What stands in a size field while it is being typed: the text and the unit it is meant in. */
export type HalfTyped = { readonly typed: string; readonly unit: Unit };
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
export function afterKey({ typed, unit }: HalfTyped, key: PadKey): HalfTyped {
  switch (key) {
    case 'delete':
      return { typed: typed.slice(0, -1).trimEnd(), unit };
    case '-':
      return { typed: typed.startsWith('-') ? typed.slice(1) : `-${typed}`, unit };
    case ' ':
      return canTakeSpace(typed) ? { typed: `${typed} `, unit } : { typed, unit };
    case '.':
      return /[.,/]|\d[ -]/.test(typed) ? { typed, unit } : retyped(`${typed}.`, { typed, unit });
    case '/':
      return /^-?(\d+[ -])?\d+$/.test(typed) ? retyped(`${typed}/`, { typed, unit }) : { typed, unit };
    default:
      return retyped(`${typed}${key}`, { typed, unit });
  }
}

/** The field after a keyboard, a gauge or a paste: text as it came. Fractions are inch sizes in a shop: a bar turns the unit to inches. */
export function retyped(text: string, before: HalfTyped): HalfTyped {
  const typed = text.slice(0, LONGEST);
  const barIsNew = typed.includes('/') && !before.typed.includes('/');
  return { typed, unit: barIsNew && before.unit !== 'in' ? 'in' : before.unit };
}

/** The field after a unit key: the figures stay, a unit that was typed behind them gives way. */
export function inUnit({ typed }: HalfTyped, unit: Unit): HalfTyped {
  return { typed: typed.replace(/\s*[a-z"″]+\.?$/i, ''), unit };
}

/** After a whole number a space may follow, for sizes like 1 1/2. */
export function canTakeSpace(typed: string): boolean {
  return /^-?\d+$/.test(typed);
}

/** Whether the unit is the fitter's own choice, to be remembered; a fraction bar only lends inches to this one size. */
export function isUnitKey(half: HalfTyped, remembered: Unit | undefined): boolean {
  return half.unit !== remembered && !half.typed.includes('/');
}
