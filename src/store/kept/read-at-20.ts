import { inCelsius, readWarm, type ReadWarm } from '../../engine/reading/temperature.ts';
import type { Length } from '../../engine/length/length.ts';
import { materialNamed } from '../../engine/material/tables/materials.ts';
import type { ReadWarmth } from '../base/records.ts';

type Kept = { readonly warmth?: ReadWarmth };

/** How warm a size was read, for the engine; nothing where it wasn't said or the metal is not known here. */
export function warmOf({ warmth }: Kept): ReadWarm | undefined {
  const material = materialNamed(warmth?.material);
  const degrees = Number(warmth?.degrees);
  if (!warmth || !material || !Number.isFinite(degrees)) return undefined;
  return { celsius: inCelsius({ degrees, unit: warmth.unit }), material };
}

/** A size as it counts: at 20 °C, and what of that is not known, where it was read warm; else as it was read. */
export function countedAt20(exact: Length, kept: Kept): { readonly exact: Length; readonly doubt?: Length } {
  const warm = warmOf(kept);
  if (!warm) return { exact };
  const { at20, doubt } = readWarm(exact, warm);
  return { exact: at20, doubt };
}
