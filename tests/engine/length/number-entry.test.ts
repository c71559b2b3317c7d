import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readNumber, sayNumber, type NumberBounds } from '../../../src/engine/length/number-entry.ts';

const rake: NumberBounds = { least: 0, most: 60, unit: 'degrees' };
const cold: NumberBounds = { least: -200, most: 400, unit: '°C' };

describe('a number that is no length is read', () => {
  test.each([
    ['24.5', 24.5],
    ['24,5', 24.5],
    ['.5', 0.5],
    [' 0 ', 0],
    ['60', 60],
    ['+7', 7],
  ])('from %s', (typed, figure) => {
    expect(readNumber(typed, rake)).toMatchObject({ ok: true, value: { figure } });
  });

  test('with any minus a keyboard has, where the range goes below zero', () => {
    for (const typed of ['-18', '−18', '–18'])
      expect(readNumber(typed, cold)).toEqual({ ok: true, value: { text: '-18', figure: -18 } });
  });
});

describe('a number is refused with a sentence of its own', () => {
  test.each([
    ['', 'Nothing is typed yet. Type a number such as 24.5.'],
    ['   ', 'Nothing is typed yet. Type a number such as 24.5.'],
    ['1e3', 'That can’t be read as a number. Use the digits 0 to 9 and one point.'],
    ['5.', 'That can’t be read as a number. Use the digits 0 to 9 and one point.'],
    ['1.2.3', 'That can’t be read as a number. Use the digits 0 to 9 and one point.'],
    ['0x10', 'That can’t be read as a number. Use the digits 0 to 9 and one point.'],
    ['٣', 'That can’t be read as a number. Use the digits 0 to 9 and one point.'],
    ['NaN', 'That can’t be read as a number. Use the digits 0 to 9 and one point.'],
    ['1234567890123456', 'That can’t be read as a number. Use the digits 0 to 9 and one point.'],
    ['60.1', '60.1 degrees is outside 0 to 60 degrees. Check the figure.'],
    ['-1', '-1 degrees is outside 0 to 60 degrees. Check the figure.'],
  ])('%s', (typed, sentence) => {
    const read = readNumber(typed, rake);
    expect(read.ok ? '' : sayNumber(read.refusal)).toBe(sentence);
  });
});

describe('a count', () => {
  const miles: NumberBounds = { least: 0, most: 999_999, unit: 'mi', whole: true };

  test.each(['120,472', '120.5', '5,0'])('is never guessed from %s', (typed) => {
    const read = readNumber(typed, miles);
    expect(read.ok ? '' : sayNumber(read.refusal)).toBe(
      'A whole number goes here: digits only, no point and no comma.',
    );
  });

  test('is read from its digits', () => {
    expect(readNumber('120472', miles)).toEqual({ ok: true, value: { text: '120472', figure: 120_472 } });
  });
});

test('any text at all is a number inside its bounds or a refusal', () => {
  fc.assert(
    fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.stringMatching(/^-?[0-9.,]{0,18}$/)), (typed) => {
      const read = readNumber(typed, cold);
      const isInside = read.ok && read.value.figure >= -200 && read.value.figure <= 400;
      const isSaid = !read.ok && !/NaN|undefined/.test(sayNumber(read.refusal));
      expect(isInside || isSaid).toBe(true);
    }),
  );
});
