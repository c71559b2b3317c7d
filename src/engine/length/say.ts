import { decimalMark } from './decimal-mark.ts';
import { marked, markWord } from './decimal-text.ts';
import type { EntryRefusal } from './entry.ts';
import { isLess, type Length } from './length.ts';
import type { Refusal } from './refusal.ts';
import { withUnit, show, showBand, showBetween, type ShownUnit } from './show.ts';
import { showAgainst, showBeside } from './show-limits.ts';
/** The sentence for anything that can't be worked out: what is wrong, by how much, and what can be done. */
export function say(refusal: Refusal, unit: ShownUnit): string {
  switch (refusal.code) {
    case 'no-step-in-limits':
      return `No step of the dial (${show(refusal.step, unit)}) falls between ${sayEnds(refusal, unit)}. Use a finer dial or wider limits.`;
    case 'metal-gone':
      return `At ${sayPast(refusal, unit)} already. No cut puts metal back. Make the part new, or let another part give.`;
    case 'below-least-length':
      return `Trimming ${refusal.part} alone can't do it: ${show(refusal.missing, unit)} is missing. Its least length is ${show(refusal.least, unit)}. Trim another part as well, or leave one out.`;
    case 'no-proof':
      return `No cut can be proved: ${withUnit(showBand(refusal.halfWidth, unit), unit)} leaves nothing of ${showBetween(refusal.lower, refusal.upper, unit)} ${unit}. Read the gap itself by feeler or indicator, or use a finer tool.`;
    default:
      return sayEntry(refusal);
  }
}

function sayEnds(ends: { readonly lower: Length; readonly upper: Length }, unit: ShownUnit): string {
  const { lower = '', upper = '' } = showAgainst([], ends, unit);
  return `${lower} ${unit} and ${upper} ${unit}`;
}

/** `.4373 in it is .0002 in past .4375 in`: the two sizes never look alike. */
function sayPast({ present, limit }: Extract<Refusal, { code: 'metal-gone' }>, unit: ShownUnit): string {
  const is = isLess(present, limit) ? 'least' : 'most';
  const shown = showBeside(present, { limit, is }, unit);
  return `${shown.value} it is ${shown.by} past ${shown.limit}`;
}

/** The sentence for a typed text that is not a size. */
export function sayEntry(refusal: EntryRefusal): string {
  const sentence = entrySentence(refusal);
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}

// In a sentence with commas a size with one stands where none follows it.
const SIZES = { '.': '.4487, 29/64 or 11.4 mm', ',': '11,4 mm or 29/64' } as const;

function entrySentence(refusal: EntryRefusal): string {
  const typed = echo(refusal.typed);
  switch (refusal.code) {
    case 'nothing-typed':
      return `Nothing is typed yet. Type a size such as ${SIZES[decimalMark()]}.`;
    case 'no-digits':
      return `There is no figure in what is typed. A size reads like ${SIZES[decimalMark()]}.`;
    case 'strange-character':
      return `${mark(refusal.character)} at place ${refusal.at + 1} does not belong in a size. Use the digits 0 to 9, a ${markWord()}, a fraction bar, and in, thou or mm.`;
    case 'foreign-digit':
      return `${mark(refusal.character)} at place ${refusal.at + 1} is a digit from another script. Type it with 0 to 9.`;
    case 'too-many-digits':
      return `That is ${refusal.count} digits. No tool reads that fine: 15 are the most.`;
    case 'too-long':
      return `That is ${refusal.count} characters, too long for a size. Type one size, such as 1-1/2 in.`;
    case 'two-points':
      return `${typed} has two decimal ${markWord()}s. Leave one out.`;
    case 'comma-and-point':
      return `${typed} has a comma and a point, so it can't be told which one is the decimal ${markWord()}. Leave the thousands mark out.`;
    case 'point-without-digits':
      return `Nothing stands after the ${markWord()} in ${typed}. Type the missing digit, or leave the ${markWord()} out.`;
    case 'power-of-ten':
      return `${typed} uses e for a power of ten. Write the size out in full.`;
    case 'base-sixteen':
      return `${typed} is computer notation: the x does not belong in a size. Write it in plain digits.`;
    case 'unknown-unit':
      return `The word at place ${refusal.at + 1} is not a unit used here. Use in, thou or mm.`;
    case 'minus-behind':
      return `The minus stands behind the figure in ${typed}. Put it in front, or leave it out.`;
    case 'minus-inside':
      return `There is a minus inside ${typed}. A whole number and its fraction are typed 1-1/2; for two sizes log two readings.`;
    case 'minus-without-meaning':
      return `${typed} is below zero, and this size can't be. Leave the minus out.`;
    case 'fraction-without-top':
      return `The top of the fraction is missing in ${typed}.`;
    case 'fraction-without-bottom':
      return `The bottom of the fraction is missing in ${typed}.`;
    case 'fraction-of-zero':
      return `${typed} can't be read as a size. The bottom of a fraction can't be zero.`;
    case 'fraction-never-ends':
      return `${typed} is not a shop fraction: the bottom must be 2, 4, 8, 16, 32, 64 or 128. Type it as a decimal.`;
    case 'fraction-with-point':
      return `${typed} mixes a ${markWord()} and a fraction bar. Use one or the other.`;
    case 'fraction-bar-twice':
      return `${typed} has two fraction bars. Leave one out.`;
    case 'fraction-over-one':
      return `The fraction in ${typed} is a whole or more. Add it to the whole number first.`;
    case 'two-numbers':
      return `${typed} reads as two numbers. Log them one by one; a mixed size is typed 1 1/2.`;
    case 'out-of-reach':
      return `${typed} is more than 10 m (394 in). Check the unit and the ${markWord()}.`;
    default:
      return refusal satisfies never;
  }
}

// What was typed comes back into a sentence only when it is short and made of a size's own marks: a word, an unseen
// mark or a page of text would make the sentence worse than none.
function echo(typed: string): string {
  const short = typed.trim().replace(/\s+/g, ' ');
  return /^[0-9.,/ex+−‐‑‒–-][0-9.,/ex +−‐‑‒–-]{0,23}(?:in|thou|mm|["″])?$/i.test(short)
    ? marked(short)
    : 'what is typed';
}

function mark(character: string): string {
  if (/^[\p{L}\p{N}\p{P}\p{S}]$/u.test(character)) return `“${character}”`;
  const number = (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
  return `an unseen mark (U+${number})`;
}
