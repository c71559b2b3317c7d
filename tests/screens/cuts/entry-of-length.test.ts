import { describe, expect, test } from 'vitest';
import { dividedBy, isLess, isMore, lengthOf } from '../../../src/engine/length/length.ts';
import { exactEntry, limitEntries, roundedEntry } from '../../../src/screens/cuts/entry-of-length.ts';

const third = dividedBy(lengthOf('1 in'), 3);

describe('a size that was worked out, as if typed', () => {
  test.each([
    { size: '.377 in', unit: 'in', typed: '.377', in: 'in' },
    { size: '29/64 in', unit: 'in', typed: '.453125', in: 'in' },
    { size: '1-1/2 in', unit: 'in', typed: '1.5', in: 'in' },
    // .377 · 25.4
    { size: '.377 in', unit: 'mm', typed: '9.5758', in: 'mm' },
    // 8.4 mm never ends in inches
    { size: '8.4 mm', unit: 'in', typed: '8.4', in: 'mm' },
  ] as const)('$size in $unit reads $typed $in', ({ size, unit, typed, in: said }) => {
    expect(exactEntry(lengthOf(size), unit)).toMatchObject({ typed, unit: said });
  });

  test('a third of an inch ends in neither unit and is rounded the way that is asked for', () => {
    expect(exactEntry(third, 'in')).toBeUndefined();
    expect(roundedEntry(third, 'in', 'up').typed).toBe('.3334');
    expect(roundedEntry(third, 'in', 'down').typed).toBe('.3333');
    // 8.4666…
    expect(roundedEntry(third, 'mm', 'nearest').typed).toBe('8.467');
  });
});

describe('limits that don’t end', () => {
  const limits = (lower: string, upper: string) => ({
    lower: dividedBy(lengthOf(`${lower} in`), 3),
    upper: dividedBy(lengthOf(`${upper} in`), 3),
  });

  test('are rounded inwards: nothing counts as good that isn’t', () => {
    // 1/3 = .33333 and 1.001/3 = .33367
    const { lower, upper } = limitEntries({ ...limits('1', '1.001'), target: lengthOf('.3335 in') }, 'in');
    expect([lower.typed, upper.typed]).toEqual(['.3334', '.3336']);
    expect(isLess(lower.exact, third)).toBe(false);
  });

  test('never pass the target between them', () => {
    // All of it lies inside one tenth: .33336 to .33340, target .33338
    const size = {
      lower: lengthOf('.33336 in'),
      upper: lengthOf('.33338 in'),
      target: lengthOf('.33337 in'),
    };
    const { lower, target, upper } = limitEntries(size, 'in');
    expect(isMore(lower.exact, target.exact) || isLess(upper.exact, target.exact)).toBe(false);
  });
});
