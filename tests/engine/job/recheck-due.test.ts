import { assert, property, integer, date as dates } from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  daysAfter,
  daysBetween,
  odometerIn,
  recheckDue,
  type RecheckQuestion,
} from '../../../src/engine/job/recheck-due.ts';
import { sayAfter, sayRecheckDue } from '../../../src/engine/job/say-recheck.ts';

const date = (text: string) => {
  const [year = 0, month = 0, day = 0] = text.split('-').map(Number);
  return { year, month, day };
};
const signed = date('2026-11-03');
const day = (today: string, afterDays: number) => recheckDue({ today: date(today), from: signed, afterDays });
const way = (distance: NonNullable<RecheckQuestion['distance']>) =>
  recheckDue({ today: signed, from: signed, distance });
const said = (due: ReturnType<typeof recheckDue>) => sayRecheckDue(due);

describe('a re-check after days', () => {
  test.each([
    // 3 November + 7 days = 10 November.
    { today: '2026-11-03', state: 'not-yet', says: 'Not yet: 7 days to go.' },
    { today: '2026-11-09', state: 'not-yet', says: 'Not yet: 1 day to go.' },
    { today: '2026-11-10', state: 'due', says: 'Due today.' },
    { today: '2026-11-11', state: 'overdue', says: 'Overdue by 1 day.' },
    { today: '2026-11-20', state: 'overdue', says: 'Overdue by 10 days.' },
  ])('of seven from 3 November is $state on $today', ({ today, state, says }) => {
    expect(day(today, 7).state).toBe(state);
    expect(said(day(today, 7))).toBe(says);
  });

  test('runs over the end of a month, of a year and of a February with 29 days', () => {
    expect(day('2026-11-03', 30).days?.on).toEqual(date('2026-12-03')); // November has 30 days
    expect(daysAfter(date('2026-12-28'), 7)).toEqual(date('2027-01-04'));
    expect(daysAfter(date('2028-02-26'), 7)).toEqual(date('2028-03-04')); // 2028 is a leap year
    expect(daysAfter(date('2027-02-26'), 7)).toEqual(date('2027-03-05'));
  });

  test('so many days later is so many days apart, whatever the clocks are put to', () => {
    const anyDate = dates({
      min: new Date('2020-01-01'),
      max: new Date('2099-12-31'),
      noInvalidDate: true,
    });
    assert(
      property(anyDate, integer({ min: 0, max: 4000 }), (when, days) => {
        const from = { year: when.getUTCFullYear(), month: when.getUTCMonth() + 1, day: when.getUTCDate() };
        expect(daysBetween(from, daysAfter(from, days))).toBe(days);
      }),
    );
  });

  test('lands on the day that the calendar of JavaScript has, by another route', () => {
    const anyDate = dates({ min: new Date('1890-01-01'), max: new Date('2410-12-31'), noInvalidDate: true });
    const inUtc = (at: Date) => ({
      year: at.getUTCFullYear(),
      month: at.getUTCMonth() + 1,
      day: at.getUTCDate(),
    });
    assert(
      property(anyDate, integer({ min: 0, max: 50_000 }), (when, days) => {
        const then = new Date(when);
        then.setUTCDate(then.getUTCDate() + days);
        expect(daysAfter(inUtc(when), days)).toEqual(inUtc(then));
      }),
      { numRuns: 2000 },
    );
  });
});

describe('a re-check after a distance', () => {
  const from = { reading: 12_000, unit: 'mi' } as const;
  const at = (reading: number) => way({ after: 50, unit: 'mi', from, now: { reading, unit: 'mi' } });

  test.each([
    { reading: 12_000, says: 'Not yet: 50 mi to go.' },
    { reading: 12_049, says: 'Not yet: 1 mi to go.' },
    { reading: 12_050, says: 'Due now, by the odometer.' },
    { reading: 12_051, says: 'Overdue by 1 mi.' },
    { reading: 12_112, says: 'Overdue by 62 mi.' },
  ])('of 50 miles from 12000 says at $reading: $says', ({ reading, says }) => {
    expect(said(at(reading))).toBe(says);
  });

  test('in miles is due on a kilometre odometer at 50 × 1.609344 = 80.4672 km, so when it shows 81', () => {
    const km = (reading: number) =>
      way({ after: 50, unit: 'mi', from: { reading: 0, unit: 'km' }, now: { reading, unit: 'km' } });
    expect(km(0).distance).toMatchObject({ at: 81, atUnit: 'km' });
    // 80 km are 49.71 mi: a part of a mile is still to go; 81 km are 50.33 mi.
    expect(said(km(80))).toBe('Not yet: 1 mi to go.');
    expect(said(km(81))).toBe('Due now, by the odometer.');
    expect(said(km(83))).toBe('Overdue by 1 mi.'); // 83 / 1.609344 = 51.57
  });

  test('counts a mile as 1.609344 km exactly: 15625 mi are 25146 km, to the metre', () => {
    // 15625 × 1609.344 m = 25 146 000 m (NIST SP 811, the international mile).
    const due = way({
      after: 15_625,
      unit: 'mi',
      from: { reading: 0, unit: 'km' },
      now: { reading: 25_146, unit: 'km' },
    });
    expect(due).toMatchObject({ state: 'due', distance: { left: 0, at: 25_146 } });
  });

  test('counts on over a change from a mile odometer to a kilometre one', () => {
    // 1000 mi = 1609.344 km, and 100 km on: the first whole reading is 1710.
    const due = way({
      after: 100,
      unit: 'km',
      from: { reading: 1000, unit: 'mi' },
      now: { reading: 1700, unit: 'km' },
    });
    expect(due.distance).toMatchObject({ left: 10, unit: 'km', at: 1710, atUnit: 'km' });
  });

  test('counts from a reading in the other unit rounded down, so that it is never due late', () => {
    expect(odometerIn({ reading: 15_625, unit: 'mi' }, 'km')).toBe(25_146); // exactly, as above
    expect(odometerIn({ reading: 100, unit: 'km' }, 'mi')).toBe(62); // 100 / 1.609344 = 62.14
    expect(odometerIn({ reading: 100, unit: 'km' }, 'km')).toBe(100);
  });

  test.each([
    { why: 'it was never typed', now: undefined, says: 'It needs an odometer reading.' },
    {
      why: 'it reads less than at the start',
      now: { reading: 11_999, unit: 'mi' } as const,
      says: 'The odometer reads less than when counting began. Check the reading, or type it again.',
    },
  ])('can’t be told when the odometer is no help: $why', ({ now, says }) => {
    const due = way({ after: 50, unit: 'mi', from, ...(now && { now }) });
    expect(due.state).toBe('needs-odometer');
    expect(said(due)).toBe(says);
  });

  test('can’t be told without a reading to count from', () => {
    const due = way({ after: 50, unit: 'mi', now: from });
    expect(due.state).toBe('needs-odometer');
    expect(said(due)).toBe('It needs an odometer reading to count from.');
  });
});

describe('a re-check after days or a distance', () => {
  const both = (today: string, reading?: number) =>
    recheckDue({
      today: date(today),
      from: signed,
      afterDays: 7,
      distance: {
        after: 50,
        unit: 'mi',
        from: { reading: 100, unit: 'mi' },
        ...(reading === undefined ? {} : { now: { reading, unit: 'mi' } }),
      },
    });

  test('comes due by whichever is first', () => {
    expect(said(both('2026-11-05', 120))).toBe('Not yet: 5 days, 30 mi to go.');
    expect(said(both('2026-11-05', 160))).toBe('Overdue by 10 mi.');
    expect(said(both('2026-11-10', 120))).toBe('Due today.');
  });

  test('comes due by its days where no odometer was typed', () => {
    expect(both('2026-11-05').state).toBe('needs-odometer');
    expect(said(both('2026-11-05'))).toBe(
      'Not yet by the calendar: 5 days to go. It needs an odometer reading.',
    );
    expect(both('2026-11-11').state).toBe('overdue');
  });

  test('with neither set never comes due', () => {
    expect(recheckDue({ today: signed, from: signed })).toEqual({ state: 'not-yet' });
    expect(said(recheckDue({ today: signed, from: signed }))).toBe('Never due: no days or distance are set.');
  });

  test('never goes back from overdue when more days and miles pass', () => {
    const rank = { 'not-yet': 0, 'needs-odometer': 0, due: 1, overdue: 2 };
    const days = integer({ min: 0, max: 400 });
    const miles = integer({ min: 0, max: 5000 });
    assert(
      property(days, days, miles, miles, days, miles, (d1, d2, m1, m2, afterDays, after) => {
        const at = (passed: number, gone: number) =>
          recheckDue({
            today: daysAfter(signed, passed),
            from: signed,
            afterDays,
            distance: {
              after,
              unit: 'mi',
              from: { reading: 0, unit: 'mi' },
              now: { reading: gone, unit: 'mi' },
            },
          });
        expect(rank[at(d1 + d2, m1 + m2).state]).toBeGreaterThanOrEqual(rank[at(d1, m1).state]);
      }),
    );
  });
});

describe('what a re-check was set for', () => {
  test.each([
    { after: { days: 7, unit: 'mi' }, says: 'after 7 days' },
    { after: { days: 1, unit: 'mi' }, says: 'after 1 day' },
    { after: { distance: 50, unit: 'mi' }, says: 'after 50 mi' },
    {
      after: { days: 30, distance: 500, unit: 'km' },
      says: 'after 30 days or 500 km, whichever comes first',
    },
    { after: { unit: 'mi' }, says: 'no time set' },
  ] as const)('is said: $says', ({ after, says }) => {
    expect(sayAfter(after)).toBe(says);
  });
});
