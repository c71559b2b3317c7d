import { describe, expect, test } from 'vitest';
import { bandOf, combine, estimateOf, type Estimate } from '../../../src/engine/reading/estimate.ts';
import { decimalText, lengthOf, minus, toText } from '../../../src/engine/length/length.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { predictedBand } from '../../../src/engine/reading/settle.ts';
import { sayWarmth } from '../../../src/engine/reading/say-warmth.ts';
import { materialNamed } from '../../../src/engine/material/tables/materials.ts';
import {
  inCelsius,
  readWarm,
  sizeAt20,
  unaskedWarmth,
  unsaidWarmth,
} from '../../../src/engine/reading/temperature.ts';

const steelPerCelsius = 11.7e-6; // 6.5e-6 a degree Fahrenheit

test('6061 of 100 mm read at 30 °C with a tool at 20 °C had grown .0236 (Callister table B.6: 23.6e-6)', () => {
  const measured = lengthOf('100.0236 mm');
  const size = sizeAt20({
    measured,
    part: { celsius: 30, expansionPerCelsius: 23.6e-6 },
    tool: { celsius: 20, expansionPerCelsius: steelPerCelsius },
  });
  expect(decimalText(size, 'mm', 4)).toBe('100.0000');
});

test('4 in of 6061 and a steel micrometer both at 95 °F read .000713 large (Callister: 13.1e-6 and 6.5e-6 a °F)', () => {
  const measured = lengthOf('4 in');
  const warm = (perFahrenheit: number) => ({ celsius: 35, expansionPerCelsius: perFahrenheit * 1.8 });
  const size = sizeAt20({ measured, part: warm(13.1e-6), tool: warm(6.5e-6) });
  expect(decimalText(minus(measured, size), 'in', 6)).toBe('0.000713');
});

test('a part and a tool of one metal, equally warm, need no correction', () => {
  const warm = { celsius: 33, expansionPerCelsius: steelPerCelsius };
  const size = sizeAt20({ measured: lengthOf('.4487 in'), part: warm, tool: warm });
  expect(toText(size)).toBe(toText(lengthOf('.4487 in')));
});

const metal = (id: string) => {
  const found = materialNamed(id);
  if (!found) throw new Error(`no ${id} among the materials`);
  return found;
};

describe('a part read warm, with a steel tool as warm as itself', () => {
  test('4 in of 6061 at 35 °C counts as 3.99929: 15 · (23.6 − 11.7) millionths of 4 in are .000714', () => {
    const { at20 } = readWarm(lengthOf('4 in'), { celsius: 35, material: metal('aluminium-6061') });
    expect(decimalText(at20, 'in', 6)).toBe('3.999286');
  });

  test('a cold one counts as larger: 4 in of 6061 at 5 °C is 4.000714', () => {
    const { at20 } = readWarm(lengthOf('4 in'), { celsius: 5, material: metal('aluminium-6061') });
    expect(decimalText(at20, 'in', 6)).toBe('4.000714');
  });

  test('mild steel grows as the tool does and stays as it was read', () => {
    const { at20 } = readWarm(lengthOf('100 mm'), { celsius: 35, material: metal('low-carbon-steel') });
    expect(decimalText(at20, 'mm', 6)).toBe('100.000000');
  });

  test('titanium grows less than the tool: 100 mm at 30 °C is 100.0031', () => {
    // 10 · (11.7 − 8.6) millionths of 100 mm
    const { at20 } = readWarm(lengthOf('100 mm'), { celsius: 30, material: metal('titanium-6-4') });
    expect(decimalText(at20, 'mm', 4)).toBe('100.0031');
  });

  test('is in doubt by the 3 °C nobody feels: 3 · 23.6 millionths / √3 of 4 in are .000164', () => {
    const { doubt } = readWarm(lengthOf('4 in'), { celsius: 20, material: metal('aluminium-6061') });
    expect(decimalText(doubt, 'in', 6)).toBe('0.000164');
  });

  test('whose expansion books give as a range is in doubt by that too', () => {
    // acetal 100 to 120: √((3 · 110)² + (15 · 10)²) = 362.5, / √3 = 209.3 millionths of 10 mm
    const { doubt } = readWarm(lengthOf('10 mm'), { celsius: 35, material: metal('acetal') });
    expect(decimalText(doubt, 'mm', 6)).toBe('0.002093');
  });

  test('has a wider band by it', () => {
    const tool = usualTools.find(({ id }) => id === 'digital-caliper');
    if (!tool) throw new Error('a caliper is among the tools');
    const exact = lengthOf('4 in');
    const { doubt } = readWarm(exact, { celsius: 35, material: metal('aluminium-6061') });
    const band = bandOf(estimateOf([{ exact, tool, warmthDoubt: doubt, zeroChecked: false }]));
    // u² = .0002² + .001²/3 + .0001635²; U = 1.96 · .0006325 = .00124, where .0012 without
    expect(decimalText(band.halfWidth, 'in', 5)).toBe('0.00124');
    // Of two in one sum the doubts lie the same way: .000327, u² = 2·.0002² + .002²/3 + .000327²: U = 1.96 · .001232
    const term = { estimate: estimateOf([{ exact, tool, warmthDoubt: doubt, zeroChecked: false }]) };
    const both = combine([
      { ...term, coefficient: 1 },
      { ...term, coefficient: 1 },
    ]);
    expect(decimalText(both.band.halfWidth, 'in', 4)).toBe('0.0024');
  });
});

describe('where nobody said how warm it is', () => {
  test.each([
    // 4.412 · 11.9 · 10 millionths = .000525, over a third of .0012
    ['4.412 in', '.0012 in', '0.000525'],
    // .4487: .0000534, under a third of .0004
    ['.4487 in', '.0004 in', undefined],
    // 1.85: .00022, over a third of .0004
    ['1.85 in', '.0004 in', '0.000220'],
    ['1.85 in', '.0022 in', undefined],
    // 112 mm: 0.01333
    ['112 mm', '0.03 mm', '0.000525'],
  ])('%s known to ±%s: off by %s in', (size, halfWidth, off) => {
    const found = unaskedWarmth(lengthOf(size), lengthOf(halfWidth));
    expect(found && decimalText(found, 'in', 6)).toBe(off);
  });
});

describe('a size of which nobody said how warm it was read', () => {
  const micrometer = (id: string) => {
    const found = usualTools.find((one) => one.id === id);
    if (!found) throw new Error(`no ${id} among the tools`);
    return found;
  };
  const read = (size: string, id: string, metalId?: string) => {
    const exact = lengthOf(size);
    const unsaid = unsaidWarmth(exact, metalId === undefined ? undefined : metal(metalId));
    return estimateOf([
      { exact, tool: micrometer(id), ...(unsaid && { warmthUnsaid: unsaid }), zeroChecked: false },
    ]);
  };
  const plain = (size: string, id: string) =>
    estimateOf([{ exact: lengthOf(size), tool: micrometer(id), zeroChecked: false }]);
  const halfWidth = (estimate: Estimate, places: number) =>
    decimalText(bandOf(estimate).halfWidth, 'in', places);

  test.each([
    // 3 °C · (23.6 − 11.7) millionths of 12.7 mm: 0.000453 mm, / √3
    ['12.7 mm', undefined, '0.000262'],
    // of 4 in, 101.6 mm: 0.003627 mm, / √3
    ['4 in', undefined, '0.002094'],
    ['4 in', 'aluminium-6061', '0.002094'],
    // Titanium grows less than the tool: 3 · (11.7 − 8.6) millionths of 100 mm, / √3
    ['100 mm', 'titanium-6-4', '0.000537'],
  ])('%s of %s is in doubt by %s mm', (size, id, doubt) => {
    const found = unsaidWarmth(lengthOf(size), id === undefined ? undefined : metal(id));
    expect(found && decimalText(found, 'mm', 6)).toBe(doubt);
  });

  test('of mild steel grows as the tool does: nothing is in doubt', () => {
    expect(unsaidWarmth(lengthOf('1000 mm'), metal('low-carbon-steel'))).toBeUndefined();
  });

  test('has the band it had where the 3 °C are less than a third of what the tool proves', () => {
    // Micrometer: U = 1.96 · √(.00005² + .0001² / 3) = .00015, a third .00005; 3 °C are .0000346 of .970 in.
    expect(bandOf(read('.970 in', 'micrometer-0-1'))).toEqual(bandOf(plain('.970 in', 'micrometer-0-1')));
    // Caliper: U = 1.96 · √(.0002² + .001² / 3) = .0012, a third .0004; 3 °C are .000143 of 4 in.
    expect(bandOf(read('4 in', 'digital-caliper'))).toEqual(bandOf(plain('4 in', 'digital-caliper')));
  });

  test('has a wider one where they are more: 1.85 in by micrometer .000210 in place of .000196', () => {
    // ±.00015 in: u² = .00005² + .00015² / 3 = .0001²; U = .000196, a third .0000653. 3 · 11.9 millionths of 1.85 in are
    // .000066, / √3 .0000381: U = 1.96 · √(.0001² + .0000381²) = 1.96 · .000107
    expect(halfWidth(plain('1.85 in', 'micrometer-1-2'), 6)).toBe('0.000196');
    expect(halfWidth(read('1.85 in', 'micrometer-1-2'), 6)).toBe('0.000210');
    expect(halfWidth(read('1.85 in', 'micrometer-1-2', 'low-carbon-steel'), 6)).toBe('0.000196');
  });

  test('is as warm as what it is taken from: of bore less pin only the one doubt counts, of bore and pin both', () => {
    const size = read('1.85 in', 'micrometer-1-2');
    const both = (coefficient: 1 | -1) =>
      decimalText(
        combine([
          { estimate: size, coefficient: 1 },
          { estimate: size, coefficient },
        ]).band.halfWidth,
        'in',
        6,
      );
    const without = (coefficient: 1 | -1) =>
      combine([
        { estimate: plain('1.85 in', 'micrometer-1-2'), coefficient: 1 },
        { estimate: plain('1.85 in', 'micrometer-1-2'), coefficient },
      ]).band.halfWidth;
    // Two readings by one micrometer: 2 · .00005² of scatter; its own error twice in a sum, and in a difference as that of two.
    // Sum: √(2 · .00005² + .0003² / 3) = .000187, U .000367; with (2 · .0000381)² beside them √4.08e-8 = .000202, U .000396
    expect(decimalText(without(1), 'in', 6)).toBe('0.000367');
    expect(both(1)).toBe('0.000396');
    // Difference: √(2 · .00005² + 2 · .00015² / 3) = .000141, U .000277; with .0000381² once √2.145e-8 = .000146, U .000287
    expect(decimalText(without(-1), 'in', 6)).toBe('0.000277');
    expect(both(-1)).toBe('0.000287');
  });

  test('that could be settled by another reading is predicted with it: how warm the shop is stays not known', () => {
    const known = read('1.85 in', 'micrometer-1-2');
    const leg = { kind: 'length', size: lengthOf('1.85 in'), coefficient: 1, known } as const;
    const tool = micrometer('micrometer-1-2');
    expect(decimalText(predictedBand([{ leg, tool }], 1), 'in', 6)).toBe('0.000210');
  });
});

test.each([
  [95, 'F', 35],
  [68, 'F', 20],
  [-4, 'F', -20],
  [20, 'C', 20],
] as const)('%s °%s are %s °C', (degrees, unit, celsius) => {
  expect(inCelsius({ degrees, unit })).toBeCloseTo(celsius, 12);
});

test('what it changed is said in the fitter’s degrees', () => {
  const said = { degrees: '95', unit: 'F', material: 'Aluminium 6061' } as const;
  expect(sayWarmth(said, { changed: lengthOf('-.0007 in'), unit: 'in' })).toBe(
    '95 °F takes .0007 in off: Aluminum 6061, at 68 °F.',
  );
  const cold = { degrees: '5', unit: 'C', material: 'Aluminium 6061' } as const;
  expect(sayWarmth(cold, { changed: lengthOf('0.018 mm'), unit: 'mm' })).toBe(
    '5 °C puts 0.018 mm on: Aluminium 6061, at 20 °C.',
  );
});
