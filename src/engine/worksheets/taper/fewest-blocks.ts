import { inCommonSteps } from '../../length/common-step.ts';
import { byLength, isLess, minus, plus, zero, type Length } from '../../length/length.ts';

/** What is stood up: `high` less `low`. */
export type Stood = { readonly high: readonly Length[]; readonly low?: Length | undefined };

type Pair = { readonly sum: number; readonly one: number; readonly other: number };
type Between = { readonly least: number; readonly most: number };

/** Blocks thinnest first, in whole steps, and the sums of any two, least first. A block is known by its rank. */
type Table = {
  readonly sizes: readonly number[];
  readonly pairs: readonly Pair[];
  /** The height wanted, in quarters of a step. */
  readonly quarters: number;
};

type Stack = { readonly high: readonly number[]; readonly low?: number | undefined; readonly off: number };

const MOST_BLOCKS = 5;
const MOST_STEPS = 2 ** 50; // whole steps below this are exact in a JS number, four times over
const MOST_LOOK_UPS = 1_500_000; // chosen: what a slow phone does in a moment

/**
 * The fewest blocks of which those under the high roll, less one under the low roll where `over` says so, come to a height.
 *
 * Units:   everything in whole steps of the largest step that measures every block: exact.
 * Range:   1 to 5 blocks under the high roll, each once. `undefined` where no such stack lies within `half` of the height, or
 *          there are too many blocks to try them all. Of as many blocks the nearest; over a block, the one over the thinnest.
 * Source:  all sums of two, sorted once; what the others leave of the height is looked up among them.
 */
export function fewestBlocks(q: {
  readonly blocks: readonly Length[];
  readonly height: Length;
  readonly half: Length;
  readonly over: 'plate' | 'block';
}): Stood | undefined {
  const { height, half, over } = q;
  const blocks = q.blocks.toSorted(byLength);
  const [least, most] = [minus(height, half), plus(height, half)];
  const steps = inCommonSteps(
    blocks.map((sum) => ({ sum, count: 1 })),
    [height, least, most],
  );
  const sizes = steps.sizes.map(Number);
  const between = { least: Number(steps.ceiling(least)), most: Number(steps.floor(most)) };
  if (isLess(height, zero) || Math.max(between.most, ...sizes) > MOST_STEPS) return undefined;
  const table = { sizes, pairs: pairsOf(sizes), quarters: Number(steps.quarters(height)) };
  for (let count = 1; count <= MOST_BLOCKS; count += 1) {
    if (lookUps(count, sizes.length) * (over === 'block' ? sizes.length : 1) > MOST_LOOK_UPS)
      return undefined;
    const best = over === 'block' ? overThinnest(table, count, between) : nearest(table, count, between);
    if (best) return stoodOf(blocks, best);
  }
  return undefined;
}

function pairsOf(sizes: readonly number[]): readonly Pair[] {
  return sizes
    .flatMap((size, one) =>
      sizes.slice(one + 1).map((larger, next) => ({ sum: size + larger, one, other: one + 1 + next })),
    )
    .sort((a, b) => a.sum - b.sum);
}

function lookUps(count: number, blocks: number): number {
  return blocks ** Math.max(0, count - 2);
}

function stoodOf(blocks: readonly Length[], { high, low }: Stack): Stood {
  const block = low === undefined ? undefined : blocks[low];
  return { high: high.flatMap((rank) => blocks[rank] ?? []), ...(block && { low: block }) };
}

function overThinnest(table: Table, count: number, { least, most }: Between): Stack | undefined {
  for (const [low, lift] of table.sizes.entries()) {
    const best = nearest(table, count, { least: least + lift, most: most + lift }, low);
    if (best) return best;
  }
  return undefined;
}

/** Of all stacks of so many blocks between both the nearest to the height. */
function nearest(table: Table, count: number, between: Between, low?: number): Stack | undefined {
  const lift = low === undefined ? 0 : (table.sizes[low] ?? 0);
  let best: Stack | undefined;
  eachStack({ table, without: low }, { count, above: -1, between }, (high, sum) => {
    const off = Math.abs(4 * (sum - lift) - table.quarters);
    if (!best || off < best.off) best = { high, low, off };
  });
  return best;
}

type Left = {
  readonly count: number;
  /** Only blocks of a higher rank: each stack is met once, its thinnest block first. */
  readonly above: number;
  readonly between: Between;
};

/** Every stack of so many blocks between both. */
function eachStack(
  of: { readonly table: Table; readonly without: number | undefined },
  { count, above, between }: Left,
  found: (high: readonly number[], sum: number) => void,
): void {
  const { sizes } = of.table;
  if (count === 2) return eachPair(of, { above, between }, found);
  for (let rank = above + 1; rank < sizes.length; rank += 1) {
    const size = sizes[rank] ?? 0;
    // Those still to come are no thinner.
    if (size * count > between.most) break;
    if (rank === of.without) continue;
    if (count === 1) {
      if (size >= between.least) found([rank], size);
      continue;
    }
    const left = { least: between.least - size, most: between.most - size };
    eachStack(of, { count: count - 1, above: rank, between: left }, (high, sum) =>
      found([rank, ...high], sum + size),
    );
  }
}

function eachPair(
  { table: { pairs }, without }: { readonly table: Table; readonly without: number | undefined },
  { above, between }: Pick<Left, 'above' | 'between'>,
  found: (high: readonly number[], sum: number) => void,
): void {
  for (let at = firstFrom(pairs, between.least); at < pairs.length; at += 1) {
    const pair = pairs[at];
    if (!pair || pair.sum > between.most) break;
    if (pair.one > above && pair.one !== without && pair.other !== without)
      found([pair.one, pair.other], pair.sum);
  }
}

/** The first pair that is not below a sum. */
function firstFrom(pairs: readonly Pair[], least: number): number {
  let [low, high] = [0, pairs.length];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if ((pairs[middle]?.sum ?? 0) < least) low = middle + 1;
    else high = middle;
  }
  return low;
}
