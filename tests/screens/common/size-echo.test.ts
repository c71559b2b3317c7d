import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { lengthOf, type Unit } from '../../../src/engine/length/length.ts';
import { fractionEcho, sizeEcho } from '../../../src/screens/common/size-echo.ts';

test.each<{ typed: string; unit: Unit; echo: string; sum: string }>([
  {
    typed: '.4487',
    unit: 'in',
    echo: '11.397 mm · 29/64 less .0044',
    sum: '.4487 · 25.4 = 11.39698; 29/64 = .453125, .004425 more',
  },
  {
    typed: '.4543',
    unit: 'in',
    echo: '11.539 mm · 29/64 and .0012',
    sum: '.4543 · 25.4 = 11.53922; .4543 − .453125 = .001175',
  },
  { typed: '29/64', unit: 'in', echo: '11.509 mm · 29/64 in exactly', sum: '.453125 · 25.4 = 11.509375' },
  {
    typed: '1 1/2',
    unit: 'in',
    echo: '38.10 mm · 1-1/2 in exactly',
    sum: '1.5 · 25.4 = 38.1, and a millimetre size has two places at least',
  },
  {
    typed: '11.4',
    unit: 'mm',
    echo: '.4488 in · 29/64 less .0043',
    sum: '11.4 / 25.4 = .448819; .453125 − .448819 = .004306',
  },
  {
    typed: '12',
    unit: 'thou',
    echo: '0.305 mm · 1/64 less .0036',
    sum: '.012 · 25.4 = .3048; 1/64 − .012 = .003625',
  },
  {
    typed: '11.4 mm',
    unit: 'in',
    echo: '.4488 in · 29/64 less .0043',
    sum: 'the unit typed behind the figure counts',
  },
  {
    typed: '-.0005',
    unit: 'in',
    echo: '−0.013 mm',
    sum: '.0005 · 25.4 = .0127; below zero there is no shop fraction',
  },
])('$typed $unit is also $echo ($sum)', ({ typed, unit, echo }) => {
  expect(sizeEcho({ typed, unit })).toBe(echo);
});

test.each(['', '-', '.', '29/', '1 1', '29/3', '4x'])(
  '“%s” is not a size yet and echoes nothing',
  (typed) => {
    expect(sizeEcho({ typed, unit: 'in' })).toBe('');
  },
);

test('a size half-way between two 64ths is said from one of them, never off by more than 1/128', () => {
  // 5/128 in lies between 2/64 and 3/64; the even count is nearest: 1/32, and .0078125 over it.
  expect(fractionEcho(lengthOf('5/128 in'))).toBe('1/32 and .0078');
  // 1/128 in is nearest to no 64th at all: nothing useful is left to say.
  expect(fractionEcho(lengthOf('1/128 in'))).toBe('');
});

test('no typed text at all stops the echo', () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 70 }), fc.constantFrom<Unit>('in', 'thou', 'mm'), (typed, unit) => {
      expect(typeof sizeEcho({ typed, unit })).toBe('string');
    }),
  );
});
