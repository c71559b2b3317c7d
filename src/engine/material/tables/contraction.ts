import type { BookMaterialId } from './materials.ts';

/** How much of its length a metal has lost at 80 K (−193.15 °C), cooled from 293.15 K (20 °C). */
export type Contraction = {
  readonly percentAt80K: number;
  /** Expansion at room temperature, where it is clearly less than the books' mean of 0 to 100 °C; millionths a °C. */
  readonly nearRoomPerMillion?: number;
  readonly basis: 'published' | 'memory';
};

/** The share of "expansion at room temperature · degrees" that is left of it down to 80 K: the least of the published three. */
export const LEAST_COLD_SHARE = 0.75; // .187 % of 11.7e-6 · 213.15 = .2494 %: .750; 6061 .781; 303 .769

/** Plastics fall off more, and no figure was found: half of it. Common practice, no source. */
export const PLASTIC_COLD_SHARE = 0.5;

/**
 * Contraction of metals from 293 K to 80 K.
 *
 * Source: published contraction tables for cryogenic design: 1075 steel .187 %, 6061 .393 %, 303 .282 %; 304 and the slope of
 *         both stainless steels at room temperature from memory of a published fit. What isn't listed is worked out by
 *         `LEAST_COLD_SHARE`.
 */
export const contractions: Partial<Record<BookMaterialId, Contraction>> = {
  'low-carbon-steel': { percentAt80K: 0.187, basis: 'published' },
  'alloy-steel': { percentAt80K: 0.187, basis: 'memory' },
  'stainless-303': { percentAt80K: 0.282, nearRoomPerMillion: 15.5, basis: 'published' },
  'stainless-304': { percentAt80K: 0.278, nearRoomPerMillion: 15.5, basis: 'memory' },
  'aluminium-6061': { percentAt80K: 0.393, basis: 'published' },
};
