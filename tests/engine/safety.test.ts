import { expect, test } from 'vitest';
import { isSafetyCritical, type System } from '../../src/engine/safety.ts';

test.each<[readonly System[], boolean]>([
  [['brake'], true],
  [['steering'], true],
  [['axle'], true],
  [['wheel'], true],
  [['engine'], false],
  [[], false],
  [['engine', 'wheel'], true],
])('a job that touches %j is safety-critical: %s', (systems, critical) => {
  expect(isSafetyCritical({ systems })).toBe(critical);
});
