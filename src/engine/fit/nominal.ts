import type { FitSystem } from './fits.ts';
import { fractionText } from '../length/fraction.ts';
import {
  absolute,
  isMore,
  isNegative,
  isZero,
  lengthOf,
  minus,
  ratioOf,
  roundToStep,
  sameLength,
  zero,
} from '../length/length.ts';
import type { Length } from '../length/length.ts';
import { show, type ShownUnit } from '../length/show.ts';

/** The size a class is taken at, and where it comes from: asked, a bolt's own, or the preferred size nearest the pin. */
export type Nominal = { readonly size: Length; readonly from: 'given' | 'thread' | 'nearest' };

type Family = { readonly step: Length; readonly under: Length; readonly over: Length };

// What parts are made to. A pin wears, and a bolt's shank is made, under its nominal; a dowel is made a little over it.
// How far from it a size still counts as that one: common practice, no source.
const INCH: Family = {
  step: lengthOf('1/64 in'),
  under: lengthOf('.006 in'),
  over: lengthOf('.0015 in'),
};
const METRIC: Family = {
  step: lengthOf('0.5 mm'),
  under: lengthOf('0.15 mm'),
  over: lengthOf('0.04 mm'),
};
// A pin of the other system has to lie closer, as half millimetres and 64ths lie between each other.
const OTHER = { under: lengthOf('.002 in'), over: lengthOf('.0012 in') };
/** A dowel is ground a little over its nominal, .0002 in, or up to 15 µm as ISO 8734 m6: ASME B18.8.2, both from memory. */
const DOWEL = { in: lengthOf('.0003 in'), mm: lengthOf('0.015 mm') };

/**
 * The preferred size nearest a measured pin: 64ths of an inch or half millimetres, by the system of the class first. Classes
 * have steps, and a measured pin must not fall over one: 30.001 mm is a 30 mm pin as 30.000 is.
 *
 * Units:   a size. Where none lies near, the pin was made to a size of its own.
 * Range:   above 0; without a system the inch's come first.
 * Source:  common practice, no source.
 */
export function nominalNear(size: Length, system: FitSystem = 'ansi'): Length {
  const [own, other] = system === 'iso' ? [METRIC, INCH] : [INCH, METRIC];
  return within(size, own) ?? within(size, { ...other, ...OTHER }) ?? size;
}

/** What was typed as a nominal, save where it is the ground size of a dowel: .5002 is a 1/2. */
export function nominalTyped(size: Length): Length {
  const inch = { ...INCH, under: zero, over: DOWEL.in };
  const metric = { ...METRIC, under: zero, over: DOWEL.mm };
  return within(size, inch) ?? within(size, metric) ?? size;
}

function within(size: Length, { step, under, over }: Family): Length | undefined {
  const near = roundToStep(size, step, 'nearest');
  const off = minus(size, near);
  const allowed = isNegative(off) ? under : over;
  return isZero(near) || isMore(absolute(off), allowed) ? undefined : near;
}

/** `1/2 in (.500)`, `30 mm`: as such a size is called. */
export function nominalName(size: Length, unit: ShownUnit): string {
  const count = ratioOf(size, INCH.step);
  if (sameLength(roundToStep(size, INCH.step, 'nearest'), size)) {
    const shown = show(size, unit);
    const name = fractionText(Math.round(count), 64);
    return `${name} in (${unit === 'in' ? shown.replace(/ in$/, '') : shown})`;
  }
  const millimetres = ratioOf(size, lengthOf('1 mm'));
  return sameLength(roundToStep(size, METRIC.step, 'nearest'), size)
    ? `${String(millimetres)} mm`
    : show(size, unit);
}

/** One line: which size the limits go by, and why. */
export function sayNominal({ size, from }: Nominal, unit: ShownUnit): string {
  const name = nominalName(size, unit);
  switch (from) {
    case 'given':
      return `Limits for a nominal of ${name}.`;
    case 'thread':
      return `Limits for a nominal of ${name}, the bolt’s own.`;
    case 'nearest':
      return `Limits for a nominal of ${name}, the nearest to the pin.`;
    default:
      return from satisfies never;
  }
}
