import type { Joint } from '../joint-limits.ts';

export const JOINT_CLASS_SOURCE = 'common practice, no source; change it where your work asks for another';

/** The class a joint usually gets, by how it runs. Common practice, no source. */
export const jointClasses = {
  'turns-under-load': { iso: 'H8/f7', ansi: 'RC4' },
  turns: { iso: 'H8/e8', ansi: 'RC5' },
  slides: { iso: 'H7/g6', ansi: 'RC2' },
  located: { iso: 'H8/h7', ansi: 'LC3' },
  pressed: { iso: 'H7/s6', ansi: 'FN2' },
} as const satisfies Record<Joint, { iso: string; ansi: string }>;

/** The class a thin-walled bushing is pressed in with. Common practice, no source. */
export const bushingClasses = { iso: 'H7/r6', ansi: 'FN1' } as const;

/** The ISO fits that are offered by name: the preferred ones of ISO 286-1 annex C, and those the joints above use. */
export const usualIsoFits = [
  'H11/c11',
  'H9/d9',
  'H8/e8',
  'H8/f7',
  'H7/f6',
  'H7/g6',
  'H7/h6',
  'H8/h7',
  'H9/h9',
  'H11/h11',
  'H7/js6',
  'H7/k6',
  'H7/m6',
  'H7/n6',
  'H7/p6',
  'H7/r6',
  'H7/s6',
  'H7/t6',
  'H7/u6',
  'C11/h11',
  'D9/h9',
  'F8/h7',
  'G7/h6',
  'K7/h6',
  'N7/h6',
  'P7/h6',
  'S7/h6',
] as const;
