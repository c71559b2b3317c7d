import { describe, expect, test } from 'vitest';
import { expansionPerCelsius, modulusGpa } from '../../../src/engine/material/material.ts';
import {
  europeanMetals,
  materialNamed,
  materials,
  materialsFor,
  rowOf,
  type Material,
} from '../../../src/engine/material/tables/materials.ts';
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

test('every material of the reference is in the table; without one only the European names stand there', () => {
  const named = new Set(rows.map((row) => NAMES[row.cell('material')]));
  const ofBooks = materials.filter((material) => !europeanMetals.includes(material));
  expect(new Set(ofBooks.map(({ id }) => id))).toEqual(named);
  expect(ofBooks).toHaveLength(named.size);
});

test('every strength says that it is from memory, or names its standard', () => {
  for (const { yieldMpa, tensileMpa } of materials)
    for (const strength of [tensileMpa, ...(yieldMpa ? [yieldMpa] : [])])
      expect(strength.basis === 'memory' || strength.source.startsWith('EN ')).toBe(true);
});

describe('a metal by its European name', () => {
  // EN 10088-1, annex: austenitic 1.4301 and 1.4305, mean expansion 20 to 100 °C 16.0 millionths, E 200 GPa at 20 °C.
  // EN 10083-2, C45 bars: +N over 16 to 100 mm Re 305, Rm 580; +QT to 16 mm Re 490, Rm 700. EN 1561, EN-GJL-250: Rm 250
  // in a 10 mm wall, 155 in 80 mm. As mills and founders print them.
  test.each([
    { id: '1-4301', figures: { expansionPerMillionCelsius: [16, 16], modulusGpa: [200, 200] } },
    { id: '1-4305', figures: { expansionPerMillionCelsius: [16, 16], modulusGpa: [200, 200] } },
    { id: 'c45', figures: { yieldMpa: [305, 490], tensileMpa: [580, 700] } },
    { id: 'gjl-250', figures: { tensileMpa: [155, 250] } },
  ] as const)('$id has the figures of its standard', ({ id, figures }) => {
    for (const [name, [low, high]] of Object.entries(figures))
      expect(materialNamed(id)).toMatchObject({ [name]: { low, high, basis: 'published' } });
  });

  test('stands first in a metric shop and last where lengths are inches', () => {
    expect(materialsFor('mm').slice(0, 10)).toEqual(europeanMetals);
    expect(materialsFor('in').slice(-10)).toEqual(europeanMetals);
    expect(materialsFor('mm')).toHaveLength(materials.length);
  });

  test('is cut, heated and cooled like a metal of the books, and its speeds say so', () => {
    for (const { id, speedHssSfm } of europeanMetals) {
      const like = materialNamed(rowOf(id));
      expect(europeanMetals.map((metal) => metal.id)).not.toContain(rowOf(id));
      expect(speedHssSfm).toMatchObject({ low: like?.speedHssSfm.low, note: `as ${like?.name}` });
    }
  });
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
