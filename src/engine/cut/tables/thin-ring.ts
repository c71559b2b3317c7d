import { lengthOf } from '../../length/length.ts';

/** A ring with less wall or less thickness than this springs in the jaws: common practice, no source. */
export const thinRing = { wall: lengthOf('.125 in'), thickness: lengthOf('.063 in') } as const;
