import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decimalText, lengthOf } from '../../../src/engine/length/length.ts';
import { usualTools, type MeasuringTool } from '../../../src/engine/reading/measuring-tool.ts';
import { springOf, type MeasuredPass, type Spring } from '../../../src/engine/cut/spring.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const named = (id: string): MeasuringTool => {
  const tool = usualTools.find((one) => one.id === id);
  if (!tool) throw new Error(`no ${id} in the usual tools`);
  return tool;
};
const micrometer: MeasuringTool = {
  ...named('digital-caliper'),
  id: 'tenths-micrometer',
  name: 'tenths micrometer',
  mpe: inch('.0001'),
  resolution: inch('.0001'),
  repeatability: inch('.00005'),
};
const caliper = named('digital-caliper');

type Line = readonly [
  measured: string,
  asked?: string | undefined,
  more?: { struck?: true; tool?: MeasuringTool | 'none' },
];

function passes(lines: readonly Line[], usual: MeasuringTool = micrometer): readonly MeasuredPass[] {
  return lines.map(([measured, asked, more]) => {
    const tool = more?.tool ?? usual;
    return {
      measured: inch(measured),
      struckOut: more?.struck ?? false,
      ...(asked !== undefined && { asked: inch(asked) }),
      ...(tool !== 'none' && { tool }),
    };
  });
}

function learnt(lines: readonly Line[], tool?: MeasuringTool): Spring {
  return springOf({ of: 'outside', passes: passes(lines, tool), largestLight: inch('.006') });
}

const shown = (spring: Spring) =>
  spring.kind === 'learnt' ? decimalText(spring.springs, 'in', 5) : spring.kind;

describe('what the tool springs', () => {
  test('is asked less got of two equal light passes: .006 asked twice, .0108 gone, .0006 each', () => {
    // 1.5100 − 1.5046 = .0054 and 1.5046 − 1.4992 = .0054.
    expect(shown(learnt([['1.5100'], ['1.5046', '.006'], ['1.4992', '.006']]))).toBe('0.00060');
  });

  test('is the mean of the two where they agree within the band: .0007 and .0005', () => {
    expect(shown(learnt([['1.5100'], ['1.5047', '.006'], ['1.4992', '.006']]))).toBe('0.00060');
  });

  test('may differ by .0003 between the two, which the micrometer’s ±.00037 explains, not by .0004', () => {
    // Once, twice and once the readings: u = √(6 · .00005² + 6 · .0001² / 3) = .000187, U = 1.96 u = .000367 in.
    expect(shown(learnt([['1.5100'], ['1.5047', '.006'], ['1.4991', '.006']]))).toBe('0.00055');
    expect(shown(learnt([['1.5100'], ['1.5048', '.006'], ['1.4992', '.006']]))).toBe('unsteady');
  });

  test('is below zero where more comes off than was asked', () => {
    expect(shown(learnt([['1.5100'], ['1.5034', '.006'], ['1.4968', '.006']]))).toBe('-0.00060');
  });

  test('is learnt in a bore by how much it grew', () => {
    const spring = springOf({
      of: 'bore',
      passes: passes([['.4900'], ['.4956', '.006'], ['.5012', '.006']]),
      largestLight: inch('.006'),
    });
    expect(shown(spring)).toBe('0.00040');
  });

  test('is known half as closely as the metal gone in both: two readings of ±.0001 by one tool', () => {
    // Scatter .00005 each, the tool's error √2 · .0001 / √3: u = √(2 · .00005² + 2 · .0001² / 3) = .000108 in.
    // U = 1.96 u = .000212, half of it .000106.
    const spring = learnt([['1.5100'], ['1.5046', '.006'], ['1.4992', '.006']]);
    if (spring.kind !== 'learnt') throw new Error(spring.kind);
    expect(decimalText(spring.halfWidth, 'in', 6)).toBe('0.000106');
    expect(decimalText(spring.asked, 'in', 3)).toBe('0.006');
  });
});

describe('nothing is learnt', () => {
  test('from roughing, however equal the passes are', () => {
    const rough = learnt([['1.6250'], ['1.5678', '.0580'], ['1.5106', '.0580']]);
    expect(rough).toEqual({ kind: 'not-learnt', why: 'no-two-equal-light' });
  });

  test('from a pass a hair over the light ones, but from one that is just it', () => {
    expect(shown(learnt([['1.5100'], ['1.5046', '.0060'], ['1.4992', '.0060']]))).toBe('0.00060');
    expect(learnt([['1.5100'], ['1.5046', '.0061'], ['1.4992', '.0061']]).kind).toBe('not-learnt');
  });

  test('from two passes that asked for different takes', () => {
    expect(learnt([['1.5100'], ['1.5046', '.006'], ['1.5002', '.005']]).kind).toBe('not-learnt');
  });

  test('from one light pass behind roughing', () => {
    expect(learnt([['1.6250'], ['1.5106', '.115'], ['1.5052', '.006']]).kind).toBe('not-learnt');
  });

  test('from two passes that asked for nothing', () => {
    expect(learnt([['1.5100'], ['1.5090', '0'], ['1.5080', '0']]).kind).toBe('not-learnt');
  });

  test.each([0, 1, 2])('from three measurements of which number %i is struck out', (place) => {
    const lines: Line[] = [['1.5100'], ['1.5046', '.006'], ['1.4992', '.006']];
    const struck = lines.map(([measured, asked], index): Line =>
      index === place ? [measured, asked, { struck: true }] : [measured, asked],
    );
    expect(learnt(struck).kind).toBe('not-learnt');
  });

  test('across a struck-out measurement: nobody knows what was taken in which pass', () => {
    const lines: Line[] = [
      ['1.5100'],
      ['1.5046', '.006'],
      ['1.5992', '.006', { struck: true }],
      ['1.4992', '.006'],
    ];
    expect(learnt(lines).kind).toBe('not-learnt');
  });

  test('where a size was only measured again, with nothing asked', () => {
    expect(learnt([['1.5100'], ['1.5046', '.006'], ['1.5045']]).kind).toBe('not-learnt');
  });

  test('where the difference lies inside the band of a caliper, which is said with its figures', () => {
    // A caliper of ±.001 with .0002 scatter: u = √(2 · .0002² + 2 · .001² / 3) = .000864, U = .001693, half .000847.
    const spring = learnt([['1.5100'], ['1.5046', '.006'], ['1.4992', '.006']], caliper);
    if (spring.kind !== 'inside-band') throw new Error(spring.kind);
    expect(decimalText(spring.difference, 'in', 5)).toBe('0.00060');
    expect(decimalText(spring.halfWidth, 'in', 6)).toBe('0.000847');
  });

  test('where the two passes differ by more than the measuring can explain', () => {
    // .0054 and .0036 gone of .006 each.
    const spring = learnt([['1.5100'], ['1.5046', '.006'], ['1.5010', '.006']]);
    if (spring.kind !== 'unsteady') throw new Error(spring.kind);
    expect([spring.first, spring.second].map((one) => decimalText(one, 'in', 4))).toEqual([
      '0.0006',
      '0.0024',
    ]);
  });

  test.each([0, 1, 2])('where measurement %i names no tool', (place) => {
    const lines: Line[] = [['1.5100'], ['1.5046', '.006'], ['1.4992', '.006']];
    const without = lines.map(([measured, asked], index): Line =>
      index === place ? [measured, asked, { tool: 'none' }] : [measured, asked],
    );
    expect(learnt(without)).toEqual({ kind: 'not-learnt', why: 'no-measuring-tool' });
  });

  test('from too few measurements', () => {
    expect(learnt([]).kind).toBe('not-learnt');
    expect(learnt([['1.5100'], ['1.5046', '.006']]).kind).toBe('not-learnt');
  });
});

test('the latest equal light pair speaks, and is not forgotten for a heavier pass after it', () => {
  const lines: Line[] = [
    ['1.5300'],
    ['1.5250', '.006'],
    ['1.5200', '.006'],
    ['1.5146', '.006'],
    ['1.4900', '.024'],
  ];
  // .0050 then .0054 gone: .0010 and .0006, their mean .0008.
  expect(shown(springOf({ of: 'outside', passes: passes(lines), largestLight: inch('.006') }))).toBe(
    'unsteady',
  );
  expect(shown(learnt([...lines.slice(0, 3), ['1.5150', '.006'], ['1.4900', '.024']]))).toBe('0.00100');
});

test('a tool that takes what it is asked springs nothing, whatever is asked', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 5000, max: 20_000 }), (tenths, start) => {
      const at = (take: number) => ((start - take) / 10_000).toFixed(4);
      const take = (tenths / 10_000).toFixed(4);
      const spring = learnt([[at(0)], [at(tenths), take], [at(2 * tenths), take]]);
      expect(spring.kind).toBe('inside-band');
    }),
  );
});
