const TURNS = /[\u202a-\u202e\u2066-\u2069]/g;
// Accents over one another: no script has more than four, and twenty thousand hold a phone up for seconds each time they are drawn.
const PILED_UP = /(\p{M}{20})\p{M}+/gu;
// Hebrew, Arabic and their kin, and the marks that stand for a letter of theirs.
const RIGHT_TO_LEFT =
  /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc\u200f\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;
const ISOLATE = '\u2068';
const END_OF_ISOLATE = '\u2069';

/** A fitter's words as they are kept: without the unseen characters that turn the reading direction round, and no pile of accents. */
export function keptWords(text: string): string {
  return text.replace(TURNS, '').replace(PILED_UP, '$1');
}

/**
 * A fitter's words as they stand in a sentence, beside figures: nothing in them can turn what comes behind. After a turning
 * character, out of a file, 1.113 would read 311.1; after a Hebrew or Arabic name 1 1/2 would read 1/2 1, so such a name
 * is closed off (Unicode standard annex 9, first strong isolate).
 */
export function shownWords(text: string): string {
  const words = keptWords(text);
  return RIGHT_TO_LEFT.test(words) ? `${ISOLATE}${words}${END_OF_ISOLATE}` : words;
}
