import { describe, expect, test } from 'vitest';
import { barFor, shimsToGet, stockFor } from '../../../src/engine/job/stock.ts';
import { lengthOf } from '../../../src/engine/length/length.ts';

describe('the bar a part is turned from', () => {
  // By hand: the part and 1/32 in (1 mm) of skin, then the next size sold.
  test.each([
    { part: '.5651 in', unit: 'in', bar: '5/8 in', why: '.5651 + .0313 = .5964, next sixteenth .625' },
    { part: '.5938 in', unit: 'in', bar: '11/16 in', why: '.5938 + .0313 = .62505, just past .625' },
    { part: '19/32 in', unit: 'in', bar: '5/8 in', why: '.59375 + .03125 = .625 exactly' },
    { part: '1.498 in', unit: 'in', bar: '1-9/16 in', why: '1.529, next sixteenth 1.5625' },
    { part: '2.010 in', unit: 'in', bar: '2-1/8 in', why: '2.041, by eighths past 2' },
    { part: '4.100 in', unit: 'in', bar: '4-1/4 in', why: '4.131, by quarters past 4' },
    { part: '26.04 mm', unit: 'mm', bar: '28 mm', why: '27.04, sold as 28' },
    { part: '13 mm', unit: 'mm', bar: '14 mm', why: '14 exactly' },
    { part: '150 mm', unit: 'mm', bar: '160 mm', why: '151, past the list by tens' },
  ] as const)('of $part is $bar: $why', ({ part, unit, bar }) => {
    expect(barFor(lengthOf(part), unit)).toBe(bar);
  });

  test('is asked for with its length as finished and its metal', () => {
    expect(
      stockFor(
        {
          part: 'bushing',
          outside: lengthOf('.5651 in'),
          length: lengthOf('1.5 in'),
          metal: 'Bearing bronze SAE 660 (C93200)',
        },
        'in',
      ),
    ).toEqual({
      kind: 'stock',
      what: 'bar for the bushing, 5/8 in or larger, 1.500 in long when finished, bearing bronze SAE 660 (C93200)',
      count: 1,
      part: 'bushing',
    });
  });

  test('has no width where only its length is known: bar or tube', () => {
    expect(stockFor({ part: 'left spacer', length: lengthOf('27.3 mm') }, 'mm').what).toBe(
      'bar or tube for the left spacer, 27.30 mm long when finished',
    );
  });
});

test('shims are asked for by their sum and from where to where it does', () => {
  const shims = { aim: lengthOf('.030 in'), lower: lengthOf('.0262 in'), upper: lengthOf('.0338 in') };
  expect(shimsToGet(shims, 'in').what).toBe('shim of .030 in, or several: .0262 to .0338 in in all');
});
