/**
 * Standard tolerances of ISO 286-1, micrometres, by grade. Each row holds up to and including its step.
 * Source: ISO 286-1:2010 table 1. IT4 from memory of the same table; it serves the delta rule of grade 5 holes alone, and
 * every hole of grade 5 in the reference agrees with it.
 */
export const toleranceStepsMm = '3 6 10 18 30 50 80 120 180 250 315 400 500';

export const toleranceMicrons = {
  4: '3 4 4 5 6 7 8 10 12 14 16 18 20',
  5: '4 5 6 8 9 11 13 15 18 20 23 25 27',
  6: '6 8 9 11 13 16 19 22 25 29 32 36 40',
  7: '10 12 15 18 21 25 30 35 40 46 52 57 63',
  8: '14 18 22 27 33 39 46 54 63 72 81 89 97',
  9: '25 30 36 43 52 62 74 87 100 115 130 140 155',
  10: '40 48 58 70 84 100 120 140 160 185 210 230 250',
  11: '60 75 90 110 130 160 190 220 250 290 320 360 400',
  12: '100 120 150 180 210 250 300 350 400 460 520 570 630',
  13: '140 180 220 270 330 390 460 540 630 720 810 890 970',
  14: '250 300 360 430 520 620 740 870 1000 1150 1300 1400 1550',
} as const;
