import { expansionPerCelsius } from './material.ts';
import { contractions, LEAST_COLD_SHARE, PLASTIC_COLD_SHARE } from './tables/contraction.ts';
import { rowOf, type Material } from './tables/materials.ts';

/** How a material shrinks in the cold: what it loses a degree near 20 °C, and in all at 80 K. Shares of its size. */
export type ColdShrink = { readonly perCelsius: number; readonly at80K: number };

const ROOM_CELSIUS = 20;
/** From 20 °C down to 80 K (−193.15 °C). */
export const DEGREES_TO_80K = 213.15;

/**
 * What a material loses when it is cooled. Floating point.
 *
 * Source:  tables/contraction.ts; where no figure was found, the least share of the published ones.
 */
export function coldShrinkOf(material: Material): ColdShrink {
  const found = contractions[rowOf(material.id)];
  const { low } = expansionPerCelsius(material);
  const perCelsius = found?.nearRoomPerMillion === undefined ? low : found.nearRoomPerMillion / 1e6;
  const share = material.id === 'acetal' ? PLASTIC_COLD_SHARE : LEAST_COLD_SHARE;
  return { perCelsius, at80K: found ? found.percentAt80K / 100 : low * DEGREES_TO_80K * share };
}

/**
 * The share of its size that a part loses between two temperatures; below zero it grows. Floating point.
 *
 * Units:   °C. Expansion falls evenly with the temperature, so that at 80 K the loss is the published one: the figure for
 *          room temperature would promise a third too much. Above 20 °C it is that figure.
 * Range:   colder than 80 K counts as 80 K: it loses no less.
 */
export function shrinkBetween(shrink: ColdShrink, fromCelsius: number, toCelsius: number): number {
  return lostFromRoom(shrink, toCelsius) - lostFromRoom(shrink, fromCelsius);
}

/** How cold a part has to be to have lost a share of its size; nothing where no cold does it. Floating point, °C. */
export function celsiusForShrink(shrink: ColdShrink, fromCelsius: number, share: number): number | undefined {
  const lost = lostFromRoom(shrink, fromCelsius) + share;
  if (lost <= 0) return ROOM_CELSIUS - lost / shrink.perCelsius;
  if (lost > shrink.at80K) return undefined;
  const { perCelsius } = shrink;
  const root = Math.sqrt(Math.max(0, perCelsius ** 2 - 4 * fallOf(shrink) * lost));
  return ROOM_CELSIUS - (2 * lost) / (perCelsius + root);
}

function lostFromRoom(shrink: ColdShrink, celsius: number): number {
  const down = Math.min(ROOM_CELSIUS - celsius, DEGREES_TO_80K);
  return down <= 0 ? shrink.perCelsius * down : shrink.perCelsius * down - fallOf(shrink) * down ** 2;
}

function fallOf({ perCelsius, at80K }: ColdShrink): number {
  return (perCelsius * DEGREES_TO_80K - at80K) / DEGREES_TO_80K ** 2;
}
