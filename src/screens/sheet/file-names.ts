// Chosen, not published: every system takes it, with room for the ending.
const LONGEST = 80;

/** A file's name out of the fitter's words: letters, digits and dashes. */
export function fileName(words: readonly string[], ending: string): string {
  const name = words
    .join(' ')
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .slice(0, LONGEST)
    .replace(/^-+|-+$/g, '')
    .toLowerCase();
  return `${name === '' ? 'slipfit' : name}.${ending}`;
}
