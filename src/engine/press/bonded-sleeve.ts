import type { Range } from '../fit/fits.ts';
import { jointLimits } from '../fit/joint-limits.ts';
import { dividedBy, minus, plus, type Length } from '../length/length.ts';

/** What a shaft is turned to and what its sleeve is bored to: any of the one goes on any of the other, with room to bond. */
export type BondedPair = { readonly shaft: Range; readonly inside: Range; readonly source: string };

/**
 * Limits for a shaft that is turned down and the sleeve that is bonded on it.
 *
 * Units:   each has half of the room the bond has. Shaft = size ± room/4; inside = greatest shaft + least clearance to
 *          least shaft + greatest clearance.
 * Source:  joint-limits.ts (slides): common practice, no source.
 */
export function bondedPair(size: Length): BondedPair {
  const { lower, upper, source } = jointLimits('slides', size);
  const off = dividedBy(minus(upper, lower), 4);
  const shaft = { lower: minus(size, off), upper: plus(size, off) };
  return {
    shaft,
    inside: { lower: plus(shaft.upper, lower), upper: plus(shaft.lower, upper) },
    source,
  };
}
