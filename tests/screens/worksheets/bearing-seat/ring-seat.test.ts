import { expect, test } from 'vitest';
import { blocksOf } from '../../../../src/engine/worksheets/account.ts';
import { bearingSeatWorksheet } from '../../../../src/engine/worksheets/bearing-seat/worksheet.ts';
import { givenOf } from '../../../../src/screens/worksheets/given-of.ts';
import { typedSize, worksheetOf } from '../worksheet-for-test.ts';

function page(sizes: Record<string, string>, choices: Record<string, string>) {
  const given = givenOf(
    worksheetOf('bearing-seat', {
      unit: 'mm',
      sizes: Object.fromEntries(Object.entries(sizes).map(([name, size]) => [name, typedSize(`${size} mm`)])),
      choices: { bearing: 'ring', ...choices },
    }),
  );
  const account = bearingSeatWorksheet.account(given);
  return {
    verdict: blocksOf(account, 'verdict')[0]?.headline,
    lead: blocksOf(account, 'lead')[0],
    said: blocksOf(account, 'said').map(({ sentence }) => sentence),
    cuts: bearingSeatWorksheet.cuts(given).flatMap(({ offers }) => offers.map(({ name }) => name)),
  };
}

const onShaft = { ring: 'inner', load: 'normal' };
const inHub = { ring: 'outer', load: 'normal' };

// 25 k6: 25.002 to 25.015 (ISO 286-2).
test('a shaft still to be turned has its limits, and its target stands inside them', () => {
  const { lead, cuts, verdict } = page({ ringNominal: '25' }, onShaft);
  expect(verdict).toBeUndefined();
  expect(lead).toMatchObject({ label: 'Turn the shaft to', limits: 'k6: good from 25.002 to 25.015 mm' });
  expect(cuts).toEqual(['Bearing seat, turned']);
});

test('a shaft with metal left is turned down', () => {
  const { lead, verdict } = page({ ringNominal: '25', shaft: '25.080' }, onShaft);
  expect(verdict).toContain('shaft');
  expect(lead?.change).toMatch(/^25\.08 → 25\.0(0[2-9]|1[0-5])/);
});

test('a shaft inside its limits is good, and says how the ring sits', () => {
  const { verdict, cuts, said } = page({ ringNominal: '25', shaft: '25.008', ringBore: '24.995' }, onShaft);
  expect(verdict).toMatch(/^Good/);
  expect(cuts).toEqual([]);
  expect(said.join(' ')).toContain('As measured: 0.013 mm grip');
});

test('a shaft too thin is not cut: it is built up or sleeved', () => {
  const { cuts, said, verdict } = page({ ringNominal: '25', shaft: '24.970' }, onShaft);
  expect(verdict).toContain('Too small');
  expect(cuts).toEqual([]);
  expect(said).toContain('Too thin to cut: build it up or sleeve it, then turn it.');
});

// 47 N7: 46.967 to 46.992; a bore at its middle holds a ring of 47.000 to 46.989 by .020, and by 100 °C
// 47 · (23.6 − 12.3)e-6 · 80 = .042 of it is gone in aluminium.
test('a hub of aluminium loses its ring when it is hot', () => {
  const { verdict, said } = page(
    { ringNominal: '47', housing: '46.980', ringOutside: '47.000' },
    { ...inHub, hubMetal: 'aluminium-6061', hotTemperature: '100' },
  );
  expect(verdict).toBe('At 100 °C (212 °F) the ring comes loose.');
  expect(said).toContain('In the shop it needs more grip than 0.043 mm.');
});

test('a ring that the load stands still on may be loose, hot or cold', () => {
  const { verdict } = page(
    { ringNominal: '47', housing: '47.010', ringOutside: '47.000' },
    { ring: 'outer', load: 'stands', hubMetal: 'aluminium-6061', hotTemperature: '100' },
  );
  expect(verdict).toMatch(/^Good/);
});

test('a seat hangs on no bearing that may be a mock-up', () => {
  const given = givenOf(worksheetOf('bearing-seat', { choices: { bearing: 'ring', ...onShaft } }));
  expect(bearingSeatWorksheet.assumed(given)).toEqual([]);
});
