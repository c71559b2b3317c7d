import { lengthOf, type Length } from '../../../length/length.ts';

const SOURCE = 'common practice, no source';

/** How much smaller than its recess, or larger than its stem, a ring is made: on the diameter. */
export type RingClearance = {
  readonly lower: Length;
  readonly aim: Length;
  readonly upper: Length;
  readonly source: string;
};

function clearance(lower: string, aim: string, upper: string): RingClearance {
  return { lower: lengthOf(lower), aim: lengthOf(aim), upper: lengthOf(upper), source: SOURCE };
}

/** The side that locates the ring is close, so that it runs true; the other is free, so that it can't fight the first. */
export const usualRingClearances: Readonly<
  Record<'in' | 'mm', Readonly<Record<'locates' | 'free', RingClearance>>>
> = {
  in: {
    locates: clearance('.001 in', '.003 in', '.005 in'),
    free: clearance('.010 in', '.020 in', '.030 in'),
  },
  mm: {
    locates: clearance('0.02 mm', '0.07 mm', '0.12 mm'),
    free: clearance('0.25 mm', '0.50 mm', '0.75 mm'),
  },
};

/** The thinnest a ring is made, through its thickness and through its wall: less is foil. Common practice, no source. */
export const leastRing = { in: lengthOf('.020 in'), mm: lengthOf('0.6 mm') } as const;
