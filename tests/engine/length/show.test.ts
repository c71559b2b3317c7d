import { Decimal } from 'decimal.js';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import {
  dividedBy,
  fromText,
  isLess,
  isMore,
  lengthOf,
  minus,
  negate,
  sameLength,
  zero,
} from '../../../src/engine/length/length.ts';
import {
  asTyped,
  figure,
  finerFigure,
  show,
  showBand,
  knownFigure,
  showBetween,
  signedFigure,
} from '../../../src/engine/length/show.ts';

// Half to even: ISO 80000-1 annex B, ASTM E29. The tie in each row is worked by hand.
test.each([
  { size: '.4487 in', unit: 'in', shown: '.4487' },
  { size: '.97 in', unit: 'in', shown: '.970' },
  { size: '1.5 in', unit: 'in', shown: '1.500' },
  { size: '.44865 in', unit: 'in', shown: '.4486' }, // tie, 6 is even
  { size: '.44875 in', unit: 'in', shown: '.4488' }, // tie, 8 is even
  { size: '11.3970 mm', unit: 'mm', shown: '11.397' },
  { size: '11.4 mm', unit: 'mm', shown: '11.40' },
  { size: '0.4 mm', unit: 'mm', shown: '0.40' },
  { size: '11.3965 mm', unit: 'mm', shown: '11.396' }, // tie
  { size: '449 thou', unit: 'thou', shown: '449' },
  { size: '448.7 thou', unit: 'thou', shown: '448.7' },
  { size: '-.002 in', unit: 'in', shown: '−.002' },
  { size: '-.00004 in', unit: 'in', shown: '.0000' }, // rounds to nothing, but is not nothing
  { size: '0 in', unit: 'in', shown: '0' },
  { size: '0 mm', unit: 'mm', shown: '0' },
  { size: '0 in', unit: 'thou', shown: '0' },
] as const)('$size is written $shown in $unit', ({ size, unit, shown }) => {
  expect(figure(lengthOf(size), unit)).toBe(shown);
});

test('a size has its unit behind it', () => {
  expect(show(lengthOf('.4487 in'), 'in')).toBe('.4487 in');
  expect(show(lengthOf('.4487 in'), 'mm')).toBe('11.397 mm'); // 11.39698
});

// Worked by hand: the shown limits lie on or inside the true ones, and never cross.
test.each([
  { lower: '1.11135 in', upper: '1.11465 in', unit: 'in', shown: '1.1114 to 1.1146' },
  { lower: '1.1113 in', upper: '1.1147 in', unit: 'in', shown: '1.1113 to 1.1147' },
  { lower: '1.1113 in', upper: '1.1147 in', unit: 'mm', shown: '28.228 to 28.313' }, // 28.22702, 28.31338
  { lower: '.56311 in', upper: '.56318 in', unit: 'in', shown: '.56311 to .56318' },
  { lower: '12 mm', upper: '12.018 mm', unit: 'mm', shown: '12.000 to 12.018' },
  { lower: '.4484 in', upper: '.456 in', unit: 'in', shown: '.4484 to .4560' },
  { lower: '0 in', upper: '.0021 in', unit: 'in', shown: '0 to .0021' },
  // .00146 to .00152: at four places both are .0015, a step of nothing
  { lower: '.00146 in', upper: '.00152 in', unit: 'in', shown: '.00146 to .00152' },
  { lower: '.563111 in', upper: '.563111 in', unit: 'in', shown: '.563111' }, // nothing between them
] as const)('limits $lower to $upper are shown as $shown', ({ lower, upper, unit, shown }) => {
  expect(showBetween(lengthOf(lower), lengthOf(upper), unit)).toBe(shown);
});

// JCGM 100:2008, 7.2.6: a size ends at the place where its uncertainty ends; ours ends sooner, as `figure` does.
test.each([
  { size: '.437 in', band: '.00014 in', unit: 'in', shown: '.4370' },
  { size: '.437 in', band: '.0013 in', unit: 'in', shown: '.4370' },
  { size: '.437 in', band: '.012 in', unit: 'in', shown: '.437' },
  { size: '.437 in', band: '0 in', unit: 'in', shown: '.437' },
  { size: '11.1 mm', band: '0.0035 mm', unit: 'mm', shown: '11.100' },
  { size: '11.1 mm', band: '0.1 mm', unit: 'mm', shown: '11.10' },
] as const)('$size known to ±$band is written $shown', ({ size, band, unit, shown }) => {
  expect(knownFigure(lengthOf(size), lengthOf(band), unit)).toBe(shown);
});

test('a size on a limit as it is shown is inside the true limits', () => {
  const size = fc.integer({ min: 1, max: 90_000_000 }).map((parts) => lengthOf(`${parts / 1_000_000} in`));
  fc.assert(
    fc.property(size, size, fc.constantFrom('in', 'mm'), (a, b, unit) => {
      fc.pre(!sameLength(a, b)); // a millionth of an inch apart at least
      const [lower, upper] = isMore(a, b) ? [b, a] : [a, b];
      const [from = '', to = ''] = showBetween(lower, upper, unit).split(' to ');
      expect(isLess(lengthOf(`${from} ${unit}`), lower)).toBe(false);
      expect(isMore(lengthOf(`${to} ${unit}`), upper)).toBe(false);
    }),
  );
});

test('a difference has a sign, nothing has none', () => {
  expect(signedFigure(lengthOf('.0012 in'), 'in')).toBe('+.0012');
  expect(signedFigure(lengthOf('-.0044 in'), 'in')).toBe('−.0044');
  expect(signedFigure(zero, 'in')).toBe('0');
  expect(signedFigure(negate(zero), 'mm')).toBe('0');
  expect(signedFigure(lengthOf('-.00001 in'), 'in')).toBe('.0000');
});

test.each([
  { half: '.0012 in', unit: 'in', shown: '±.0012' },
  { half: '.000443 in', unit: 'in', shown: '±.00044' },
  { half: '.0123 in', unit: 'in', shown: '±.012' },
  { half: '.0123 in', unit: 'mm', shown: '±0.31' }, // 0.31242
  { half: '.0012 in', unit: 'mm', shown: '±0.030' }, // 0.03048
  { half: '.0012 in', unit: 'thou', shown: '±1.2' },
  { half: '0 in', unit: 'in', shown: '±.000' },
] as const)('a band of $half is written $shown in $unit', ({ half, unit, shown }) => {
  expect(showBand(lengthOf(half), unit)).toBe(shown);
});

test('what was typed is shown again as typed, with its unit behind it', () => {
  const typed = readEntry('29/64', { unit: 'in' });
  expect(typed.ok && asTyped(typed.value)).toBe('29/64 in');
});

test('any size is written as decimal.js rounds it, with no NaN, exponent or minus nothing', () => {
  const text = fc
    .tuple(fc.constantFrom('', '-'), fc.nat({ max: 9999 }), fc.nat({ max: 999_999 }))
    .map(([sign, whole, places]) => `${sign}${whole}.${String(places).padStart(6, '0')}`);
  fc.assert(
    fc.property(text, fc.constantFrom('in', 'mm'), (millimetres, unit) => {
      const shown = figure(fromText(millimetres), unit);
      expect(shown).toMatch(/^−?[0-9]*\.[0-9]{2,4}$/);
      const want = new Decimal(millimetres)
        .div(unit === 'in' ? '25.4' : 1)
        .toDecimalPlaces(unit === 'in' ? 4 : 3, Decimal.ROUND_HALF_EVEN);
      expect(new Decimal(shown.replace('−', '-')).eq(want)).toBe(true);
      expect(shown.startsWith('−')).toBe(want.lt(0));
    }),
    { seed: 20_127, numRuns: 3000 },
  );
});

test('what is added up before the reader’s eyes comes to the figure shown', () => {
  // By hand: 1.3462 in / 3 = .448733…, 1.3109 in / 3 = .436966…; their difference .0117666…
  const bore = dividedBy(lengthOf('1.3462 in'), 3);
  const pin = dividedBy(lengthOf('1.3109 in'), 3);
  expect([finerFigure(bore, 'in'), finerFigure(pin, 'in')]).toEqual(['.44873', '.43697']);
  expect(figure(minus(bore, pin), 'in')).toBe('.0118'); // .44873 − .43697 = .01176
  expect(finerFigure(lengthOf('.75 in'), 'in')).toBe('.750');
});
