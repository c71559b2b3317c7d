import type { DistanceDue, DistanceUnit, RecheckDue } from './recheck-due.ts';

/** When a re-check is due, in one sentence: what is up where something is, else what is left. */
export function sayRecheckDue({ state, days, distance }: RecheckDue): string {
  const lefts: readonly Left[] = [
    ...(days ? [{ left: days.left, unit: 'day' as const }] : []),
    ...(distance?.known === true ? [distance] : []),
  ];
  switch (state) {
    case 'overdue':
      return `Overdue by ${counted(lefts.filter(({ left }) => left < 0))}.`;
    case 'due':
      return days?.left === 0 ? 'Due today.' : 'Due now, by the odometer.';
    case 'not-yet':
      return lefts.length === 0
        ? 'Never due: no days or distance are set.'
        : `Not yet: ${counted(lefts)} to go.`;
    case 'needs-odometer':
      return [
        ...(days ? [`Not yet by the calendar: ${counted(lefts)} to go.`] : []),
        sayBlind(distance),
      ].join(' ');
    default:
      return state satisfies never;
  }
}

/** What it was set for: "after 7 days or 50 mi". */
export function sayAfter(after: {
  readonly days?: number;
  readonly distance?: number;
  readonly unit: DistanceUnit;
}): string {
  const waits = [
    ...(after.days === undefined ? [] : [count(after.days, 'day')]),
    ...(after.distance === undefined ? [] : [count(after.distance, after.unit)]),
  ];
  if (waits.length === 0) return 'no time set';
  return `after ${waits.join(' or ')}${waits.length > 1 ? ', whichever comes first' : ''}`;
}

type Left = { readonly left: number; readonly unit: 'day' | DistanceUnit };

function counted(lefts: readonly Left[]): string {
  return lefts.map(({ left, unit }) => count(Math.abs(left), unit)).join(', ');
}

function sayBlind(distance: DistanceDue | undefined): string {
  switch (distance?.known === false ? distance.why : 'no-reading') {
    case 'no-start':
      return 'It needs an odometer reading to count from.';
    case 'went-back':
      return 'The odometer reads less than when counting began. Check the reading, or type it again.';
    default:
      return 'It needs an odometer reading.';
  }
}

function count(number: number, unit: 'day' | DistanceUnit): string {
  if (unit === 'day') return number === 1 ? '1 day' : `${number} days`;
  return `${number} ${unit}`;
}
