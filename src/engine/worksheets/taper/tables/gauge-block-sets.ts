import { lengthOf, plus, sameLength, times, type Length } from '../../../length/length.ts';

/**
 * What is in the usual sets, by their series. ISO 3650 and ASME B89.1.9 give grades and sizes of single blocks, not what a
 * set holds: that is common practice, and makers' sets differ. So single blocks can be left out, and one's own put in.
 */
type Series = {
  readonly from: string;
  readonly step: string;
  readonly count: number;
  readonly unit: 'in' | 'mm';
};

export type BlockSetName = 'inch-81' | 'metric-88' | 'metric-47';

export type BlockSet = {
  readonly name: BlockSetName;
  readonly words: string;
  readonly blocks: readonly Length[];
  /** The finest difference that two stacks of it can have. */
  readonly finest: Length;
};

const inch = (from: string, step: string, count: number): Series => ({ from, step, count, unit: 'in' });
const metric = (from: string, step: string, count: number): Series => ({ from, step, count, unit: 'mm' });

function blocksIn(series: readonly Series[]): readonly Length[] {
  return series.flatMap(({ from, step, count, unit }) =>
    Array.from({ length: count }, (_, index) =>
      plus(lengthOf(`${from} ${unit}`), times(lengthOf(`${step} ${unit}`), index)),
    ),
  );
}

export const blockSets: Readonly<Record<BlockSetName, BlockSet>> = {
  'inch-81': {
    name: 'inch-81',
    words: '81 blocks in inches',
    blocks: blocksIn([
      inch('.1001', '.0001', 9),
      inch('.101', '.001', 49),
      inch('.050', '.050', 19),
      inch('1', '1', 4),
    ]),
    finest: lengthOf('.0001 in'),
  },
  'metric-88': {
    name: 'metric-88',
    words: '88 metric blocks',
    blocks: blocksIn([
      metric('1.0005', '0', 1),
      metric('1.001', '0.001', 9),
      metric('1.01', '0.01', 49),
      metric('0.5', '0.5', 19),
      metric('10', '10', 10),
    ]),
    finest: lengthOf('0.0005 mm'),
  },
  'metric-47': {
    name: 'metric-47',
    words: '47 metric blocks',
    blocks: blocksIn([
      metric('1.005', '0', 1),
      metric('1.01', '0.01', 9),
      metric('1.1', '0.1', 9),
      metric('1', '1', 24),
      metric('25', '25', 4),
    ]),
    finest: lengthOf('0.005 mm'),
  },
};

/** A set without what the shop's own lacks: sizes that are in no set change nothing. */
export function without(blocks: readonly Length[], lacking: readonly Length[]): readonly Length[] {
  return blocks.filter((block) => !lacking.some((one) => sameLength(one, block)));
}
