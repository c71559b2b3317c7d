import { bandOf, combine, mean, type Estimate } from '../reading/estimate.ts';
import type { FitLimits, Range } from './fits.ts';
import { isMore, largest, minus, plus, zero, type Length } from '../length/length.ts';
import { refuse, worked, type Result } from '../length/refusal.ts';
import {
  hangsOnLower,
  rulingPlace,
  verdictOf,
  worseVerdict,
  type Limits,
  type Verdict,
} from '../reading/verdict.ts';

/** A measured bore or pin. The pin's tightest place is its largest. */
export type MeasuredPart = {
  readonly tightest: Estimate;
  readonly loosest: Estimate;
  /** Every place that counts, where there is more than one: any of them may be surely past a limit. */
  readonly places?: readonly Estimate[];
};

/** What the readings say of one thing with limits; the value is the place that decides. */
export type Checked = {
  readonly value: Length;
  readonly halfWidth: Length;
  readonly limits: Limits & Range;
  readonly verdict: Verdict;
};

export type ClearanceChecked = Checked & { readonly tightest: Length; readonly loosest: Length };

/** Limits for the part that is still to be made. */
export type PartFor = Range & {
  /** How closely the measured part is known: as much of each limit can't be used with certainty. */
  readonly halfWidth: Length;
  /** What is left of the limits after that; left out where nothing is. */
  readonly sure?: Range;
};

/** Limits less what can't be told of the sizes they come from, each limit by its own; nothing where that leaves none. */
export function lessTheBands({ lower, upper }: Range, bands: Range): Range | undefined {
  const sure = { lower: plus(lower, bands.lower), upper: minus(upper, bands.upper) };
  return isMore(sure.lower, sure.upper) ? undefined : sure;
}

/** What such a part is cut to: what is sure of its limits, else all of them. */
export function surest({ sure, lower, upper }: PartFor): Range {
  return sure ?? { lower, upper };
}

export type FormRefusal = {
  readonly code: 'form-eats-class';
  readonly part: 'bore' | 'pin';
  readonly form: Length;
  readonly room: Length;
};

/**
 * Whether a measured bore keeps the class.
 *
 * Units:   the tightest place is held to the lower limit, the loosest to the upper; the worse verdict counts.
 * Source:  ISO 14253-1 idea; limits as the fit says.
 */
export function checkBore(
  fit: Pick<FitLimits, 'hole' | 'source'>,
  { tightest, loosest, places = [] }: MeasuredPart,
): Checked {
  return check({
    limits: { ...fit.hole, source: fit.source },
    small: ofSize(tightest),
    large: ofSize(loosest),
    all: places.map(ofSize),
  });
}

/** Whether a measured pin keeps the class: its loosest place is its smallest. As `checkBore`. */
export function checkPin(
  fit: Pick<FitLimits, 'pin' | 'source'>,
  { tightest, loosest, places = [] }: MeasuredPart,
): Checked {
  return check({
    limits: { ...fit.pin, source: fit.source },
    small: ofSize(loosest),
    large: ofSize(tightest),
    all: places.map(ofSize),
  });
}

/**
 * Whether two measured parts run as the class wants, whatever their sizes are by themselves.
 *
 * Units:   clearance = bore − pin, tightest and loosest places, each with its band; below zero the pin is the larger.
 * Source:  ISO 14253-1 idea; JCGM 100:2008 for the band of the difference.
 */
export function checkClearance(
  fit: FitLimits,
  { bore, pin }: { readonly bore: MeasuredPart; readonly pin: MeasuredPart },
): ClearanceChecked {
  const tight = difference(bore.tightest, pin.tightest);
  const loose = difference(bore.loosest, pin.loosest);
  return {
    ...check({
      limits: { ...fit.clearance, source: fit.source },
      small: tight,
      large: loose,
      all: placesOf(bore).flatMap((hole) => placesOf(pin).map((shank) => difference(hole, shank))),
    }),
    tightest: tight.value,
    loosest: loose.value,
  };
}

/**
 * Whether two parts run as the class wants, by the clearance that an indicator read between them.
 *
 * Units:   read at several places, the tightest is held to the lower limit and the loosest to the upper. What can be moved by
 *          hand does not grip: a least clearance of zero or less holds.
 */
export function checkReadClearance(fit: FitLimits, read: MeasuredPart): ClearanceChecked {
  const [small, large] = [ofSize(read.tightest), ofSize(read.loosest)];
  const { lower, upper } = fit.clearance;
  const held = largest(lower, zero);
  const limits = {
    lower: isMore(held, zero) ? held : minus(zero, small.halfWidth),
    upper,
    source: fit.source,
  };
  const checked = check({ limits, small, large, all: placesOf(read).map(ofSize) });
  return {
    ...checked,
    limits: { lower, upper, source: fit.source },
    tightest: small.value,
    loosest: large.value,
  };
}

/**
 * The pin that gives this bore the class's clearance.
 *
 * Units:   largest pin = tightest bore − least clearance; smallest pin = loosest bore − greatest clearance.
 * Refuses: form-eats-class where the bore's taper and out-of-round are more than the class leaves.
 */
export function pinForBore(fit: FitLimits, bore: MeasuredPart): Result<PartFor, FormRefusal> {
  const { clearance } = fit;
  return partFor('bore', bore, {
    lower: minus(mean(bore.loosest), clearance.upper),
    upper: minus(mean(bore.tightest), clearance.lower),
    room: clearance,
  });
}

/** The bore that gives this pin the class's clearance. As `pinForBore`. */
export function boreForPin(fit: FitLimits, pin: MeasuredPart): Result<PartFor, FormRefusal> {
  const { clearance } = fit;
  return partFor('pin', pin, {
    lower: plus(mean(pin.tightest), clearance.lower),
    upper: plus(mean(pin.loosest), clearance.upper),
    room: clearance,
  });
}

function partFor(
  part: 'bore' | 'pin',
  { tightest, loosest }: MeasuredPart,
  { lower, upper, room }: Range & { readonly room: Range },
): Result<PartFor, FormRefusal> {
  if (isMore(lower, upper)) {
    const [small, large] = part === 'bore' ? [tightest, loosest] : [loosest, tightest];
    const form = minus(mean(large), mean(small));
    return refuse({ code: 'form-eats-class', part, form, room: minus(room.upper, room.lower) });
  }
  const { halfWidth } = bandOf(tightest);
  // The place that a limit was worked out from gives that limit its band: a bore's loosest the lower, a pin's the upper.
  const [below, above] = part === 'bore' ? [loosest, tightest] : [tightest, loosest];
  const sure = lessTheBands(
    { lower, upper },
    { lower: bandOf(below).halfWidth, upper: bandOf(above).halfWidth },
  );
  return worked({ lower, upper, halfWidth, ...(sure && { sure }) });
}

type Known = { readonly value: Length; readonly halfWidth: Length; readonly doubt?: boolean };

/** `small` and `large` are the places that may be furthest past a limit; of all the others one may surely be. */
function check(q: {
  readonly limits: Checked['limits'];
  readonly small: Known;
  readonly large: Known;
  readonly all: readonly Known[];
}): Checked {
  const { lower, upper, source } = q.limits;
  const against = (limits: Limits) => (place: Known) => ({ place, verdict: verdictOf({ ...place, limits }) });
  const toLower = against({ lower, source });
  const toUpper = against({ upper, source });
  const low = rulingPlace(toLower(q.small), q.all.map(toLower));
  const high = rulingPlace(toUpper(q.large), q.all.map(toUpper));
  const verdict = worseVerdict(low.verdict, high.verdict);
  const { value, halfWidth } = (hangsOnLower(verdict) ? low : high).place;
  return { value, halfWidth, limits: q.limits, verdict };
}

export function placesOf({ tightest, loosest, places }: MeasuredPart): readonly Estimate[] {
  return places ?? [tightest, loosest];
}

function ofSize(estimate: Estimate): Known {
  return { value: mean(estimate), ...bandOf(estimate) };
}

function difference(bore: Estimate, pin: Estimate): Known {
  const { value, band } = combine([
    { estimate: bore, coefficient: 1 },
    { estimate: pin, coefficient: -1 },
  ]);
  return { value, ...band };
}
