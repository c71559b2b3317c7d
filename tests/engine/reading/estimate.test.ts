import * as fc from 'fast-check';
import { sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import {
  bandOf,
  combine,
  estimateOf,
  mean,
  toleranceEstimate,
  typedEstimate,
  type Estimate,
} from '../../../src/engine/reading/estimate.ts';
import {
  decimalText,
  floatMm,
  lengthFromFloat,
  lengthOf,
  sameLength,
  toText,
  zero,
} from '../../../src/engine/length/length.ts';
import type { ToolInForce } from '../../../src/engine/reading/measuring-tool.ts';
import type { Reading } from '../../../src/engine/reading/reading.ts';
import { verdictOf } from '../../../src/engine/reading/verdict.ts';

const caliper: ToolInForce = {
  id: 'caliper',
  name: 'caliper',
  kind: 'caliper',
  mpe: lengthOf('0.03 mm'),
  resolution: lengthOf('0.01 mm'),
  resolutionInMpe: true,
  repeatability: lengthOf('0.01 mm'),
};
const micrometer: ToolInForce = {
  ...caliper,
  id: 'micrometer',
  kind: 'micrometer',
  mpe: lengthOf('0.004 mm'),
};

function read(sizes: readonly string[], tool = caliper, zeroChecked = false): Estimate {
  const [first, ...rest] = sizes.map((size): Reading => ({ exact: lengthOf(size), tool, zeroChecked }));
  if (!first) throw new Error('no reading');
  return estimateOf([first, ...rest]);
}

function scattered(scatterMm: string, degreesOfFreedom: number): Estimate {
  return { sum: zero, count: 1, scatter: lengthOf(`${scatterMm} mm`), degreesOfFreedom };
}

describe('a group of readings', () => {
  test('has mean 34.18 and standard deviation 2.88 (Shigley 9th ed., table 8-14: ten bolts, here as mm)', () => {
    const preloads = ['30.3', '32.5', '32.5', '32.9', '32.9', '33.8', '34.3', '34.7', '37.4', '40.5'];
    const estimate = read(preloads.map((preload) => `${preload} mm`));
    expect(toText(mean(estimate))).toBe('34.18');
    expect(floatMm(estimate.scatter) * Math.sqrt(10)).toBeCloseTo(2.88, 2);
    expect(floatMm(estimate.scatter) * Math.sqrt(10)).toBeCloseTo(
      sampleStandardDeviation(preloads.map(Number)),
      6,
    );
    expect(estimate.degreesOfFreedom).toBe(9);
  });

  test('keeps its mean exact: three readings that don’t divide by three', () => {
    const estimate = read(['.4487 in', '.4488 in', '.4488 in']);
    expect(toText(estimate.sum)).toBe(toText(lengthOf('1.3463 in')));
    expect(estimate.count).toBe(3);
  });

  test('of one reading lends its scatter from the tool, with no lack of degrees', () => {
    const estimate = read(['11.40 mm']);
    expect(toText(estimate.scatter)).toBe('0.01');
    expect(estimate.degreesOfFreedom).toBe(Infinity);
    // u² = 0.01² + 0.03²/3 = 0.0001 + 0.0003; u = 0.02; U = 1.95996 · 0.02
    expect(decimalText(bandOf(estimate).halfWidth, 'mm', 4)).toBe('0.0392');
  });

  test('that all read alike doesn’t claim to have no scatter', () => {
    const estimate = read(['11.40 mm', '11.40 mm', '11.40 mm', '11.40 mm']);
    expect(toText(estimate.scatter)).toBe('0.005'); // 0.01 / √4
    expect(estimate.degreesOfFreedom).toBe(Infinity);
  });

  test('of two that differ pays for having one degree of freedom', () => {
    // s = 0.03/√2, s/√2 = 0.015; u² = 0.015² + 0.004²/3 = 2.25e-4 + 5.33e-6; ν = u⁴/0.015⁴ = 1.05 → 1; U = 12.7062 · 0.015177
    const band = bandOf(read(['11.40 mm', '11.43 mm'], micrometer));
    expect(band.coverage).toBeCloseTo(12.7062, 4);
    expect(decimalText(band.halfWidth, 'mm', 3)).toBe('0.193');
  });

  test('of two that happen to agree knows no less than of two that don’t', () => {
    // .0002 usual: s of .5000/.5001 is .00007, so both count as .0002/√2; caliper ±.001.
    const inch = { ...caliper, mpe: lengthOf('.001 in'), repeatability: lengthOf('.0002 in') };
    const agree = bandOf(read(['.5000 in', '.5000 in'], inch));
    const nearly = bandOf(read(['.5000 in', '.5001 in'], inch));
    // U = 1.95996·√(.0002²/2 + .001²/3) = 1.95996·.00059442 = .001165
    expect(decimalText(agree.halfWidth, 'in', 6)).toBe('0.001165');
    expect(sameLength(agree.halfWidth, nearly.halfWidth)).toBe(true);
  });

  test('never proves more for being further apart', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 2, maxLength: 5 }),
        fc.constantFrom(caliper, micrometer),
        fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 40 })),
        (apart, tool, factors) => {
          const [closer, wider] = factors.toSorted((a, b) => a - b);
          const half = (factor: number) =>
            floatMm(
              bandOf(
                read(
                  apart.map((by) => `${10_000_000 + by * factor * 10}/1000000 mm`),
                  tool,
                ),
              ).halfWidth,
            );
          expect(half(closer ?? 0)).toBeLessThanOrEqual(half(wider ?? 0) + 1e-8);
        },
      ),
    );
  });

  test('counts the last digit’s step only where the error limit doesn’t hold it', () => {
    const beside = { ...caliper, resolutionInMpe: false, resolution: lengthOf('0.06 mm') };
    // u² = 0.0001 + 0.0003 + 0.06²/12 = 0.0007; U = 1.95996 · 0.0264575
    expect(decimalText(bandOf(read(['11.40 mm'], beside)).halfWidth, 'mm', 5)).toBe('0.05186');
    const held = { ...beside, resolutionInMpe: true };
    expect(decimalText(bandOf(read(['11.40 mm'], held)).halfWidth, 'mm', 4)).toBe('0.0392');
  });

  test('with a micrometer comes out as in a calibration note: u 0.00051, U (k = 2) 0.0010 mm', () => {
    // Published note, 21.500 mm: repeat 0.00033, resolution 0.001/√12, gauge 0.00025 (here as an error limit 0.00025·√3).
    const estimate: Estimate = {
      ...scattered('0.00033', Infinity),
      tool: {
        id: 'm',
        name: 'm',
        mpe: lengthFromFloat(0.00025 * Math.sqrt(3), lengthOf('0.000000001 mm')),
        resolutionBeside: lengthOf('0.001 mm'),
        zeroChecked: false,
      },
    };
    const band = bandOf(estimate);
    const standardMm = floatMm(band.halfWidth) / band.coverage;
    // The note adds components rounded to two figures (0.29 for 0.2887), so a hundredth of a micrometre is left open.
    expect(Math.abs(standardMm - 0.00051)).toBeLessThan(0.00001);
    expect((2 * standardMm).toFixed(4)).toBe('0.0010');
  });

  test('typed without a tool is taken as exact', () => {
    expect(sameLength(bandOf(typedEstimate(lengthOf('.970 in'))).halfWidth, zero)).toBe(true);
  });

  test('typed with a tool counts as one reading of it', () => {
    expect(typedEstimate(lengthOf('11.40 mm'), caliper)).toEqual(read(['11.40 mm']));
  });
});

describe('a leaf or plug that goes while the next doesn’t', () => {
  const plug: ToolInForce = {
    ...caliper,
    id: 'plug',
    kind: 'plug-gauge',
    mpe: lengthOf('.0002 in'),
    resolution: lengthOf('.001 in'),
    resolutionInMpe: false,
    repeatability: zero,
  };
  const leaf: ToolInForce = { ...plug, id: 'leaf', kind: 'feeler', mpe: zero };

  test('is the middle of the step, as likely anywhere in it', () => {
    const bore = read(['.500 in'], plug);
    expect(toText(mean(bore))).toBe(toText(lengthOf('.5005 in')));
    // u² = .001²/12 + .0002²/3 = 9.6667e-8; U = 1.95996·.00031091 = .000609
    expect(decimalText(bandOf(bore).halfWidth, 'in', 6)).toBe('0.000609');
  });

  test('by the next one that was tried, where the set has a gap', () => {
    const gap = estimateOf([
      { exact: lengthOf('.010 in'), stops: lengthOf('.013 in'), tool: leaf, zeroChecked: false },
    ]);
    expect(toText(mean(gap))).toBe(toText(lengthOf('.0115 in')));
    // 1.95996·.003/√12 = .0017, more than the half of it, .0015
    expect(decimalText(bandOf(gap).halfWidth, 'in', 4)).toBe('0.0017');
  });

  test('of .500 on a .4987 pin leaves .0013 to .0023: too close against .0020, not good', () => {
    const { value, band } = combine([
      { estimate: read(['.500 in'], plug), coefficient: 1 },
      { estimate: typedEstimate(lengthOf('.4987 in')), coefficient: -1 },
    ]);
    expect(toText(value)).toBe(toText(lengthOf('.0018 in')));
    const limits = { lower: zero, upper: lengthOf('.0020 in'), source: 'test' };
    expect(verdictOf({ value, halfWidth: band.halfWidth, limits }).kind).toBe('too-close');
  });

  test('tried three times is no finer: the step is the same each time', () => {
    expect(decimalText(bandOf(read(['.011 in', '.011 in', '.011 in'], leaf)).halfWidth, 'in', 6)).toBe(
      decimalText(bandOf(read(['.011 in'], leaf)).halfWidth, 'in', 6),
    );
  });

  test('of three such gaps in a row counts every step whole', () => {
    // 3·.001/2 = .0015; by root-sum-square only 1.95996·.001·√(3/12) = .00098
    const gaps = [1, 2, 3].map(() => ({ estimate: read(['.011 in'], leaf), coefficient: 1 }));
    expect(decimalText(combine(gaps).band.halfWidth, 'in', 6)).toBe('0.001500');
  });
});

describe('a sum of sizes', () => {
  test('joins few degrees of freedom by Welch and Satterthwaite (JCGM 100:2008 H.1: ν 16, U95 68 nm)', () => {
    // Components in mm and degrees as in H.1.6 (from memory), u = 32 nm there; U95 = 68 nm as printed for a test case of
    // that budget at 95 %, worked from the rounded u.
    const budget: readonly (readonly [string, number])[] = [
      ['0.000025', 18],
      ['0.0000058', 24],
      ['0.0000039', 5],
      ['0.0000067', 8],
      ['0.0000029', 50],
      ['0.0000166', 2],
    ];
    const { band } = combine(
      budget.map(([scatterMm, degrees]) => ({ estimate: scattered(scatterMm, degrees), coefficient: 1 })),
    );
    expect(Math.floor(band.degreesOfFreedom)).toBe(16);
    expect((floatMm(band.halfWidth) / band.coverage).toFixed(6)).toBe('0.000032');
    expect((0.000032 * band.coverage).toFixed(6)).toBe('0.000068');
  });

  const still = { ...caliper, repeatability: zero };
  const size = (tool = still, zeroChecked = false) => read(['10 mm'], tool, zeroChecked);
  const halfWidthMm = (terms: Parameters<typeof combine>[0]) => floatMm(combine(terms).band.halfWidth);
  const oneMm = 1.959964 * (0.03 / Math.sqrt(3));

  test('of four parts less their sleeve with one caliper holds its error three times', () => {
    const parts = [1, -1, -1, -1, -1].map((coefficient) => ({ estimate: size(), coefficient }));
    expect(halfWidthMm(parts)).toBeCloseTo(3 * oneMm, 6);
  });

  const sized = (mm: number, coefficient: number, zeroChecked = true) => ({
    estimate: read([`${mm} mm`], still, zeroChecked),
    coefficient,
  });

  test('of four alike washers holds the error four times, zero checked or not: scale and jaws stay common', () => {
    for (const zeroChecked of [false, true]) {
      const washers = [2.54, 2.54, 2.5, 2.6].map((mm) => sized(mm, 1, zeroChecked));
      expect(halfWidthMm(washers)).toBeCloseTo(4 * oneMm, 6);
    }
  });

  test('of four .100 washers read one by one is known about as closely as one of them four times', () => {
    // caliper ±.001, .0002 of scatter; one row: u² = (4·.0002)² + (4·.001)²/3 → U .00479; four readings, zero checked:
    // u² = 4·.0002² + (4·.001)²/3 → U .00459. Jaws and scale err alike in all four.
    const inch = { ...caliper, mpe: lengthOf('.001 in'), repeatability: lengthOf('.0002 in') };
    const washer = read(['.100 in'], inch, true);
    const row = combine([{ estimate: washer, coefficient: 4 }]);
    const each = combine([1, 2, 3, 4].map(() => ({ estimate: washer, coefficient: 1 })));
    expect(decimalText(row.band.halfWidth, 'in', 5)).toBe('0.00479');
    expect(decimalText(each.band.halfWidth, 'in', 5)).toBe('0.00459');
  });

  test('of unlike sizes with the zero checked joins their errors by root-sum-square', () => {
    // A sleeve and three parts, each further than 1/4 in and a quarter from the next: 1 + 1 + 1 + 1
    const parts = [sized(60, 1), sized(10, -1), sized(18, -1), sized(27, -1)];
    expect(halfWidthMm(parts)).toBeCloseTo(Math.sqrt(4) * oneMm, 6);
  });

  test('counts a zero as checked only where it was for every size of that tool: three checked readings widen nothing', () => {
    const washers = [1, 2, 3, 4].map(() => sized(5, -1, false));
    const without = halfWidthMm([sized(25, 1, false), ...washers]);
    const sleeve = { estimate: read(['25 mm', '25 mm', '25 mm'], still, true), coefficient: 1 };
    expect(halfWidthMm([sleeve, ...washers])).toBeLessThanOrEqual(without + 1e-9);
    expect(without).toBeCloseTo(3 * oneMm, 6);
  });

  test('is never known less closely because a zero was checked, whatever was read and how often', () => {
    const term = fc.record({
      mm: fc.integer({ min: 1, max: 120 }),
      coefficient: fc.constantFrom(-4, -2, -1, 1, 2),
      count: fc.integer({ min: 1, max: 3 }),
      checked: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(term, { minLength: 1, maxLength: 6 }), (drawn) => {
        const of = (isChecked: (one: { readonly checked: boolean }) => boolean) =>
          halfWidthMm(
            drawn.map((one) => ({
              estimate: read(Array<string>(one.count).fill(`${one.mm} mm`), still, isChecked(one)),
              coefficient: one.coefficient,
            })),
          );
        const none = of(() => false);
        expect(of(({ checked }) => checked)).toBeLessThanOrEqual(none + 1e-8);
        expect(of(() => true)).toBeLessThanOrEqual(none + 1e-8);
      }),
    );
  });

  test('of readings that scatter is not known less closely because the zero was checked', () => {
    // 1.000 and 1.005 in by caliper beside four unlike parts. Unchecked: s = .005/√2, u² = s²/2 + (5·.001)²/3 =
    // 6.25e-6 + 8.33e-6 in², ν = (14.58/6.25)² = 5.4, t95(5) = 2.571: U = .0098. With the zero out u² = 6.25e-6 + 5·1e-6/3,
    // ν = 1.6, t95(1) = 12.7: .036, which the check can't have made of it.
    const inches = ['2.5 in', '.25 in', '4 in', '.6 in'];
    const caliperIn = { ...caliper, mpe: lengthOf('.001 in'), repeatability: zero };
    const sums = [false, true].map((zeroChecked) =>
      halfWidthMm(
        [['1.000 in', '1.005 in'], ...inches.map((one) => [one])].map((sizes) => ({
          estimate: read(sizes, caliperIn, zeroChecked),
          coefficient: 1,
        })),
      ),
    );
    expect((sums[0] ?? 0) / 25.4).toBeCloseTo(0.00982, 5);
    expect(sums[1]).toBeLessThanOrEqual(sums[0] ?? 0);
  });

  test('is never known less closely because one more zero was checked, of one tool or of several, however it scatters', () => {
    const term = fc.record({
      tool: fc.constantFrom(caliper, micrometer),
      mm: fc.integer({ min: 1, max: 120 }),
      hundredths: fc.array(fc.integer({ min: 0, max: 15 }), { minLength: 1, maxLength: 3 }),
      coefficient: fc.constantFrom(-4, -1, 1, 2),
      checked: fc.boolean(),
      checkedToo: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(term, { minLength: 1, maxLength: 6 }), (drawn) => {
        const of = (
          isChecked: (one: { readonly checked: boolean; readonly checkedToo: boolean }) => boolean,
        ) =>
          halfWidthMm(
            drawn.map((one) => ({
              estimate: read(
                one.hundredths.map((more) => `${one.mm + more / 100} mm`),
                one.tool,
                isChecked(one),
              ),
              coefficient: one.coefficient,
            })),
          );
        const more = of(({ checked, checkedToo }) => checked || checkedToo);
        expect(more).toBeLessThanOrEqual(of(({ checked }) => checked) + 1e-8);
      }),
      { numRuns: 400 },
    );
  });

  test('a bore less its pin with one caliper doesn’t claim that the error cancels', () => {
    const terms = [1, -1].map((coefficient) => ({ estimate: size(), coefficient }));
    expect(halfWidthMm(terms)).toBeCloseTo(Math.SQRT2 * oneMm, 6);
  });

  test('with two tools joins their errors by root-sum-square', () => {
    const other = { ...still, id: 'other' };
    const terms = [
      { estimate: size(), coefficient: -2 },
      { estimate: size(other), coefficient: -2 },
    ];
    expect(halfWidthMm(terms)).toBeCloseTo(Math.sqrt(8) * oneMm, 6);
  });

  test('of three pieces of one thickness holds its scatter three times', () => {
    const terms = [{ estimate: scattered('0.01', Infinity), coefficient: 3 }];
    expect(halfWidthMm(terms)).toBeCloseTo(1.959964 * 0.03, 6);
  });

  test('is exact where thirds cancel: a mean of three less a mean of three', () => {
    const a = read(['10.01 mm', '10.02 mm', '10.02 mm']);
    const b = read(['10.00 mm', '10.01 mm', '10.01 mm']);
    const { value } = combine([
      { estimate: a, coefficient: 1 },
      { estimate: b, coefficient: -1 },
    ]);
    expect(toText(value)).toBe('0.01');
  });

  test('worst case and root-sum-square are a textbook’s (Shigley 9th ed., example 1-3: ±.010; its RSS ±.006)', () => {
    const terms = [
      { estimate: toleranceEstimate(lengthOf('1.750 in'), lengthOf('.003 in')), coefficient: 1 },
      { estimate: toleranceEstimate(lengthOf('.750 in'), lengthOf('.001 in')), coefficient: -1 },
      { estimate: toleranceEstimate(lengthOf('.120 in'), lengthOf('.005 in')), coefficient: -1 },
      { estimate: toleranceEstimate(lengthOf('.875 in'), lengthOf('.001 in')), coefficient: -1 },
    ];
    const { value, band, worstCase } = combine(terms);
    expect(decimalText(value, 'in', 6)).toBe('0.005000');
    expect(decimalText(worstCase, 'in', 6)).toBe('0.010000');
    expect(decimalText(band.halfWidth, 'in', 6)).toBe('0.006000');
  });

  test('the order of its sizes changes nothing, and its worst case is never less than its band', () => {
    const term = fc.record({
      size: fc.integer({ min: 1, max: 50_000 }),
      tool: fc.constantFrom(caliper, micrometer),
      zeroChecked: fc.boolean(),
      coefficient: fc.constantFrom(-3, -2, -1, 1, 2),
    });
    fc.assert(
      fc.property(fc.array(term, { minLength: 1, maxLength: 6 }), (drawn) => {
        const terms = drawn.map(({ size: thousandths, tool, zeroChecked, coefficient }) => ({
          estimate: read([`${thousandths}/1000 mm`], tool, zeroChecked),
          coefficient,
        }));
        const forward = combine(terms);
        const backward = combine(terms.toReversed());
        expect(toText(forward.value)).toBe(toText(backward.value));
        expect(floatMm(forward.band.halfWidth)).toBeCloseTo(floatMm(backward.band.halfWidth), 8);
        expect(floatMm(forward.band.halfWidth)).toBeLessThanOrEqual(floatMm(forward.worstCase) + 1e-8);
      }),
    );
  });
});
