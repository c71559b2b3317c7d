import { marked } from '../length/decimal-text.ts';
import type { FitSystem } from './fits.ts';
import { fractionText } from '../length/fraction.ts';
import {
  absolute,
  isMore,
  isNegative,
  isZero,
  largest,
  lengthOf,
  minus,
  ratioOf,
  roundToStep,
  sameLength,
  times,
  zero,
} from '../length/length.ts';
import type { Length } from '../length/length.ts';
import { show, type ShownUnit } from '../length/show.ts';

/** The size a class is taken at, and where it comes from: asked, a bolt's own, or the preferred size nearest the pin. */
export type Nominal = { readonly size: Length; readonly from: 'given' | 'thread' | 'nearest' };

type Family = { readonly step: Length; readonly under: Length; readonly over: Length };

// What parts are made to, the usual sizes before the odd ones. A pin wears, and a bolt's shank is made, under its nominal; a
// dowel is made a little over it. How far from it a size still counts as that one: common practice, no source.
const UNDER_INCH = { under: lengthOf('.006 in'), over: lengthOf('.0015 in') };
const UNDER_METRIC = { under: lengthOf('0.15 mm'), over: lengthOf('0.04 mm') };
// A pin of the other system has to lie closer, as half millimetres and 64ths lie between each other.
const OTHER = { under: lengthOf('.002 in'), over: lengthOf('.0012 in') };
// A dowel is ground a little over its nominal: .0002 in (ASME B18.8.2, from memory), or m6, at most 25 µm up to 50 mm (ISO 286-2).
const DOWEL = {
  in: { under: zero, over: lengthOf('.0003 in') },
  mm: { under: zero, over: lengthOf('0.025 mm') },
};
const USUAL = { ansi: lengthOf('1/16 in'), iso: lengthOf('1 mm') };
const ODD = { ansi: lengthOf('1/64 in'), iso: lengthOf('0.5 mm') };
// Over its nominal by more than a dowel a pin is likelier another one that has worn: chosen, no source.
const RARELY_OVER = 4;
// As far as this from a usual size of its own system a pin is that one, whatever lies nearer: chosen, no source.
const SURELY_OWN = lengthOf('.004 in');

/**
 * The preferred size nearest a measured pin: sixteenths or whole millimetres, then 64ths of an inch or half millimetres, of
 * the class's system before the other. Classes have steps, and a measured pin must not fall over one: 30.001 mm is a 30 mm
 * pin as 30.000 is. A pin that the other system fits far better is that system's: 25.4 mm is an inch, not 25.5 mm.
 *
 * Units:   a size. Where none lies near, the pin was made to a size of its own.
 * Range:   above 0; without a system the inch's come first.
 * Source:  common practice, no source.
 */
export function nominalNear(size: Length, system: FitSystem = 'ansi'): Length {
  return preferredNear(size, system) ?? size;
}

/** The same where a preferred size lies near; nothing where none does, and the nominal has to be asked. */
export function preferredNear(size: Length, system: FitSystem = 'ansi'): Length | undefined {
  const other = system === 'iso' ? 'ansi' : 'iso';
  const allowed = system === 'iso' ? UNDER_METRIC : UNDER_INCH;
  const usual = within(size, { step: USUAL[system], ...allowed });
  const others = within(size, { step: USUAL[other], ...OTHER });
  if (usual && others)
    return isMore(farFrom(size, usual), largest(SURELY_OWN, farFrom(size, others))) ? others : usual;
  return (
    usual ??
    others ??
    within(size, { step: ODD[system], ...allowed }) ??
    within(size, { step: ODD[other], ...OTHER })
  );
}

/**
 * The preferred size nearest a measured bore: as a pin wears and is made under its nominal, a bore wears and is made over
 * it, by as much. Nothing where none lies near.
 *
 * Source:  common practice, no source.
 */
export function preferredNearBore(size: Length, system: FitSystem = 'ansi'): Length | undefined {
  const { under, over } = system === 'iso' ? UNDER_METRIC : UNDER_INCH;
  const opened = { under: over, over: under };
  return within(size, { step: USUAL[system], ...opened }) ?? within(size, { step: ODD[system], ...opened });
}

/** How far a pin lies from a nominal, what it is over counted more than what it is under. */
function farFrom(size: Length, nominal: Length): Length {
  const off = minus(size, nominal);
  return isMore(off, DOWEL.mm.over) ? times(off, RARELY_OVER) : absolute(off);
}

/** What was typed as a nominal, save where it is the ground size of a dowel: .5002 is a 1/2, 12.018 a 12 mm. */
export function nominalTyped(size: Length): Length {
  const isNamed = [ODD.ansi, ODD.iso].some((step) => sameLength(roundToStep(size, step, 'nearest'), size));
  if (isNamed) return size;
  return (
    within(size, { step: USUAL.iso, ...DOWEL.mm }) ?? within(size, { step: ODD.ansi, ...DOWEL.in }) ?? size
  );
}

function within(size: Length, { step, under, over }: Family): Length | undefined {
  const near = roundToStep(size, step, 'nearest');
  const off = minus(size, near);
  const allowed = isNegative(off) ? under : over;
  return isZero(near) || isMore(absolute(off), allowed) ? undefined : near;
}

/** `1/2 in (.500)`, `30 mm`: as such a size is called; in a shop of the other unit after that shop's own figure. */
export function nominalName(size: Length, unit: ShownUnit): string {
  const count = ratioOf(size, ODD.ansi);
  if (sameLength(roundToStep(size, ODD.ansi, 'nearest'), size)) {
    const shown = show(size, unit);
    const name = fractionText(Math.round(count), 64);
    return unit === 'in' ? `${name} in (${shown.replace(/ in$/, '')})` : `${shown} (${name} in)`;
  }
  const millimetres = ratioOf(size, lengthOf('1 mm'));
  return sameLength(roundToStep(size, ODD.iso, 'nearest'), size)
    ? nameInMillimetres(size, millimetres, unit)
    : show(size, unit);
}

function nameInMillimetres(size: Length, millimetres: number, unit: ShownUnit): string {
  const name = `${marked(millimetres)} mm`;
  return unit === 'in' ? `${show(size, unit)} (${name})` : name;
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
