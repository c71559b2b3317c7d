/**
 * Unified threads #0 to 1 in by threads per inch: UNC, UNF, UNEF and the one UNS size with inserts.
 * Source: ASME B1.1, series UNC, UNF and UNEF; 1-14 UNS, as listed with wire inserts. Size in inches, exact.
 * `without`: pitches for which the usual lists show no wire insert (from memory, unconfirmed); no UNEF thread has one.
 */
export type InchThreadRow = {
  readonly size: string;
  readonly major: string;
  readonly unc?: number;
  readonly unf?: number;
  readonly uns?: number;
  readonly unef?: number;
  readonly without?: readonly number[];
};

export const inchThreadRows: readonly InchThreadRow[] = [
  { size: '#0', major: '.060', unf: 80, without: [80] },
  { size: '#1', major: '.073', unc: 64, unf: 72, without: [64, 72] },
  { size: '#2', major: '.086', unc: 56, unf: 64, without: [64] },
  { size: '#3', major: '.099', unc: 48, unf: 56 },
  { size: '#4', major: '.112', unc: 40, unf: 48 },
  { size: '#5', major: '.125', unc: 40, unf: 44, without: [44] },
  { size: '#6', major: '.138', unc: 32, unf: 40 },
  { size: '#8', major: '.164', unc: 32, unf: 36 },
  { size: '#10', major: '.190', unc: 24, unf: 32 },
  { size: '#12', major: '.216', unc: 24, unf: 28, unef: 32, without: [28] },
  { size: '1/4', major: '1/4', unc: 20, unf: 28, unef: 32 },
  { size: '5/16', major: '5/16', unc: 18, unf: 24, unef: 32 },
  { size: '3/8', major: '3/8', unc: 16, unf: 24, unef: 32 },
  { size: '7/16', major: '7/16', unc: 14, unf: 20, unef: 28 },
  { size: '1/2', major: '1/2', unc: 13, unf: 20, unef: 28 },
  { size: '9/16', major: '9/16', unc: 12, unf: 18, unef: 24 },
  { size: '5/8', major: '5/8', unc: 11, unf: 18, unef: 24 },
  { size: '3/4', major: '3/4', unc: 10, unf: 16, unef: 20 },
  { size: '7/8', major: '7/8', unc: 9, unf: 14, unef: 20 },
  { size: '1', major: '1', unc: 8, unf: 12, uns: 14, unef: 20 },
];

// Printed one tenth of a thou below the formula (.217063, .402063). Source: NASM33537, as quoted in an
// aerospace joint-analysis data set.
export const printedPitchLeast: Readonly<Record<string, string>> = {
  '#10-24 UNC': '.2170',
  '3/8-24 UNF': '.4020',
};
