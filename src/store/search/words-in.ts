import { readEntry } from '../../engine/length/entry.ts';
import { toText } from '../../engine/length/length.ts';

const BETWEEN_WORDS = /[^\p{L}\p{N}./+-]+/u;
// `.4487 in`: what most of all words are, and has nothing to be put right.
const PLAIN_SIZE = /^((?:[1-9]\d{0,4})?\.\d{1,9}) (in|mm)$/;
// Chosen, not published: longer ones are pasted, and no hand types so much to find one.
const LONGEST_WORD = 40;
const MOST_WORDS = 8;

/** The words of a text, as it is searched by them: `7/16-20 UNF` is 7/16-20, 7/16, 20 and unf. */
export function wordsIn(text: string): string[] {
  const plain = PLAIN_SIZE.exec(text);
  if (plain) return plain.slice(1);
  return plainWords(text).flatMap((word) => [word, ...piecesOf(word)]);
}

/**
 * What is looked for: words that a job has to have all of, each as far as it is typed, and sizes that may stand in place of
 * one. A size is the same however it was typed: 7/16 finds .4375, and 11.1125 in millimetres.
 */
export type Wanted = { readonly words: readonly WantedWord[]; readonly whole: readonly string[] };

export type WantedWord = { readonly begins: string; readonly sizes: readonly string[] };

export function wantedIn(text: string): Wanted {
  const words = plainWords(text).slice(0, MOST_WORDS);
  return {
    words: words.map((word) => ({ begins: word, sizes: /\d/.test(word) ? sizesOf(word) : [] })),
    // `1 1/2`, `1.113 in`: more than one word, and still one size.
    whole: words.length > 1 ? sizesOf(text) : [],
  };
}

/** A size among the words: exact, in millimetres. No word begins so. */
export function sizeWord(exactMm: string): string {
  return `=${exactMm}`;
}

function sizesOf(text: string): string[] {
  const read = (['in', 'mm'] as const).map((unit) => readEntry(text, { unit }));
  return [...new Set(read.flatMap((entry) => (entry.ok ? [sizeWord(toText(entry.value.exact))] : [])))];
}

/** Small letters without their accents; a decimal comma is a point, and no zero stands before it. */
function plainWords(text: string): string[] {
  return text
    .replaceAll(/[¼-¾⅐-⅞]/g, ' $&')
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll('⁄', '/')
    .replaceAll(/[‐-―−]/g, '-')
    .replaceAll(/(\d),(?=\d)/g, '$1.')
    .split(BETWEEN_WORDS)
    .map((word) =>
      word
        .replace(/^[/+-]+|[./+-]+$/g, '')
        .replace(/^\.+(?!\d)/, '')
        .replace(/^0+(?=\.\d)/, '')
        .slice(0, LONGEST_WORD),
    )
    .filter((word) => word !== '');
}

function piecesOf(word: string): readonly string[] {
  // A fraction is one figure; of words with a bar between each is one.
  const pieces = /\p{L}/u.test(word) ? word.split(/[-/+]/) : word.split(/[-+]/);
  return pieces.length > 1 ? pieces.filter((piece) => piece !== '') : [];
}
