import type { Estimate } from '../reading/estimate.ts';
import { minus, plus, times, type Length } from '../length/length.ts';

export type Plated = 'outside' | 'bore' | 'pitch-diameter';

const WALLS: Readonly<Record<Plated, number>> = { outside: 2, bore: 2, 'pitch-diameter': 4 };

/**
 * The size to cut, so that it is right after plating of this thickness.
 *
 * Units:   an outside grows by 2t, a bore shrinks by 2t, the pitch diameter of an outside 60° thread grows by 4t.
 *          A conversion coat grows by about half its thickness: give half.
 * Source:  geometry; 4t because the coat on a 30° flank counts 1/sin 30° on each side.
 */
export function sizeBeforePlating(finished: Length, what: Plated, thickness: Length): Length {
  const change = times(thickness, WALLS[what]);
  return what === 'bore' ? plus(finished, change) : minus(finished, change);
}

/** An outside that was measured as turned, as its coat will leave it: 2t larger, and known as closely as before. */
export function platedOutside(turned: Estimate, thickness: Length): Estimate {
  return { ...turned, sum: plus(turned.sum, times(thickness, WALLS.outside * turned.count)) };
}
