import { describe, expect, test } from 'vitest';
import { lengthOf } from '../../../src/engine/length/length.ts';
import { limitFault } from '../../../src/screens/worksheets/limit-fault.ts';
import { typedSize, worksheetOf } from './worksheet-for-test.ts';

function fault(given: Record<string, string>, name: string, size: string): string | undefined {
  const sizes = Object.fromEntries(Object.entries(given).map(([key, text]) => [key, typedSize(text)]));
  return limitFault(worksheetOf('spacer-stack', { sizes }), name, lengthOf(size));
}

describe('a limit that can’t stand beside the others is refused with both figures', () => {
  test('a least above the most', () => {
    expect(fault({ upper: '.012' }, 'lower', '.013 in')).toBe(
      'The least, .013 in, would be more than the most, .012 in. Change one of them.',
    );
  });

  test('a most below the least', () => {
    expect(fault({ lower: '.008' }, 'upper', '.007 in')).toBe(
      'The least, .008 in, would be more than the most, .007 in. Change one of them.',
    );
  });

  test('an aim outside the limits, on either side', () => {
    expect(fault({ lower: '.008', upper: '.012' }, 'aim', '.0079 in')).toBe(
      'The aim, .0079 in, would lie below the least, .008 in.',
    );
    expect(fault({ lower: '.008', upper: '.012' }, 'aim', '.0121 in')).toBe(
      'The aim, .0121 in, would lie above the most, .012 in.',
    );
  });

  test('an aim outside the usual limits, where no own ones are given', () => {
    // A float is usually .008 to .012 in (common practice, no source).
    expect(fault({}, 'aim', '.020 in')).toBe('The aim, .020 in, would lie above the most, .012 in.');
    expect(fault({}, 'aim', '.011 in')).toBeUndefined();
  });

  test('a limit moved past the aim that was given', () => {
    expect(fault({ upper: '.012', aim: '.010' }, 'lower', '.011 in')).toBe(
      'The aim, .010 in, would lie below the least, .011 in.',
    );
  });
});

describe('a limit is taken', () => {
  test.each([
    { fact: 'where it is the first', given: {}, name: 'lower', size: '.008 in' },
    { fact: 'with least and most the same', given: { upper: '.012' }, name: 'lower', size: '.012 in' },
    { fact: 'with the aim at the limit', given: { upper: '.012' }, name: 'aim', size: '.012 in' },
    {
      fact: 'in place of one that would have been wrong',
      given: { lower: '.020', upper: '.012' },
      name: 'lower',
      size: '.008 in',
    },
    { fact: 'below zero, for a press', given: { upper: '-.0003' }, name: 'lower', size: '-.001 in' },
  ])('$fact', ({ given, name, size }) => {
    expect(fault(given, name, size)).toBeUndefined();
  });
});
