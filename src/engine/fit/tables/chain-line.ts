import { lengthOf } from '../../length/length.ts';

/**
 * How far a sprocket's line or a wheel's centre may be off, to either side: common practice, no source. The metric figure is
 * chosen round, not converted.
 */
export const chainLine = { in: lengthOf('.030 in'), mm: lengthOf('0.80 mm') } as const;
