import { describe, expect, test } from 'vitest';
import { fieldsBesides } from '../../../src/screens/worksheets/fields-besides.ts';
import { fieldNamed } from '../../../src/screens/worksheets/worksheet-plan.ts';
import { planOf } from '../../../src/screens/worksheets/worksheet-plans.ts';
import { is, ofFeature, typedSize, worksheetOf } from './worksheet-for-test.ts';

function besides(
  given: Parameters<typeof worksheetOf>[1],
  value: string | undefined,
  kind: 'hole-and-pin' | 'thread-insert' = 'hole-and-pin',
  name = 'thread',
) {
  const plan = planOf(kind);
  const field = plan && fieldNamed(plan, name);
  if (!field) throw new Error(name);
  return fieldsBesides(worksheetOf(kind, given), field, value);
}

describe('what follows from a bolt’s thread', () => {
  test('the pin has the bolt’s nominal size, and the joint is held by its nut', () => {
    const { pin, joint } = besides({}, '7/16-20 UNF');
    expect(pin).toMatchObject({ from: 'typed', typed: '0.4375 in', unit: 'in' });
    expect(typeof pin === 'object' && pin.from === 'typed' && is(pin.exact, '.4375 in')).toBe(true);
    expect(joint).toBe('located');
  });

  test('a metric bolt gives its pin in millimetres', () => {
    expect(besides({}, 'M8x1.25')['pin']).toMatchObject({ typed: '8 mm', unit: 'mm' });
  });

  test.each([
    { pin: typedSize('.4370'), what: 'typed' },
    { pin: ofFeature('pin'), what: 'measured' },
  ])('a pin that was $what stays', ({ pin }) => {
    expect(besides({ sizes: { pin } }, '7/16-20 UNF')).not.toHaveProperty('pin');
  });

  test('the nominal size of the bolt before gives way to the new bolt’s', () => {
    const nominal = besides({}, '7/16-20 UNF')['pin'];
    if (typeof nominal !== 'object') throw new Error('no pin');
    const changed = besides({ sizes: { pin: nominal }, choices: { thread: '7/16-20 UNF' } }, '3/8-16 UNC');
    expect(changed['pin']).toMatchObject({ typed: '0.375 in' });
  });

  test('a joint that turns goes on turning', () => {
    expect(besides({ choices: { joint: 'turns' } }, '7/16-20 UNF')).not.toHaveProperty('joint');
  });

  test('nothing follows from a thread that is taken out or doesn’t exist', () => {
    expect(besides({}, undefined)).toEqual({});
    expect(besides({}, '7/16-19 UNF')).toEqual({});
  });

  test('nothing follows from the thread of an insert, or from another field', () => {
    expect(besides({}, '7/16-20 UNF', 'thread-insert')).toEqual({});
    expect(besides({}, 'turns', 'hole-and-pin', 'joint')).toEqual({});
  });
});
