/** A day on the calendar of the place where the work is done; month 1 to 12. */
export type CalendarDate = { readonly year: number; readonly month: number; readonly day: number };

export type DistanceUnit = 'mi' | 'km';
export type OdometerReading = { readonly reading: number; readonly unit: DistanceUnit };

// The international mile, exact since 1959: 1609.344 m. NIST SP 811 (2008), appendix B.8.
// In whole millimetres every whole mile and kilometre is a whole number, so that nothing here is ever rounded.
const MILLIMETRES: Readonly<Record<DistanceUnit, number>> = { mi: 1_609_344, km: 1_000_000 };

export type RecheckQuestion = {
  readonly today: CalendarDate;
  /** The day from which it counts: the sign-off, or the day it was set. */
  readonly from: CalendarDate;
  readonly afterDays?: number;
  readonly distance?: {
    readonly after: number;
    readonly unit: DistanceUnit;
    /** What the odometer read when counting began. */
    readonly from?: OdometerReading;
    /** What it read last. */
    readonly now?: OdometerReading;
  };
};

export type DaysDue = {
  /** Days left; 0 is today, below zero is overdue by so many. */
  readonly left: number;
  readonly on: CalendarDate;
};

export type DistanceDue =
  | {
      readonly known: true;
      /** Left to go: half a mile is one to go still, half a mile past is due; below zero is overdue. */
      readonly left: number;
      readonly unit: DistanceUnit;
      /** The first reading at which it is due, in the unit the odometer is read in. */
      readonly at: number;
      readonly atUnit: DistanceUnit;
    }
  | { readonly known: false; readonly why: 'no-start' | 'no-reading' | 'went-back' };

export type RecheckDue = {
  readonly state: 'due' | 'overdue' | 'not-yet' | 'needs-odometer';
  readonly days?: DaysDue;
  readonly distance?: DistanceDue;
};

/**
 * Whether a re-check is due: by the calendar, by the odometer, or by whichever comes first where both are set.
 *
 * Units:   whole days; whole miles or kilometres, each in the unit it is given in.
 * Range:   due on the day and at the reading themselves, overdue from the next day or mile on.
 * Refuses: nothing; a distance without an odometer reading is `needs-odometer`, unless its days are up already.
 * Source:  the international mile, NIST SP 811 (2008), appendix B.8.
 */
export function recheckDue({ today, from, afterDays, distance }: RecheckQuestion): RecheckDue {
  const days = afterDays === undefined ? undefined : daysDue(today, from, afterDays);
  const way = distance && distanceDue(distance);
  const lefts = [...(days ? [days.left] : []), ...(way?.known === true ? [way.left] : [])];
  const state = stateOf(lefts, way?.known === false);
  return { state, ...(days && { days }), ...(way && { distance: way }) };
}

function stateOf(lefts: readonly number[], isBlind: boolean): RecheckDue['state'] {
  if (lefts.some((left) => left < 0)) return 'overdue';
  if (lefts.includes(0)) return 'due';
  return isBlind ? 'needs-odometer' : 'not-yet';
}

/** The day so many days after another. */
export function daysAfter(from: CalendarDate, days: number): CalendarDate {
  return dateOf(dayNumber(from) + days);
}

/** Days from one day to another on the calendar: a clock put forward or back changes none. */
export function daysBetween(from: CalendarDate, to: CalendarDate): number {
  return dayNumber(to) - dayNumber(from);
}

// Days since 1 March of the year 0, so that the leap day is the last of its year: no clock and no time zone is asked.
// The calendar repeats after 400 years, which have 146097 days.
const DAYS_IN_400_YEARS = 146_097;

function dayNumber({ year, month, day }: CalendarDate): number {
  const years = month > 2 ? year : year - 1;
  const leaps = Math.floor(years / 4) - Math.floor(years / 100) + Math.floor(years / 400);
  return 365 * years + leaps + daysBefore(month) + day - 1;
}

/** Days from 1 March to the first of a month: 31, 30, 31, 30, 31 days, and again. */
function daysBefore(month: number): number {
  const monthsSinceMarch = (month + 9) % 12;
  return Math.floor((153 * monthsSinceMarch + 2) / 5);
}

function dateOf(number: number): CalendarDate {
  const spans = Math.floor(number / DAYS_IN_400_YEARS);
  const inSpan = number - spans * DAYS_IN_400_YEARS;
  const yearInSpan = Math.floor(
    (inSpan - Math.floor(inSpan / 1460) + Math.floor(inSpan / 36_524) - Math.floor(inSpan / 146_096)) / 365,
  );
  const inYear = inSpan - (365 * yearInSpan + Math.floor(yearInSpan / 4) - Math.floor(yearInSpan / 100));
  const monthsSinceMarch = Math.floor((5 * inYear + 2) / 153);
  const month = ((monthsSinceMarch + 2) % 12) + 1;
  return {
    year: spans * 400 + yearInSpan + (month <= 2 ? 1 : 0),
    month,
    day: inYear - daysBefore(month) + 1,
  };
}

function daysDue(today: CalendarDate, from: CalendarDate, afterDays: number): DaysDue {
  const on = daysAfter(from, afterDays);
  return { on, left: daysBetween(today, on) };
}

function distanceDue({ after, unit, from, now }: NonNullable<RecheckQuestion['distance']>): DistanceDue {
  if (!from) return { known: false, why: 'no-start' };
  if (!now) return { known: false, why: 'no-reading' };
  const gone = millimetres(now) - millimetres(from);
  if (gone < 0) return { known: false, why: 'went-back' };
  const left = after * MILLIMETRES[unit] - gone;
  const due = millimetres(from) + after * MILLIMETRES[unit];
  return {
    known: true,
    left: wholeFrom(left / MILLIMETRES[unit]),
    unit,
    at: wholeFrom(due / MILLIMETRES[now.unit]),
    atUnit: now.unit,
  };
}

function millimetres({ reading, unit }: OdometerReading): number {
  return reading * MILLIMETRES[unit];
}

/**
 * An odometer reading in the other unit.
 *
 * Units:  whole miles or kilometres, rounded down: what counts from it never comes due late.
 * Source: the international mile, NIST SP 811 (2008), appendix B.8.
 */
export function odometerIn(odometer: OdometerReading, unit: DistanceUnit): number {
  return Math.floor(millimetres(odometer) / MILLIMETRES[unit]);
}

/** Up to the next whole mile; never the -0 that would be shown as "-0". */
function wholeFrom(distance: number): number {
  return Math.ceil(distance) || 0;
}
