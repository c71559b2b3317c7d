import { expect, test } from 'vitest';
import { byLength, lengthOf, sameLength } from '../../../src/engine/length/length.ts';
import { allReamers, standardReamers } from '../../../src/engine/fit/tables/reamer-sizes.ts';
import { inchShanks, metricShanks } from '../../../src/engine/fit/tables/shank-sizes.ts';
import { readReference } from '../../reference/read-csv.ts';

const bolts = new Set(readReference('clearance_holes.csv').map((row) => row.cell('fastener')));

test('every bolt of ISO 273 from M5 to M30 is a shank that can be bought, but for M7', () => {
  const published = [...bolts].filter(
    (name) => /^M\d+$/.test(name) && Number(name.slice(1)) >= 5 && name !== 'M7',
  );
  const listed = metricShanks.map(({ name }) => name);
  expect(published.filter((name) => !listed.includes(name))).toEqual([]);
  // M33 and M36: memory of ISO 262
  expect(listed.filter((name) => !published.includes(name))).toEqual(['M33', 'M36']);
});

test('every fraction bolt of ASME B18.2.8 is a shank that can be bought', () => {
  const published = [...bolts].filter((name) => /^\d/.test(name));
  const listed = inchShanks.map(({ name }) => name.replace(' in', ''));
  expect(published.filter((name) => !listed.includes(name))).toEqual([]);
});

test('a shank’s size is its name', () => {
  for (const { name, size } of inchShanks) expect(sameLength(size, lengthOf(name))).toBe(true);
  for (const { name, size } of metricShanks)
    expect(sameLength(size, lengthOf(`${name.slice(1)} mm`))).toBe(true);
});

test('a reamer’s size is its name, smallest first', () => {
  for (const { name, size } of allReamers) expect(sameLength(size, lengthOf(name))).toBe(true);
  expect(allReamers).toEqual(allReamers.toSorted((a, b) => byLength(a.size, b.size)));
});

test('every 64th from 1/8 to 1-1/2 in is a standard reamer, and every whole millimetre from 3 to 38', () => {
  const sizes = standardReamers.map(({ size }) => size);
  const has = (text: string) => sizes.some((size) => sameLength(size, lengthOf(text)));
  const sixtyFourths = Array.from({ length: 89 }, (_, place) => `${place + 8}/64 in`);
  const millimetres = Array.from({ length: 36 }, (_, place) => `${place + 3} mm`);
  expect([...sixtyFourths, ...millimetres].filter((text) => !has(text))).toEqual([]);
});
