/**
 * Twist drill series as compact rows: rules where a rule is exact, else the sizes in order.
 * First-load weight counts on a phone, so the two lists are bare figures; names follow from their place.
 */

// #1 to #97 in tenths of a thou. Source: GNU units 2.22 drillgauge table; #81 to #97 interpolated inside that table.
export const numberTenThousandths = `
2280 2210 2130 2090 2055 2040 2010 1990 1960 1935 1910 1890 1850 1820 1800 1770 1730 1695 1660 1610
1590 1570 1540 1520 1495 1470 1440 1405 1360 1285 1200 1160 1130 1110 1100 1065 1040 1015 995 980
960 935 890 860 820 810 785 760 730 700 670 635 595 550 520 465 430 420 410 400 390 380 370 360 350
330 320 310 292 280 260 250 240 225 210 200 180 160 145 135 130 125 120 115 110 105 100 95 91 87 83
79 75 71 67 63 59`;

// A to Z in thou. Source: GNU units 2.22 drill letter table.
export const letterThousandths = `
234 238 242 246 250 257 261 266 272 277 281 290 295 302 316 323 332 339 348 358 368 377 386 397 404 413`;

// Fractions go by n/64 in, exact. Charts end at 1 in; insert drills for 1 in threads (1-1/64, 1-1/32) lie above it.
export const largestSixtyFourths = 96;

// Metric sizes made as standard, in hundredths of a millimetre: first, last, and the sizes inside each round of `every`.
// Source: BS 328 list, as a rule.
export const metricRule = [
  { first: 20, last: 98, every: 10, at: [0, 2, 5, 8] },
  { first: 100, last: 295, every: 5, at: [0] },
  { first: 300, last: 1390, every: 10, at: [0] },
  { first: 1400, last: 2575, every: 25, at: [0] },
] as const;
