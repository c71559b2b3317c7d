import { lengthOf } from '../../length/length.ts';
import type { Length } from '../../length/length.ts';
import type { BookMaterialId } from '../../material/tables/materials.ts';

/** Friction of metal on metal in a press fit, oiled or dry. Common practice, no source. */
export const pressFriction = {
  /** For what the press must give: dry or picked up. */
  high: 0.2,
  /** For what the fit is trusted to hold: oil left in it. */
  low: 0.08,
  source: 'common practice, no source',
} as const;

export type Finish = 'fine' | 'usual' | 'coarse';

/**
 * Peak-to-valley roughness of bore and outside. Usual figures for how they are cut, common practice, no source.
 */
export const roughness: Readonly<Record<Finish, { readonly bore: Length; readonly outside: Length }>> = {
  fine: { bore: lengthOf('0.0016 mm'), outside: lengthOf('0.0016 mm') },
  usual: { bore: lengthOf('0.004 mm'), outside: lengthOf('0.0063 mm') },
  coarse: { bore: lengthOf('0.010 mm'), outside: lengthOf('0.016 mm') },
};

/** The share of both roughnesses that is flattened, on the diameter. Source: DIN 7190-1, from memory. */
export const flattenedShare = '0.8';

export type Condition = 'plain' | 'hardened' | 'plated';

/** How hot a part may get before it is spoilt, °C. Common practice, no source. */
export const mostHeatCelsius: Readonly<Record<BookMaterialId, number>> = {
  'low-carbon-steel': 250,
  'alloy-steel': 250,
  'stainless-303': 250,
  'stainless-304': 250,
  'aluminium-6061': 120,
  'aluminium-7075': 100,
  'brass-360': 200,
  'bearing-bronze': 200,
  'cast-iron': 200,
  'titanium-6-4': 250,
  acetal: 80,
};

/** A hardened part is drawn soft, plating fumes: these hold whatever the metal allows. Common practice, no source. */
export const mostHeatByCondition: Readonly<Record<Condition, number>> = {
  plain: Number.POSITIVE_INFINITY,
  hardened: 150,
  plated: 100,
};

export type Cold = 'freezer' | 'dry-ice' | 'nitrogen';

/** What the shop cools with, °C. Freezer: common practice; dry ice −78.5 and liquid nitrogen −196: physical constants, from memory. */
export const coldCelsius: Readonly<Record<Cold, number>> = {
  freezer: -18,
  'dry-ice': -78,
  nitrogen: -196,
};

/** The most a reamer is asked to take, on the diameter; more is drilled or bored first. Common practice, no source. */
export const mostReamed: Length = lengthOf('.020 in');

/** What is left for the reamer, on the diameter. Common practice, no source. */
export const leftToReam: Length = lengthOf('.010 in');

/** The clearance a part drops in with. Common practice, no source: a thou, and a thou an inch above one inch. */
export const leastDropRoom = { in: lengthOf('.001 in'), mm: lengthOf('0.03 mm') } as const;

/** Pull in cast metal above this share of its tensile strength: it may crack. Common practice, no source. */
export const crackShare = 1 / 3;

/** Equivalent stress above this share of yield leaves nothing for the load. Common practice, no source. */
export const yieldShare = 2 / 3;

/** A bushing squeezed a little past its yield takes a set and stays in; past this many times it is spoilt. Common practice, no source. */
export const bushingSetShare = 2;
