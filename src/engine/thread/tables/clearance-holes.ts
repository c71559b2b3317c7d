import type { Length } from '../../length/length.ts';
import { lengthOf } from '../../length/length.ts';

export type HoleFit = 'close' | 'normal' | 'loose';

/** A clearance hole for a bolt or screw: its least size, and its greatest where the standard prints one. */
export type ClearanceHole = {
  readonly drill?: string;
  readonly least: Length;
  readonly most?: Length;
  readonly toleranceClass: string;
  readonly basis: 'published' | 'memory';
};

export type ClearanceRow = {
  readonly fastener: string;
  readonly unit: 'in' | 'mm';
  readonly standard: 'ISO 273' | 'ASME B18.2.8';
  readonly holes: Readonly<Record<HoleFit, ClearanceHole>>;
};

// Least holes, close, normal, loose. Source: ISO 273:1979 as tabulated in a CAD program's hole table; its fine, medium
// and coarse are the close, normal and loose here, classes H12, H13, H14.
const METRIC = `
M1.6 1.7 1.8 2
M2 2.2 2.4 2.6
M2.5 2.7 2.9 3.1
M3 3.2 3.4 3.6
M3.5 3.7 3.9 4.2
M4 4.3 4.5 4.8
M5 5.3 5.5 5.8
M6 6.4 6.6 7
M7 7.4 7.6 8
M8 8.4 9 10
M10 10.5 11 12
M12 13 13.5 14.5
M14 15 15.5 16.5
M16 17 17.5 18.5
M18 19 20 21
M20 21 22 24
M22 23 24 26
M24 25 26 28
M27 28 30 32
M30 31 33 35
`;

// Drill, least and greatest hole: close, normal, loose. Source: ASME B18.2.8 tables 1 and 3a; the starred ones from
// memory, unconfirmed.
const INCH = `
#0 | #51* 0.067 0.071 | #48* 0.076 0.082 | 3/32 0.094 0.104
#1 | #46* 0.081 0.085 | #43* 0.089 0.095 | #37 0.104 0.114
#2 | 3/32* 0.094 0.098 | #38* 0.102 0.108 | #32 0.116 0.126
#3 | #36* 0.106 0.110 | #32* 0.116 0.122 | #30 0.128 0.140
#4 | #31* 0.120 0.124 | #30* 0.128 0.135 | #27 0.144 0.156
#5 | 9/64* 0.141 0.145 | 5/32* 0.156 0.163 | 11/64 0.172 0.184
#6 | #23* 0.154 0.159 | #18* 0.170 0.177 | #13 0.185 0.197
#8 | #15* 0.180 0.185 | #9* 0.196 0.203 | #3 0.213 0.225
#10 | #5* 0.206 0.211 | #2* 0.221 0.228 | B* 0.238 0.250
1/4 | 17/64* 0.266 0.272 | 9/32* 0.281 0.290 | 19/64 0.297 0.311
5/16 | 21/64* 0.328 0.334 | 11/32* 0.344 0.354 | 23/64 0.359 0.373
3/8 | 25/64* 0.391 0.397 | 13/32* 0.406 0.416 | 27/64 0.422 0.438
7/16 | 29/64* 0.453 0.460 | 15/32* 0.469 0.479 | 31/64 0.484 0.500
1/2 | 17/32* 0.531 0.538 | 9/16* 0.562 0.572 | 39/64 0.609 0.625
5/8 | 21/32* 0.656 0.663 | 11/16* 0.688 0.698 | 47/64 0.734 0.754
3/4 | 25/32* 0.781 0.789 | 13/16* 0.812 0.824 | 29/32 0.906 0.926
7/8 | 29/32* 0.906 0.914 | 15/16* 0.938 0.950 | 1-1/32 1.031 1.051
1 | 1-1/32* 1.031 1.039 | 1-3/32* 1.094 1.106 | 1-5/32 1.156 1.181
`;

export const clearanceRows: readonly ClearanceRow[] = [...inchRows(), ...metricRows()];

function inchRows(): ClearanceRow[] {
  return linesOf(INCH).map((line) => {
    const [fastener = '', close = '', normal = '', loose = ''] = line.split(' | ');
    return {
      fastener,
      unit: 'in',
      standard: 'ASME B18.2.8',
      holes: {
        close: inchHole(close, 'H12'),
        normal: inchHole(normal, 'H13'),
        loose: inchHole(loose, 'H14'),
      },
    };
  });
}

function inchHole(cell: string, toleranceClass: string): ClearanceHole {
  const [drill = '', least = '', most = ''] = cell.split(' ');
  return {
    drill: drill.replace('*', ''),
    least: lengthOf(`${least} in`),
    most: lengthOf(`${most} in`),
    toleranceClass,
    basis: drill.endsWith('*') ? 'memory' : 'published',
  };
}

function metricRows(): ClearanceRow[] {
  return linesOf(METRIC).map((line) => {
    const [fastener = '', close = '', normal = '', loose = ''] = line.split(' ');
    return {
      fastener,
      unit: 'mm',
      standard: 'ISO 273',
      holes: {
        close: metricHole(close, 'H12'),
        normal: metricHole(normal, 'H13'),
        loose: metricHole(loose, 'H14'),
      },
    };
  });
}

function metricHole(least: string, toleranceClass: string): ClearanceHole {
  return { least: lengthOf(`${least} mm`), toleranceClass, basis: 'published' };
}

function linesOf(rows: string): string[] {
  return rows.trim().split('\n');
}
