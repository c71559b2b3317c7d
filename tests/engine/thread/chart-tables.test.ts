import { describe, expect, test } from 'vitest';
import { drillNamed } from '../../../src/engine/thread/drill-series.ts';
import {
  absolute,
  decimalText,
  isLess,
  lengthOf,
  minus,
  sameLength,
} from '../../../src/engine/length/length.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { clearanceRows, type HoleFit } from '../../../src/engine/thread/tables/clearance-holes.ts';
import { instrumentRows } from '../../../src/engine/reading/tables/instruments.ts';
import { readReference, type ReferenceRow } from '../../reference/read-csv.ts';

const FITS: Readonly<Record<string, HoleFit>> = {
  'fine (close)': 'close',
  'medium (normal)': 'normal',
  'coarse (free/loose)': 'loose',
  close: 'close',
  normal: 'normal',
  loose: 'loose',
};

describe('clearance holes', () => {
  const rows = readReference('clearance_holes.csv').map((row) => ({
    standard: row.cell('standard'),
    fastener: row.cell('fastener'),
    fit: row.cell('fit'),
    unit: row.cell('unit'),
    drill: row.cell('drill'),
    least: row.cell('hole_min'),
    most: row.cell('hole_max'),
    toleranceClass: row.cell('hole_tolerance_class'),
    basis: row.cell('basis'),
  }));

  test.each(rows)('$standard, $fastener, $fit: $least to $most $unit', (row) => {
    const found = clearanceRows.find((one) => one.fastener === row.fastener && one.standard === row.standard);
    const hole = found?.holes[FITS[row.fit] ?? 'close'];
    expect(hole?.drill ?? '').toBe(row.drill);
    expect(hole && sameLength(hole.least, lengthOf(`${row.least} ${row.unit}`))).toBe(true);
    expect(hole?.most === undefined ? '' : decimalText(hole.most, 'in', 3)).toBe(
      row.most === '' ? '' : Number(row.most).toFixed(3),
    );
    expect([hole?.toleranceClass, hole?.basis]).toEqual([row.toleranceClass, row.basis]);
  });

  test('are all there, and no others', () => {
    expect(clearanceRows.length * 3).toBe(rows.length);
  });

  test('of a named drill are that drill, as the standard prints it to .001 in', () => {
    const drilled = clearanceRows
      .flatMap(({ holes }) => [holes.close, holes.normal, holes.loose])
      .flatMap(({ drill, least }) => (drill === undefined ? [] : [{ size: drillNamed(drill)?.size, least }]));
    expect(drilled.length).toBe(54);
    for (const { size, least } of drilled)
      expect(size && isLess(absolute(minus(size, least)), lengthOf('.0007 in'))).toBe(true);
  });
});

describe('what measuring tools may err', () => {
  const reference = readReference('instruments.csv');

  test('stands in the chart as the reference has it, row by row', () => {
    const unit = (row: ReferenceRow) => (row.cell('unit') === 'um' ? 'µm' : row.cell('unit'));
    // The unit stands behind its figure, before the words.
    const limitWritten = (limit: string, named: string) =>
      `${limit} ${named}`.trim().replace(/^([\d.-]+) (\D.*) (in)$/, '$1 $3 $2');
    const written = (text: string) => text.replaceAll("'", '’');
    expect(instrumentRows).toEqual(
      reference.map((row) => ({
        instrument: row.cell('instrument'),
        range: row.cell('range'),
        resolution: row.cell('resolution'),
        limit: limitWritten(row.cell('mpe'), unit(row)),
        source: written(row.cell('source')),
        basis: row.cell('basis'),
        note: written(row.cell('note')),
      })),
    );
  });

  /** The printed figure of one row, as a size: '4 um' is .004 mm; of '0.0001-0.0002' the larger. */
  function limitOf(instrument: string, range: string, resolution: string) {
    const row = reference.find(
      (one) =>
        one.cell('instrument') === instrument &&
        one.cell('range') === range &&
        one.cell('resolution') === resolution,
    );
    const figure =
      row
        ?.cell('mpe')
        .match(/[\d.]+/g)
        ?.at(-1) ?? '';
    return row?.cell('unit') === 'um' ? lengthOf(`${Number(figure) / 1000} mm`) : lengthOf(`${figure} in`);
  }

  test.each([
    ['digital-caliper', 'digital caliper', '0-6 in', '0.0005 in'],
    ['metric-caliper', 'digital caliper', 'over 100 to 600 mm', '0.01 mm'],
    ['micrometer-0-1', 'outside micrometer', '0-1 in', '0.0001 in'],
    ['micrometer-1-2', 'outside micrometer', '1-4 in', '0.0001 in'],
    ['micrometer-0-25-mm', 'outside micrometer', '0-25 mm', '0.01 or 0.001 mm'],
    ['micrometer-25-50-mm', 'outside micrometer', '25-50 mm', '0.01 or 0.001 mm'],
    ['feeler-gauges', 'feeler gauge leaf', '0.0015-0.035 in', 'nominal'],
    ['plug-gauges', 'pin (plug) gauge class ZZ', 'up to 0.825 in', 'nominal'],
  ])('the shop’s %s errs as %s, %s, reading %s does', (id, instrument, range, resolution) => {
    const tool = usualTools.find((one) => one.id === id);
    expect(tool && sameLength(tool.mpe, limitOf(instrument, range, resolution))).toBe(true);
  });

  test('inside jaws and depth rods err 20 µm more than the outside jaws (DIN 862), to a tenth of a thou by inch', () => {
    const mpe = (id: string) => usualTools.find((one) => one.id === id)?.mpe ?? lengthOf('0 mm');
    for (const use of ['inside', 'depth']) {
      expect(sameLength(minus(mpe(`metric-caliper-${use}`), mpe('metric-caliper')), lengthOf('.02 mm'))).toBe(
        true,
      );
      expect(decimalText(minus(mpe(`digital-caliper-${use}`), mpe('digital-caliper')), 'mm', 2)).toBe('0.02');
    }
  });

  test('a dial bore gauge errs as it does itself and as the micrometer it is set in: .0002 + .0001', () => {
    const gauge = usualTools.find((one) => one.id === 'dial-bore-gauge');
    const own = limitOf('dial bore gauge (2-point)', 'over the indicator range', '0.0001 in or 0.002 mm');
    const micrometer = limitOf('outside micrometer', '0-1 in', '0.0001 in');
    expect(gauge && sameLength(minus(gauge.mpe, own), micrometer)).toBe(true);
  });
});
