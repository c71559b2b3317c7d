import { marked, markWord } from './decimal-text.ts';

export type NumberBounds = {
  readonly least: number;
  readonly most: number;
  readonly unit: string;
  /** What is counted, not measured: days, miles, marks on a dial. */
  readonly whole?: boolean;
};

/** Why a typed text is not the number asked for. */
export type NumberRefusal =
  | { readonly code: 'no-number'; readonly typed: string }
  | { readonly code: 'not-a-number'; readonly typed: string }
  | { readonly code: 'not-whole'; readonly typed: string }
  | { readonly code: 'number-out-of-range'; readonly typed: string; readonly bounds: NumberBounds };

export type NumberResult =
  | { readonly ok: true; readonly value: { readonly text: string; readonly figure: number } }
  | { readonly ok: false; readonly refusal: NumberRefusal };

const MOST_CHARACTERS = 15;

/**
 * A number that is no length: degrees, a temperature, a strength, a count. It may be floating point.
 *
 * Units:   as `bounds.unit` says; digits with one point or comma, a minus in front where the range goes below zero.
 * Range:   bounds.least to bounds.most, both ends inside; at most 15 characters.
 * Refuses: no-number, not-a-number, number-out-of-range; not-whole where `bounds.whole` is set; never a NaN.
 */
export function readNumber(typed: string, bounds: NumberBounds): NumberResult {
  const text = typed
    .trim()
    .replace(/[−‐‑‒–]/, '-')
    .replace(',', '.');
  if (text === '') return { ok: false, refusal: { code: 'no-number', typed: text } };
  if (text.length > MOST_CHARACTERS || !/^[+-]?([0-9]+([.][0-9]+)?|[.][0-9]+)$/.test(text)) {
    return { ok: false, refusal: { code: 'not-a-number', typed: text.slice(0, MOST_CHARACTERS) } };
  }
  // `120,472` is a hundred and twenty thousand to one fitter and a hundred and twenty to another: neither is guessed.
  if (bounds.whole && text.includes('.')) return { ok: false, refusal: { code: 'not-whole', typed: text } };
  const figure = Number(text);
  if (figure < bounds.least || figure > bounds.most) {
    return { ok: false, refusal: { code: 'number-out-of-range', typed: text, bounds } };
  }
  return { ok: true, value: { text, figure } };
}

/** The sentence for it. */
export function sayNumber(refusal: NumberRefusal): string {
  switch (refusal.code) {
    case 'no-number':
      return `Nothing is typed yet. Type a number such as ${marked('24.5')}.`;
    case 'not-a-number':
      return `That can’t be read as a number. Use the digits 0 to 9 and one ${markWord()}.`;
    case 'not-whole':
      return 'A whole number goes here: digits only, no point and no comma.';
    case 'number-out-of-range': {
      const { least, most, unit } = refusal.bounds;
      return `${marked(`${refusal.typed} ${unit} is outside ${least} to ${most} ${unit}`)}. Check the figure.`;
    }
    default:
      return refusal satisfies never;
  }
}
