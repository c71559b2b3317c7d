import { describe, expect, test } from 'vitest';
import type { CheckFound } from '../../src/engine/check.ts';
import { sayFinding, sayHours, saySignOff } from '../../src/engine/say-sign-off.ts';
import { curedAt, signOff, type FindingCode, type SignOffQuestion } from '../../src/engine/sign-off.ts';
import type { System } from '../../src/engine/safety.ts';

const HOUR = 3_600_000;
const noon = 1_790_000_000_000;

/** A brake job on which nothing is left to do. */
const ready: SignOffQuestion = {
  systems: ['brake'],
  now: noon,
  steps: [{ id: 's1', text: 'Fit the spacer', doneAt: noon - HOUR }],
  parts: [{ id: 'p1', name: 'Spacer', isMockUp: false }],
  checks: [{ id: 'c1', name: 'Float', found: 'good', older: false }],
  unchecked: [],
  cuts: [{ id: 'k1', name: 'Spacer, faced', state: 'to-size', older: false }],
  lacksOdometer: false,
};
const codes = (found: readonly { readonly code: FindingCode }[]) => found.map(({ code }) => code);
const stops = (changes: Partial<SignOffQuestion>) => codes(signOff({ ...ready, ...changes }).blockers);
const warns = (changes: Partial<SignOffQuestion>) => codes(signOff({ ...ready, ...changes }).warnings);
const step = { id: 's1', text: 'Fit the spacer' };

describe('a brake job', () => {
  test('with every step done, every check good, every cut to size and no mock-up can be signed', () => {
    const answer = signOff(ready);
    expect(answer).toEqual({ safetyCritical: true, blockers: [], warnings: [] });
    expect(saySignOff(answer)).toBe('Nothing stands in the way of signing.');
  });

  test.each<{ found: CheckFound; code: FindingCode }>([
    { found: 'not-done', code: 'check-not-done' },
    { found: 'no-good', code: 'check-failed' },
    { found: 'too-close', code: 'check-too-close' },
  ])('can’t be signed with a check that is $found', ({ found, code }) => {
    const answer = signOff({ ...ready, checks: [{ id: 'c1', name: 'Float', found, older: false }] });
    expect(answer.blockers).toEqual([{ code, name: 'Float', place: { at: 'check', id: 'c1' } }]);
    expect(saySignOff(answer)).toBe('One thing stands in the way of signing.');
  });

  test('can’t be signed without any check', () => {
    expect(stops({ checks: [] })).toEqual(['no-check']);
  });

  test('can’t be signed while a worksheet’s own check was never made, and that is said once', () => {
    expect(stops({ checks: [], unchecked: [{ title: 'Bracket float', used: true }] })).toEqual([
      'check-missing',
    ]);
  });

  test('is only warned of a worksheet that nothing was cut or assembled by', () => {
    const unchecked = [{ title: 'Bushing instead', used: false }];
    expect(stops({ unchecked })).toEqual([]);
    expect(warns({ unchecked })).toEqual(['check-offered']);
    expect(stops({ unchecked, checks: [] })).toEqual(['no-check']);
  });

  test.each(['to-cut', 'cutting', 'over'] as const)('can’t be signed with a cut that is %s', (state) => {
    expect(stops({ cuts: [{ id: 'k1', name: 'Spacer', state, older: false }] })).toEqual([
      state === 'over' ? 'cut-over' : 'cut-open',
    ]);
  });

  test('can be signed with a cut that was made again, and is warned of one that was only scrapped', () => {
    expect(warns({ cuts: [{ id: 'k1', name: 'Spacer', state: 'made-again', older: true }] })).toEqual([]);
    expect(stops({ cuts: [{ id: 'k1', name: 'Spacer', state: 'scrapped', older: true }] })).toEqual([]);
    expect(warns({ cuts: [{ id: 'k1', name: 'Spacer', state: 'scrapped', older: true }] })).toEqual([
      'cut-scrapped',
    ]);
  });

  test('is warned of figures worked out from older readings, but not stopped', () => {
    const changes = {
      checks: [{ id: 'c1', name: 'Float', found: 'good', older: true }],
      cuts: [{ id: 'k1', name: 'Spacer', state: 'to-size', older: true }],
    } as const;
    expect(stops(changes)).toEqual([]);
    expect(warns(changes)).toEqual(['cut-older', 'check-older']);
  });
});

describe('a job that touches no brake, steering, axle or wheel', () => {
  const systems: readonly System[] = ['engine'];

  test('is warned of what would stop one that does', () => {
    const changes: Partial<SignOffQuestion> = {
      systems,
      checks: [{ id: 'c1', name: 'End play', found: 'no-good', older: false }],
      cuts: [{ id: 'k1', name: 'Spacer', state: 'to-cut', older: false }],
      unchecked: [
        { title: 'Idler stack', used: true },
        { title: 'Idler bushing', used: false },
      ],
    };
    expect(stops(changes)).toEqual([]);
    expect(warns(changes)).toEqual(['cut-open', 'check-missing', 'check-failed']);
  });

  test('needs no check', () => {
    expect(warns({ systems, checks: [] })).toEqual([]);
  });

  test('is stopped all the same by a mock-up part, a step not done, a torque without figure, and wet locker', () => {
    const found = stops({
      systems,
      parts: [{ id: 'p1', name: 'Outer spacer', isMockUp: true }],
      steps: [
        step,
        { ...step, doneAt: noon, torque: { typed: '', source: '' } },
        { ...step, doneAt: noon, torque: { typed: '45', source: ' ' } },
        { ...step, doneAt: noon, locker: 'blue', cureHours: '24' },
      ],
    });
    expect(found).toEqual([
      'mock-up-in',
      'step-not-done',
      'no-torque-figure',
      'no-torque-source',
      'locker-curing',
    ]);
  });
});

describe('a record that can’t be read', () => {
  test('stops a brake job, as it may be a failed check, and is to be known before on a tank job', () => {
    expect(stops({ unreadable: 1 })).toEqual(['unreadable']);
    expect(stops({ unreadable: 1, systems: [] })).toEqual([]);
    expect(warns({ unreadable: 1, systems: [] })).toEqual(['unreadable']);
    expect(stops({ unreadable: 0 })).toEqual([]);
  });

  test('is counted and said once, however many there are', () => {
    const said = (unreadable: number) => signOff({ ...ready, unreadable }).blockers.map(sayFinding);
    expect(said(1).map(({ what }) => what)).toEqual(['Can’t be read by this version: one record']);
    expect(said(3).map(({ what }) => what)).toEqual(['Can’t be read by this version: 3 records']);
  });
});

describe('a thread locker', () => {
  const at = (hoursAgo: number, cureHours = '24') =>
    signOff({
      ...ready,
      steps: [{ ...step, doneAt: noon - hoursAgo * HOUR, locker: 'medium', cureHours }],
    }).blockers;

  test('with 24 h to cure stops the signing until 24 h after its step was done, to the minute', () => {
    expect(at(24)).toEqual([]);
    expect(at(23.5)).toEqual([
      {
        code: 'locker-curing',
        name: 'Fit the spacer',
        place: { at: 'step', id: 's1' },
        number: 1,
        hoursLeft: 0.5,
      },
    ]);
  });

  test('that cures in half an hour is written .5', () => {
    expect(at(0.25, '.5')).toHaveLength(1);
    expect(at(0.5, '.5')).toEqual([]);
  });

  test('has cured so many hours after its step was done, and never before that', () => {
    expect(curedAt({ doneAt: noon, cureHours: '6' })).toBe(noon + 6 * HOUR);
    expect(curedAt({ cureHours: '6' })).toBeUndefined();
    expect(curedAt({ doneAt: noon })).toBeUndefined();
    expect(curedAt({ doneAt: noon, cureHours: '' })).toBeUndefined();
    expect(curedAt({ doneAt: noon, cureHours: 'overnight' })).toBeUndefined();
  });

  test('without a cure time is warned of', () => {
    expect(warns({ steps: [{ ...step, doneAt: noon, locker: 'medium' }] })).toEqual(['no-cure-time']);
  });
});

describe('what else should be known before signing', () => {
  test('is that no step is written down, and that no odometer was read', () => {
    expect(stops({ steps: [], lacksOdometer: true })).toEqual([]);
    expect(warns({ steps: [], lacksOdometer: true })).toEqual(['no-steps', 'no-odometer']);
  });
});

describe('what stands in the way', () => {
  const all: SignOffQuestion = {
    ...ready,
    steps: [
      { ...step, torque: { typed: '', source: '' } },
      { ...step, doneAt: noon, torque: { typed: '45', source: '' } },
      { ...step, doneAt: noon, locker: 'medium', cureHours: '1.5' },
      { ...step, doneAt: noon, locker: 'medium' },
    ],
    parts: [{ id: 'p1', name: 'Outer spacer', isMockUp: true }],
    checks: (['not-done', 'no-good', 'too-close', 'good'] as const).map((found, index) => ({
      id: `c${index}`,
      name: 'Float',
      found,
      older: found === 'good',
    })),
    unchecked: [
      { title: 'Rear axle', used: true },
      { title: 'Bushing instead', used: false },
    ],
    cuts: (['to-cut', 'over', 'scrapped', 'to-size'] as const).map((state, index) => ({
      id: `k${index}`,
      name: 'Spacer, faced',
      state,
      older: state === 'to-size',
    })),
    lacksOdometer: true,
    unreadable: 2,
  };

  test('is counted', () => {
    // What can't be read, two cuts, one worksheet, three checks, one part, two of a torque, one step not done, one curing.
    expect(saySignOff(signOff(all))).toBe('12 things stand in the way of signing.');
  });

  test('is said with what to do about it', () => {
    const answer = signOff(all);
    const said = [...answer.blockers, ...answer.warnings].map(sayFinding);
    expect(said).toContainEqual({
      what: 'Outer spacer is still a mock-up',
      todo: 'Fit the real part, then say that it is swapped.',
    });
    expect(said).toContainEqual({ what: 'Step 1 is not done', todo: 'Fit the spacer' });
    expect(said).toContainEqual({
      what: 'Step 3: the thread locker is still curing',
      todo: '1 h 30 min to go. Fit the spacer',
    });
    expect(said).toContainEqual({ what: 'Float: no good', todo: 'Put it right, then check again.' });
    expect(said).toContainEqual({
      what: 'Nothing checks Rear axle',
      todo: 'Parts were made or put together by it. Add the check it offers.',
    });
    expect(
      sayFinding({
        code: 'no-torque-figure',
        place: { at: 'step', id: 's1' },
        name: 'Tighten the nut.',
        number: 2,
      }).todo,
    ).toBe('Tighten the nut. Type the service manual’s figure.');
    for (const { what, todo } of said) {
      expect(what).toMatch(/^[A-Z]/);
      expect(what + todo).not.toMatch(/undefined|NaN|null/);
    }
    // One of each kind but the two that exclude others: no check at all, no step at all.
    expect(new Set(codes([...answer.blockers, ...answer.warnings])).size).toBe(18);
    for (const lone of [stops({ checks: [] }), warns({ steps: [] })]) expect(lone).toHaveLength(1);
    expect(signOff({ ...ready, checks: [] }).blockers.map(sayFinding)[0]?.what).toBe(
      'No fit-up check at all',
    );
    expect(signOff({ ...ready, steps: [] }).warnings.map(sayFinding)[0]?.what).toBe(
      'No assembly step is written down',
    );
  });

  test.each([
    { hours: 6, says: '6 h' },
    { hours: 1.5, says: '1 h 30 min' },
    { hours: 1 / 3, says: '20 min' },
    { hours: 0.999, says: '1 h' }, // 59.94 minutes: a begun minute counts
    { hours: 0.001, says: '1 min' },
  ])('in hours is said as $says', ({ hours, says }) => {
    expect(sayHours(hours)).toBe(says);
  });
});
