import { describe, expect, test } from 'vitest';
import { t95 } from '../../../src/engine/reading/student-t.ts';

describe('the 95 % factor of Student’s t', () => {
  // JCGM 100:2008 table G.2, column 95 %, as recalled (not seen here); printed to two places.
  test.each([
    [1, 12.71],
    [2, 4.3],
    [3, 3.18],
    [4, 2.78],
    [5, 2.57],
    [6, 2.45],
    [7, 2.36],
    [8, 2.31],
    [9, 2.26],
    [10, 2.23],
    [15, 2.13],
    [16, 2.12],
    [20, 2.09],
    [40, 2.02],
    [50, 2.01],
  ])('with %i degrees of freedom is %f in the printed table', (degreesOfFreedom, printed) => {
    expect(t95(degreesOfFreedom)).toBeCloseTo(printed, 2);
  });

  test('with unlimited readings is the 1.960 of the normal distribution', () => {
    expect(t95(Infinity)).toBeCloseTo(1.959964, 6);
  });

  test.each([1, 2, 3, 4, 7, 12, 33, 200, 201, 450, 5000])(
    'leaves 95 %% inside by plain integration of the density, %i degrees',
    (degreesOfFreedom) => {
      expect(shareInside(t95(degreesOfFreedom), degreesOfFreedom)).toBeCloseTo(0.95, 7);
    },
  );

  test('a broken number of degrees counts as the next lower whole number (JCGM 100 G.4.1)', () => {
    expect(t95(16.7)).toBe(t95(16));
    expect(t95(2.0001)).toBe(t95(2));
  });

  test('two degrees stay two when floating point left a hair less', () => {
    expect(t95(1.9999999999)).toBe(t95(2));
  });

  test('more degrees never widen the factor', () => {
    const factors = Array.from({ length: 400 }, (_, index) => t95(index + 1));
    expect(factors.every((factor, index) => index === 0 || factor < (factors[index - 1] ?? 0))).toBe(true);
  });
});

/** Second route: t = √ν·tan θ turns the density into cos^(ν−1) θ; Simpson over 20 000 strips, normed by its whole. */
function shareInside(t: number, degreesOfFreedom: number): number {
  const integral = (to: number) => {
    const strips = 20_000;
    const width = to / strips;
    let so = 0;
    for (let k = 0; k <= strips; k += 1) {
      const weight = k === 0 || k === strips ? 1 : k % 2 === 1 ? 4 : 2;
      so += weight * Math.cos(k * width) ** (degreesOfFreedom - 1);
    }
    return (so * width) / 3;
  };
  return integral(Math.atan(t / Math.sqrt(degreesOfFreedom))) / integral(Math.PI / 2);
}
