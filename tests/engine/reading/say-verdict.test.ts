import { describe, expect, test } from 'vitest';
import { lengthOf } from '../../../src/engine/length/length.ts';
import { usualTools, type MeasuringTool } from '../../../src/engine/reading/measuring-tool.ts';
import { sayCannotProve, saySettler, sayVerdict } from '../../../src/engine/reading/say-verdict.ts';
import type { Leg } from '../../../src/engine/reading/settle.ts';
import { verdictOf, type Limits } from '../../../src/engine/reading/verdict.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const limits: Limits = { lower: inch('.008'), upper: inch('.012'), source: 'test' };

function said(quantity: string, value: string, halfWidth = '0', within = limits) {
  const sizes = { value: inch(value), halfWidth: inch(halfWidth), limits: within };
  return sayVerdict(verdictOf(sizes), { quantity, unit: 'in', ...sizes });
}

function toolOf(id: string): MeasuringTool {
  const tool = usualTools.find((candidate) => candidate.id === id);
  if (!tool) throw new Error(`no ${id}`);
  return tool;
}

const leg = (kind: Leg['kind'], coefficient = 1): Leg => ({ kind, size: inch('.5'), coefficient });

describe('a verdict is said', () => {
  test.each([
    ['float', '.002', 'Too tight: float .002, want .008 to .012.'],
    ['float', '.020', 'Too loose: float .020, want .008 to .012.'],
    ['interference', '.002', 'Too loose: interference .002, want .008 to .012.'],
    ['runout', '.020', 'Too much: runout .020, want .008 to .012.'],
    ['bore', '.002', 'Too small: bore .002, want .008 to .012.'],
    ['float', '.010', 'Good: float .010, want .008 to .012.'],
  ])('of %s %s as “%s %s”', (quantity, value, sentence) => {
    expect(said(quantity, value)).toBe(sentence);
  });

  test('with the band and the distance when it is too close to call', () => {
    expect(said('float', '.0085', '.001')).toBe(
      'Too close to call: float .0085 ±.0010, want .008 to .012. Only .0005 inside.',
    );
    expect(said('float', '.0075', '.001')).toMatch(/Only \.0005 outside\.$/);
    expect(said('float', '.008', '.001')).toMatch(/Right at the limit\.$/);
    // Both limits lie inside ±.003: the band beside them says it.
    expect(said('float', '.010', '.003')).toBe('Too close to call: float .010 ±.0030, want .008 to .012.');
  });

  test('in millimetres with the unit named, as no leading point tells it', () => {
    const mm = {
      value: lengthOf('0.05 mm'),
      limits: { lower: lengthOf('0.2 mm'), upper: lengthOf('0.3 mm'), source: 'test' },
    };
    const verdict = verdictOf({ ...mm, halfWidth: lengthOf('0 mm') });
    expect(sayVerdict(verdict, { quantity: 'float', unit: 'mm', ...mm })).toBe(
      'Too tight: float 0.05 mm, want 0.20 to 0.30 mm.',
    );
  });

  test('from one inch up with the unit named, and both limits to as many places', () => {
    const seat: Limits = { lower: inch('1.181'), upper: inch('1.1815'), source: 'test' };
    expect(said('bore', '1.1811', '0', seat)).toBe('Good: bore 1.1811 in, want 1.1810 to 1.1815 in.');
    const round: Limits = { lower: inch('.9995'), upper: inch('1'), source: 'test' };
    expect(said('bore', '.9996', '0', round)).toBe('Good: bore .9996, want .9995 to 1.0000 in.');
  });

  test('with one limit as “or more”, “or less”', () => {
    expect(said('clearance', '.002', '0', { lower: inch('.008'), source: 'test' })).toBe(
      'Too tight: clearance .002, want .008 or more.',
    );
    expect(said('runout', '.002', '0', { upper: inch('.008'), source: 'test' })).toBe(
      'Good: runout .002, want .008 or less.',
    );
  });
});

describe('what would settle it is said', () => {
  test('with the tool and the readings', () => {
    const settler = {
      tools: [{ tool: toolOf('micrometer-0-1'), leg: leg('pin') }],
      readings: 3,
      halfWidth: inch('.0002'),
    };
    expect(saySettler(settler, 'in')).toBe(
      'The 0–1 in micrometer with 3 readings would settle it, to ±.00020.',
    );
    expect(saySettler({ ...settler, readings: 1 }, 'in')).toMatch(/with 1 reading would settle it/);
  });

  test('with what each tool is for when bore and pin need two', () => {
    const tools = [
      { tool: toolOf('dial-bore-gauge'), leg: leg('bore') },
      { tool: toolOf('micrometer-0-1'), leg: leg('pin', -1) },
    ];
    expect(saySettler({ tools, readings: 3, halfWidth: inch('.0004') }, 'in')).toBe(
      'The dial bore gauge for the bore and the 0–1 in micrometer for the pin with 3 readings of each size would settle it, to ±.00040.',
    );
  });

  test('as no tool in Shop when none can', () => {
    expect(saySettler(undefined, 'in')).toMatch(/^No tool in Shop can settle it\. /);
  });
});

describe('a tool that can’t prove the limits is said so before the first reading', () => {
  const thou: Limits = { lower: inch('.4990'), upper: inch('.5000'), source: 'test' };
  const q = { tool: toolOf('digital-caliper'), halfWidth: inch('.0012'), limits: thou, unit: 'in' } as const;

  test('with its band, the width of the limits and what could', () => {
    const better = {
      tools: [{ tool: toolOf('micrometer-0-1'), leg: leg('pin') }],
      readings: 1,
      halfWidth: inch('.0002'),
    };
    expect(sayCannotProve({ ...q, better })).toBe(
      'The digital caliper can’t prove this: sizes are known to ±.0012 and the limits are only .001 apart. The 0–1 in micrometer with 1 reading can.'.replaceAll(
        '’',
        "'",
      ),
    );
  });

  test('or that nothing in Shop could', () => {
    expect(sayCannotProve({ ...q, better: undefined })).toMatch(/No tool in Shop can\.$/);
  });
});
