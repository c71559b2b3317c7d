import { Decimal } from 'decimal.js';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  lineMoney,
  moneyTotal,
  readHours,
  readMoney,
  roundMoney,
  type MoneyResult,
} from '../../../src/engine/job/money.ts';
import { sayMoney, showHours, showMoney } from '../../../src/engine/job/say-money.ts';
import { minorPlaces, minorUnits } from '../../../src/engine/job/tables/minor-units.ts';

// A library of its own, with more digits than any line here needs, rounding half to even.
const Exact = Decimal.clone({ precision: 80, rounding: Decimal.ROUND_HALF_EVEN });

const textOf = (read: MoneyResult) => (read.ok ? read.value.text : read.refusal.code);
const sentenceOf = (read: MoneyResult) => (read.ok ? read.value.text : sayMoney(read.refusal));

describe('an amount of money', () => {
  test.each([
    ['12.50', '12.50'],
    ['12,50', '12.50'],
    ['12', '12'],
    ['.5', '0.5'],
    ['0012.5', '12.5'],
    ['0,125', '0.125'],
    ['-20', '-20'],
    ['−20', '-20'],
    ['$12.50', '12.50'],
    ['12.50 $', '12.50'],
    ['-$12', '-12'],
    ['0.1234', '0.1234'],
    ['1000000', '1000000'],
    ['-0', '0'],
  ])('typed as %s is %s', (typed, text) => {
    expect(textOf(readMoney(typed, 'amount', '$'))).toBe(text);
  });

  test.each([
    ['', 'nothing-counted'],
    ['   ', 'nothing-counted'],
    ['-', 'nothing-counted'],
    ['.', 'not-counted'],
    ['12.', 'not-counted'],
    ['1.2.3', 'not-counted'],
    ['1,250.00', 'thousands-marked'],
    ['1.234,50', 'thousands-marked'],
    ['1.234.567', 'thousands-marked'],
    ['1 234,50', 'thousands-marked'],
    ['1.23,50', 'not-counted'],
    ['1e3', 'not-counted'],
    ['0x10', 'not-counted'],
    ['NaN', 'not-counted'],
    ['Infinity', 'not-counted'],
    ['12 50', 'not-counted'],
    ['٣', 'not-counted'],
    ['1/2', 'not-counted'],
    ['9'.repeat(5000), 'not-counted'],
    ['1,250', 'perhaps-thousands'],
    ['12.34567', 'too-fine'],
    ['1000000.01', 'too-much'],
    ['-1000000.01', 'too-much'],
  ])('typed as %s is refused', (typed, code) => {
    expect(textOf(readMoney(typed, 'amount', '$'))).toBe(code);
  });

  test('with a comma before three digits is asked about, never guessed', () => {
    expect(sentenceOf(readMoney('-1,250', 'amount'))).toContain('Type -1250 or -1.250.');
    expect(sentenceOf(readMoney('1,250', 'amount'))).toBe(
      'With a comma that may be 1250 or 1.250. Type 1250 or 1.250.',
    );
  });

  // In a euro shop a point stands between thousands as often as before cents.
  test.each(['€', 'EUR', 'kr', 'CHF', '', 'XPF'])(
    '1.234 in a shop that counts in “%s” is a question',
    (sign) => {
      expect(sentenceOf(readMoney(`1.234`, 'amount', sign))).toBe(
        'With a point that may be 1234 or 1.234. Type 1234 or 1.2340.',
      );
      expect(textOf(readMoney('1.2340', 'amount', sign))).toBe('1.2340');
      expect(textOf(readMoney('999.999', 'rate', sign))).toBe('perhaps-thousands');
      expect(textOf(readMoney('0.125', 'amount', sign))).toBe('0.125');
      expect(textOf(readMoney('12.50', 'amount', sign))).toBe('12.50');
      expect(textOf(readMoney('1234.5', 'amount', sign))).toBe('1234.5');
      expect(sentenceOf(readMoney('-1.234,50', 'amount', sign))).toBe(
        'Is that -1234.50? Type it without marks between thousands.',
      );
    },
  );

  test.each(['$', '£', 'USD', 'a$'])('1.234 in a shop that counts in %s has a decimal point', (sign) => {
    expect(textOf(readMoney('1.234', 'amount', sign))).toBe('1.234');
  });

  test('kept as 1.234 stays what it was, whatever the shop counts in now', () => {
    expect(lineMoney({ amount: '1.234' })).toEqual({ top: 617n, bottom: 500n });
  });

  test('taken off is a line of its own: a rate below zero is refused', () => {
    expect(textOf(readMoney('-65', 'rate'))).toBe('below-nothing');
    expect(textOf(readMoney('10000.01', 'rate'))).toBe('too-much');
  });
});

describe('a time', () => {
  test.each([
    ['1.5', '1.5', '3/2'],
    ['1,5', '1.5', '3/2'],
    ['1:30', '1:30', '3/2'],
    ['01:20', '1:20', '4/3'],
    ['0:05', '0:05', '1/12'],
    ['1 1/2', '1 1/2', '3/2'],
    ['3/4', '3/4', '3/4'],
    ['2 h', '2', '2/1'],
    ['1 1/2 h', '1 1/2', '3/2'],
    ['2.25 hours', '2.25', '9/4'],
    ['1000', '1000', '1000/1'],
  ])('typed as %s is %s, exactly %s of an hour', (typed, text, exact) => {
    const read = readHours(typed);
    expect(textOf(read)).toBe(text);
    expect(read.ok && `${read.value.exact.top}/${read.value.exact.bottom}`).toBe(exact);
  });

  test.each([
    ['', 'nothing-counted'],
    ['1:60', 'minutes-past-59'],
    ['1:3', 'minutes-past-59'],
    ['1:2:3', 'not-counted'],
    [':30', 'not-counted'],
    ['1.5:30', 'not-counted'],
    ['1 1/0', 'bottom-of-zero'],
    ['-1', 'below-nothing'],
    ['-1:30', 'below-nothing'],
    ['1000:01', 'too-much'],
    ['1,250', 'perhaps-thousands'],
    ['half an hour', 'not-counted'],
  ])('typed as %s is refused', (typed, code) => {
    expect(textOf(readHours(typed))).toBe(code);
  });

  test('reads to the minute where its decimals never end', () => {
    expect(showHours({ top: 5n, bottom: 2n })).toBe('2.5 h');
    expect(showHours({ top: 10n, bottom: 1n })).toBe('10 h');
    expect(showHours({ top: 0n, bottom: 1n })).toBe('0 h');
    expect(showHours({ top: 4n, bottom: 3n })).toBe('1:20 h');
  });
});

describe('a line', () => {
  test('of hours at a rate comes to their product: 1:20 at 65 is 86 and two thirds', () => {
    // 80 min ÷ 60 × 65 = 5200 ÷ 60 = 260 ÷ 3, by hand
    expect(lineMoney({ hours: '1:20', rate: '65' })).toEqual({ top: 260n, bottom: 3n });
  });

  test('of hours without a rate yet comes to nothing known', () => {
    expect(lineMoney({ hours: '2' })).toBeUndefined();
    expect(moneyTotal([{ hours: '2' }, { amount: '10' }], 2)).toMatchObject({ total: '10.00', leftOut: 1 });
  });

  test('whose figure was spoilt in a file is left out and counted as such', () => {
    expect(moneyTotal([{ amount: 'ten' }, { hours: '1', rate: 'x' }, {}, { amount: '3' }], 2)).toMatchObject({
      total: '3.00',
      leftOut: 3,
    });
  });
});

describe('the total', () => {
  test('of no lines is nothing, in the places of the currency', () => {
    expect(moneyTotal([], 2)).toMatchObject({ total: '0.00', leftOut: 0, differsFromLines: false });
    expect(moneyTotal([], 0).total).toBe('0');
    expect(moneyTotal([], 3).total).toBe('0.000');
  });

  // ISO 80000-1:2009, annex B: rule A takes the nearer; of two equally near, rule B takes the even one.
  test.each([
    ['0.125', '0.12'],
    ['0.135', '0.14'],
    ['0.1251', '0.13'],
    ['-0.125', '-0.12'],
    ['-0.135', '-0.14'],
    ['-0.001', '0.00'],
    ['2.5', '2.50'],
  ])('of %s is %s: half goes to the even one', (amount, total) => {
    expect(moneyTotal([{ amount }], 2).total).toBe(total);
  });

  test('is rounded once: three thirds of an hour at 1 are 1.00, though each line reads 0.33', () => {
    const third = { hours: '0:20', rate: '1' };
    expect(moneyTotal([third, third, third], 2)).toMatchObject({ total: '1.00', differsFromLines: true });
  });

  test('of lines in whole cents is their sum as shown', () => {
    expect(moneyTotal([{ amount: '0.10' }, { amount: '0.20' }], 2)).toMatchObject({
      total: '0.30',
      differsFromLines: false,
    });
  });

  test('counts all hours, rated or not', () => {
    const { hours } = moneyTotal([{ hours: '1:30', rate: '65' }, { hours: '1/3' }, { amount: '5' }], 2);
    // 3/2 + 1/3 = 11/6
    expect(hours).toEqual({ top: 11n, bottom: 6n });
  });

  const decimal = (least: number, most: number, places: number) =>
    fc.integer({ min: least, max: most }).map((whole) => new Exact(whole).div(10 ** places).toFixed());
  const clock = fc
    .tuple(fc.integer({ min: 0, max: 900 }), fc.integer({ min: 0, max: 59 }))
    .map(([hours, minutes]) => ({
      text: `${hours}:${String(minutes).padStart(2, '0')}`,
      minutes: hours * 60 + minutes,
    }));

  test('is what decimal.js makes of the same lines, to the last coin', () => {
    fc.assert(
      fc.property(
        fc.array(decimal(-9_999_999, 9_999_999, 4)),
        fc.array(fc.tuple(decimal(0, 99_999, 2), decimal(0, 999_999, 3))),
        fc.array(fc.tuple(clock, decimal(0, 99_999, 1))),
        fc.constantFrom(0, 2, 3),
        (amounts, byDecimals, byClock, places) => {
          const lines = [
            ...amounts.map((amount) => ({ amount })),
            ...byDecimals.map(([hours, rate]) => ({ hours, rate })),
            ...byClock.map(([{ text }, rate]) => ({ hours: text, rate })),
          ];
          // Minutes are added up before the one division by 60, so that no tie is missed.
          const sixtieths = byClock.reduce(
            (sum, [{ minutes }, rate]) => sum.plus(new Exact(rate).times(minutes)),
            new Exact(0),
          );
          const whole = [
            ...amounts.map((amount) => new Exact(amount)),
            ...byDecimals.map(([a, b]) => new Exact(a).times(b)),
          ];
          const exact = whole.reduce((sum, one) => sum.plus(one.times(60)), sixtieths).div(60);
          const expected = exact.toFixed(places).replace(/^-(?=[0.]*$)/, '');
          expect(moneyTotal(lines, places).total).toBe(expected);
        },
      ),
    );
  });

  test('does not hang on the order of the lines', () => {
    fc.assert(
      fc.property(fc.array(decimal(-999_999, 999_999, 4), { minLength: 2 }), (amounts) => {
        const lines = amounts.map((amount) => ({ amount }));
        expect(moneyTotal(lines.toReversed(), 2)).toEqual(moneyTotal(lines, 2));
      }),
    );
  });
});

describe('an amount is shown', () => {
  test.each([
    ['12.50', '$', '$12.50'],
    ['-20.00', '$', '−$20.00'],
    ['1250.00', '$', '$1250.00'],
    ['12500.00', '$', '$12\u202f500.00'],
    ['1234567.89', '', '1\u202f234\u202f567.89'],
    ['12.50', 'EUR', 'EUR\u00a012.50'],
    ['12500', '円', '円\u00a012\u202f500'],
  ])('%s with %s as %s', (decimal, sign, shown) => {
    expect(showMoney(decimal, sign)).toBe(shown);
  });

  test('in the places of its currency, as ISO 4217 has them', () => {
    expect(['$', '€', 'EUR', '¥', 'JPY', 'jpy', ' KWD ', ''].map(minorPlaces)).toEqual([
      2, 2, 2, 2, 0, 0, 3, 2,
    ]);
    // ISO 4217, list one, minor units 0: those of twelve countries and the three francs that several share.
    for (const none of 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'.split(' '))
      expect([none, minorPlaces(none)]).toEqual([none, 0]);
    for (const three of 'BHD IQD JOD KWD LYD OMR TND'.split(' ')) expect(minorPlaces(three)).toBe(3);
    // A franc by the letters that stand before it.
    expect(['FCFA', 'FRw', '₲'].map(minorPlaces)).toEqual([0, 0, 0]);
    // As they are written, with a space or points in them; from memory.
    expect(['F CFA', 'F.CFA', 'FCFP', 'đ', '원', 'VT', 'USh', 'RF', 'FG', 'CF'].map(minorPlaces)).toEqual(
      Array(10).fill(0),
    );
    expect(['KD', 'BD', 'JD', 'LD', 'DT', 'R.O.'].map(minorPlaces)).toEqual(Array(6).fill(3));
    expect(new Set(minorUnits.map(({ sign }) => sign)).size).toBe(minorUnits.length);
  });

  test('rounding keeps the zeros in front of a small amount', () => {
    expect(roundMoney({ top: 1n, bottom: 100n }, 2)).toBe('0.01');
    expect(roundMoney({ top: 1n, bottom: 1000n }, 3)).toBe('0.001');
  });
});

test('every refusal has a sentence that ends and names what can be typed', () => {
  const refusals = [
    readMoney('', 'amount'),
    readMoney('', 'rate'),
    readHours(''),
    readMoney('abc', 'amount'),
    readHours('abc'),
    readMoney('1,250', 'amount'),
    readMoney('1.00001', 'amount'),
    readMoney('9999999', 'amount'),
    readHours('9999'),
    readHours('-1'),
    readMoney('-1', 'rate'),
    readHours('1:75'),
    readHours('1/0'),
  ];
  for (const read of refusals) {
    expect(read.ok).toBe(false);
    expect(sentenceOf(read)).toMatch(/^[A-Z0-9“].*\.$/);
    expect(sentenceOf(read)).not.toMatch(/ {2}|undefined|invalid|NaN/i);
  }
  expect(sentenceOf(readHours('9999'))).toContain('1,000 hours');
});
