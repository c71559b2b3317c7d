import { describe, expect, test } from 'vitest';
import { cutSpeed, type CutSpeed, type SpeedQuestion } from '../../src/engine/cut-speed.ts';
import { lengthOf } from '../../src/engine/length.ts';
import { materialNamed, materials, type Material } from '../../src/engine/tables/materials.ts';
import { readReference } from '../reference/read-csv.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const steel = of('low-carbon-steel');
const anyLathe = { speedsRpm: [] };
const bench = { speedsRpm: [70, 115, 210, 340, 550, 900, 1400], mostRpm: 1400 };

function of(id: string): Material {
  const found = materialNamed(id);
  if (!found) throw new Error(`no ${id}`);
  return found;
}

function speed(q: Partial<SpeedQuestion>): CutSpeed {
  const result = cutSpeed({
    material: steel,
    cuttingTool: 'hss',
    operation: 'turn',
    pass: 'rough',
    diameters: [inch('1')],
    lathe: anyLathe,
    ...q,
  });
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

/** rpm = 12 V / (π D), handbook formula, D in inches. */
const rpm = (feet: number, inches: number) => (12 * feet) / (Math.PI * inches);

describe('speeds of the reference table (materials.csv, each with its source)', () => {
  // Names as the reference table prints them.
  const names: Readonly<Record<string, string>> = {
    'low carbon steel (1018/1020)': 'low-carbon-steel',
    'alloy steel 4130/4140': 'alloy-steel',
    'stainless 303': 'stainless-303',
    'stainless 304': 'stainless-304',
    'aluminium 6061': 'aluminium-6061',
    'aluminium 7075': 'aluminium-7075',
    'brass C36000 (free cutting)': 'brass-360',
    'bearing bronze SAE 660 (C93200)': 'bearing-bronze',
    'gray cast iron (G3000 / class 30)': 'cast-iron',
    'titanium 6Al-4V': 'titanium-6-4',
    'acetal (POM)': 'acetal',
  };
  const rows = readReference('materials.csv').filter((row) => row.cell('property').startsWith('speed_'));

  test.each(rows.map((row) => [row.cell('material'), row.cell('property'), row] as const))(
    '%s, %s: roughed at the low figure, finished at the middle of low and high',
    (material, property, row) => {
      const q = {
        material: of(names[material] ?? ''),
        cuttingTool: property === 'speed_hss' ? ('hss' as const) : ('carbide' as const),
        diameters: [inch('1.5')] as const,
      };
      const [low, high] = [Number(row.cell('low')), Number(row.cell('high'))];
      expect(speed({ ...q, pass: 'rough' }).idealRpm).toBeCloseTo(rpm(low, 1.5), 6);
      expect(speed({ ...q, pass: 'finish' }).idealRpm).toBeCloseTo(rpm((low + high) / 2, 1.5), 6);
      expect(speed(q).fromMemory).toBe(row.cell('basis') === 'memory');
    },
  );

  test('cover every material there is', () => {
    expect(new Set(Object.values(names))).toEqual(new Set(materials.map(({ id }) => id)));
  });

  test('finish 300 stainless where USAF T.O. 1-1A-9 table 2-8 begins its finishing speeds: 65 for 303, 50 for 304', () => {
    expect(speed({ material: of('stainless-303'), pass: 'finish' }).surfaceFeetPerMinute).toBe(65);
    expect(speed({ material: of('stainless-304'), pass: 'finish' }).surfaceFeetPerMinute).toBe(50);
  });
});

describe('the speed', () => {
  test('is that of the largest diameter in the cut', () => {
    const facing = speed({ operation: 'face', diameters: [inch('.5'), inch('2'), inch('1')] });
    expect(facing.idealRpm).toBeCloseTo(rpm(70, 2), 6);
  });

  test('is that of high-speed steel where no figure for carbide is known, and says so', () => {
    const acetal = { material: of('acetal'), cuttingTool: 'carbide' } as const;
    expect(speed(acetal)).toMatchObject({ surfaceFeetPerMinute: 300, hssStandsIn: true });
    expect(speed({ ...acetal, cuttingTool: 'hss' }).hssStandsIn).toBe(false);
    expect(speed({ cuttingTool: 'carbide' }).hssStandsIn).toBe(false);
  });

  test('of a drill, a reamer and a tap is their own, whatever the cutting tool and the pass', () => {
    // Steel turns at 70: drilled at four fifths, 56; reamed at half of that, 28; tapped at a quarter, 17.5.
    const feet = (operation: 'drill' | 'ream' | 'tap') =>
      speed({ operation, cuttingTool: 'carbide', pass: 'finish' }).surfaceFeetPerMinute;
    expect(feet('drill')).toBeCloseTo(56, 9);
    expect(feet('ream')).toBeCloseTo(28, 9);
    expect(feet('tap')).toBeCloseTo(17.5, 9);
    expect(speed({ operation: 'ream' }).source).toMatch(/^half of drilling: War Department TM 1-420/);
  });

  test('without a diameter is refused', () => {
    const refused = cutSpeed({
      material: steel,
      cuttingTool: 'hss',
      operation: 'turn',
      pass: 'rough',
      diameters: [inch('0')],
      lathe: anyLathe,
    });
    expect(refused).toEqual({ ok: false, refusal: { code: 'no-diameter-for-speed' } });
  });
});

describe('on this lathe', () => {
  test('it is the next lower speed: 267 ideal for steel at one inch, 210 on the lathe', () => {
    const at = speed({ lathe: bench });
    expect(Math.floor(at.idealRpm)).toBe(267);
    expect(at.chosenRpm).toBe(210);
    expect(at.cap).toBeUndefined();
  });

  test('it is a speed that is just the ideal', () => {
    const [ideal] = [speed({}).idealRpm];
    expect(speed({ lathe: { speedsRpm: [100, ideal, 900] } }).chosenRpm).toBe(ideal);
  });

  test('it is the ideal where the lathe has any speed', () => {
    expect(speed({}).chosenRpm).toBeCloseTo(rpm(70, 1), 6);
  });

  test('it is never over the lathe’s most: aluminium at a quarter inch would be 4584', () => {
    const small = { material: of('aluminium-6061'), diameters: [inch('.25')] as const };
    expect(Math.round(speed(small).idealRpm)).toBe(4584);
    expect(speed({ ...small, lathe: bench })).toMatchObject({
      chosenRpm: 1400,
      cap: { rpm: 1400, by: 'lathe' },
    });
    expect(speed({ ...small, lathe: { speedsRpm: [], mostRpm: 1200 } }).chosenRpm).toBe(1200);
  });

  test('even the slowest is too fast for titanium at eight inches, and it says so', () => {
    // 12 · 30 / (π · 8) = 14.3.
    const big = speed({ material: of('titanium-6-4'), diameters: [inch('8')], lathe: bench });
    expect(big.chosenRpm).toBeUndefined();
    expect(big.slowestTooFastRpm).toBe(70);
  });

  test('a lathe that lists its speeds in any order gives the same one', () => {
    expect(speed({ lathe: { speedsRpm: [900, 70, 210, 340] } }).chosenRpm).toBe(210);
    expect(speed({ diameters: [inch('20')], lathe: { speedsRpm: [900, 70, 210] } }).slowestTooFastRpm).toBe(
      70,
    );
  });
});

describe('held back by the work', () => {
  const aluminium = of('aluminium-6061');

  test('a ring on its mandrel turns at 600 at most, and slower where the metal asks for it', () => {
    expect(speed({ material: aluminium, operation: 'ring', lathe: bench })).toMatchObject({
      cap: { rpm: 600, by: 'ring-on-mandrel' },
      chosenRpm: 550,
    });
    expect(speed({ operation: 'ring' }).cap).toBeUndefined();
  });

  test('work from six inches up turns at 400 at most, a hole drilled in it does not', () => {
    const big = { material: aluminium, cuttingTool: 'carbide', diameters: [inch('6')] } as const;
    expect(speed(big).cap).toEqual({ rpm: 400, by: 'large-work' });
    expect(speed({ ...big, diameters: [inch('5.99')] }).cap).toBeUndefined();
    for (const operation of ['drill', 'ream', 'tap'] as const)
      expect(speed({ ...big, operation, diameters: [inch('.25')] }).cap?.by).not.toBe('large-work');
  });

  test('a tap turns at 120 at most', () => {
    expect(speed({ operation: 'tap', diameters: [inch('.25')] }).cap).toEqual({ rpm: 120, by: 'tapping' });
  });

  test('the lowest of several caps holds', () => {
    const ring = { material: aluminium, operation: 'ring' } as const;
    expect(speed({ ...ring, lathe: { speedsRpm: [], mostRpm: 500 } }).cap).toEqual({ rpm: 500, by: 'lathe' });
    expect(speed({ ...ring, lathe: { speedsRpm: [], mostRpm: 700 } }).cap?.by).toBe('ring-on-mandrel');
  });
});
