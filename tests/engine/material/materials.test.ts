import { expect, test } from 'vitest';
import { expansionPerCelsius, modulusGpa } from '../../../src/engine/material/material.ts';
import { materialNamed, materials, type Material } from '../../../src/engine/material/tables/materials.ts';
import { readReference } from '../../reference/read-csv.ts';

const rows = readReference('materials.csv');

const NAMES: Readonly<Record<string, Material['id']>> = {
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

const FIGURES: Readonly<Record<string, (material: Material) => Material['modulusGpa']>> = {
  'cte 1e-6/C': (material) => material.expansionPerMillionCelsius,
  'cte 1e-6/F': (material) => material.expansionPerMillionFahrenheit,
  'cte_4130 1e-6/C': (material) => material.expansionPerMillionCelsius4130,
  'modulus GPa': (material) => material.modulusGpa,
  'modulus Msi': (material) => material.modulusMsi,
  'poisson ': (material) => material.poisson,
  'speed_hss sfm': (material) => material.speedHssSfm,
  'speed_carbide sfm': (material) => material.speedCarbideSfm,
};

test.each(
  rows.map((row) => ({
    what: `${row.cell('material')}, ${row.cell('property')} ${row.cell('unit')}`,
    row,
  })),
)('$what is as printed', ({ row }) => {
  const material = materialNamed(NAMES[row.cell('material')]);
  const figure = material && FIGURES[`${row.cell('property')} ${row.cell('unit')}`]?.(material);
  expect(figure).toMatchObject({
    low: Number(row.cell('low')),
    high: Number(row.cell('high')),
    basis: row.cell('basis'),
  });
  expect(figure?.note ?? '').toBe(row.cell('note').replaceAll("'", '’'));
});

test('every material of the reference is in the table, and nothing stands there without one', () => {
  const named = new Set(rows.map((row) => NAMES[row.cell('material')]));
  expect(new Set(materials.map(({ id }) => id))).toEqual(named);
  expect(materials).toHaveLength(named.size);
});

test('every strength says that it is from memory', () => {
  for (const { yieldMpa, tensileMpa } of materials) {
    expect(tensileMpa.basis).toBe('memory');
    expect(yieldMpa?.basis ?? 'memory').toBe('memory');
  }
});

test('cast iron has no yield: it breaks', () => {
  expect(materialNamed('cast-iron')).not.toHaveProperty('yieldMpa');
});

function named(id: string): Material {
  const material = materialNamed(id);
  if (!material) throw new Error(id);
  return material;
}

test('stiffness printed in Msi alone is turned into GPa', () => {
  // 28 Msi · 6.894757 = 193.05 GPa
  expect(modulusGpa(named('stainless-303')).low).toBeCloseTo(193.05, 2);
  expect(modulusGpa(named('cast-iron'))).toEqual({ low: 90, high: 113 });
});

test('expansion is millionths a degree Celsius', () => {
  expect(expansionPerCelsius(named('aluminium-6061'))).toEqual({ low: 23.6e-6, high: 23.6e-6 });
  expect(expansionPerCelsius(named('acetal')).high).toBeCloseTo(120e-6, 9);
});
