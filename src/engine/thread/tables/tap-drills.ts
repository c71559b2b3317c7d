/**
 * Drills that tap makers' charts list before the tap, by thread.
 * Source: inch: a tap maker's chart, UNEF: a CAD program's hole table; metric: ISO 2306. The starred ones from memory.
 */
const LISTED = `
#2-56 UNC: #50
#5-40 UNC: #38
#6-32 UNC: #36
#8-32 UNC: #29
#12-24 UNC: #16
1/4-20 UNC: #7
5/16-18 UNC: F
7/16-14 UNC: U
1/2-13 UNC: 27/64
9/16-12 UNC: 31/64
3/4-10 UNC: 21/32
7/8-9 UNC: 49/64
1-8 UNC: 7/8
#2-64 UNF: #50
#3-56 UNF: #45
#4-48 UNF: #42
#5-44 UNF: #37
#8-36 UNF: #29
#10-32 UNF: #21
1/4-28 UNF: #3
3/8-24 UNF: Q
7/16-20 UNF: 25/64
9/16-18 UNF: 33/64
3/4-16 UNF: 11/16
7/8-14 UNF: 13/16
#12-32 UNEF: 4.8 mm
1/4-32 UNEF: 5.7 mm
5/16-32 UNEF: 7.25 mm
3/8-32 UNEF: 8.85 mm
7/16-28 UNEF: 10.35 mm
1/2-28 UNEF: 11.8 mm
9/16-24 UNEF: 13.4 mm
5/8-24 UNEF: 15.0 mm
7/8-20 UNEF: 21.15 mm
1-20 UNEF: 24.3 mm
#1-64 UNC: #53 *
#3-48 UNC: #47 *
#4-40 UNC: #43 *
#10-24 UNC: #25 *
3/8-16 UNC: 5/16 *
5/8-11 UNC: 17/32 *
#0-80 UNF: 3/64 *
#1-72 UNF: #53 *
#6-40 UNF: #33 *
#12-28 UNF: #14 *
5/16-24 UNF: I *
1/2-20 UNF: 29/64 *
5/8-18 UNF: 37/64 *
1-12 UNF: 59/64 *
1-14 UNS: 15/16 *
3/4-20 UNEF: 18.0 mm *
M2x0.4: 1.6 mm
M2.5x0.45: 2.05 mm
M3x0.5: 2.5 mm
M3.5x0.6: 2.9 mm
M4x0.7: 3.3 mm
M5x0.8: 4.2 mm
M6x1: 5 mm
M7x1: 6 mm
M8x1.25: 6.8 mm
M10x1.5: 8.5 mm
M12x1.75: 10.2 mm
M14x2: 12 mm
M16x2: 14 mm
M18x2.5: 15.5 mm
M20x2.5: 17.5 mm
M22x2.5: 19.5 mm
M24x3: 21 mm
M3x0.35: 2.65 mm
M4x0.5: 3.5 mm
M5x0.5: 4.5 mm
M6x0.75: 5.25 mm
M8x1: 7 mm
M8x0.75: 7.25 mm
M10x1.25: 8.75 mm
M10x1: 9 mm
M12x1.5: 10.5 mm
M12x1.25: 10.75 mm
M12x1: 11 mm
M14x1.5: 12.5 mm
M14x1.25: 12.75 mm
M16x1.5: 14.5 mm
M18x2: 16 mm
M18x1.5: 16.5 mm
M20x2: 18 mm
M20x1.5: 18.5 mm
M22x2: 20 mm
M22x1.5: 20.5 mm
M24x2: 22 mm
M24x1.5: 22.5 mm
`;

export type ListedTapDrill = { readonly name: string; readonly basis: 'published' | 'memory' };

export const listedTapDrills: ReadonlyMap<string, ListedTapDrill> = new Map(
  LISTED.trim()
    .split('\n')
    .map((line) => {
      const [designation = '', drill = ''] = line.split(': ');
      const name = drill.replace(' *', '').replace('.0 mm', ' mm');
      return [designation, { name, basis: drill.endsWith('*') ? 'memory' : 'published' }];
    }),
);
