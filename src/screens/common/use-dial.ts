import { lengthOf } from '../../engine/length/length.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import type { KeptDial } from '../../store/base/records.ts';
import { useSetting } from './use-settings.ts';

/** Usual dials, reading the diameter. Common practice, no source. */
export const usualDials: Readonly<Record<ShownUnit, KeptDial>> = {
  in: { reads: 'diameter', graduation: { exact: lengthOf('0.001 in'), typed: '.001', unit: 'in' } },
  mm: { reads: 'diameter', graduation: { exact: lengthOf('0.02 mm'), typed: '0.02', unit: 'mm' } },
};

/** Until the shop says otherwise. */
export const usualDial: KeptDial = usualDials.in;

export function useDial(): KeptDial {
  return useSetting('dial') ?? usualDial;
}
