/**
 * Strength of bolts by grade. Least figures as the standards state them; the greatest tensile strength isn't stated by
 * any, and follows from the greatest hardness each allows (ISO 18265, ASTM A370 conversion), from memory.
 */
export type BoltGradeId =
  | 'sae-2'
  | 'sae-5'
  | 'sae-8'
  | 'a574'
  | '4.6'
  | '5.8'
  | '8.8'
  | '9.8'
  | '10.9'
  | '12.9'
  | 'a2-70'
  | 'a4-80';

export type BoltGradeRow = {
  /** Up to and with this thread diameter; left out in the last row. */
  readonly upTo?: string;
  readonly unit: 'MPa' | 'ksi';
  readonly proof: number;
  readonly tensileLeast: number;
  readonly tensileMost: number;
};

export type BoltGrade = {
  readonly id: BoltGradeId;
  readonly name: string;
  /** How it is told from others on the bolt. */
  readonly marks: string;
  readonly rows: readonly BoltGradeRow[];
  readonly source: string;
};

const ISO = 'ISO 898-1, from memory; greatest from the greatest hardness it allows';
const SAE = 'SAE J429, from memory; greatest from the greatest hardness it allows';
const STAINLESS =
  'ISO 3506-1, from memory; it states no greatest: 1.3 times the least is chosen, not published';

export const boltGrades: readonly BoltGrade[] = [
  {
    id: 'sae-2',
    name: 'SAE grade 2',
    marks: 'no marks on the head',
    source: SAE,
    rows: [
      { upTo: '3/4 in', unit: 'ksi', proof: 55, tensileLeast: 74, tensileMost: 116 }, // 100 HRB
      { unit: 'ksi', proof: 33, tensileLeast: 60, tensileMost: 116 },
    ],
  },
  {
    id: 'sae-5',
    name: 'SAE grade 5',
    marks: 'three lines on the head',
    source: SAE,
    rows: [
      { upTo: '1 in', unit: 'ksi', proof: 85, tensileLeast: 120, tensileMost: 153 }, // 34 HRC
      { unit: 'ksi', proof: 74, tensileLeast: 105, tensileMost: 138 }, // 30 HRC
    ],
  },
  {
    id: 'sae-8',
    name: 'SAE grade 8',
    marks: 'six lines on the head',
    source: SAE,
    rows: [{ unit: 'ksi', proof: 120, tensileLeast: 150, tensileMost: 177 }], // 39 HRC
  },
  {
    id: 'a574',
    name: 'Inch socket head, alloy steel',
    marks: 'black, no marks',
    source: 'ASTM A574, from memory; greatest from the greatest hardness it allows',
    rows: [
      { upTo: '1/2 in', unit: 'ksi', proof: 140, tensileLeast: 180, tensileMost: 214 }, // 45 HRC
      { unit: 'ksi', proof: 135, tensileLeast: 170, tensileMost: 214 },
    ],
  },
  {
    id: '4.6',
    name: 'Class 4.6',
    marks: '4.6 on the head',
    source: ISO,
    rows: [{ unit: 'MPa', proof: 225, tensileLeast: 400, tensileMost: 705 }], // 220 HV
  },
  {
    id: '5.8',
    name: 'Class 5.8',
    marks: '5.8 on the head',
    source: ISO,
    rows: [{ unit: 'MPa', proof: 380, tensileLeast: 520, tensileMost: 705 }], // 220 HV
  },
  {
    id: '8.8',
    name: 'Class 8.8',
    marks: '8.8 on the head',
    source: ISO,
    rows: [
      { upTo: '16 mm', unit: 'MPa', proof: 580, tensileLeast: 800, tensileMost: 1030 }, // 320 HV
      { unit: 'MPa', proof: 600, tensileLeast: 830, tensileMost: 1080 }, // 335 HV
    ],
  },
  {
    id: '9.8',
    name: 'Class 9.8',
    marks: '9.8 on the head',
    source: ISO,
    rows: [{ unit: 'MPa', proof: 650, tensileLeast: 900, tensileMost: 1155 }], // 360 HV
  },
  {
    id: '10.9',
    name: 'Class 10.9',
    marks: '10.9 on the head',
    source: ISO,
    rows: [{ unit: 'MPa', proof: 830, tensileLeast: 1040, tensileMost: 1220 }], // 380 HV
  },
  {
    id: '12.9',
    name: 'Class 12.9',
    marks: '12.9 on the head',
    source: ISO,
    rows: [{ unit: 'MPa', proof: 970, tensileLeast: 1220, tensileMost: 1405 }], // 435 HV
  },
  {
    id: 'a2-70',
    name: 'Stainless A2-70',
    marks: 'A2-70 on the head',
    source: STAINLESS,
    rows: [{ unit: 'MPa', proof: 450, tensileLeast: 700, tensileMost: 910 }],
  },
  {
    id: 'a4-80',
    name: 'Stainless A4-80',
    marks: 'A4-80 on the head',
    source: STAINLESS,
    rows: [{ unit: 'MPa', proof: 600, tensileLeast: 800, tensileMost: 1040 }],
  },
];
