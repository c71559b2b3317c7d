import { describe, expect, test } from 'vitest';
import { knownCheck, type FitUpData } from '../../../src/screens/fit-up/check-data.ts';
import { provedVerdict } from '../../../src/screens/worksheets/proved-verdict.ts';
import type { WorksheetData } from '../../../src/screens/worksheets/worksheet-data.ts';
import { worksheetVerdict } from '../../../src/screens/worksheets/worksheet-verdict.ts';
import type { Check, Cut } from '../../../src/store/base/records.ts';
import { featureOf, partOf, readingOf, tool, typedSize, worksheetOf } from './worksheet-for-test.ts';

const stack = (part: string, more: Parameters<typeof worksheetOf>[1] = {}) =>
  worksheetOf('spacer-stack', {
    sizes: { fixed: typedSize('.970'), lower: typedSize('.008'), upper: typedSize('.012') },
    choices: { want: 'float' },
    parts: { a: partOf(1, typedSize(part)) },
    ...more,
  });
const found = (data: WorksheetData) => worksheetVerdict(data).found;

describe('what a worksheet comes to', () => {
  // .970 less the part, wanted .008 to .012; typed without a tool a size is exact.
  test.each([
    { part: '.960', comes: 'good' }, // .0100
    { part: '.962', comes: 'good' }, // .0080, at the limit
    { part: '.9621', comes: 'no-good' }, // .0079
    { part: '.958', comes: 'good' }, // .0120
    { part: '.9579', comes: 'no-good' }, // .0121
  ])('is by its sizes: a part of $part is $comes', ({ part, comes }) => {
    expect(found(stack(part))).toBe(comes);
  });

  test('is too close to call where the tool can’t tell', () => {
    const data = stack('.960', { parts: { a: partOf(1, typedSize('.962', tool('digital-caliper'))) } });
    expect(found(data)).toBe('too-close');
  });

  test('is no answer while a size is missing, and for a kind that is not known here', () => {
    expect(found(stack('.960', { sizes: {} }))).toBe('no-answer');
    const data = stack('.960');
    expect(found({ ...data, worksheet: { ...data.worksheet, kind: 'of-a-newer-one' } })).toBe('no-answer');
  });

  test('judges engagement, and the reach of the bolt beside it', () => {
    // Half of 150 MPa in shear on a thread of 10 mm: each mm holds about 75 · π · 10 · 0.7 = 1.6 kN, and the bolt of 58 mm²
    // at 1000 MPa or more breaks at 58 kN or more: 8 mm hold a quarter of it.
    const bolt = (engaged: string) =>
      worksheetOf('thread-engagement', {
        choices: { thread: 'M10x1.5', grade: '8.8', parentTensile: '150', held: 'tapped', insert: 'no' },
        sizes: { engaged: typedSize(engaged) },
        unit: 'mm',
      });
    expect(worksheetVerdict(bolt('8 mm'))).toMatchObject({ found: 'no-good' });
    expect(worksheetVerdict(bolt('8 mm')).said).toContain('8.00');
    expect(found(bolt('80 mm'))).toBe('good');
    const reach = worksheetOf('thread-engagement', {
      choices: { ...bolt('80 mm').worksheet.choices, hole: 'blind' },
      sizes: {
        engaged: typedSize('80 mm'),
        leg1: typedSize('10 mm'),
        boltLength: typedSize('100 mm'),
        holeDepth: typedSize('85 mm'),
      },
      unit: 'mm',
    });
    // 10 + 85 = 95 for a bolt of 100.
    expect(worksheetVerdict(reach)).toEqual({
      found: 'no-good',
      said: 'The bolt meets the end of its hole 5.00 mm before it clamps: a shorter one.',
    });
  });

  test('is not good for a trail that may be negative, with or without limits of its own', () => {
    // Trail 1.5 mm, ±2.5 by a rake known to ±.461°: worked out in steering-geometry.test.ts.
    const steering = (sizes: Readonly<Record<string, string>> = {}, rakeWithin = '0.461') =>
      worksheetOf('steering-geometry', {
        choices: { rake: '27', rakeWithin },
        sizes: Object.fromEntries(
          Object.entries({
            frontRadius: '310 mm',
            rearRadius: '300 mm',
            wheelbase: '1450 mm',
            clampOffset: '139.4005 mm',
            ...sizes,
          }).map(([name, size]) => [name, typedSize(size)]),
        ),
        unit: 'mm',
      });
    const said = 'Trail possibly negative: 1.5 mm, ±2.51. Do not ride it.';
    expect(worksheetVerdict(steering())).toEqual({ found: 'no-good', said });
    expect(worksheetVerdict(steering({ upper: '100 mm' }))).toEqual({ found: 'no-good', said });
    expect(found(steering({ upper: '100 mm' }, '0.2'))).toBe('good');
    expect(found(steering({}, '0.2'))).toBe('not-judged');
  });

  test('is no good where no such part can be', () => {
    const data = worksheetOf('ring', { sizes: { recess: typedSize('.5'), stem: typedSize('.6') } });
    expect(found(data)).toBe('no-good');
  });
});

describe('a worksheet that is no good', () => {
  const direct = featureOf('gap', 'gap');
  const check = (more: Partial<Check> = {}): Check => ({
    id: 'float',
    jobId: 'job',
    worksheetId: 'sheet',
    sizeName: 'direct',
    name: 'Float',
    by: 'gap',
    lower: typedSize('.008'),
    upper: typedSize('.012'),
    limitsFrom: 'your own limits',
    how: '',
    takes: { t: { at: 1, featureId: 'gap' } },
    createdAt: 0,
    ...more,
  });
  const proved = (readings: readonly string[], more: Partial<Check> = {}) => {
    const data = stack('.955', {
      features: [direct],
      readings: readings.map((typed) => readingOf('gap', typed, { tool: tool('feeler-gauges') })),
    });
    const { job, features, worksheet } = data;
    const fitUp: FitUpData = { job, checks: [], features, readings: data.readings, worksheets: [worksheet] };
    return provedVerdict(data, { checks: [knownCheck(fitUp, check(more))], cuts: [] }).found;
  };

  test('is proved by a good check of the very same play', () => {
    expect(proved(['.010', '.010', '.010'])).toBe('good');
  });

  test('is not proved by a check that is not done or no good', () => {
    expect(proved([])).toBe('no-good');
    expect(proved(['.015', '.015', '.015'])).toBe('no-good');
  });

  test('is not proved by a check by eye, nor by one of another worksheet', () => {
    const { sizeName: _sizeName, lower: _lower, upper: _upper, ...eye } = check({ by: 'by-eye' });
    const data = stack('.955');
    const { job, features, worksheet } = data;
    const fitUp: FitUpData = { job, checks: [], features, readings: [], worksheets: [worksheet] };
    const seen = knownCheck(fitUp, { ...eye, takes: { t: { at: 1, seen: 'holds' } } });
    expect(seen.state.found).toBe('good');
    expect(provedVerdict(data, { checks: [seen], cuts: [] }).found).toBe('no-good');
    expect(proved(['.010', '.010', '.010'], { worksheetId: 'other' })).toBe('no-good');
  });
});

describe('a blind hole for an insert', () => {
  // M8 1D, bottoming: 8 + 5 + .3004 · 8.4 = 15.523 to the point, and 1.5 of floor: 17.023.
  const blind = (thickness?: string) =>
    worksheetVerdict(
      worksheetOf('thread-insert', {
        choices: { thread: 'M8x1.25', metal: 'aluminium', bottom: 'blind', tap: 'bottoming' },
        sizes: {
          hole: typedSize('8.45 mm'),
          ...(thickness !== undefined && { thickness: typedSize(thickness) }),
        },
        unit: 'mm',
      }),
    );

  test('is no good where its floor is too thin, and not proved while nobody measured the metal', () => {
    expect(blind('17.0 mm')).toMatchObject({ found: 'no-good' });
    expect(blind('17.0 mm').said).toMatch(/1\.50 mm wanted\. 0\.023 mm of metal is missing\./);
    expect(blind('17.1 mm').found).toBe('good');
    expect(blind()).toEqual({
      found: 'too-close',
      said: 'Give how thick the metal is: the drill may come through.',
    });
  });
});

describe('a hole that is too small for its insert', () => {
  const insert = worksheetOf('thread-insert', {
    choices: { thread: 'M8x1.25', metal: 'aluminium' },
    sizes: { hole: typedSize('6.8 mm') },
    unit: 'mm',
  });
  const drilled = (measured: string): Cut => ({
    id: 'cut',
    jobId: 'job',
    worksheetId: 'sheet',
    name: 'Hole, drilled 8.4 mm',
    part: 'hole',
    operation: 'drill',
    of: 'tap-drill',
    target: typedSize('8.4 mm'),
    lower: typedSize('8.271 mm'),
    upper: typedSize('8.48 mm'),
    limitsFrom: '',
    cuttingTool: 'hss',
    machine: 'drill-press',
    state: 'to-size',
    passes: { p: { at: 2, measured: typedSize(measured) } },
    createdAt: 0,
    touchedAt: 0,
  });

  test('is right once its cut is to size', () => {
    expect(provedVerdict(insert, { checks: [], cuts: [] }).found).toBe('no-good');
    expect(provedVerdict(insert, { checks: [], cuts: [drilled('8.4 mm')] }).found).toBe('good');
  });
});

describe('an axle whose disc may rub for all that is known', () => {
  const axle = (more: Readonly<Record<string, string>> = {}, given: Parameters<typeof worksheetOf>[1] = {}) =>
    worksheetOf('axle-line-up', {
      sizes: Object.fromEntries(
        Object.entries({
          width: '6.750',
          hub: '4.412',
          centre: '2.300',
          disc: '.312',
          slot: '.187',
          bracket: '.500',
          float: '.010',
          ...more,
        }).map(([name, size]) => [name, typedSize(size)]),
      ),
      choices: { layout: 'front-one-disc', side: 'right', slides: 'caliper' },
      ...given,
    });

  test('is too close to call in the list and at the sign-off, and says which size is missing', () => {
    expect(worksheetVerdict(axle())).toEqual({
      found: 'too-close',
      said: 'Not finished: the disc may rub. Give its slot’s width and its thickness.',
    });
    // (.300 − .160 − .010) / 2 = .065
    expect(found(axle({ slotWidth: '.300', discThickness: '.160' }))).toBe('good');
  });

  test('is proved by the gaps read at both faces of the disc, never by one of them or by its centre alone', () => {
    const gap = (sizeName: string): Check => ({
      id: sizeName,
      jobId: 'job',
      worksheetId: 'sheet',
      sizeName,
      name: sizeName,
      by: 'gap',
      ...(sizeName === 'centreRead' ? { upper: typedSize('.060') } : { lower: typedSize('.005') }),
      limitsFrom: 'your own limits',
      how: '',
      takes: { t: { at: 1, featureId: sizeName } },
      createdAt: 0,
    });
    const provedBy = (...names: readonly string[]) => {
      const data = axle(
        {},
        {
          features: names.map((name) => featureOf(name, 'gap')),
          readings: names.flatMap((name) =>
            ['.020', '.020', '.020'].map((typed) => readingOf(name, typed, { tool: tool('feeler-gauges') })),
          ),
        },
      );
      const { job, features, readings, worksheet } = data;
      const fitUp: FitUpData = { job, checks: [], features, readings, worksheets: [worksheet] };
      return provedVerdict(data, { checks: names.map((name) => knownCheck(fitUp, gap(name))), cuts: [] });
    };
    expect(provedBy('centreRead').found).toBe('too-close');
    expect(provedBy('discInsideRead')).toEqual({
      found: 'too-close',
      said: 'Not finished: the disc may rub. Read the gap at its outer face too.',
    });
    expect(provedBy('discInsideRead', 'discOutsideRead').found).toBe('good');
  });
});
