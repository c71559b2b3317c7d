import { pickOfExactly, type Effort } from './shim-bits.ts';
import {
  numberAt,
  countsOf,
  emptyLayer,
  firstLayer,
  leavesThinner,
  NO_PIECES,
  push,
  settle,
  withSize,
  type Layer,
  type ShimSize,
  type Trail,
} from './shim-layers.ts';

export type { ShimSize } from './shim-layers.ts';

/**
 * What is searched for, in steps. The aim may fall between two steps, so it is given in quarters of a step: which step is
 * nearer, or that both are as near, is all that matters of it.
 */
export type ShimAim = { readonly least: number; readonly most: number; readonly aimQuarters: number };

type Best = {
  readonly pieces: number;
  /** How far from the aim, in quarters of a step. */
  readonly off: number;
  readonly node: number;
  /** Place of the thinnest size it uses. */
  readonly thinnest: number;
};

type Between = { readonly least: number; readonly most: number };

/** Sums that would still be an improvement: between these, with so many pieces or fewer. */
type Window = Between & { readonly pieces: number };

type Order = {
  readonly windows: (best: Best | undefined) => readonly Window[];
  readonly compare: (one: Best, other: Best) => number;
  readonly isWanted: (steps: number) => boolean;
  readonly aimQuarters: number;
};

type Drawer = {
  readonly sizes: readonly ShimSize[];
  /** The sum of the 0, 1, 2 ... thickest pieces. */
  readonly thickest: readonly number[];
};

// Chosen by trying out. Of few sizes the layers are soon through, so little is spent on bits; a thousand hardly two alike
// are theirs, up to some tens of megabytes.
const EFFORT_A_SIZE = 50_000;
const MOST_EFFORT = 24_000_000;

/**
 * The fewest pieces whose sum lies inside; of those the nearest to the aim; of those the pick that leaves the thinnest
 * pieces in the drawer. How many of each size, or undefined where no sum lies inside.
 *
 * Range:   sizes thickest first, all above zero, no two alike; every sum below 2^50 steps, so that each is exact.
 * Source:  with the least count that could do, and one more, and so on, by bits (shim-bits.ts). Where that gets too much,
 *          as with few sizes far apart on a fine step, dynamic programming over the sizes, thickest first; a sum is dropped
 *          only where even the thickest pieces left can't make an improvement of it.
 */
export function fewestInside(sizes: readonly ShimSize[], aim: ShimAim): readonly number[] | undefined {
  const drawer = { sizes, thickest: runningSums(sizes) };
  const mostPieces = runningSums(sizes.toReversed()).findLastIndex((sum) => sum <= aim.most);
  let pieces = drawer.thickest.findIndex((sum) => sum >= aim.least);
  if (pieces === -1 || aim.most < aim.least) return undefined;
  if (pieces === 0) return aim.most < 0 ? undefined : sizes.map(() => 0);
  for (const effort = effortFor(sizes); pieces <= mostPieces; pieces += 1) {
    const found = pickOfExactly(pieces, sizes, aim, effort);
    if (found === 'too-much') break;
    if (found !== 'none') return found;
  }
  for (let more = 1; pieces <= mostPieces; more *= 2) {
    const found = search(drawer, fewestFirst(aim, pieces));
    if (found || pieces === mostPieces) return found;
    pieces = Math.min(mostPieces, pieces + more);
  }
  return undefined;
}

function effortFor({ length }: readonly ShimSize[]): Effort {
  return { words: Math.min(MOST_EFFORT, EFFORT_A_SIZE * length) };
}

/**
 * The sum nearest to the aim, whatever the limits; of those the one of fewest pieces; of those the pick that leaves the
 * thinnest pieces in the drawer. No pieces at all is one of the sums.
 *
 * Range, source: as `fewestInside`.
 */
export function nearestSum(sizes: readonly ShimSize[], aimQuarters: number): readonly number[] {
  const offOfNothing = Math.abs(aimQuarters);
  const leastOff = fromNearestStep(aimQuarters);
  for (let off = leastOff; off < offOfNothing; off = 8 * off + 4) {
    const found = fewestInside(sizes, { ...within(aimQuarters, off), aimQuarters });
    // No sum can lie nearer than a step does. Otherwise something is known to lie within this much, and what lies
    // further off needs no look.
    if (found && off === leastOff) return found;
    if (found) return nearestFrom(sizes, aimQuarters, { pieces: Infinity, off });
  }
  return nearestFrom(sizes, aimQuarters, { pieces: 0, off: offOfNothing });
}

function nearestFrom(
  sizes: readonly ShimSize[],
  aimQuarters: number,
  start: Pick<Best, 'pieces' | 'off'>,
): readonly number[] {
  const drawer = { sizes, thickest: runningSums(sizes) };
  const found = search(drawer, nearestFirst(aimQuarters), { ...start, node: NO_PIECES, thinnest: -1 });
  return found ?? sizes.map(() => 0);
}

/** How far the nearest whole step is, in quarters. */
function fromNearestStep(quarters: number): number {
  return Math.abs(quarters - 4 * Math.round(quarters / 4));
}

function fewestFirst(aim: ShimAim, pieces: number): Order {
  const { least, most, aimQuarters } = aim;
  return {
    windows: (best) => {
      if (!best) return [{ least, most, pieces }];
      const nearer = within(aimQuarters, best.off - 1);
      return [
        { least, most, pieces: best.pieces - 1 },
        { least: Math.max(least, nearer.least), most: Math.min(most, nearer.most), pieces: best.pieces },
      ];
    },
    compare: (one, other) => one.pieces - other.pieces || one.off - other.off,
    isWanted: (steps) => steps >= least && steps <= most,
    aimQuarters,
  };
}

function nearestFirst(aimQuarters: number): Order {
  return {
    windows: (best) =>
      best
        ? [
            { ...within(aimQuarters, best.off), pieces: best.pieces - 1 },
            { ...within(aimQuarters, best.off - 1), pieces: Infinity },
          ]
        : [],
    compare: (one, other) => one.off - other.off || one.pieces - other.pieces,
    isWanted: () => true,
    aimQuarters,
  };
}

/** The steps at most so many quarters from the aim. */
function within(aimQuarters: number, quarters: number): Between {
  return { least: Math.ceil((aimQuarters - quarters) / 4), most: Math.floor((aimQuarters + quarters) / 4) };
}

/** What 0, 1, 2 ... pieces come to, taken in the order listed. */
function runningSums(sizes: readonly ShimSize[]): readonly number[] {
  const sums = [0];
  for (const { steps, count } of sizes)
    for (let piece = 0; piece < count; piece += 1) sums.push(numberAt(sums, sums.length - 1) + steps);
  return sums;
}

// Sizes are taken in thickest first, and nothing found with a thinner size replaces its equal found without: that leaves
// the thinnest pieces in the drawer.
function search(drawer: Drawer, order: Order, start?: Best): readonly number[] | undefined {
  const { sizes } = drawer;
  if (!start && order.isWanted(0)) return sizes.map(() => 0);
  const trail: Trail = { size: [], taken: [], before: [] };
  let best = start;
  let layer = firstLayer();
  let passed = 0;
  for (const [place, size] of sizes.entries()) {
    const windows = order.windows(best);
    const most = Math.max(...windows.map((range) => range.most));
    const pieces = Math.max(...windows.map((range) => range.pieces));
    passed += size.count;
    const grown = withSize(layer, size, { most, pieces });
    ({ layer, best } = sifted(grown, { place, passed, drawer, order, best, trail }));
    if (layer.sums.length === 0) break;
  }
  return best && countsOf(trail, best.node, sizes.length);
}

type Stage = {
  /** Of the size in hand. */
  readonly place: number;
  /** Pieces of it and of all thicker ones. */
  readonly passed: number;
  readonly drawer: Drawer;
  readonly order: Order;
  readonly best: Best | undefined;
  readonly trail: Trail;
};

/** The best so far, and what could still become better with the thinner sizes that follow. */
function sifted(grown: Layer, stage: Stage): { readonly layer: Layer; readonly best: Best | undefined } {
  const { place, order, trail } = stage;
  const layer = emptyLayer();
  let { best } = stage;
  let windows = order.windows(best);
  for (const [index, steps] of grown.sums.entries()) {
    const pieces = numberAt(grown.pieces, index);
    const taken = numberAt(grown.taken, index);
    const isFound = taken > 0 && order.isWanted(steps);
    const isPromising = canImprove(steps, pieces, windows, stage);
    if (!isFound && !isPromising) continue;
    const found = { pieces, off: Math.abs(4 * steps - order.aimQuarters), thinnest: place };
    const node = settle(trail, { size: place, taken, before: numberAt(grown.nodes, index) });
    if (isFound && isBetter({ ...found, node }, best, stage)) {
      best = { ...found, node };
      windows = order.windows(best);
    }
    if (isPromising) push(layer, steps, pieces, node, 0);
  }
  return { layer, best };
}

/** Whether the thickest pieces that follow could lift a sum into one of the windows. */
// Asked of every sum, hundreds of thousands of times: nothing is made for it.
function canImprove(
  steps: number,
  pieces: number,
  windows: readonly Window[],
  { passed, drawer: { thickest } }: Stage,
): boolean {
  for (const range of windows) {
    const more = Math.min(range.pieces - pieces, thickest.length - 1 - passed);
    if (more < 0 || steps > range.most) continue;
    if (steps + numberAt(thickest, passed + more) - numberAt(thickest, passed) >= range.least) return true;
  }
  return false;
}

function isBetter(found: Best, best: Best | undefined, { order, drawer, trail }: Stage): boolean {
  if (!best) return true;
  const compared = order.compare(found, best);
  if (compared !== 0 || found.thinnest !== best.thinnest) return compared < 0;
  const counts = (node: number) => countsOf(trail, node, drawer.sizes.length);
  return leavesThinner(counts(found.node), counts(best.node));
}
