import { dividedBy, floatMm, sum, lengthFromFloat, minus, plus, type Length } from '../../length/length.ts';
import { STATISTICS_STEP, typedEstimate } from '../../reading/estimate.ts';
import { shimsFromDrawer } from '../../shim/shims.ts';
import { radians } from '../../length/angle.ts';
import { fewestBlocks, type Stood } from './fewest-blocks.ts';

/** The blocks there are: one of each unless a size is listed twice. */
export type BlocksOnHand = {
  readonly blocks: readonly Length[];
  /** The finest difference that counts: a stack within half of it is the one wanted. */
  readonly finest: Length;
};

export type SineStack = {
  /** What the high roll has to stand above the low one: bar · sin(angle). */
  readonly height: Length;
  /** Under the high roll, thickest first. */
  readonly high: readonly Length[];
  /** Under the low roll, where no stack is as thin as the height. */
  readonly low?: Length | undefined;
  /** How far the stack is from the height. */
  readonly off: Length;
  /** That in minutes of the angle, floating point. */
  readonly offMinutes: number;
};

/** Past it a sine bar magnifies every error of its blocks. Common practice, no source. */
export const MOST_SINE_DEGREES = 60;

/**
 * The fewest gauge blocks that set a sine bar to an angle.
 *
 * Units:   height = bar · sin(angle), floating point back to a millionth of a micrometre; the stack is exact. As the shims are
 *          picked: of all sums within half the finest difference of the blocks the one of fewest blocks, then the nearest; where
 *          none is that near, the nearest of all. Too low for any block, a block goes under the low roll too.
 * Range:   an angle above 0 to 60°; each block once.
 * Refuses: nothing; undefined where there is no block, or the angle is out of range.
 * Source:  geometry; fewest-blocks.ts for up to five blocks, shim/shims.ts for more: both exact.
 */
export function sineStack({
  bar,
  degrees,
  onHand: { blocks, finest },
}: {
  readonly bar: Length;
  readonly degrees: number;
  readonly onHand: BlocksOnHand;
}): SineStack | undefined {
  if (blocks.length === 0 || degrees <= 0 || degrees > MOST_SINE_DEGREES) return undefined;
  const height = lengthFromFloat(floatMm(bar) * Math.sin(radians(degrees)), STATISTICS_STEP);
  const half = dividedBy(finest, 2);
  const pick =
    pickOf(fewestBlocks({ blocks, height, half, over: 'plate' })) ??
    // No stack is that thin, or just so high: one more block under the low roll.
    pickOf(fewestBlocks({ blocks, height, half, over: 'block' })) ??
    pickByShims(blocks, height, half);
  if (!pick) return undefined;
  const off = minus(minus(pick.total, pick.low ?? NOTHING), height);
  return {
    height,
    high: pick.blocks,
    ...(pick.low && { low: pick.low }),
    off,
    offMinutes: (floatMm(off) / (floatMm(bar) * Math.cos(radians(degrees)))) * (180 / Math.PI) * 60,
  };
}

const NOTHING = lengthFromFloat(0, STATISTICS_STEP);

type Pick = {
  readonly blocks: readonly Length[];
  readonly total: Length;
  readonly low?: Length;
};

/** More than a handful of blocks, too many to try, or none that near: then the nearest. */
function pickByShims(blocks: readonly Length[], height: Length, half: Length): Pick | undefined {
  const found = shimsFromDrawer({
    drawer: blocks.map((block, index) => ({
      id: String(index),
      name: '',
      thickness: typedEstimate(block),
      count: 1,
    })),
    lower: minus(height, half),
    upper: plus(height, half),
    aim: height,
  });
  if (!found.ok || found.value.picked.length === 0) return undefined;
  const { picked, total } = found.value;
  return { blocks: picked.flatMap(({ piece }) => blocks[Number(piece.id)] ?? []), total };
}

function pickOf(stood: Stood | undefined): Pick | undefined {
  if (!stood) return undefined;
  const { high, low } = stood;
  return { blocks: high.toReversed(), total: sum(high), ...(low && { low }) };
}
