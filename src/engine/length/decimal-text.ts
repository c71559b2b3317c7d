import { decimalMark, writeDecimalsWith } from './decimal-mark.ts';
import { listed } from './say-words.ts';

/** What it is called. */
export function markWord(): 'comma' | 'point' {
  return decimalMark() === ',' ? 'comma' : 'point';
}

/**
 * A text whose every decimal is a figure, as the shop writes it: `11.397` or `11,397`. Before a comma stands a digit, so
 * `.4487` becomes `0,4487` (ISO 80000-1:2009, 7.3.2); a list `0.05, 0.1` is parted by semicolons. Not for a text that names a thread, a drill, a material, a standard,
 * a version or a date: these keep the writing they were published in.
 */
export function marked(figures: string | number): string {
  const text = String(figures);
  if (decimalMark() === '.') return text;
  return text
    .replace(/(\d), (?=\.?\d)/g, '$1; ')
    .replace(/(\d*)\.(?=\d)/g, (_, whole: string) => `${whole || '0'},`);
}

/** What is written for a machine, or kept: with points in every shop. */
export function inPoints<T>(write: () => T): T {
  const before = decimalMark();
  writeDecimalsWith('.');
  try {
    return write();
  } finally {
    writeDecimalsWith(before);
  }
}

/** Two texts that differ in the mark of their figures alone come out alike. */
export function withoutMark(text: string): string {
  return text.replace(/(\d),(?=\d)/g, '$1.').replace(/(^|[^\d.])0\.(?=\d)/g, '$1.');
}

/** `listed` where figures stand among the words: with commas in them they are parted by semicolons. */
export function listedFigures(words: readonly string[]): string {
  const [last = '', ...before] = words.toReversed();
  if (decimalMark() === '.' || before.length === 0) return listed(words);
  return `${before.toReversed().join('; ')} and ${last}`;
}

/** A large number, its thousands apart by a comma only where none is taken for a decimal one: `13,300`, `13300`. */
export function grouped(figures: string | number): string {
  if (decimalMark() === ',') return marked(figures);
  const [whole = '', ...places] = String(figures).split('.');
  return [whole.replace(/\B(?=(\d{3})+$)/g, ','), ...places].join('.');
}
