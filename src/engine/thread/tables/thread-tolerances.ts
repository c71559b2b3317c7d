/**
 * Tolerances of ISO metric threads, classes 6g and 6H, in thousandths of a millimetre.
 * Source: ISO 965-1 tables 1 to 5. The internal minor diameter's as the reference lists them; all others from memory.
 */
export type MetricToleranceRow = {
  readonly pitch: string;
  /** Internal minor diameter, TD1 grade 6. */
  readonly minorInternal: number;
  /** External major diameter, Td grade 6. */
  readonly majorExternal: number;
  /** How far the largest bolt stays below the basic profile, es of position g. */
  readonly allowance: number;
};

export const metricToleranceRows: readonly MetricToleranceRow[] = [
  { pitch: '0.35', minorInternal: 100, majorExternal: 85, allowance: 19 },
  { pitch: '0.4', minorInternal: 112, majorExternal: 95, allowance: 19 },
  { pitch: '0.45', minorInternal: 125, majorExternal: 100, allowance: 20 },
  { pitch: '0.5', minorInternal: 140, majorExternal: 106, allowance: 20 },
  { pitch: '0.6', minorInternal: 160, majorExternal: 125, allowance: 21 },
  { pitch: '0.7', minorInternal: 180, majorExternal: 140, allowance: 22 },
  { pitch: '0.75', minorInternal: 190, majorExternal: 140, allowance: 22 },
  { pitch: '0.8', minorInternal: 200, majorExternal: 150, allowance: 24 },
  { pitch: '1', minorInternal: 236, majorExternal: 180, allowance: 26 },
  { pitch: '1.25', minorInternal: 265, majorExternal: 212, allowance: 28 },
  { pitch: '1.5', minorInternal: 300, majorExternal: 236, allowance: 32 },
  { pitch: '1.75', minorInternal: 335, majorExternal: 265, allowance: 34 },
  { pitch: '2', minorInternal: 375, majorExternal: 280, allowance: 38 },
  { pitch: '2.5', minorInternal: 450, majorExternal: 335, allowance: 42 },
  { pitch: '3', minorInternal: 500, majorExternal: 375, allowance: 48 },
];

/** Pitch diameter tolerances of grade 6 by the thread's diameter: external (Td2) and internal (TD2). */
export type PitchDiameterRow = {
  readonly upTo: string;
  readonly pitches: Readonly<Record<string, { readonly external: number; readonly internal: number }>>;
};

export const pitchDiameterRows: readonly PitchDiameterRow[] = [
  {
    upTo: '2.8 mm',
    pitches: {
      '0.35': { external: 63, internal: 85 },
      '0.4': { external: 67, internal: 90 },
      '0.45': { external: 71, internal: 95 },
    },
  },
  {
    upTo: '5.6 mm',
    pitches: {
      '0.35': { external: 67, internal: 90 },
      '0.5': { external: 75, internal: 100 },
      '0.6': { external: 85, internal: 112 },
      '0.7': { external: 90, internal: 118 },
      '0.75': { external: 90, internal: 118 },
      '0.8': { external: 95, internal: 125 },
    },
  },
  {
    upTo: '11.2 mm',
    pitches: {
      '0.75': { external: 100, internal: 132 },
      '1': { external: 112, internal: 150 },
      '1.25': { external: 118, internal: 160 },
      '1.5': { external: 132, internal: 180 },
    },
  },
  {
    upTo: '22.4 mm',
    pitches: {
      '1': { external: 118, internal: 160 },
      '1.25': { external: 132, internal: 180 },
      '1.5': { external: 140, internal: 190 },
      '1.75': { external: 150, internal: 200 },
      '2': { external: 160, internal: 212 },
      '2.5': { external: 170, internal: 224 },
    },
  },
  {
    upTo: '45 mm',
    pitches: {
      '1': { external: 125, internal: 170 },
      '1.5': { external: 150, internal: 200 },
      '2': { external: 170, internal: 224 },
      '3': { external: 200, internal: 265 },
    },
  },
];

/** Where ASME B1.1 prints another last digit than its formula gives (.00165, a tie in four places). */
export const printedAllowances: Readonly<Record<string, string>> = { '5/8-11 UNC': '.0016' };
