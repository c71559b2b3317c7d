import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutSpeed, type CutSpeed, type SpeedQuestion } from '../../../src/engine/cut/cut-speed.ts';
import { sayLargestWork } from '../../../src/engine/cut/say-cuts-speed.ts';
import { lengthOf } from '../../../src/engine/length/length.ts';
import {
  materialNamed,
  materials,
  rowOf,
  type Material,
} from '../../../src/engine/material/tables/materials.ts';
import { readReference } from '../../reference/read-csv.ts';

const inch = (text: string) => lengthOf(`${text} in`);
const steel = of('low-carbon-steel');
// Any speed, and a most that no cut here comes to: what is asked of the metal alone.
const anyLathe = { speedsRpm: [], mostRpm: 1_000_000 };
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
    '%s, %s: in the middle of its range, of roughing or finishing where the book prints them apart',
    (material, property, row) => {
      const q = {
        material: of(names[material] ?? ''),
        cuttingTool: property === 'speed_hss' ? ('hss' as const) : ('carbide' as const),
        diameters: [inch('1.5')] as const,
      };
      const [low, high] = [Number(row.cell('low')), Number(row.cell('high'))];
      // "25-55 rough, 65-105 finish"
      const apart = /^(\d+)-(\d+) rough, (\d+)-(\d+) finish$/.exec(row.cell('note'));
      const [roughLow = low, roughHigh = high, finishLow = low, finishHigh = high] =
        apart?.slice(1).map(Number) ?? [];
      expect(speed({ ...q, pass: 'rough' }).idealRpm).toBeCloseTo(rpm((roughLow + roughHigh) / 2, 1.5), 6);
      expect(speed({ ...q, pass: 'finish' }).idealRpm).toBeCloseTo(rpm((finishLow + finishHigh) / 2, 1.5), 6);
      const { rangeRpm } = speed({ ...q, pass: 'rough' });
      expect([rangeRpm.low, rangeRpm.high].map(Math.round)).toEqual(
        [rpm(roughLow, 1.5), rpm(roughHigh, 1.5)].map(Math.round),
      );
      expect(speed(q).fromMemory).toBe(row.cell('basis') === 'memory');
    },
  );

  test('cover every material there is', () => {
    // Those by European names run at the speeds of the one that each is cut like.
    expect(new Set(Object.values(names))).toEqual(new Set(materials.map(({ id }) => rowOf(id))));
  });

  // USAF T.O. 1-1A-9 table 2-8: 303 roughs at 25-55 and finishes at 65-105, 304 at 20-40 and 50-80.
  test.each([
    { metal: 'stainless-304', inches: 2.5, pass: 'rough', is: 45 }, // 12 · 30 / (π · 2.5) = 45.8
    { metal: 'stainless-303', inches: 1.5, pass: 'rough', is: 101 }, // 12 · 40 / (π · 1.5) = 101.9
    { metal: 'stainless-304', inches: 2.5, pass: 'finish', is: 99 }, // 12 · 65 / (π · 2.5) = 99.3
    { metal: 'stainless-303', inches: 1.5, pass: 'finish', is: 216 }, // 12 · 85 / (π · 1.5) = 216.5
  ] as const)('$metal, $inches in, $pass: $is rpm', ({ metal, inches, pass, is }) => {
    expect(Math.floor(speed({ material: of(metal), diameters: [inch(String(inches))], pass }).idealRpm)).toBe(
      is,
    );
  });
});

describe('the speed', () => {
  test('is that of the largest diameter in the cut', () => {
    const facing = speed({ operation: 'face', diameters: [inch('.5'), inch('2'), inch('1')] });
    // Steel: 70 to 120 feet a minute, middle 95.
    expect(facing.idealRpm).toBeCloseTo(rpm(95, 2), 6);
  });

  test('is that of high-speed steel where no figure for carbide is known, and says so', () => {
    // Acetal: 300 to 800, middle 550.
    const acetal = { material: of('acetal'), cuttingTool: 'carbide' } as const;
    expect(speed(acetal)).toMatchObject({ surfaceFeetPerMinute: 550, hssStandsIn: true });
    expect(speed({ ...acetal, cuttingTool: 'hss' }).hssStandsIn).toBe(false);
    expect(speed({ cuttingTool: 'carbide' }).hssStandsIn).toBe(false);
  });

  test('of a drill, a reamer and a tap is their own, whatever the cutting tool and the pass', () => {
    // Steel turns at 95: drilled at four fifths, 76; reamed at half of that, 38; tapped at a quarter, 23.75.
    const feet = (operation: 'drill' | 'ream' | 'tap') =>
      speed({ operation, cuttingTool: 'carbide', pass: 'finish' }).surfaceFeetPerMinute;
    expect(feet('drill')).toBeCloseTo(76, 9);
    expect(feet('ream')).toBeCloseTo(38, 9);
    expect(feet('tap')).toBeCloseTo(23.75, 9);
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
  test('it is the next lower speed: 362 ideal for steel at one inch, 340 on the lathe', () => {
    const at = speed({ lathe: bench });
    // 12 · 95 / π = 362.9
    expect(Math.floor(at.idealRpm)).toBe(362);
    expect(at.chosenRpm).toBe(340);
    expect(at.cap).toBeUndefined();
  });

  test('it is a speed that is just the ideal', () => {
    const [ideal] = [speed({}).idealRpm];
    expect(speed({ lathe: { speedsRpm: [100, ideal, 900] } }).chosenRpm).toBe(ideal);
  });

  test('it is the ideal where the lathe has any speed', () => {
    expect(speed({}).chosenRpm).toBeCloseTo(rpm(95, 1), 6);
  });

  test('it is never over the lathe’s most: aluminium at a quarter inch would be 6875', () => {
    const small = { material: of('aluminium-6061'), diameters: [inch('.25')] as const };
    // 12 · 450 / (π · .25) = 6875.5
    expect(Math.floor(speed(small).idealRpm)).toBe(6875);
    expect(speed({ ...small, lathe: bench })).toMatchObject({
      chosenRpm: 1400,
      cap: { rpm: 1400, by: 'lathe' },
    });
    expect(speed({ ...small, lathe: { speedsRpm: [], mostRpm: 1200 } }).chosenRpm).toBe(1200);
  });

  test('even the slowest is too fast for titanium at eight inches, and it says so', () => {
    // 12 · 40 / (π · 8) = 19.1.
    const big = speed({ material: of('titanium-6-4'), diameters: [inch('8')], lathe: bench });
    expect(big.chosenRpm).toBeUndefined();
    expect(big.slowestTooFastRpm).toBe(70);
  });

  test('a lathe that lists its speeds in any order gives the same one', () => {
    expect(speed({ lathe: { speedsRpm: [900, 70, 340, 210] } }).chosenRpm).toBe(340);
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

  test('work of six inches turns at 400 at most, larger work slower in the same measure; a hole in it does not', () => {
    const big = { material: aluminium, cuttingTool: 'carbide' } as const;
    const capAt = (inches: string) => speed({ ...big, diameters: [inch(inches)] }).cap;
    expect(capAt('6')).toEqual({ rpm: 400, by: 'large-work' });
    // 400 · 6/5.99 = 400.67; 400 · 6/8 = 300; 400 · 6/3 = 800.
    expect(capAt('5.99')?.rpm).toBeCloseTo(400.668, 3);
    expect(capAt('8')?.rpm).toBeCloseTo(300, 9);
    expect(capAt('3')?.rpm).toBeCloseTo(800, 9);
    for (const operation of ['drill', 'ream', 'tap'] as const)
      expect(speed({ ...big, operation, diameters: [inch('.25')] }).cap?.by).not.toBe('large-work');
  });

  test('a hole in large work is held by the work that turns round it, where that is known', () => {
    const big = { material: aluminium, cuttingTool: 'carbide', diameters: [inch('1')] } as const;
    for (const operation of ['bore', 'drill', 'ream'] as const) {
      // 400 · 6/12 = 200, whatever the hole.
      const held = speed({ ...big, operation, work: inch('12') });
      expect(held.cap?.by).toBe('large-work');
      expect(held.chosenRpm).toBeCloseTo(200, 9);
      expect(speed({ ...big, operation, lathe: bench, work: inch('12') }).chosenRpm).toBe(115);
    }
    // 400 · 6/2 = 1200, as for a bar of 2 in.
    expect(speed({ ...big, operation: 'bore', work: inch('2') }).cap?.rpm).toBeCloseTo(1200, 9);
  });

  test('a speed worked out without knowing the work says how large that may be', () => {
    const bored = speed({ material: aluminium, operation: 'bore', lathe: { speedsRpm: [] } });
    // Held to 1000: 6 in · 400 / 1000 = 2.4 in, to the quarter below; 60.96 mm, to the 5 below.
    expect(bored.chosenRpm).toBe(1000);
    expect(sayLargestWork(bored, 'in')).toBe('in work up to 2.25 in around');
    expect(sayLargestWork(bored, 'mm')).toBe('in work up to 60 mm around');
    // 120 rpm would be 20 in: no lathe here swings that.
    expect(sayLargestWork(speed({ operation: 'tap' }), 'in')).toBe('');
  });

  test('a chuck is held to 1000 while nobody said what it and its lathe may turn, whatever the metal and the size', () => {
    const unsaid = { speedsRpm: [] };
    for (const material of materials)
      for (const cuttingTool of ['hss', 'carbide'] as const)
        for (const inches of ['.05', '.25', '1', '3'])
          expect(
            speed({ material, cuttingTool, diameters: [inch(inches)], lathe: unsaid }).chosenRpm,
          ).toBeLessThanOrEqual(1000);
    const small = { material: aluminium, diameters: [inch('.25')] as const };
    expect(speed({ ...small, lathe: unsaid }).cap).toEqual({ rpm: 1000, by: 'chuck-not-given' });
    // Speeds on the plate are what the lathe can do, not what its chuck may.
    expect(speed({ ...small, lathe: { speedsRpm: [550, 900, 1400, 2500] } }).chosenRpm).toBe(900);
  });

  test('no speed jumps between neighbouring sizes: a thousandth of the diameter changes it by less than two', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...materials),
        fc.constantFrom('hss' as const, 'carbide' as const),
        fc.constantFrom('turn' as const, 'bore' as const, 'face' as const, 'ring' as const, 'drill' as const),
        fc.constantFrom('rough' as const, 'finish' as const),
        fc.integer({ min: 10_000, max: 200_000_000 }),
        fc.constantFrom(undefined, 500, 1400, 3000),
        (material, cuttingTool, operation, pass, nanoinches, most) => {
          const lathe = { speedsRpm: [], ...(most !== undefined && { mostRpm: most }) };
          const at = (size: number) =>
            speed({
              material,
              cuttingTool,
              operation,
              pass,
              lathe,
              diameters: [inch(`${size / 10_000_000}`)],
            }).chosenRpm ?? 0;
          const [here, next] = [at(nanoinches), at(nanoinches + Math.ceil(nanoinches / 1000))];
          expect(next).toBeLessThanOrEqual(here);
          expect(next).toBeGreaterThan(here * 0.998);
        },
      ),
    );
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
