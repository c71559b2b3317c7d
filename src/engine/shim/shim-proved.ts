import { reachOfExactly, type Effort } from './shim-bits.ts';
import type { ShimSize } from './shim-layers.ts';

/** Pieces that were measured together: of one thickness, known alike. */
export type ShimRow = {
  readonly count: number;
  /** Rows of one number are known by the same tool as closely; 0 is known exactly. */
  readonly known: number;
};

export type RowsOfSize = { readonly steps: number; readonly rows: readonly ShimRow[] };

/** How many of each row, by size. */
export type RowCounts = readonly (readonly number[])[];

export type ProofSearch = {
  /** Thickest first, no two alike; the rows of one in the order listed. */
  readonly sizes: readonly RowsOfSize[];
  readonly aimQuarters: number;
  /** From which sum to which so many pieces could be proved at the best. */
  readonly atBest: (pieces: number) => Between;
  /** The same for a pick that has these pieces in it, of the sizes from a place on, whatever else. */
  readonly atBestWith: (place: number, counts: RowCounts, known: string) => Between;
  /** From which sum to which a pick is proved that is made up so. */
  readonly provedBetween: (counts: RowCounts) => Between;
};

type Between = { readonly least: number; readonly most: number };

// Chosen: a second or so on a phone. No drawer that was tried came near it.
const MOST_TRIED = 400_000;
const MOST_WORDS = 24_000_000;

/**
 * The pick of fewest pieces that proves; of those the nearest to the aim; of those the one that leaves the thinnest pieces
 * in the drawer; of pieces alike the first listed. `none` where no pick proves, `too-many` where they could not all be tried.
 *
 * Units:   sums in whole steps; the aim in quarters of one.
 * Range:   every pick counts with its own band, so what is inside depends on what it is made of. `atBest` narrows with more
 *          pieces, never widens.
 * Source:  for each number of pieces, the sums it can come to (subset sums by bits), nearest to the aim first; each is read
 *          back into every pick it can be made of, thinnest size first and as few of it as will do, until one proves. Two
 *          part picks that leave the same to be made and are known alike are followed once.
 */
export function fewestProved(q: ProofSearch): RowCounts | 'none' | 'too-many' {
  const counted = q.sizes.map(({ steps, rows }) => ({
    steps,
    count: rows.reduce((so, { count }) => so + count, 0),
  }));
  const all = counted.reduce((so, { count }) => so + count, 0);
  const effort: Effort = { words: MOST_WORDS };
  const tried = { left: MOST_TRIED };
  for (let pieces = 0; pieces <= all; pieces += 1) {
    const best = q.atBest(pieces);
    if (best.least > best.most || leastSum(counted, pieces) > best.most) return 'none';
    if (mostSum(counted, pieces) < best.least) continue;
    const found = provedOfExactly(q, { pieces, best, counted, effort, tried });
    if (found) return found;
  }
  return 'none';
}

type Exactly = {
  readonly pieces: number;
  readonly best: Between;
  readonly counted: readonly ShimSize[];
  readonly effort: Effort;
  readonly tried: { left: number };
};

function provedOfExactly(
  q: ProofSearch,
  { pieces, best, counted, effort, tried }: Exactly,
): RowCounts | 'too-many' | undefined {
  if (pieces === 0) return best.least <= 0 && best.most >= 0 ? provedNothing(q) : undefined;
  const reach = reachOfExactly(pieces, counted, best, effort);
  if (reach === 'too-much') return triedOut(q, { pieces, best, counted, effort, tried });
  for (const sums of nearestFirst(reach.sums, q.aimQuarters)) {
    const failed = new Set<string>();
    const found = readBack(
      { q, isMade: reach.isMade, tried, failed, sums },
      {
        place: q.sizes.length - 1,
        sum: 0,
        pieces,
        made: NOTHING_MADE,
      },
    );
    if (tried.left < 0) return 'too-many';
    if (found) return found;
  }
  return undefined;
}

/** Where the sums can't be held as bits, as with thirds of a mean on a step finer than any gauge: every pick is tried. */
function triedOut(
  q: ProofSearch,
  { pieces: all, best, counted, tried }: Exactly,
): RowCounts | 'too-many' | undefined {
  let nearest: { readonly counts: RowCounts; readonly off: number } | undefined;
  const follow = ({ place, sum, pieces, made }: PartPick): void => {
    tried.left -= made.size;
    const thicker = counted.slice(0, place + 1);
    if (tried.left < 0 || sum + leastSum(thicker, pieces) > best.most) return;
    if (sum + mostSum(thicker, pieces) < best.least) return;
    const size = q.sizes[place];
    if (!size) {
      const off = Math.abs(4 * sum - q.aimQuarters);
      const counts = pieces === 0 && (!nearest || off < nearest.off) ? provedOf(q, sum, made) : undefined;
      if (counts) nearest = { counts, off };
      return;
    }
    for (let taken = 0; taken <= Math.min(counted[place]?.count ?? 0, pieces); taken += 1)
      follow({
        place: place - 1,
        sum: sum + taken * size.steps,
        pieces: pieces - taken,
        made: withTaken(q, made, { place, taken }),
      });
  };
  follow({ place: q.sizes.length - 1, sum: 0, pieces: all, made: NOTHING_MADE });
  return tried.left < 0 ? 'too-many' : nearest?.counts;
}

function provedNothing(q: ProofSearch): RowCounts | undefined {
  const none = q.sizes.map(({ rows }) => rows.map(() => 0));
  const { least, most } = q.provedBetween(none);
  return least <= 0 && most >= 0 ? none : undefined;
}

/** One sum, or the two that lie as near on either side of the aim. */
function nearestFirst(sums: readonly number[], aimQuarters: number): readonly (readonly number[])[] {
  const off = (sum: number) => Math.abs(4 * sum - aimQuarters);
  const groups: number[][] = [];
  for (const sum of sums.toSorted((a, b) => off(a) - off(b))) {
    const last = groups.at(-1);
    if (last?.[0] !== undefined && off(last[0]) === off(sum)) last.push(sum);
    else groups.push([sum]);
  }
  return groups;
}

type Reading = {
  readonly q: ProofSearch;
  /** Whether the sizes up to this place can make a sum of so many pieces. */
  readonly isMade: (place: number, sum: number, pieces: number) => boolean;
  readonly tried: { left: number };
  /** Part picks that are known not to lead to one that proves. */
  readonly failed: Set<string>;
  readonly sums: readonly number[];
};

type PartPick = {
  /** The size that is taken from next. */
  readonly place: number;
  readonly sum: number;
  readonly pieces: number;
  readonly made: Made;
};

/**
 * The ways in which as many of each size behind the place can be made up of its rows: one for each way that the band can
 * tell apart, the first listed pieces in it, and those ways in that order too.
 */
type Made = ReadonlyMap<string, RowCounts>;

const NOTHING_MADE: Made = new Map([['', []]]);

function readBack(reading: Reading, { place, sum, pieces, made }: PartPick): RowCounts | undefined {
  const { q, isMade, sums, failed, tried } = reading;
  tried.left -= made.size;
  if (tried.left < 0) return undefined;
  const size = q.sizes[place];
  if (!size) return provedOf(q, sum, made);
  const key = `${place} ${sum} ${pieces} ${[...made.keys()].toSorted().join('|')}`;
  if (failed.has(key)) return undefined;
  for (let taken = 0; taken <= pieces; taken += 1) {
    const [next, left] = [sum + taken * size.steps, pieces - taken];
    if (!sums.some((whole) => isMade(place - 1, whole - next, left))) continue;
    const more = new Map(
      [...withTaken(q, made, { place, taken })].filter(([known, counts]) => {
        const { least, most } = q.atBestWith(place, counts, known);
        return sums.some((whole) => whole >= least && whole <= most);
      }),
    );
    if (more.size === 0) continue;
    const found = readBack(reading, { place: place - 1, sum: next, pieces: left, made: more });
    if (found) return found;
  }
  failed.add(key);
  return undefined;
}

/** So many of one size more, by every way to take them out of its rows. */
function withTaken(
  { sizes }: ProofSearch,
  made: Made,
  { place, taken }: { readonly place: number; readonly taken: number },
): Made {
  const into = new Map<string, RowCounts>();
  for (const counts of made.values())
    for (const rows of splits(sizes[place]?.rows ?? [], taken)) {
      const more = [rows, ...counts];
      const text = knownCounts(sizes.slice(place), more);
      if (!into.has(text)) into.set(text, more);
    }
  return into;
}

function provedOf(q: ProofSearch, sum: number, made: Made): RowCounts | undefined {
  return [...made.values()].find((counts) => {
    const { least, most } = q.provedBetween(counts);
    return sum >= least && sum <= most;
  });
}

/** The same text for picks that are known alike, whatever their sizes. */
export function knownCounts(sizes: readonly RowsOfSize[], counts: RowCounts): string {
  const byKnown = new Map<number, number[]>();
  for (const [place, { rows }] of sizes.entries())
    for (const [row, { known }] of rows.entries()) {
      const count = counts[place]?.[row] ?? 0;
      if (known !== 0 && count > 0) byKnown.set(known, [...(byKnown.get(known) ?? []), count]);
    }
  return [...byKnown]
    .toSorted(([a], [b]) => a - b)
    .map(([known, list]) => `${known}:${list.toSorted((a, b) => a - b).join(',')}`)
    .join(';');
}

/** Every way to take so many out of the rows, the first listed used up first. */
function* splits(rows: readonly ShimRow[], taken: number): Generator<readonly number[]> {
  const [first, ...rest] = rows;
  if (!first) {
    if (taken === 0) yield [];
    return;
  }
  for (let count = Math.min(first.count, taken); count >= 0; count -= 1)
    for (const others of splits(rest, taken - count)) yield [count, ...others];
}

function leastSum(sizes: readonly ShimSize[], pieces: number): number {
  return sumOfFirst(sizes.toReversed(), pieces);
}

function mostSum(sizes: readonly ShimSize[], pieces: number): number {
  return sumOfFirst(sizes, pieces);
}

function sumOfFirst(sizes: readonly ShimSize[], pieces: number): number {
  let [sum, left] = [0, pieces];
  for (const { steps, count } of sizes) {
    const taken = Math.min(count, left);
    sum += taken * steps;
    left -= taken;
  }
  return sum;
}
