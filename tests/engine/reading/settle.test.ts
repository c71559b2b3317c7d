import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { estimateOf, mean } from '../../../src/engine/reading/estimate.ts';
import { saySettler } from '../../../src/engine/reading/say-verdict.ts';
import { decimalText, floatMm, lengthOf, zero } from '../../../src/engine/length/length.ts';
import type { FeatureKind, MeasuringTool } from '../../../src/engine/reading/measuring-tool.ts';
import {
  canProve,
  legOf,
  predictedBand,
  whatCouldProve,
  whatWouldSettle,
  type Leg,
} from '../../../src/engine/reading/settle.ts';
import { verdictOf, type Limits } from '../../../src/engine/reading/verdict.ts';

const mm = (text: string) => lengthOf(`${text} mm`);

function tool(
  id: string,
  mpe: string,
  repeatability: string,
  more: Partial<MeasuringTool> = {},
): MeasuringTool {
  return {
    id,
    name: id,
    kind: 'micrometer',
    measures: ['pin', 'length'],
    mpe: mm(mpe),
    resolution: mm('0.001'),
    resolutionInMpe: true,
    repeatability: mm(repeatability),
    source: 'test',
    ...more,
  };
}

const caliper = tool('caliper', '0.03', '0.005', { kind: 'caliper' });
const micrometer = tool('micrometer', '0.003', '0.001');
const shaky = tool('shaky micrometer', '0.003', '0.01');
const boreGauge = tool('bore gauge', '0.005', '0.002', { kind: 'bore-gauge', measures: ['bore'] });

const leg = (kind: FeatureKind, size: string, coefficient = 1): Leg => ({
  kind,
  size: mm(size),
  coefficient,
});
const limits: Limits = { lower: mm('9.9'), upper: mm('10.1'), source: 'test' };
const settled = (value: string, tools: readonly MeasuringTool[], legs = [leg('pin', '10')]) =>
  whatWouldSettle({ value: mm(value), limits, legs, tools });

describe('the band to expect', () => {
  test('of one reading is the tool’s error limit and repeatability by root-sum-square', () => {
    // u² = 0.005² + 0.03²/3 = 0.000325; U = 1.959964 · 0.0180278
    expect(decimalText(predictedBand([{ leg: leg('pin', '10'), tool: caliper }], 1), 'mm', 5)).toBe(
      '0.03533',
    );
  });

  test('of four readings pays for three degrees of freedom', () => {
    // s/√4 = 0.005, 0.003²/3 = 3e-6; u² = 2.8e-5; ν = 3 · (2.8/2.5)² = 3.76 → 3; U = 3.182446 · 0.0052915
    expect(decimalText(predictedBand([{ leg: leg('pin', '10'), tool: shaky }], 4), 'mm', 5)).toBe('0.01684');
  });

  test('of four parts less their sleeve holds one tool’s error three times', () => {
    const still = { ...caliper, repeatability: zero };
    const legs = [1, -1, -1, -1, -1].map((coefficient) => ({
      leg: leg('length', '10', coefficient),
      tool: still,
    }));
    // 1.959964 · 3 · 0.03/√3
    expect(floatMm(predictedBand(legs, 1))).toBeCloseTo(0.101843, 6);
  });
});

describe('what would settle it', () => {
  test('is one reading of the caliper when that is close enough, though a finer tool lies there', () => {
    const settler = settled('9.95', [micrometer, caliper]);
    expect(settler?.readings).toBe(1);
    expect(settler?.tools.map((pick) => pick.tool.id)).toEqual(['caliper']);
  });

  test('is the micrometer when the caliper can’t: no number of readings beats an error limit', () => {
    const settler = settled('9.91', [caliper, micrometer]);
    expect(settler?.tools.map((pick) => pick.tool.id)).toEqual(['micrometer']);
    expect(settled('9.91', [caliper])).toBeUndefined();
  });

  test('is more readings of the tool at hand when its hand is shaky, not its scale', () => {
    // One reading ± 0.0199, four ± 0.0168 (above), five: s/√5 = 0.00447, u = 0.00480, ν = 4 · (23/20)² = 5.29 → 5, U = 2.5706 · 0.0048 = 0.0123
    expect(settled('9.913', [shaky])?.readings).toBe(5);
  });

  test('is the fewest readings before the coarsest tool', () => {
    expect(settled('9.913', [shaky, micrometer])).toMatchObject({
      readings: 1,
      tools: [{ tool: micrometer }],
    });
  });

  test('is a tool for each size: one for the bore, one for its pin', () => {
    const settler = whatWouldSettle({
      value: mm('0.03'),
      limits: { lower: mm('0.02'), upper: mm('0.08'), source: 'test' },
      legs: [leg('bore', '12.03'), leg('pin', '12', -1)],
      tools: [caliper, micrometer, boreGauge],
    });
    expect(settler?.tools.map((pick) => [pick.leg.kind, pick.tool.id])).toEqual([
      ['bore', 'bore gauge'],
      ['pin', 'micrometer'],
    ]);
  });

  test('is nothing when one of the sizes can’t be read with any tool', () => {
    const legs = [leg('bore', '12.03'), leg('pin', '12', -1)];
    expect(settled('9.95', [caliper, micrometer], legs)).toBeUndefined();
    expect(settled('9.95', [])).toBeUndefined();
  });

  test('never sends for a tool whose range the size lies outside of', () => {
    const large = { ...micrometer, least: mm('25'), most: mm('50') };
    expect(settled('9.91', [large])).toBeUndefined();
  });

  test('is nothing for a size that lies exactly at its limit', () => {
    expect(settled('9.9', [caliper, micrometer])).toBeUndefined();
  });

  test('is always a band that calls the verdict', () => {
    fc.assert(
      fc.property(fc.integer({ min: 9880, max: 10_120 }), (micrometres) => {
        const value = mm(`${micrometres}/1000`);
        const settler = whatWouldSettle({
          value,
          limits,
          legs: [leg('pin', '10')],
          tools: [caliper, shaky, micrometer],
        });
        const verdict = settler && verdictOf({ value, halfWidth: settler.halfWidth, limits });
        expect(verdict?.kind).not.toBe('too-close');
      }),
    );
  });
});

describe('a size that was read already', () => {
  const inch = (text: string) => lengthOf(`${text} in`);
  const tenths = { ...micrometer, id: 'tenths', mpe: inch('.0001'), repeatability: inch('.00005') };
  const fine = { ...tenths, id: 'fine', mpe: inch('.00002'), repeatability: inch('.00001') };
  const pinLimits: Limits = { lower: inch('.4990'), upper: inch('.5000'), source: 'test' };
  const reading = (size: string) => ({ exact: inch(size), tool: tenths, zeroChecked: false });
  const pin = estimateOf([reading('.4996'), reading('.5000'), reading('.4998')]);
  const asked = (tools: readonly MeasuringTool[]) =>
    whatWouldSettle({ value: mean(pin), limits: pinLimits, legs: [legOf('pin', pin, 1)], tools });

  test('.4996 .5000 .4998 wants 8 readings in all with the same micrometer: its own scatter counts', () => {
    // s = .0002, MPE .0001, .0002 to the limit. 7: u² = .0002²/7 + .0001²/3 = 9.048e-9; ν = 6 · (9.048/5.714)² = 15,
    // U = 2.131 · .0000951 = .000203. 8: u² = 8.333e-9; ν = 7 · (8.333/5)² = 19, U = 2.093 · .0000913 = .000191.
    const settler = asked([tenths]);
    expect(settler).toMatchObject({ readings: 8, inAll: true });
    expect(settler && decimalText(settler.halfWidth, 'in', 6)).toBe('0.000191');
    expect(saySettler(settler, 'in')).toMatch(/with 8 readings in all would settle it, to ±\.00019\.$/);
  });

  test('is settled by one reading of another tool that is close enough', () => {
    const settler = asked([tenths, fine]);
    expect(settler).toMatchObject({ readings: 1, tools: [{ tool: fine }], inAll: false });
    expect(saySettler(settler, 'in')).not.toContain('in all');
  });

  test('that no ten readings with that tool settle is not sent back to it', () => {
    // s = .0005: ten of them are known to more than 2.26 · .0005/√10 = .00036, and .0002 is left.
    const rough = estimateOf([reading('.4993'), reading('.5003'), reading('.4998')]);
    const q = { value: mean(rough), limits: pinLimits, legs: [legOf('pin', rough, 1)] };
    expect(whatWouldSettle({ ...q, tools: [tenths] })).toBeUndefined();
  });

  test('keeps the error limit its tool had then: the readings stay among those to come', () => {
    const finerSince = { ...tenths, mpe: inch('.00001') };
    expect(asked([finerSince])?.readings).toBe(8);
  });

  test('never wants as few readings with the same tool as there are', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 4980, max: 5010 }), { minLength: 1, maxLength: 9 }), (read) => {
        const [first = 5000, ...rest] = read;
        const at = (size: number) => reading(`${size}/10000`);
        const known = estimateOf([at(first), ...rest.map(at)]);
        const settler = whatWouldSettle({
          value: mean(known),
          limits: pinLimits,
          legs: [legOf('pin', known, 1)],
          tools: [tenths],
        });
        expect(settler?.readings ?? Infinity).toBeGreaterThan(read.length);
      }),
    );
  });
});

describe('limits that a tool can prove', () => {
  test('are at least twice its band apart', () => {
    expect(canProve({ limits, halfWidth: mm('0.1') })).toBe(true);
    expect(canProve({ limits, halfWidth: mm('0.100001') })).toBe(false);
  });

  test('are all those with one side free', () => {
    expect(canProve({ limits: { lower: mm('9.9'), source: 'test' }, halfWidth: mm('5') })).toBe(true);
  });

  test('a caliper can’t prove .001 before its first reading; the micrometer can', () => {
    const thou: Limits = { lower: lengthOf('.4990 in'), upper: lengthOf('.5000 in'), source: 'test' };
    const legs = [{ kind: 'pin', size: lengthOf('.4995 in'), coefficient: 1 }] as const;
    const halfWidth = predictedBand([{ leg: legs[0], tool: caliper }], 1);
    expect(canProve({ limits: thou, halfWidth })).toBe(false);
    expect(whatCouldProve({ limits: thou, legs, tools: [caliper, micrometer] })?.tools[0]?.tool.id).toBe(
      'micrometer',
    );
    expect(whatCouldProve({ limits: thou, legs, tools: [caliper] })).toBeUndefined();
  });
});
