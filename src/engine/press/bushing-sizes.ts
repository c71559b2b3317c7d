import type { BushingQuestion, BushingRefusal } from './bushing.ts';
import { mean } from '../reading/estimate.ts';
import { pinForBore, surest, type FormRefusal, type MeasuredPart } from '../fit/fit-check.ts';
import { systemOf, type FitLimits, type Range } from '../fit/fits.ts';
import {
  absolute,
  byLength,
  dividedBy,
  isLess,
  isMore,
  largest,
  minus,
  plus,
  sameLength,
  smallest,
  times,
  type Length,
} from '../length/length.ts';
import { nominalNear, type Nominal } from '../fit/nominal.ts';
import { refuse, worked, type Result } from '../length/refusal.ts';
import { leastBushingWall } from '../fit/tables/least-walls.ts';
import { standardReamers, type Reamer } from '../fit/tables/reamer-sizes.ts';
import { middleOf } from '../reading/verdict.ts';

/**
 * Turned to a bore that was measured, only the bushing's own tolerance is left of the class, about its middle, and what the
 * bore's readings can't tell is taken off.
 *
 * Refuses: form-eats-class, where the bore's form leaves nothing of the class.
 */
export function outsideFor(fit: FitLimits, bore: MeasuredPart): Result<Range, FormRefusal> {
  const whole = pinForBore(fit, bore);
  if (!whole.ok) return whole;
  const { lower, upper } = surest(whole.value);
  const half = dividedBy(minus(fit.pin.upper, fit.pin.lower), 2);
  const aim = middleOf({ lower, upper });
  return worked({ lower: largest(lower, minus(aim, half)), upper: smallest(upper, plus(aim, half)) });
}

type PressedInto = { readonly ream: Reamer; readonly hole: Range };

/**
 * The hole a bushing goes into: as it was reamed where that is measured, whatever was planned; else as planned.
 *
 * Refuses: as `reamerFor`; reams-too-small and no-bushing-wall by the measured size.
 */
export function holeFor(
  q: BushingQuestion,
  cleanUp: Length,
  inside: Range,
): Result<PressedInto, BushingRefusal> {
  const planned = reamerFor(q, cleanUp, inside);
  if (!q.reamed)
    return planned.ok
      ? worked({ ream: planned.value, hole: { lower: planned.value.size, upper: planned.value.size } })
      : planned;
  const hole = { lower: mean(q.reamed.tightest), upper: mean(q.reamed.loosest) };
  if (isLess(hole.lower, mean(q.bore.loosest)))
    return refuse({ code: 'reams-too-small', reamTo: hole.lower, needs: cleanUp });
  if (!isMore(hole.lower, inside.upper))
    return refuse({ code: 'no-bushing-wall', reamTo: hole.lower, inside: inside.upper });
  return worked({ ream: reamedWith(hole.lower, planned.ok ? [planned.value] : []), hole });
}

// A reamer doesn't cut quite its own size: the hole is the planned one's until another standard size lies nearer.
function reamedWith(size: Length, planned: readonly Reamer[]): Reamer {
  const off = (reamer: Reamer): Length => absolute(minus(reamer.size, size));
  const [nearest] = [...planned, ...standardReamers].sort((a, b) => byLength(off(a), off(b)));
  return nearest && planned.includes(nearest) ? nearest : { name: '', size };
}

/**
 * What to ream to: the user's own size, else the smallest standard reamer that cleans the bore up and leaves the bushing
 * its least wall, in millimetres for an ISO class and in inches for an ANSI one where there is such a one.
 *
 * Refuses: no-reamer, reams-too-small, no-bushing-wall.
 * Source:  tables/reamer-sizes.ts, tables/least-walls.ts.
 */
function reamerFor(
  { reamTo, leastBushingWall: own, pressClass, shop = 'in' }: BushingQuestion,
  cleanUp: Length,
  inside: Range,
): Result<Reamer, BushingRefusal> {
  if (reamTo && isLess(reamTo, cleanUp)) return refuse({ code: 'reams-too-small', reamTo, needs: cleanUp });
  if (reamTo && !isMore(reamTo, inside.upper))
    return refuse({ code: 'no-bushing-wall', reamTo, inside: inside.upper });
  if (reamTo) return worked({ name: '', size: reamTo });
  const needs = largest(cleanUp, plus(inside.upper, times(own ?? leastBushingWall[shop], 2)));
  const enough = standardReamers.filter(({ size }) => !isLess(size, needs));
  const family = systemOf(pressClass) === 'iso' ? 'mm' : 'in';
  const reamer = enough.find(({ name }) => name.endsWith(family)) ?? enough[0];
  return reamer ? worked(reamer) : refuse({ code: 'no-reamer', needs });
}

/** What the class inside is taken at. */
export function insideNominal({ nominal, pin, insideClass }: BushingQuestion): Nominal {
  return nominal
    ? { size: nominal, from: 'given' }
    : { size: nominalNear(mean(pin.tightest), systemOf(insideClass)), from: 'nearest' };
}

/** A size that is planned is a nominal of its own; of a measured hole it is the size that the hole is near. */
export function pressNominal({ reamed, pressClass, reamTo }: BushingQuestion, size: Length): Length {
  if (!reamed || (reamTo && sameLength(reamTo, size))) return size;
  return nominalNear(size, systemOf(pressClass));
}
