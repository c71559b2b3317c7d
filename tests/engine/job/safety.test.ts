import { describe, expect, test } from 'vitest';
import {
  isSafetyCritical,
  isTouchSaid,
  touchingNone,
  withSystem,
  type System,
} from '../../../src/engine/job/safety.ts';
import { signOff } from '../../../src/engine/job/sign-off.ts';

test.each<[readonly System[], boolean]>([
  [['brake'], true],
  [['steering'], true],
  [['axle'], true],
  [['wheel'], true],
  [['engine'], false],
  [['engine', 'wheel'], true],
])('a job that touches %j is safety-critical: %s', (systems, critical) => {
  expect(isSafetyCritical({ systems })).toBe(critical);
});

describe('a job that touches none of the systems', () => {
  test('is not safety-critical once that was said', () => {
    expect(isSafetyCritical({ systems: [], touchesNone: true })).toBe(false);
  });

  test('counts as safety-critical while nobody has said it, an old record too', () => {
    expect(isSafetyCritical({ systems: [] })).toBe(true);
    expect(isTouchSaid({ systems: [] })).toBe(false);
    expect(isTouchSaid({ systems: [], touchesNone: false })).toBe(false);
  });

  test('is asked about again when its only system is taken back', () => {
    const brake = withSystem(touchingNone, 'brake');
    expect(brake).toEqual({ systems: ['brake'], touchesNone: false });
    expect(isTouchSaid(withSystem(brake, 'brake'))).toBe(false);
  });

  test('touches the brake all the same where two phones said both', () => {
    expect(isSafetyCritical({ systems: ['brake'], touchesNone: true })).toBe(true);
  });
});

test('nothing is signed before it is said what the job touches, and no reason lets that pass', () => {
  const nothing = { now: 0, steps: [], parts: [], checks: [], unchecked: [], cuts: [], lacksOdometer: false };
  const key = 'touch-not-said';
  const reasons = { [key]: { why: 'a bracket of a stand', as: '' } };
  const open = signOff({ ...nothing, systems: [], reasons });
  expect(open.blockers.map(({ code }) => code)).toContain('touch-not-said');
  expect(open.safetyCritical).toBe(true);
  expect(signOff({ ...nothing, systems: [], touchesNone: true }).blockers).toEqual([]);
});
