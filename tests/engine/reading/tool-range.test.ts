import { describe, expect, test } from 'vitest';
import { bandOf, estimateOf, typedEstimate } from '../../../src/engine/reading/estimate.ts';
import { lengthOf, sameLength, toText } from '../../../src/engine/length/length.ts';
import {
  canHaveRead,
  toolThatCounts,
  usualTools,
  type ToolInForce,
} from '../../../src/engine/reading/measuring-tool.ts';
import { usualToolFor } from '../../../src/engine/reading/usual-tool.ts';

const toolOf = (id: string) => {
  const tool = usualTools.find((candidate) => candidate.id === id);
  if (!tool) throw new Error(`no ${id} in the starter set`);
  return tool;
};

/** As it was kept before ranges were: the tool without its ends. */
const keptBefore = (id: string): ToolInForce => {
  const { least: _least, most: _most, measures: _measures, source: _source, ...rest } = toolOf(id);
  return rest;
};

/** The ends are those engraved on the tools: 1–2 in, 25–50 mm, 0–1 in. */
const outside = [
  ['micrometer-1-2', '.227 in'],
  ['micrometer-1-2', '.9999 in'],
  ['micrometer-1-2', '2.0001 in'],
  ['micrometer-0-1', '1.0001 in'],
  ['micrometer-25-50-mm', '24.999 mm'],
  ['micrometer-25-50-mm', '50.001 mm'],
  ['micrometer-0-25-mm', '1 in'],
  ['dial-bore-gauge', '.3999 in'],
  ['plug-gauges', '.7501 in'],
  ['feeler-gauges', '.0355 in'],
  ['digital-caliper', '6.0005 in'],
] as const;

describe('a size that its tool can’t have read', () => {
  test.each(outside)('%s never proves %s: a band as of the usual caliper or wider', (id, size) => {
    const exact = lengthOf(size);
    const assumed = toolThatCounts(toolOf(id), exact);
    expect(assumed.name).toContain(', assumed');
    // Its kin among the calipers, or the rule where the caliper is too short: never closer than a caliper's .001 in.
    expect(Number(toText(assumed.mpe))).toBeGreaterThanOrEqual(0.0254);
    expect(typedEstimate(exact, toolOf(id)).tool?.name).toBe(assumed.name);
    expect(estimateOf([{ exact, tool: toolOf(id), zeroChecked: false }]).tool?.name).toBe(assumed.name);
  });

  test.each(outside)('%s of a record without a range doesn’t prove %s either', (id, size) => {
    expect(canHaveRead(keptBefore(id), lengthOf(size))).toBe(false);
    expect(typedEstimate(lengthOf(size), keptBefore(id)).tool?.name).toContain(', assumed');
  });

  test('.227 by a 1–2 in micrometer is known to what a caliper knows: ±.0012, not ±.0002', () => {
    // u² = .0002² + .001²/3, u = .000611; U = 1.96 u = .001198 in = .03042 mm (coverage at infinite degrees: 1.96)
    const { halfWidth } = bandOf(typedEstimate(lengthOf('.227 in'), toolOf('micrometer-1-2')));
    expect(Number(toText(halfWidth))).toBeCloseTo(0.03042, 4);
  });

  test('counts as read by the rule where the caliper is too short, and by the tape beyond that', () => {
    expect(toolThatCounts(toolOf('micrometer-1-2'), lengthOf('7 in')).name).toBe('steel rule, assumed');
    expect(toolThatCounts(toolOf('micrometer-1-2'), lengthOf('1400 mm')).name).toBe('tape measure, assumed');
  });

  test('a tool that errs more than the one in its place keeps its own error', () => {
    const coarse = { ...toolOf('micrometer-1-2'), mpe: lengthOf('.004 in') };
    expect(sameLength(toolThatCounts(coarse, lengthOf('.5 in')).mpe, lengthOf('.004 in'))).toBe(true);
  });
});

describe('a size inside the range', () => {
  test.each([
    ['micrometer-1-2', '1 in'],
    ['micrometer-1-2', '2 in'],
    ['micrometer-25-50-mm', '25 mm'],
    ['micrometer-0-25-mm', '0 mm'],
    ['digital-caliper', '-.250 in'],
  ] as const)('%s reads %s and counts as itself', (id, size) => {
    expect(toolThatCounts(toolOf(id), lengthOf(size))).toBe(toolOf(id));
  });

  test('the range kept with a reading rules, not today’s tool of that name', () => {
    const longer = { ...keptBefore('digital-caliper'), least: lengthOf('0 in'), most: lengthOf('12 in') };
    expect(canHaveRead(longer, lengthOf('7 in'))).toBe(true);
  });

  test('a tool of the shop’s own without a range is believed', () => {
    expect(canHaveRead({ ...keptBefore('micrometer-1-2'), id: 'own' }, lengthOf('.2 in'))).toBe(true);
  });

  test('a bore put right for the jaws’ flats is held against what the tool showed', () => {
    const tool = toolOf('digital-caliper-inside');
    const exact = lengthOf('6.0001 in');
    const estimate = estimateOf([{ exact, asRead: lengthOf('6 in'), tool, zeroChecked: false }]);
    expect(estimate.tool?.name).toBe('digital caliper, inside jaws');
  });
});

describe('the usual tool', () => {
  test.each([
    ['pin', '.227 in', 'in', 'digital-caliper'],
    ['pin', '1.5 in', 'in', 'digital-caliper'],
    ['length', '12 mm', 'mm', 'metric-caliper'],
    ['bore', '.4487 in', 'in', 'digital-caliper-inside'],
    ['bore', '30 mm', 'mm', 'metric-caliper-inside'],
    ['depth', '.25 in', 'in', 'digital-caliper-depth'],
    ['runout', '.004 in', 'in', 'dial-indicator'],
    ['length', '6.001 in', 'in', 'steel-rule'],
    ['length', '150.01 mm', 'mm', 'digital-caliper'], // 6 in is 152.4 mm
    ['length', '152.41 mm', 'mm', 'steel-rule'],
    ['length', '55 in', 'in', 'tape-measure'],
  ] as const)('for a %s of %s in a shop that counts in %s is the %s', (kind, size, unit, id) => {
    expect(usualToolFor({ tools: usualTools, kind, size: lengthOf(size), unit })?.id).toBe(id);
  });

  test('is the coarsest one left where the shop has no caliper', () => {
    const tools = usualTools.filter(({ kind }) => kind !== 'caliper');
    const bore = usualToolFor({ tools, kind: 'bore', size: lengthOf('.5 in'), unit: 'in' });
    expect(bore?.id).toBe('telescoping-gauge');
  });

  test('is none where no tool of the shop reads such a size', () => {
    expect(
      usualToolFor({ tools: usualTools, kind: 'bore', size: lengthOf('9 in'), unit: 'in' }),
    ).toBeUndefined();
  });
});
