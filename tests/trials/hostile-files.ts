import { hostileBytes } from './hostile-bytes.ts';
import { hostileFigures } from './hostile-figures.ts';
import { hostileForms } from './hostile-forms.ts';
import { hostileRecords } from './hostile-records.ts';
import { hostileSizes } from './hostile-sizes.ts';
import { chanceFrom } from './seeded.ts';

/** What is done to a backup, picked by chance; the same seed picks the same. */
export type Pick = {
  readonly chance: () => number;
  /** A whole number from 0 to below this. */
  readonly below: (most: number) => number;
  readonly oneOf: <T>(list: readonly T[]) => T;
};

/** A backup as it was written: its lines without the line feeds, the last one with the checksum too. */
export type Whole = readonly string[];

export type Hostile = {
  readonly what: string;
  readonly file: Blob;
  /** What must come of it, where that is known: `either`, where chance may have left the file right. */
  readonly expects: 'refused' | 'imported' | 'either';
};

export type Kind = (whole: Whole, pick: Pick) => Promise<Omit<Hostile, 'what'>>;

const kinds: readonly (readonly [what: string, kind: Kind])[] = [
  ...Object.entries(hostileBytes),
  ...Object.entries(hostileRecords),
  ...Object.entries(hostileForms),
  ...Object.entries(hostileFigures),
];
const big: readonly (readonly [what: string, kind: Kind])[] = Object.entries(hostileSizes);

// One file in this many is a big one: they take seconds, and all the others milliseconds.
const BETWEEN_BIG_ONES = 12;
const MOST_BIG_ONES = 60;

/** The file with this number: every kind has its turn, what is done and where hangs on the seed. */
export async function hostileFile(whole: Whole, seed: number, number: number): Promise<Hostile> {
  const pick = pickFrom(chanceFrom(seed * 1_000_003 + number));
  const turn = Math.floor(number / BETWEEN_BIG_ONES);
  const isBig = number % BETWEEN_BIG_ONES === BETWEEN_BIG_ONES - 1 && turn < MOST_BIG_ONES;
  const list = isBig ? big : kinds;
  const at = isBig ? turn : number - Math.min(turn, MOST_BIG_ONES);
  const [what, kind] = list[at % list.length] ?? fail();
  return { what, ...(await kind(whole, pick)) };
}

export function pickFrom(chance: () => number): Pick {
  const below = (most: number) => Math.floor(chance() * most);
  const oneOf = <T>(list: readonly T[]): T => {
    const [found] = list.length === 0 ? fail() : list.slice(below(list.length));
    // The list has one at that place; it may itself be undefined.
    // oxlint-disable-next-line typescript/no-unsafe-type-assertion
    return found as T;
  };
  return { chance, below, oneOf };
}

function fail(): never {
  throw new Error('there is nothing to pick from');
}
