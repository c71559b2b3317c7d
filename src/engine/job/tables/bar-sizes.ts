import { lengthOf, type Length } from '../../length/length.ts';

/**
 * Round bar as it is sold: from one size up, so much to the next.
 *
 * Source: common practice, from memory: inch bar by sixteenths to 2 in, by eighths to 4, by quarters above.
 */
export const inchBars: readonly { readonly upTo: Length; readonly step: Length }[] = [
  { upTo: lengthOf('2 in'), step: lengthOf('1/16 in') },
  { upTo: lengthOf('4 in'), step: lengthOf('1/8 in') },
  { upTo: lengthOf('1000 in'), step: lengthOf('1/4 in') },
];

/** Metric round bar, millimetres. Source: common practice, dealers' lists of bright bar, from memory. */
export const metricBars: readonly Length[] =
  '6 8 10 12 14 15 16 18 20 22 25 28 30 32 35 36 40 45 50 55 60 65 70 75 80 85 90 95 100 110 120 130 140 150'
    .split(' ')
    .map((size) => lengthOf(`${size} mm`));

/** Past the last of them. */
export const metricBarStep = lengthOf('10 mm');

/** Bought so much larger than the part, on the diameter: the skin comes off all round. Common practice, no source. */
export const barCleanUp = { in: lengthOf('1/32 in'), mm: lengthOf('1 mm') } as const;
