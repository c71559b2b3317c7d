import { decimalMark } from './decimal-mark.ts';

/** "Left spacer" for "left spacer". */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** "titanium 6Al-4V" for "Titanium 6Al-4V": only the first letter. */
export function uncapital(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** "a", "a and b", "a, b and c"; between figures with a comma "1,5; 2,5 and 3" (ISO 80000-1:2009, 7.3.1 asks for it of coordinates). */
export function listed(words: readonly string[]): string {
  return words.length > 1 ? `${inARow(words.slice(0, -1))} and ${words.at(-1) ?? ''}` : (words[0] ?? '');
}

/** "a, b"; figures that have a comma themselves stand between semicolons. */
export function inARow(words: readonly string[]): string {
  return words.join(decimalMark() === ',' && words.some((word) => /\d,\d/.test(word)) ? '; ' : ', ');
}
