import { Fraction } from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { exactDecimalText, lengthOf, sameLength, toText } from '../../../src/engine/length/length.ts';
import {
  allThreads,
  hasInserts,
  insertThreads,
  percentOfHeight,
  threadNamed,
  type Thread,
} from '../../../src/engine/thread/threads.ts';
import { readReference } from '../../reference/read-csv.ts';

const inchRows = [...readReference('threads_un.csv'), ...readReference('threads_insert_inch.csv')].map(
  (row) => ({
    designation: row.cell('designation'),
    inches: row.cell('nominal_in'),
    threadsPerInch: Number(row.cell('tpi')),
    source: row.cell('source').split(';')[0],
  }),
);

const metricRows = readReference('threads_metric.csv').map((row) => ({
  designation: row.cell('designation'),
  series: row.cell('series'),
  major: row.cell('nominal_mm'),
  pitch: row.cell('pitch_mm'),
  source: row.cell('source').split(';')[0],
}));

const insertRows = [
  ...readReference('threads_insert_inch.csv'),
  ...readReference('threads_insert_metric.csv'),
];

function named(designation: string): Thread {
  const thread = threadNamed(designation);
  if (!thread) throw new Error(`no thread ${designation}`);
  return thread;
}

describe('the threads', () => {
  test.each(inchRows)('$designation is $inches in by $threadsPerInch to the inch ($source)', (row) => {
    const thread = named(row.designation);
    expect(thread.designation).toBe(row.designation);
    expect(Number(exactDecimalText(thread.major, 'in'))).toBe(Number(row.inches));
    expect(thread.threadsPerInch).toBe(row.threadsPerInch);
  });

  test.each(metricRows)('$designation is M$major by $pitch, $series ($source)', (row) => {
    const thread = named(row.designation);
    expect([thread.designation, thread.series]).toEqual([row.designation, row.series]);
    expect(sameLength(thread.pitch, lengthOf(`${row.pitch} mm`))).toBe(true);
  });

  test.each(metricRows.filter((row) => row.series === 'coarse'))(
    '$designation is the coarse thread of its size ($source)',
    (row) => {
      const thread = named(`M${row.major}`);
      expect([thread.designation, thread.series]).toEqual([row.designation, 'coarse']);
      expect(sameLength(thread.major, lengthOf(`${row.major} mm`))).toBe(true);
      expect(sameLength(thread.pitch, lengthOf(`${row.pitch} mm`))).toBe(true);
    },
  );

  test('every fine metric thread kept is a standard one (ISO 261 pitches in threads_metric.csv)', () => {
    const standard = new Set(metricRows.map((row) => row.designation));
    const fine = allThreads.filter((thread) => thread.series === 'fine');
    expect(fine.map((thread) => thread.designation).filter((name) => !standard.has(name))).toEqual([]);
  });

  test('every thread of the insert tables has inserts', () => {
    const names = new Set(insertThreads.map((thread) => thread.designation));
    expect(insertRows.map((row) => row.cell('designation')).filter((name) => !names.has(name))).toEqual([]);
  });

  // The pitch of 1/2-13 never ends: 1/13 in = 1.953846153846... mm (fraction.js gives the period).
  test.each(allThreads.filter((thread) => thread.threadsPerInch !== undefined))(
    'the pitch of $designation is 1 in over its threads, to 40 places of a millimetre',
    ({ pitch, threadsPerInch = 0 }) => {
      const exact = new Fraction('25.4').div(threadsPerInch);
      const off = new Fraction(toText(pitch)).sub(exact).abs();
      expect(off.compare(new Fraction(1n, 10n ** 40n))).toBeLessThanOrEqual(0);
    },
  );
});

describe('a thread called by name', () => {
  test.each([
    ['7/16-20', '7/16-20 UNF'],
    ['7/16 - 20 unf', '7/16-20 UNF'],
    ['7/16x20', '7/16-20 UNF'],
    ['7/16"-20', '7/16-20 UNF'],
    ['.4375-20', '7/16-20 UNF'],
    ['7/16 UNF', '7/16-20 UNF'],
    ['7/16 NC', '7/16-14 UNC'],
    ['10-24', '#10-24 UNC'],
    ['No. 10-32', '#10-32 UNF'],
    ['1-8', '1-8 UNC'],
    ['1-64', '#1-64 UNC'],
    ['1/4-32 UNEF', '1/4-32 UNEF'],
    ['1/4 UNEF', '1/4-32 UNEF'],
    ['1/4 UNF', '1/4-28 UNF'],
    ['M6x0.75', 'M6x0.75'],
    ['1-14 UNF', '1-14 UNS'],
    ['m8', 'M8x1.25'],
    ['M8 x 1.25', 'M8x1.25'],
    ['M8×1', 'M8x1'],
    ['M10-1,25', 'M10x1.25'],
    ['M2,5', 'M2.5x0.45'],
  ])('%s is %s', (typed, designation) => expect(named(typed).designation).toBe(designation));

  test.each(['7/16', '7/16-21', '1/4-20 UNF', 'M9', 'M8x0.9', '', '7/0-20', 'seven'])(
    '%s is no thread that can be told',
    (typed) => expect(threadNamed(typed)).toBeUndefined(),
  );

  test('every thread answers to its own designation', () => {
    for (const thread of allThreads) expect(threadNamed(thread.designation)).toEqual(thread);
  });

  test('#5-44 is a thread, and no wire insert is usually made for it (from memory)', () => {
    expect(hasInserts(named('#5-44'))).toBe(false);
    expect(insertThreads.map((thread) => thread.designation)).not.toContain('#5-44 UNF');
  });

  test('no thread too fine for a wire insert is offered with one: UNEF, M3x0.35, M6x0.75', () => {
    expect(['1/4-32 UNEF', 'M3x0.35', 'M6x0.75', '#0-80'].filter((name) => hasInserts(named(name)))).toEqual(
      [],
    );
  });
});

describe('percent of thread in a plain tapped hole', () => {
  test.each([
    { thread: '3/8-16', hole: '.3141 in', percent: 75.0, source: 'WE27, handbook formula with 0.01299' },
    { thread: '3/8-16', hole: '5/16 in', percent: 77.0, source: 'WE27, next drill' },
    { thread: 'M8x1.25', hole: '6.782 mm', percent: 75.0, source: 'WE28, handbook formula' },
    { thread: 'M8x1.25', hole: '6.8 mm', percent: 73.9, source: 'WE28, 6.8 drill' },
  ])('a $hole hole for $thread leaves $percent % ($source)', ({ thread, hole, percent }) => {
    const { major, pitch } = named(thread);
    expect(percentOfHeight({ major, pitch, hole: lengthOf(hole) })).toBeCloseTo(percent, 1);
  });
});
