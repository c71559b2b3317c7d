import { lengthOf } from '../../length/length.ts';
import type { Length } from '../../length/length.ts';

/** A bolt or pin that can be bought: '1/2 in', 'M12', with its nominal shank. A real shank measures a little less. */
export type Shank = { readonly name: string; readonly family: 'inch' | 'metric'; readonly size: Length };

// Inch: the bolt sizes of ASME B18.2.8 up to 1 in; 9/16 and those past 1 in from memory of ASME B18.2.1.
const INCH = '1/4 5/16 3/8 7/16 1/2 9/16 5/8 3/4 7/8 1 1-1/8 1-1/4 1-3/8 1-1/2';

// Metric: bolt sizes of ISO 273 from M5 to M30, without M7, which few shops can buy; M33 and M36 from memory of ISO 262.
const METRIC = '5 6 8 10 12 14 16 18 20 22 24 27 30 33 36';

export const inchShanks: readonly Shank[] = INCH.split(' ').map((size) => ({
  name: `${size} in`,
  family: 'inch',
  size: lengthOf(`${size} in`),
}));

export const metricShanks: readonly Shank[] = METRIC.split(' ').map((size) => ({
  name: `M${size}`,
  family: 'metric',
  size: lengthOf(`${size} mm`),
}));
