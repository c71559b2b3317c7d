import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import type { Unit } from '../../../src/engine/length/length.ts';
import {
  isUnitKey,
  afterKey,
  canTakeSpace,
  inUnit,
  nothingTyped,
  retyped,
  type HalfTyped,
  type PadKey,
} from '../../../src/screens/common/pad-text.ts';

const DIGITS: readonly PadKey[] = ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9'];
const KEYS: readonly PadKey[] = [...DIGITS, '.', '/', ' ', '-', 'delete'];

const keys = fc.array(fc.constantFrom(...KEYS), { maxLength: 80 });
const units = fc.constantFrom<Unit>('in', 'thou', 'mm');

function typed(text: string, unit: Unit = 'in'): HalfTyped {
  return { typed: text, unit };
}

function afterKeys(pressed: readonly PadKey[], unit: Unit): HalfTyped {
  return pressed.reduce(afterKey, nothingTyped(unit));
}

describe('a key of the pad', () => {
  test.each<{ before: string; key: PadKey; after: string; fact: string }>([
    { before: '', key: '4', after: '4', fact: 'a digit starts a size' },
    { before: '.448', key: '7', after: '.4487', fact: 'a digit goes on with it' },
    { before: '29/', key: '6', after: '29/6', fact: 'a digit after the bar is the bottom of the fraction' },
    { before: '', key: '.', after: '.', fact: 'an inch size may start with its point' },
    { before: '11', key: '.', after: '11.', fact: 'a point follows a whole number' },
    { before: '.448', key: '.', after: '.448', fact: 'a size has one point' },
    { before: '11,4', key: '.', after: '11,4', fact: 'a comma from a keyboard is the point already' },
    { before: '29/6', key: '.', after: '29/6', fact: 'a fraction has no point' },
    { before: '1 1', key: '.', after: '1 1', fact: 'the top of a fraction has no point' },
    { before: '29', key: '/', after: '29/', fact: 'a bar follows the top' },
    { before: '1 1', key: '/', after: '1 1/', fact: 'a bar follows the top after a whole number' },
    { before: '1-1', key: '/', after: '1-1/', fact: 'a bar follows the top of 1-1/2 begun on a keyboard' },
    { before: '-1', key: '/', after: '-1/', fact: 'a bar follows the top of a size below zero' },
    { before: '', key: '/', after: '', fact: 'a fraction has a top' },
    { before: '.5', key: '/', after: '.5', fact: 'a decimal is no top of a fraction' },
    { before: '29/6', key: '/', after: '29/6', fact: 'a fraction has one bar' },
    { before: '1 ', key: '/', after: '1 ', fact: 'after the space the top comes first' },
    { before: '1', key: ' ', after: '1 ', fact: 'a space follows a whole number' },
    { before: '-1', key: ' ', after: '-1 ', fact: 'also one below zero' },
    { before: '', key: ' ', after: '', fact: 'a size does not start with a space' },
    { before: '1 ', key: ' ', after: '1 ', fact: 'one space is enough' },
    { before: '.44', key: ' ', after: '.44', fact: 'no fraction follows a decimal' },
    { before: '29/64', key: ' ', after: '29/64', fact: 'nothing follows a fraction' },
    { before: '.0005', key: '-', after: '-.0005', fact: 'minus puts a size below zero' },
    { before: '-.0005', key: '-', after: '.0005', fact: 'minus again takes it back' },
    { before: '', key: '-', after: '-', fact: 'minus may come first' },
    { before: '.4487', key: 'delete', after: '.448', fact: 'delete takes the last digit' },
    { before: '1 1', key: 'delete', after: '1', fact: 'delete takes the space with the digit behind it' },
    { before: '1 ', key: 'delete', after: '1', fact: 'delete takes a space alone' },
    { before: '', key: 'delete', after: '', fact: 'an empty field stays empty' },
  ])('$fact: “$before” and “$key” is “$after”', ({ before, key, after }) => {
    expect(afterKey(typed(before), key).typed).toBe(after);
  });

  test('a fraction is an inch size in a shop: the bar turns millimetres and thou to inches', () => {
    expect(afterKey(typed('29', 'mm'), '/')).toEqual({ ...typed('29/', 'in'), lent: 'mm' });
    expect(afterKey(typed('29', 'thou'), '/')).toEqual({ ...typed('29/', 'in'), lent: 'thou' });
  });

  test('a bar taken out again leaves the size in the unit it was begun in', () => {
    const slipped = afterKey(typed('29', 'mm'), '/');
    expect(afterKey(slipped, 'delete')).toEqual(typed('29', 'mm'));
    expect(retyped('29.5', afterKey(slipped, '6'))).toEqual(typed('29.5', 'mm'));
    expect(afterKey(inUnit(slipped, 'thou'), 'delete')).toEqual(typed('29', 'thou'));
    expect(afterKey(afterKey(typed('29', 'in'), '/'), 'delete')).toEqual(typed('29', 'in'));
  });

  test('a bar that changes nothing leaves the unit alone', () => {
    expect(afterKey(typed('11.4', 'mm'), '/')).toEqual(typed('11.4', 'mm'));
  });

  test('a space is offered after a whole number only', () => {
    expect(['1', '12', '-1'].map(canTakeSpace)).toEqual([true, true, true]);
    expect(['', '-', '1 ', '1.', '1/2', '1 1', '1 in'].map(canTakeSpace)).toEqual(Array(7).fill(false));
  });
});

describe('a keyboard, a gauge or a paste', () => {
  test('is taken as it came, with its own unit behind it', () => {
    expect(retyped(' 11,397 mm', typed(''))).toEqual(typed(' 11,397 mm'));
  });

  test('a page of text is cut to what a size can be at most, and is then refused as no size', () => {
    const { typed: kept } = retyped('4'.repeat(5000), typed(''));
    expect(kept).toHaveLength(60);
    expect(readEntry(kept, { unit: 'in' }).ok).toBe(false);
  });

  test('a size with a page of blanks before or in it never becomes another size', () => {
    const blanks = ' '.repeat(57);
    expect(retyped(`${blanks}0.4487`, typed('')).typed).toBe('0.4487');
    expect(readEntry(retyped(`1${blanks}12/16`, typed('')).typed, { unit: 'in' })).toMatchObject({
      value: { typed: '1 12/16' },
    });
    expect(readEntry(retyped(`1${blanks}${blanks}2`, typed('')).typed, { unit: 'in' }).ok).toBe(false);
  });

  test('a minus of any shape in front goes with the minus key', () => {
    expect(afterKey(typed('−5'), '-').typed).toBe('5');
    expect(afterKey(typed('−5'), '/').typed).toBe('−5/');
  });

  test('a fraction turns millimetres to inches once, and a unit pressed after it stays', () => {
    const half = retyped('1/2', typed('', 'mm'));
    expect(half.unit).toBe('in');
    // 1/2 mm is rare, but it was asked for.
    expect(retyped('1/25', inUnit(half, 'mm')).unit).toBe('mm');
  });
});

describe('a unit key', () => {
  test('keeps the figure and means it in the new unit', () => {
    expect(inUnit(typed('12', 'in'), 'thou')).toEqual(typed('12', 'thou'));
  });

  test.each(['11.4 mm', '11.4mm', '11.4 in', '11.4"', '11.4 ″', '11.4 in.', '11.4 inches', '11.4”'])(
    'takes the place of the unit typed behind %s',
    (text) => {
      expect(inUnit(typed(text), 'mm')).toEqual(typed('11.4', 'mm'));
    },
  );
});

describe('whatever is pressed', () => {
  test('the field is a size or a sentence says why not; nothing is thrown', () => {
    fc.assert(
      fc.property(keys, units, fc.boolean(), (pressed, unit, signed) => {
        const half = afterKeys(pressed, unit);
        const entry = readEntry(half.typed, { unit: half.unit, signed });
        expect(entry.ok ? entry.value.unit : entry.refusal.code).toBeTruthy();
      }),
    );
  });

  test('keys alone build a decimal, a fraction or a mixed size, or the start of one', () => {
    const beginnings = /^-?(?:\d*\.?\d*|\d+ \d*|(?:\d+ )?\d+\/\d*)$/;
    fc.assert(
      fc.property(keys, units, (pressed, unit) => {
        expect(afterKeys(pressed, unit).typed).toMatch(beginnings);
      }),
      { numRuns: 1000 },
    );
  });

  test('delete shortens what is there, leaves no space at the end, and the unit alone', () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1, maxLength: 60 }), units, (text, unit) => {
        const after = afterKey({ typed: text, unit }, 'delete');
        expect(after.typed.length).toBeLessThan(text.length);
        expect(after.typed).toBe(after.typed.trimEnd());
        expect(after.unit).toBe(unit);
      }),
    );
  });

  test('the unit only changes for a fraction', () => {
    fc.assert(
      fc.property(keys, units, (pressed, unit) => {
        fc.pre(!pressed.includes('/'));
        expect(afterKeys(pressed, unit).unit).toBe(unit);
      }),
    );
  });
});

describe('the unit to remember for the next reading', () => {
  test.each([
    { typed: '', unit: 'mm', before: 'in', is: true, why: 'a unit key on the empty field' },
    { typed: '11.4', unit: 'mm', before: 'in', is: true, why: 'a unit key behind the figure' },
    { typed: '29/64', unit: 'in', before: 'mm', is: false, why: 'a fraction lends inches to one size' },
    { typed: '11.4', unit: 'mm', before: 'mm', is: false, why: 'nothing changed' },
  ] as const)('$why', ({ typed, unit, before, is }) => {
    expect(isUnitKey({ typed, unit }, before)).toBe(is);
  });
});
