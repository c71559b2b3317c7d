import { describe, expect, test } from 'vitest';
import {
  degreesFor,
  fahrenheitOf,
  heatWays,
  interferenceAt,
  sizeAfter,
  type HeatQuestion,
} from '../../../src/engine/press/heat-fit.ts';
import { floatMm, lengthOf, minus, plus, ratioOf, zero } from '../../../src/engine/length/length.ts';

const inches = (length: Parameters<typeof floatMm>[0]) => ratioOf(length, lengthOf('1 in'));

describe('worked examples', () => {
  test('WE48: aluminium ring of 438 mm over a 440 mm tube with 0.5 mm to spare: 248.2 °C up', () => {
    const by = plus(minus(lengthOf('440 mm'), lengthOf('438 mm')), lengthOf('.5 mm'));
    expect(degreesFor({ by, base: lengthOf('438 mm'), expansionPerDegree: 23.0e-6 })).toBeCloseTo(248.2, 1);
  });

  test('WE49: steel rod of 20.046 mm into 20.000 mm: 191.67 °C down by the hole’s size, 191.23 by the rod’s', () => {
    const by = lengthOf('.046 mm');
    const down = (base: string) => degreesFor({ by, base: lengthOf(base), expansionPerDegree: 12e-6 });
    expect(down('20.000 mm')).toBeCloseTo(191.67, 2);
    expect(down('20.046 mm')).toBeCloseTo(191.23, 2);
  });

  test('WE50: shaft 1.0021 in from 75 to −10 °F, bushing bore 1.0000 in, .002 in to spare: 429.6 °F', () => {
    const cold = sizeAfter(lengthOf('1.0021 in'), { degrees: -10 - 75, expansionPerDegree: 6.5e-6 });
    expect(inches(cold)).toBeCloseTo(1.001546, 6);
    const needed = plus(cold, lengthOf('.002 in'));
    expect(inches(needed)).toBeCloseTo(1.003546, 6);
    const by = minus(needed, lengthOf('1.0000 in'));
    expect(75 + degreesFor({ by, base: lengthOf('1.0000 in'), expansionPerDegree: 10e-6 })).toBeCloseTo(
      429.6,
      1,
    );
  });
});

// 0.020 mm of interference and 0.030 of room on 25 mm; both parts 12e-6: 0.050 / (12e-6 · 25) = 166.7 degrees
const plain: HeatQuestion = {
  bore: lengthOf('25 mm'),
  outside: lengthOf('25.020 mm'),
  room: lengthOf('.030 mm'),
  borePerCelsius: 12e-6,
  // A metal that shrinks evenly all the way down, so that the sums below stay plain.
  outsideShrinks: { perCelsius: 12e-6, at80K: 12e-6 * 213.15 },
  shopCelsius: 20,
  coldCelsius: -18,
  mostCelsius: 200,
};

describe('ways to drop it in', () => {
  test('heat alone, cold alone, and both', () => {
    const [heat, cold, both] = heatWays(plain);
    expect(heat?.heatCelsius).toBeCloseTo(20 + 166.7, 1);
    // 0.050 / (12e-6 · 25.020) = 166.5
    expect(cold?.coldCelsius).toBeCloseTo(20 - 166.5, 1);
    // 38 degrees down take 38 · 12e-6 · 25.020 = 0.01141; 0.03859 left is 128.6 degrees up
    expect(both?.heatCelsius).toBeCloseTo(20 + 128.6, 1);
    expect(both?.coldCelsius).toBe(-18);
    expect([heat, cold, both].map((way) => way?.way)).toEqual(['heat', 'cold', 'both']);
  });

  test('what the part or the shop can’t bear is not allowed', () => {
    expect(heatWays(plain).map(({ allowed }) => allowed)).toEqual([true, false, true]);
    expect(heatWays({ ...plain, mostCelsius: 150 }).map(({ allowed }) => allowed)).toEqual([
      false,
      false,
      true,
    ]);
    expect(heatWays({ ...plain, mostCelsius: 100 }).map(({ allowed }) => allowed)).toEqual([
      false,
      false,
      false,
    ]);
    expect(heatWays({ ...plain, coldCelsius: -196 })[1]?.allowed).toBe(true);
  });

  test('exactly at the limit is allowed', () => {
    // 0.050 mm on 25 mm at 20e-6: 100 degrees up from 20
    const q = { ...plain, borePerCelsius: 20e-6, mostCelsius: 120 };
    expect(heatWays(q)[0]?.heatCelsius).toBeCloseTo(120, 9);
    expect(heatWays({ ...q, mostCelsius: 120.001 })[0]?.allowed).toBe(true);
    expect(heatWays({ ...q, mostCelsius: 119.999 })[0]?.allowed).toBe(false);
  });

  test('what drops in by itself needs neither', () => {
    const loose = { ...plain, outside: lengthOf('24.950 mm') };
    const [heat, cold, both] = heatWays(loose);
    expect(heat?.heatCelsius).toBe(20);
    expect(cold?.coldCelsius).toBe(20);
    expect(both?.heatCelsius).toBe(20);
  });

  test('nothing to grow by is no change of temperature', () => {
    expect(degreesFor({ by: zero, base: lengthOf('25 mm'), expansionPerDegree: 12e-6 })).toBe(0);
  });
});

test('an aluminium hub at 100 °C gives a steel bushing of 25 mm 25 · (23.6 − 11.7)e-6 · 80 = 0.0238 mm of room', () => {
  const left = interferenceAt({
    interference: lengthOf('.020 mm'),
    at: lengthOf('25 mm'),
    outerPerCelsius: 23.6e-6,
    innerPerCelsius: 11.7e-6,
    celsius: 100,
    shopCelsius: 20,
  });
  expect(floatMm(left)).toBeCloseTo(0.02 - 0.0238, 9);
});

test('120 °C is 248 °F, −40 is −40', () => {
  expect(fahrenheitOf(120)).toBe(248);
  expect(fahrenheitOf(-40)).toBe(-40);
});
