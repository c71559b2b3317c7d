import { marked } from '../length/decimal-text.ts';
import { PSI_PER_MPA } from '../material/material.ts';
import type { NumberBounds } from '../length/number-entry.ts';
import type { ShownUnit } from '../length/show.ts';

type ShopUnit = {
  readonly unit: string;
  readonly toShop: (kept: number) => number;
  readonly toKept: (shop: number) => number;
  /** What a figure is shown to: 0.1 °F, 10 psi. */
  readonly step: number;
};

// Exact by definition; NIST SP 811, B.8 for psi.
const IN_INCH_SHOPS: Readonly<Record<string, ShopUnit>> = {
  '°C': { unit: '°F', toShop: (c) => c * 1.8 + 32, toKept: (f) => (f - 32) / 1.8, step: 0.1 },
  MPa: { unit: 'psi', toShop: (mpa) => mpa * PSI_PER_MPA, toKept: (psi) => psi / PSI_PER_MPA, step: 10 },
};

// Of what is kept: finer than the step it is shown to, so that it comes back as it was typed.
const KEPT_PLACES = 4;

/**
 * What a number is typed as in the shop's unit: a temperature in °F and a strength in psi where lengths are inches. Kept
 * they are always °C and MPa, so that a record says the same in every shop. Floating point.
 */
export function boundsInShop(bounds: NumberBounds, unit: ShownUnit): NumberBounds {
  const shop = shopUnitOf(bounds.unit, unit);
  if (!shop) return bounds;
  const end = (kept: number) => Math.round(shop.toShop(kept) / shop.step) * shop.step;
  return { ...bounds, unit: shop.unit, least: end(bounds.least), most: end(bounds.most) };
}

/** The text that is kept of what was typed in the shop's unit. */
export function keptOfShop(typed: string, keptUnit: string, unit: ShownUnit): string {
  const shop = shopUnitOf(keptUnit, unit);
  return shop ? trimmed(shop.toKept(Number(typed)), KEPT_PLACES) : typed;
}

/** What is kept, in the shop's unit: `140 °F`, `60 °C`, `53000 psi`. */
export function numberInShop(kept: string, keptUnit: string, unit: ShownUnit): string {
  const shop = shopUnitOf(keptUnit, unit);
  if (!shop || Number.isNaN(Number(kept))) return `${marked(kept)} ${keptUnit}`;
  const steps = Math.round(shop.toShop(Number(kept)) / shop.step);
  return `${marked(trimmed(steps * shop.step, 1)).replace('-', '−')} ${shop.unit}`;
}

function shopUnitOf(keptUnit: string, unit: ShownUnit): ShopUnit | undefined {
  return unit === 'in' && Object.hasOwn(IN_INCH_SHOPS, keptUnit) ? IN_INCH_SHOPS[keptUnit] : undefined;
}

function trimmed(value: number, places: number): string {
  return String(Number(value.toFixed(places)));
}
