import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { writeDecimalsWith } from '../../../src/engine/length/decimal-mark.ts';
import { readEntry, type Entry } from '../../../src/engine/length/entry.ts';
import type { Unit } from '../../../src/engine/length/length.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { csvCells, csvText } from '../../../src/screens/sheet/csv-text.ts';
import { cutsCsv, harmlessCsv, readingsCsv, reasonsCsv } from '../../../src/screens/sheet/csv.ts';
import type { Cut, Feature, ReadingRecord } from '../../../src/store/base/records.ts';
import { inForce } from '../../../src/store/kept/readings.ts';
import { hostileWords } from '../../trials/hostile-words.ts';

const jobId = 'job';
const micrometer = usualTools.find(({ id }) => id === 'micrometer-0-1');

describe('the readings as a file for a spreadsheet', () => {
  test('a size stands as typed, in exact millimetres and in inches', () => {
    // .4487 × 25.4 = 11.39698; 29/64 = .453125 in = 11.509375 mm
    const rows = rowsOf(readingsOf([entry('.4487', 'in'), entry('29/64', 'in')]));
    expect(rows.map((row) => [row['as typed'], row['mm'], row['inch']])).toEqual([
      ['.4487 in', '11.39698', '0.4487'],
      ['29/64 in', '11.509375', '0.453125'],
    ]);
  });

  test('a size in millimetres that never ends in inches is rounded to a hundredth of a millionth', () => {
    // 24.985 / 25.4 = 0.983661417...
    const [row] = rowsOf(readingsOf([entry('24.985', 'mm')]));
    expect([row?.['mm'], row?.['inch']]).toEqual(['24.985', '0.98366142']);
  });

  test('a size below zero stays a number', () => {
    const [row] = rowsOf(readingsOf([entry('-.002', 'in', true)]));
    expect([row?.['mm'], row?.['inch']]).toEqual(['-0.0508', '-0.002']);
  });

  test('its numbers have points in a shop that types commas too, and so stand in cells of their own', () => {
    const inPoints = readingsOf([entry('24.985', 'mm'), entry('24,987', 'mm')]);
    writeDecimalsWith(',');
    try {
      expect(readingsOf([entry('24.985', 'mm'), entry('24,987', 'mm')])).toBe(inPoints);
    } finally {
      writeDecimalsWith('.');
    }
    expect(rowsOf(inPoints).map((row) => row['mm'])).toEqual(['24.985', '24.987']);
  });

  test('every line ends with carriage return and line feed, as RFC 4180 has it', () => {
    const text = readingsOf([entry('.4487', 'in'), entry('.4490', 'in')]);
    expect(text.split('\r\n')).toHaveLength(4);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  test('quotes, commas and line breaks in a name come back as they were', () => {
    const name = 'Bore 7/16", left,\nupper "worn"';
    expect(rowsOf(readingsOf([entry('.4487', 'in')], name))[0]?.['reading of']).toBe(name);
  });

  test.each(hostileWords)('whatever a name holds, %j, no cell begins as a formula does', (name) => {
    const [row = {}] = rowsOf(readingsOf([entry('.4487', 'in')], name));
    // OWASP ASVS 5.0, 1.2.10; a plain number below zero is none.
    expect(
      Object.values(row).filter((cell) => /^[=+\-@\t\r\0]/.test(cell) && Number.isNaN(Number(cell))),
    ).toEqual([]);
  });

  test.each(['=1+1', '+cmd|calc', '-2+3', '@SUM(A1)', '\t=1+1', '\r=1+1', '＝1+1', '-1/2'])(
    'a name that a spreadsheet would work out, %j, is made text',
    (name) => {
      const row = rowsOf(readingsOf([entry('.4487', 'in')], name))[0];
      expect(row?.['reading of']).toBe(`'${name}`);
    },
  );

  test('a struck-out reading is there, with why', () => {
    const [row] = rowsOf(
      readingsCsv({
        features: [],
        parts: [],
        readings: [{ ...reading(entry('.4950', 'in'), 0), struckOut: { why: 'read on the burr', at: 5 } }],
      }),
    );
    expect([row?.['struck out'], row?.['struck out why']]).toEqual(['yes', 'read on the burr']);
  });

  test('the moment of a reading is the same moment when it is read back', () => {
    const at = Date.UTC(2026, 6, 4, 12, 30, 15);
    const [row] = rowsOf(
      readingsCsv({ features: [], parts: [], readings: [{ ...reading(entry('1', 'in'), 0), at }] }),
    );
    expect(Date.parse(row?.['read at'] ?? '')).toBe(at);
  });
});

describe('the cuts as a file for a spreadsheet', () => {
  const cut: Cut = {
    id: 'cut',
    jobId,
    name: 'Spacer, face to length',
    part: 'spacer',
    operation: 'face',
    of: 'length',
    blank: entry('1.1452', 'in'),
    target: entry('1.1340', 'in'),
    lower: entry('1.1330', 'in'),
    upper: entry('1.1345', 'in'),
    limitsFrom: 'stack worksheet',
    cuttingTool: 'hss',
    machine: 'lathe',
    state: 'to-size',
    passes: {
      second: { at: 2000, measured: entry('1.1341', 'in'), asked: entry('.0112', 'in') },
      first: { at: 1000, measured: entry('1.1453', 'in') },
    },
    createdAt: 0,
    touchedAt: 0,
  };

  test('each measurement is a line, in the order they were taken', () => {
    const rows = rowsOf(cutsCsv([cut], new Set()));
    expect(rows.map((row) => [row['measurement'], row['to come off, inch'], row['measured, inch']])).toEqual([
      ['1', '', '1.1453'],
      ['2', '0.0112', '1.1341'],
    ]);
    expect(rows.map((row) => row['target, as typed'])).toEqual(['1.1340 in', '1.1340 in']);
  });

  test('a cut whose sizes have changed since says so on each of its lines', () => {
    const other = { ...cut, id: 'other', passes: {} };
    const rows = rowsOf(cutsCsv([cut, other], new Set(['cut'])));
    expect(rows.map((row) => row['older than its sizes'])).toEqual(['yes', 'yes', '']);
  });

  test('a cut not begun has one line with its limits', () => {
    const rows = rowsOf(cutsCsv([{ ...cut, passes: {}, state: 'to-cut' }], new Set()));
    // 1.1330 × 25.4 = 28.7782; 1.1345 × 25.4 = 28.8163
    expect(rows.map((row) => [row['lower limit, mm'], row['upper limit, mm'], row['measured, mm']])).toEqual([
      ['28.7782', '28.8163', ''],
    ]);
  });
});

describe('the written reasons as a file for a spreadsheet', () => {
  test('are one a line, with who wrote them, and no formula', () => {
    const [row] = rowsOf(
      reasonsCsv([{ what: 'Caliper bolts: no good', why: '=1+1 is what the maker says', by: 'Jo B.' }]),
    );
    expect(row).toMatchObject({
      what: 'Caliper bolts: no good',
      'why it may stand': "'=1+1 is what the maker says",
      'written by': 'Jo B.',
    });
  });
});

function entry(typed: string, unit: Unit, signed = false): Entry {
  const read = readEntry(typed, { unit, signed });
  if (!read.ok) throw new Error(`${typed} can't be typed`);
  return read.value;
}

function reading(size: Entry, index: number): ReadingRecord {
  if (!micrometer) throw new Error('no micrometer');
  return {
    ...size,
    id: `reading-${index}`,
    featureId: 'feature',
    jobId,
    tool: inForce(micrometer),
    zeroChecked: true,
    at: index,
  };
}

function readingsOf(sizes: readonly Entry[], name = 'Link bore'): string {
  const feature: Feature = { id: 'feature', jobId, kind: 'bore', name, createdAt: 0 };
  return readingsCsv({ features: [feature], parts: [], readings: sizes.map(reading) });
}

/** Read back by another library than the one that wrote it. */
function rowsOf(text: string): Record<string, string>[] {
  return parse(text, { columns: true, record_delimiter: '\r\n' });
}

describe('a table that was signed', () => {
  test.each(['=1+1', '+1+1', '-1+1', '@SUM(A1)', '\t=1+1', '\r=1+1', '＝1+1', 'x;=1+1', 'x\t=1+1'])(
    'that a file brought with a cell of %j is given out without a formula',
    (cell) => {
      const quoted = /[\r\t]/.test(cell) ? `"${cell}"` : cell;
      const given = harmlessCsv(`what,size\r\n${quoted},1\r\n${quoted},-1.5\r\n`);
      for (const delimiter of [',', ';', '\t']) {
        const rows: string[][] = parse(given, { delimiter, relax_column_count: true, relax_quotes: true });
        for (const one of rows.flat()) expect(one).not.toMatch(/^(?!-?\d+(\.\d+)?$)[=+\-@\t\r＝]/);
      }
      expect(given).toContain('-1.5');
    },
  );

  test('that is harmless stays as it was signed, to the letter', () => {
    const signed = 'what,size\r\n"Bore, left",11.397\r\n"\'=x",-0.5\r\n';
    expect(harmlessCsv(signed)).toBe(signed);
    expect(harmlessCsv(harmlessCsv('=x,1\r\n'))).toBe(harmlessCsv('=x,1\r\n'));
  });
});

describe('cells and their text', () => {
  // RFC 4180, section 2, rules 5 to 7, and csv-parse from the registry as the second reader.
  test.each([
    [[['a', 'b']]],
    [[['with "quotes"', 'a, comma', 'two\nlines', ' spaces ', '']]],
    [[['x'], [''], ['"']]],
  ])('%j is read back as it was written', (rows) => {
    const text = csvText(rows.map((row) => row.map((cell) => ({ text: cell, quoted: false }))));
    expect(csvCells(text)).toEqual(rows);
    expect(parse(text, { relax_column_count: true, skip_empty_lines: false })).toEqual(rows);
  });

  test('whatever ends its lines, a table is read the same', () => {
    for (const end of ['\n', '\r\n', '\r'])
      expect(csvCells(`a,b${end}"c${end}d",e`)).toEqual([
        ['a', 'b'],
        [`c${end}d`, 'e'],
      ]);
  });
});
