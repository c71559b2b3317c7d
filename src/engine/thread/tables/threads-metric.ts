/**
 * ISO metric threads, M2 to M24: the coarse pitch, the fine ones with wire inserts, and the fine ones `without`, in millimetres.
 * Source: ISO 261 pitches; which of them have inserts: ASME B18.29.2M and makers' lists, from memory where the
 * reference table (M2x0.4 to M24x3) doesn't show the row. Sizes below M3 are kept because inserts are made for them.
 */
export type MetricThreadRow = {
  readonly major: string;
  readonly coarse: string;
  readonly fine?: readonly string[];
  readonly without?: readonly string[];
};

export const metricThreadRows: readonly MetricThreadRow[] = [
  { major: '2', coarse: '0.4' },
  { major: '2.5', coarse: '0.45' },
  { major: '3', coarse: '0.5', without: ['0.35'] },
  { major: '3.5', coarse: '0.6' },
  { major: '4', coarse: '0.7', without: ['0.5'] },
  { major: '5', coarse: '0.8', without: ['0.5'] },
  { major: '6', coarse: '1', without: ['0.75'] },
  { major: '7', coarse: '1' },
  { major: '8', coarse: '1.25', fine: ['1'], without: ['0.75'] },
  { major: '10', coarse: '1.5', fine: ['1.25', '1'] },
  { major: '12', coarse: '1.75', fine: ['1.5', '1.25'], without: ['1'] },
  { major: '14', coarse: '2', fine: ['1.5', '1.25'] },
  { major: '16', coarse: '2', fine: ['1.5'] },
  { major: '18', coarse: '2.5', fine: ['2', '1.5'] },
  { major: '20', coarse: '2.5', fine: ['2', '1.5'] },
  { major: '22', coarse: '2.5', fine: ['2', '1.5'] },
  { major: '24', coarse: '3', fine: ['2', '1.5'] },
];

// Internal minor diameter tolerance TD1, grade 5, by pitch, in millimetres. Source: ISO 965-1. Pitches 1 to 2 as
// listed; the others from memory, each 0.8 times the grade 6 value to the nearest number of the R40 series.
export const minorToleranceGrade5: Readonly<Record<string, string>> = {
  '0.4': '.090',
  '0.45': '.100',
  '0.5': '.112',
  '0.6': '.125',
  '0.7': '.140',
  '0.8': '.160',
  '1': '.190',
  '1.25': '.212',
  '1.5': '.236',
  '1.75': '.265',
  '2': '.300',
  '2.5': '.355',
  '3': '.400',
};
