import { readable, type CheckOffer } from '../../reading/check-offer.ts';
import type { FitLimits } from '../../fit/fits.ts';
import { INDICATOR_AT_BORE } from '../hole-and-pin/checks-of-hole-and-pin.ts';

/** The clearance of two parts of a class, where there is any to read. */
export function checksOfFit({ clearance, kind, source }: FitLimits): readonly CheckOffer[] {
  if (kind !== 'clearance') return [];
  return [
    {
      name: 'Clearance of the pair',
      by: 'gap',
      limits: readable({ ...clearance, source }),
      how: INDICATOR_AT_BORE,
      sizeName: 'slop',
    },
  ];
}
