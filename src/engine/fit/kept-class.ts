import { ansiClasses } from './fits-ansi.ts';
import { mean } from '../reading/estimate.ts';
import {
  checkBore,
  checkClearance,
  checkPin,
  checkReadClearance,
  placesOf,
  type MeasuredPart,
} from './fit-check.ts';
import { fitLimits, type FitLimits, type FitSystem, type Range } from './fits.ts';
import {
  absolute,
  byLength,
  dividedBy,
  isLess,
  isMore,
  largest,
  minus,
  plus,
  smallest,
  zero,
  type Length,
} from '../length/length.ts';
import { usualIsoFits } from './tables/joint-classes.ts';

/** A class that two parts keep: each its own limits, or only as a pair the clearance. */
export type Keeps = { readonly fitClass: string; readonly by: 'sizes' | 'pair' };

export type KeptClass = {
  /** By the figures as they are read, the closest first; none where the pair keeps no class. */
  readonly read: readonly Keeps[];
  /** Those of them that the readings prove. */
  readonly proved: readonly Keeps[];
};

type Pair = {
  readonly nominal: Length;
  readonly system: FitSystem;
  readonly bore: MeasuredPart;
  readonly pin: MeasuredPart;
  /** The clearance itself, where an indicator read it. */
  readonly slop?: MeasuredPart | undefined;
};

/**
 * The classes of a system that two measured parts keep at their nominal size.
 *
 * Units:   a class is kept by sizes where bore and pin each lie inside their own limits, else as a pair where the clearance
 *          does. By sizes comes before as a pair; then the class whose clearance has the least room, the one whose middle lies
 *          nearest, the order of the tables.
 * Range:   the classes of ANSI B4.1, or the ISO 286 pairs that are offered by name; one that isn't made at the size is left out.
 * Source:  limits as each fit says; ISO 14253-1 idea for what is proved.
 */
export function keptClass(pair: Pair): KeptClass {
  const classes: readonly string[] = pair.system === 'ansi' ? ansiClasses : usualIsoFits;
  const found = classes
    .flatMap((fitClass) => {
      const fit = fitLimits({ fitClass, nominal: pair.nominal });
      return fit.ok ? [held(fit.value, pair)] : [];
    })
    .toSorted(closestFirst);
  return {
    read: found.flatMap(({ read }) => read ?? []),
    proved: found.flatMap(({ proved }) => proved ?? []),
  };
}

type Held = {
  readonly read: Keeps | undefined;
  readonly proved: Keeps | undefined;
  readonly room: Length;
  readonly offMiddle: Length;
};

function held(fit: FitLimits, pair: Pair): Held {
  const { lower, upper } = fit.clearance;
  const free = clearanceRead(pair);
  const read: Keeps | undefined = keepsPair(fit.clearance, free, pair.slop !== undefined)
    ? { fitClass: fit.fitClass, by: keepsSizes(fit, pair) ? 'sizes' : 'pair' }
    : undefined;
  return {
    read,
    // What isn't even read so is never proved.
    proved: read && provedBy(fit, pair),
    room: minus(upper, lower),
    offMiddle: absolute(minus(free.upper, dividedBy(plus(lower, upper), 2))),
  };
}

function provedBy(fit: FitLimits, { bore, pin, slop }: Pair): Keeps | undefined {
  const { verdict } = slop ? checkReadClearance(fit, slop) : checkClearance(fit, { bore, pin });
  if (verdict.kind !== 'good') return undefined;
  const bySizes = [checkBore(fit, bore), checkPin(fit, pin)].every((size) => size.verdict.kind === 'good');
  return { fitClass: fit.fitClass, by: bySizes ? 'sizes' : 'pair' };
}

/** Its least and its greatest by the figures alone. */
function clearanceRead({ bore, pin, slop }: Pair): Range {
  if (slop) return readOf(slop);
  const [hole, shank] = [readOf(bore), readOf(pin)];
  return { lower: minus(hole.lower, shank.upper), upper: minus(hole.upper, shank.lower) };
}

/** What an indicator moves does not grip: a least clearance of nothing or less holds. */
function keepsPair(limits: Range, free: Range, isRead: boolean): boolean {
  const holdsLower = isRead && !isMore(limits.lower, zero);
  return (holdsLower || !isLess(free.lower, limits.lower)) && !isMore(free.upper, limits.upper);
}

function keepsSizes(fit: FitLimits, { bore, pin }: Pair): boolean {
  return [
    [readOf(bore), fit.hole],
    [readOf(pin), fit.pin],
  ].every(([size, limits]) => size && limits && isInside(size, limits));
}

function isInside(size: Range, limits: Range): boolean {
  return !isLess(size.lower, limits.lower) && !isMore(size.upper, limits.upper);
}

function readOf(part: MeasuredPart): Range {
  const [first, ...others] = [mean(part.tightest), mean(part.loosest), ...placesOf(part).map(mean)];
  return { lower: smallest(first, ...others), upper: largest(first, ...others) };
}

function closestFirst(a: Held, b: Held): number {
  const rank = ({ read }: Held) => (read?.by === 'sizes' ? 0 : 1);
  return rank(a) - rank(b) || byLength(a.room, b.room) || byLength(a.offMiddle, b.offMiddle);
}
