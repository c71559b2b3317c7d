import { describe, expect, test } from 'vitest';
import { decimalText, lengthOf, type Length } from '../../../src/engine/length/length.ts';
import { bandOf, mean } from '../../../src/engine/reading/estimate.ts';
import { sayWarmFromCut } from '../../../src/engine/reading/say-warmth.ts';
import { warmFromCut } from '../../../src/engine/reading/temperature.ts';
import { materialNamed } from '../../../src/engine/material/tables/materials.ts';
import { measuredPass } from '../../../src/screens/cuts/measured-pass.ts';
import { cutsCsv } from '../../../src/screens/sheet/csv.ts';
import { unaskedSizes, warmthWanted, withWarmthOfDay } from '../../../src/screens/worksheets/warm-sizes.ts';
import { knownSize, type KnownSize } from '../../../src/screens/worksheets/worksheet-data.ts';
import { stateByPasses } from '../../../src/store/kept/cut-state.ts';
import type { Cut } from '../../../src/store/base/records.ts';
import { tool, typedSize, worksheetOf } from './worksheet-for-test.ts';

const inches = (size: Length | undefined, places: number) => size && decimalText(size, 'in', places);
const caliper = tool('digital-caliper');
const warmth = { degrees: '95', unit: 'F', material: 'aluminium-6061' } as const;

describe('a size typed as read by a tool', () => {
  // 95 °F is 35 °C: 15 · (23.6 − 11.7) millionths of 4 in are .000714.
  test('counts at 20 °C where its warmth and metal are kept, and says so', () => {
    const warm = { ...typedSize('4.000', caliper), warmth };
    const known = knownSize(worksheetOf('spacer-stack'), warm);
    expect(inches(known && mean(known.least), 6)).toBe('3.999286');
    expect(known?.least.warmthDoubt).toBeDefined();
    expect(known?.words).toContain('brought to 20 °C');
  });

  test('counts as it was read where nothing was said', () => {
    const known = knownSize(worksheetOf('spacer-stack'), typedSize('4.000', caliper));
    expect(inches(known && mean(known.least), 6)).toBe('4.000000');
    expect(known?.words).not.toContain('20 °C');
  });

  test('whose warmth nobody said is known a little less closely where it is large and the tool fine, steel apart', () => {
    const band = (known: KnownSize | undefined) => inches(known && bandOf(known.least).halfWidth, 6);
    const micrometer = tool('micrometer-1-2');
    // 1.85 in ±.00015: 1.96 · √(.0001² + .0000381²), worked in the engine's test of warmth; .000196 without.
    const stack = typedSize('1.85', micrometer);
    expect(band(knownSize(worksheetOf('spacer-stack', { sizes: { fixed: stack } }), stack))).toBe('0.000210');
    const bore = typedSize('1.85', micrometer);
    const inSteel = { sizes: { bore }, choices: { partMetal: 'low-carbon-steel' } };
    expect(band(knownSize(worksheetOf('bushing', inSteel), bore))).toBe('0.000196');
    // 3 °C are .0000346 of .970 in, under a third of .00015: a spacer is as it was.
    const small = typedSize('.970', tool('micrometer-0-1'));
    expect(band(knownSize(worksheetOf('spacer-stack', { sizes: { fixed: small } }), small))).toBe('0.000150');
  });

  test('is asked about where it could matter: 10 °C of aluminium are .0005 of 4.412, a third of a caliper’s band', () => {
    // 10 · 11.9 millionths of 4.412 in are .000525; U of a caliper ±.001 is about .0012 to .0013.
    const data = (size: string, by = caliper) =>
      worksheetOf('spacer-stack', { sizes: { fixed: typedSize(size, by) } });
    expect(unaskedSizes(data('4.412'))).toHaveLength(1);
    expect(warmthWanted(data('4.412'), 0)?.said).toMatch(
      /^Sleeve or opening: how warm\? ±\.0005 in? ?if aluminum\.$/,
    );
    expect(warmthWanted(data('.970'), 0)).toBeUndefined();
    expect(unaskedSizes(data('.970', tool('micrometer-0-1')))).toHaveLength(1);
  });

  test('is not asked about where it is taken as exact, or warmth was said', () => {
    const sizes = { fixed: typedSize('4.412') };
    expect(unaskedSizes(worksheetOf('spacer-stack', { sizes }))).toEqual([]);
    const said = { fixed: { ...typedSize('4.412', caliper), warmth } };
    expect(unaskedSizes(worksheetOf('spacer-stack', { sizes: said }))).toEqual([]);
  });

  test('keeps the job’s warmth of that day where the worksheet knows the metal, and only then', () => {
    const of = (choices: Readonly<Record<string, string>>, at: number) => {
      const data = worksheetOf('bushing', { choices });
      const job = { ...data.job, warmth: { degrees: '95', unit: 'F', at } } as const;
      return withWarmthOfDay({ ...data, job }, 'bore', typedSize('4.000', caliper), 1_000);
    };
    expect(of({ partMetal: 'aluminium-6061' }, 0)).toMatchObject({ warmth });
    expect(of({}, 0)).not.toHaveProperty('warmth');
    expect(of({ partMetal: 'aluminium-6061' }, -24 * 60 * 60 * 1000)).not.toHaveProperty('warmth');
  });
});

describe('a measurement at the machine', () => {
  const cut = (measured: string, warm: boolean): Cut => ({
    id: 'c',
    jobId: 'job',
    name: 'Spacer, face to length',
    part: 'Spacer',
    operation: 'face',
    of: 'length',
    target: typedSize('4.0000'),
    lower: typedSize('3.9995'),
    upper: typedSize('4.0005'),
    limitsFrom: '',
    cuttingTool: 'hss',
    machine: 'lathe',
    state: 'to-cut',
    passes: { p: { at: 1, measured: typedSize(measured), ...(warm && { warmth }) } },
    createdAt: 0,
    touchedAt: 0,
  });

  test('counts at 20 °C: 4.0010 at 95 °F is 4.0003, to size; as read it would be .0005 over', () => {
    // 4.0010 · (1 − .0001785) = 4.000286
    expect(stateByPasses(cut('4.0010', true))).toBe('to-size');
    expect(stateByPasses(cut('4.0010', false))).toBe('to-cut');
    // 4.0000 − .0007 = 3.9993 is past 3.9995: as read it would look to size.
    expect(stateByPasses(cut('4.0000', true))).toBe('over');
    expect(stateByPasses(cut('4.0000', false))).toBe('to-size');
    const pass = cut('4.0010', true).passes['p'];
    expect(inches(pass && measuredPass(pass).measured, 6)).toBe('4.000286');
  });

  test('says in the table what was corrected', () => {
    const [heads = '', row = ''] = cutsCsv([cut('4.0000', true)], new Set()).split('\r\n');
    const at = heads.split(',').findIndex((head) => head.includes('warmth'));
    expect(at).toBeGreaterThan(0);
    expect(row).toContain('95 F');
    // 4 in = 101.6 mm, less 178.5 millionths: 101.5818644
    expect(row).toContain('101.5818644');
    expect(cutsCsv([cut('4.0000', false)], new Set())).not.toContain('101.5818');
  });
});

describe('a part warm from the cut', () => {
  const limits = (width: string) => ({ lower: lengthOf('0 in'), upper: lengthOf(width) });
  const aluminium = materialNamed('aluminium-6061');
  const steel = materialNamed('low-carbon-steel');

  test('of 4 in of 6061, 15 °C over a cold tool, is read .0014 over: 15 · 23.6 millionths', () => {
    const over = warmFromCut({ size: lengthOf('4 in'), limits: limits('.004 in'), material: aluminium });
    expect(inches(over, 4)).toBe('0.0014');
    expect(sayWarmFromCut(over, 'in', true)).toBe(
      'Warm from the cut: let it cool, or measure .0014 in over.',
    );
    expect(sayWarmFromCut(over, 'in', false)).toMatch(/ over if aluminum\.$/);
  });

  test('is a word only where it is a third of what the limits leave', () => {
    // Steel: 15 · 11.7 millionths of 1 in are .000176.
    const one = (width: string) =>
      warmFromCut({ size: lengthOf('1 in'), limits: limits(width), material: steel });
    expect(one('.0005 in')).toBeDefined();
    expect(one('.0006 in')).toBeUndefined();
    expect(sayWarmFromCut(undefined, 'in', true)).toBe('');
  });
});
