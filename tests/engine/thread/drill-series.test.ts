import { assert, constantFrom, integer, property } from 'fast-check';
import { Fraction } from 'fraction.js';
import { describe, expect, test } from 'vitest';
import {
  drillNamed,
  drillsAround,
  drillsOf,
  nearestFraction,
  type DrillSeries,
} from '../../../src/engine/thread/drill-series.ts';
import {
  decimalText,
  exactDecimalText,
  fromText,
  isLess,
  isMore,
  lengthOf,
} from '../../../src/engine/length/length.ts';
import { minus, plus, sameLength, toText } from '../../../src/engine/length/length.ts';
import { readReference } from '../../reference/read-csv.ts';

const charted = readReference('drills.csv').map((row) => ({
  name: row.cell('name'),
  series: row.cell('system'),
  inches: row.cell('diameter_in'),
  chart: row.cell('diameter_in_chart4'),
  source: row.cell('source'),
}));

const allSeries: readonly DrillSeries[] = ['fraction', 'letter', 'number', 'metric'];
const sizes = integer({ min: 0, max: 1_000_000_000 }).map((count) => fromText((count / 1e7).toFixed(7)));

describe('the drill list', () => {
  test.each(charted)('$series drill $name is $inches in ($source)', ({ name, series, inches, chart }) => {
    const drill = drillNamed(name);
    expect(drill?.series).toBe(series);
    expect(exactDecimalText(drill?.size ?? lengthOf('0 in'), 'in')).toBe(String(Number(inches)));
    expect(decimalText(drill?.size ?? lengthOf('0 in'), 'in', 4)).toBe(Number(chart).toFixed(4));
  });

  test('no inch drill of the charts is missing, and none is added up to 1 in', () => {
    for (const series of ['number', 'letter', 'fraction'] as const) {
      const upToOne = drillsOf(series).filter((drill) => !isMore(drill.size, lengthOf('1 in')));
      const chartNames = charted.filter((row) => row.series === series).map((row) => row.name);
      expect(new Set(upToOne.map((drill) => drill.name))).toEqual(new Set(chartNames));
    }
  });

  test('fractions go on in 64ths above 1 in, to 1-1/2 in, for the insert drills of 1 in threads', () => {
    expect(drillNamed('1-1/32')?.name).toBe('1-1/32');
    expect(drillsOf('fraction').at(-1)?.name).toBe('1-1/2');
    expect(drillsOf('fraction')).toHaveLength(96);
  });

  // BS 328 list: 8 rounds of four, 40, 110 and 48 sizes (counted by hand from the rule).
  test('the metric list has its 230 standard sizes from 0.2 to 25.75 mm', () => {
    const metric = drillsOf('metric');
    expect(metric).toHaveLength(8 * 4 + 40 + 110 + 48);
    expect([metric[0]?.name, metric.at(-1)?.name]).toEqual(['0.2 mm', '25.75 mm']);
  });

  test.each(['0.28 mm', '0.98 mm', '1 mm', '2.95 mm', '3 mm', '13.9 mm', '14 mm', '14.25 mm', '20 mm'])(
    '%s is a standard metric drill (BS 328 list)',
    (name) => expect(drillNamed(name)?.name).toBe(name),
  );

  test.each(['0.21 mm', '1.02 mm', '3.05 mm', '13.95 mm', '14.1 mm', '26 mm'])(
    '%s is not a standard metric drill (BS 328 list)',
    (name) => expect(drillNamed(name)).toBeUndefined(),
  );

  test.each(allSeries)('the %s drills go up without a repeat', (series) => {
    const drills = drillsOf(series);
    drills.slice(1).forEach((drill, place) => {
      const before = drills[place];
      expect(before && isLess(before.size, drill.size)).toBe(true);
    });
  });
});

describe('a drill called by name', () => {
  test.each([
    ['no. 7', '#7'],
    ['# 7', '#7'],
    ['f', 'F'],
    ['29/64 in', '29/64'],
    ['29/64"', '29/64'],
    ['1 1/32', '1-1/32'],
    ['58/64', '29/32'],
    ['1', '1'],
    ['11,5mm', '11.5 mm'],
    ['11.50 mm', '11.5 mm'],
  ])('%s is %s', (typed, name) => expect(drillNamed(typed)?.name).toBe(name));

  test.each(['7', '11.5', '#98', '#0', '', 'AA', '1-33/64', '7/0', '1/3'])(
    '%s is no drill that can be told',
    (typed) => expect(drillNamed(typed)).toBeUndefined(),
  );
});

describe('the drills next to a size', () => {
  test('29/64 in is 11.509375 mm: no letter above it, 11.5 mm just under, 11.6 mm over', () => {
    const [fraction, letter, number, metric] = drillsAround(lengthOf('29/64 in'));
    expect(fraction?.exact?.name).toBe('29/64');
    expect([fraction?.below?.drill.name, fraction?.above?.drill.name]).toEqual(['7/16', '15/32']);
    expect([letter?.below?.drill.name, letter?.above]).toEqual(['Z', undefined]);
    expect([number?.below?.drill.name, number?.above]).toEqual(['#1', undefined]);
    expect([metric?.below?.drill.name, metric?.above?.drill.name]).toEqual(['11.5 mm', '11.6 mm']);
    expect(toText(metric?.below?.by ?? lengthOf('0 mm'))).toBe('0.009375'); // 11.509375 − 11.5
    expect(toText(metric?.above?.by ?? lengthOf('0 mm'))).toBe('0.090625'); // 11.6 − 11.509375
  });

  test('a size no series reaches has a neighbour on one side only', () => {
    for (const next of drillsAround(lengthOf('2 in'))) expect(next.above).toBeUndefined();
    for (const next of drillsAround(lengthOf('0 in'))) expect(next.below).toBeUndefined();
  });

  test('the neighbours bracket any size, strictly, and their differences lead back to it', () => {
    assert(
      property(sizes, (size) => {
        for (const { below, above, exact } of drillsAround(size)) {
          const back = [
            below && toText(plus(below.drill.size, below.by)),
            above && toText(minus(above.drill.size, above.by)),
            exact && toText(exact.size),
          ];
          expect(new Set(back.filter((text) => text !== undefined))).toEqual(new Set([toText(size)]));
          expect(below === undefined || isLess(below.drill.size, size)).toBe(true);
          expect(above === undefined || isMore(above.drill.size, size)).toBe(true);
        }
      }),
    );
  });

  test('no drill of a series lies between the two neighbours but the exact one', () => {
    assert(
      property(sizes, constantFrom(...allSeries), (size, series) => {
        const next = drillsAround(size).find((neighbours) => neighbours.series === series);
        const between = drillsOf(series).filter(
          (drill) =>
            (!next?.below || isMore(drill.size, next.below.drill.size)) &&
            (!next?.above || isLess(drill.size, next.above.drill.size)),
        );
        expect(between).toEqual(next?.exact ? [next.exact] : []);
      }),
    );
  });
});

describe('fraction, decimal and millimetres', () => {
  test.each([
    { size: '.4487 in', text: '29/64', off: '-0.004425', by: '.4487 − .453125 (hand calculation)' },
    { size: '11.509375 mm', text: '29/64', off: '0', by: '29/64 · 25.4' },
    { size: '38.1 mm', text: '1-1/2', off: '0', by: '1.5 · 25.4' },
    { size: '.005 in', text: '0', off: '0.005', by: 'nearer to 0 than to 1/64 (.015625)' },
    { size: '1.996 in', text: '2', off: '-0.004', by: '1.996 − 2' },
  ])('$size is nearest to $text, off $off in ($by)', ({ size, text, off }) => {
    const nearest = nearestFraction(lengthOf(size));
    expect(nearest.text).toBe(text);
    expect(exactDecimalText(nearest.off, 'in')).toBe(off);
  });

  test('every 128th up to 2 in reads back as itself, and its millimetres are exact (fraction.js)', () => {
    for (let count = 1; count <= 256; count += 1) {
      const size = lengthOf(`${count}/128 in`);
      const nearest = nearestFraction(size, 128);
      expect(nearest.text).toBe(new Fraction(count, 128).toFraction(true).replace(' ', '-'));
      expect(toText(size)).toBe(new Fraction(count, 128).mul('25.4').toString());
      expect(sameLength(lengthOf(`${nearest.text} in`), size)).toBe(true);
    }
  });

  test('no fraction of that bottom lies nearer than the nearest one', () => {
    const bottoms = constantFrom<8 | 16 | 32 | 64 | 128>(8, 16, 32, 64, 128);
    assert(
      property(sizes, bottoms, (size, bottom) => {
        const { off } = nearestFraction(size, bottom);
        const half = lengthOf(`1/${bottom * 2} in`);
        expect(isMore(off, half) || isLess(off, minus(lengthOf('0 in'), half))).toBe(false);
      }),
    );
  });
});
