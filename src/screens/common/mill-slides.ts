import { lengthOf } from '../../engine/length/length.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import type { KeptMill } from '../../store/base/records.ts';

export const MILL_AXES = ['x', 'y'] as const;
export type MillAxis = (typeof MILL_AXES)[number];

export const MILL_NAMES: Readonly<Record<MillAxis, string>> = {
  x: 'Table, left and right (x)',
  y: 'Saddle, in and out (y)',
};

const mark = (typed: string, unit: ShownUnit) => ({ exact: lengthOf(`${typed} ${unit}`), typed, unit });

/** Until the shop says otherwise. Common practice, no source. */
export const usualMills: Readonly<Record<ShownUnit, KeptMill>> = {
  in: { reads: 'dials', x: { graduation: mark('.001', 'in') }, y: { graduation: mark('.001', 'in') } },
  mm: { reads: 'dials', x: { graduation: mark('0.02', 'mm') }, y: { graduation: mark('0.02', 'mm') } },
};
