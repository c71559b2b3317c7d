import { numberAt, type ShimSize } from './shim-layers.ts';

/**
 * Sums as bits. With a given number of pieces only sums between narrow bounds matter, and adding a size to all of them at
 * once is a shift of their bits: a thousand sizes hardly two alike take no longer than a few.
 */

type ShimAim = { readonly least: number; readonly most: number; readonly aimQuarters: number };

/** How many words of bits may still be worked through and kept. */
export type Effort = { words: number };

type Bits = {
  /** The sum that the first bit stands for. */
  readonly least: number;
  readonly width: number;
  readonly words: Uint32Array;
  readonly isEmpty: boolean;
};

/** By the number of pieces: 0, 1, 2 ... */
type Sums = readonly Bits[];

type Left = { readonly sum: number; readonly pieces: number };

/**
 * The best pick of exactly so many pieces, as `fewestInside` in shim-search.ts means it: how many of each size; `none`
 * where no sum lies inside; `too-much` where the effort ran out.
 *
 * Range:   one piece or more; sizes thickest first, all above zero, no two alike.
 * Source:  subset sums by bit shifts, one set for each number of pieces. The pick is read back from the thinnest size on,
 *          as few of each as will do: that leaves the thinnest pieces in the drawer.
 */
export function pickOfExactly(
  pieces: number,
  sizes: readonly ShimSize[],
  aim: ShimAim,
  effort: Effort,
): readonly number[] | 'none' | 'too-much' {
  const kept: Sums[] = [];
  let sums = noneTaken(pieces, sizes, aim, effort);
  for (const size of sizes) {
    sums = withSize(sums, size, effort);
    if (effort.words < 0) return 'too-much';
    kept.push(sums);
    // No sum can lie nearer than a step does, and what is thinner is to stay in the drawer.
    if (nearestStepsTo(aim).some((sum) => isInside(sum, aim) && holds(sums[pieces], sum))) break;
  }
  const wanted = nearestInside(sums[pieces], aim);
  return wanted.length === 0 ? 'none' : readBack(wanted, pieces, sizes, kept);
}

/** What so many pieces can come to. */
export type Reach = {
  /** The sums inside. */
  readonly sums: readonly number[];
  /** Whether so many pieces of the sizes up to this place, thickest first, can make a sum that leads there. */
  readonly isMade: (place: number, sum: number, pieces: number) => boolean;
};

/**
 * Every sum between these that exactly so many pieces come to, and the way to read them back; `too-much` where the effort
 * ran out.
 *
 * Range, source: as `pickOfExactly`. `isMade` is asked of what is left of one of the sums once thinner pieces are taken off.
 */
export function reachOfExactly(
  pieces: number,
  sizes: readonly ShimSize[],
  { least, most }: { readonly least: number; readonly most: number },
  effort: Effort,
): Reach | 'too-much' {
  const kept: Sums[] = [];
  let sums = noneTaken(pieces, sizes, { least, most, aimQuarters: 0 }, effort);
  for (const size of sizes) {
    sums = withSize(sums, size, effort);
    if (effort.words < 0) return 'too-much';
    kept.push(sums);
  }
  const all = sums[pieces];
  const inside: number[] = [];
  const highest = all ? Math.min(most, all.least + all.width - 1) : -1;
  for (let sum = Math.max(0, least); sum <= highest; sum += 1) if (holds(all, sum)) inside.push(sum);
  return {
    sums: inside,
    isMade: (place, sum, left) => (place < 0 ? sum === 0 && left === 0 : holds(kept[place]?.[left], sum)),
  };
}

/** Only sums that the thickest and the thinnest pieces there are can bring inside have a bit. */
function noneTaken(
  pieces: number,
  sizes: readonly ShimSize[],
  { least, most }: ShimAim,
  effort: Effort,
): Sums {
  const thickest = sumsOfFirst(pieces, sizes);
  const thinnest = sumsOfFirst(pieces, sizes.toReversed());
  return thickest.map((highest, count) => {
    const low = Math.max(0, least - numberAt(thickest, pieces - count));
    const width = Math.max(0, Math.min(highest, most - numberAt(thinnest, pieces - count)) - low + 1);
    effort.words -= Math.ceil(width / 32);
    const words = new Uint32Array(effort.words < 0 ? 0 : Math.ceil(width / 32));
    const isNothing = count === 0 && low === 0 && width > 0;
    if (isNothing) words[0] = 1;
    return { least: low, width, words, isEmpty: !isNothing };
  });
}

/** What the first 0, 1, 2 ... so many pieces come to. */
function sumsOfFirst(pieces: number, sizes: readonly ShimSize[]): readonly number[] {
  const sums = [0];
  for (const { steps, count } of sizes)
    for (let piece = 0; piece < count && sums.length <= pieces; piece += 1)
      sums.push(numberAt(sums, sums.length - 1) + steps);
  return sums;
}

/** One piece of it after the other, the most pieces first: so no piece is counted twice. */
function withSize(before: Sums, { steps, count }: ShimSize, effort: Effort): Sums {
  const grown = [...before];
  for (let piece = 0; piece < Math.min(count, before.length - 1); piece += 1)
    for (let of = grown.length - 1; of >= 1; of -= 1) {
      const [from, into] = [grown[of - 1], grown[of]];
      if (!from || !into || from.isEmpty || into.width === 0) continue;
      effort.words -= 2 * into.words.length;
      if (effort.words < 0) return grown;
      grown[of] = joined(into, from, steps);
    }
  return grown;
}

/** Every sum of `from` a size higher, beside those there are; what falls outside the bounds is of no use. */
function joined(into: Bits, from: Bits, steps: number): Bits {
  const by = from.least + steps - into.least;
  const whole = Math.floor(by / 32);
  const part = by - whole * 32;
  const words = into.words.slice();
  const last = Math.min(words.length - 1, whole + from.words.length);
  for (let word = Math.max(0, whole); word <= last; word += 1) {
    const moved = wordOf(from, word - whole) << part;
    const carried = part === 0 ? 0 : wordOf(from, word - whole - 1) >>> (32 - part);
    words[word] = (words[word] ?? 0) | moved | carried;
  }
  const over = words.length * 32 - into.width;
  words[words.length - 1] = ((words[words.length - 1] ?? 0) << over) >>> over;
  return { ...into, words, isEmpty: false };
}

function wordOf({ words }: Bits, place: number): number {
  return words[place] ?? 0;
}

function holds(bits: Bits | undefined, sum: number): boolean {
  if (!bits) return false;
  const bit = sum - bits.least;
  if (bit < 0 || bit >= bits.width) return false;
  return ((wordOf(bits, Math.floor(bit / 32)) >>> (bit % 32)) & 1) === 1;
}

function isInside(sum: number, { least, most }: ShimAim): boolean {
  return sum >= least && sum <= most;
}

/** The whole step nearest to the aim; both where it lies half-way between two. */
function nearestStepsTo({ aimQuarters }: ShimAim): readonly number[] {
  const nearest = Math.round(aimQuarters / 4);
  return 4 * nearest - aimQuarters === 2 ? [nearest - 1, nearest] : [nearest];
}

/** The sums inside that lie nearest to the aim: none, one, or one on either side of it. */
function nearestInside(bits: Bits | undefined, aim: ShimAim): readonly number[] {
  if (!bits) return [];
  const most = Math.min(aim.most, bits.least + bits.width - 1);
  let nearest: number[] = [];
  let least = Infinity;
  for (let sum = Math.max(aim.least, bits.least); sum <= most; sum += 1) {
    if (!holds(bits, sum)) continue;
    const off = Math.abs(4 * sum - aim.aimQuarters);
    if (off < least) nearest = [sum];
    else if (off === least) nearest.push(sum);
    least = Math.min(least, off);
  }
  return nearest;
}

/** From the thinnest size to the thickest, as few of each as any of the sums can do with. */
function readBack(
  wanted: readonly number[],
  pieces: number,
  sizes: readonly ShimSize[],
  kept: readonly Sums[],
): readonly number[] {
  const counts = sizes.map(() => 0);
  let left: readonly Left[] = wanted.map((sum) => ({ sum, pieces }));
  for (const [place, { steps, count }] of [...sizes.slice(0, kept.length).entries()].toReversed())
    for (let taken = 0; taken <= count; taken += 1) {
      const made = left
        .map((one) => ({ sum: one.sum - taken * steps, pieces: one.pieces - taken }))
        .filter((one) => isMadeBefore(place, one, kept));
      if (made.length === 0) continue;
      counts[place] = taken;
      left = made;
      break;
    }
  return counts;
}

function isMadeBefore(place: number, { sum, pieces }: Left, kept: readonly Sums[]): boolean {
  return place === 0 ? sum === 0 && pieces === 0 : holds(kept[place - 1]?.[pieces], sum);
}
