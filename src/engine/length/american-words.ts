import { withoutMark } from './decimal-text.ts';
import type { ShownUnit } from './show.ts';

// Sentences are written in British words; an inch shop reads its own. Longer words first where one begins another.
const AMERICAN: readonly (readonly [RegExp, string])[] = [
  [/\b([Aa])luminium\b/g, '$1luminum'],
  [/\b([Gg])rey\b/g, '$1ray'],
  [/\b([Tt])yre(s?)\b/g, '$1ire$2'],
  [/\b([Cc])entre(s?)\b/g, '$1enter$2'],
  [/\b([Cc])olour/g, '$1olor'],
];

/** A sentence in the words of the shop: `aluminum` where it counts in inches, `aluminium` where it counts in millimetres. */
export function inShopWords(said: string, unit: ShownUnit): string {
  return unit === 'in' ? AMERICAN.reduce((so, [word, american]) => so.replace(word, american), said) : said;
}

/** Whether two names are one, whichever unit the shop counted in and whichever mark it wrote as each was made. */
export function isSameName(one: string, other: string): boolean {
  return withoutMark(inShopWords(one, 'in')) === withoutMark(inShopWords(other, 'in'));
}

// What of a record is read by the fitter; the rest are names that are looked up by.
const READ: ReadonlySet<string> = new Set(
  'headline sentence label figure unit change limits title detail what how more source ask words key group'.split(
    ' ',
  ),
);

/** The same for all that is read in a record: the blocks of an account, the fields of a worksheet. */
export function recordInShopWords<Told>(told: Told, unit: ShownUnit): Told {
  // What comes back has the shape of what went in: only texts by the names above are other texts.
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion
  return unit === 'in' ? (changed(told, false) as Told) : told;
}

function changed(told: unknown, isRead: boolean): unknown {
  if (typeof told === 'string') return isRead ? inShopWords(told, 'in') : told;
  if (Array.isArray(told)) return told.map((one) => changed(one, isRead));
  if (!isPlain(told)) return told;
  return Object.fromEntries(Object.entries(told).map(([name, one]) => [name, changed(one, READ.has(name))]));
}

/** A length is no record of texts. */
function isPlain(told: unknown): told is Readonly<Record<string, unknown>> {
  return typeof told === 'object' && told !== null && Object.getPrototypeOf(told) === Object.prototype;
}
