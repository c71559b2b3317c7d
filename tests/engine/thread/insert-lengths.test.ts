import { describe, expect, test } from 'vitest';
import {
  blindDepth,
  insertLengths,
  setDown,
  type BlindTap,
} from '../../../src/engine/thread/insert-lengths.ts';
import { exactDecimalText, lengthOf } from '../../../src/engine/length/length.ts';
import { threadNamed, type Thread } from '../../../src/engine/thread/threads.ts';
import { readReference } from '../../reference/read-csv.ts';

function named(designation: string): Thread {
  const thread = threadNamed(designation);
  if (!thread) throw new Error(`no thread ${designation}`);
  return thread;
}

const COLUMNS = { '1D': '1D', '1.5D': '1_5D', '2D': '2D', '2.5D': '2_5D', '3D': '3D' } as const;

const rows = (['inch', 'metric'] as const).flatMap((system) => {
  const unit = system === 'inch' ? ('in' as const) : ('mm' as const);
  return readReference(`threads_insert_${system}.csv`).map((row) => ({
    designation: row.cell('designation'),
    unit,
    printed: Object.values(COLUMNS).map((column) => row.cell(`len_${column}_${unit}`)),
    source: row.cell('source').split(';')[0],
  }));
});

const drill = lengthOf('8.4 mm');

function chosen(thickness: string, tap?: BlindTap) {
  const lengths = insertLengths({
    thread: named('M8'),
    drill,
    thickness: lengthOf(thickness),
    ...(tap && { tap }),
  });
  return lengths.find((length) => length.chosen);
}

describe('insert lengths', () => {
  // The inch table prints halves upwards (.78125 as .7813), so a length agrees with print to half its last digit.
  test.each(rows)('$designation comes $printed $unit long ($source)', ({ designation, unit, printed }) => {
    const lengths = insertLengths({ thread: named(designation), drill });
    expect(lengths.map((length) => length.times)).toEqual(Object.keys(COLUMNS));
    lengths.forEach((length, place) => {
      const off = Number(exactDecimalText(length.nominal, unit)) - Number(printed[place]);
      expect(Math.abs(off)).toBeLessThanOrEqual(0.00005 + 1e-9);
    });
  });

  // M8x1.25, 1.5D: 12 − 0.75·1.25 = 11.0625, 12 − 0.5·1.25 = 11.375; set down 0.9375 to 1.875.
  test('wound in it is half to three quarters of a pitch shorter (ASME B18.29.2M)', () => {
    const [, length] = insertLengths({ thread: named('M8'), drill });
    expect(exactDecimalText(length?.installedLeast ?? drill, 'mm')).toBe('11.0625');
    expect(exactDecimalText(length?.installedMost ?? drill, 'mm')).toBe('11.375');
    expect(exactDecimalText(setDown(named('M8')).least, 'mm')).toBe('0.9375');
    expect(exactDecimalText(setDown(named('M8')).most, 'mm')).toBe('1.875');
  });

  test.each([
    { thickness: '16 mm', times: '2D', why: 'exactly its nominal length' },
    { thickness: '15.999 mm', times: '1.5D', why: 'a micrometre too thin for 2D' },
    { thickness: '8 mm', times: '1D', why: 'exactly 1D' },
    { thickness: '100 mm', times: '3D', why: 'longer ones are not made' },
  ])('M8 in $thickness of metal: $times, $why', ({ thickness, times }) => {
    expect(chosen(thickness)?.times).toBe(times);
    expect(chosen(thickness)?.trimOff).toBeUndefined();
  });

  test('metal thinner than 1D takes 1D, trimmed by the difference', () => {
    const length = chosen('6.5 mm');
    expect(length?.times).toBe('1D');
    expect(exactDecimalText(length?.trimOff ?? drill, 'mm')).toBe('1.5');
  });

  test('every length longer than the metal says how much would come off, the others nothing', () => {
    const lengths = insertLengths({ thread: named('M8'), drill, thickness: lengthOf('13 mm') });
    expect(lengths.map((length) => length.trimOff && exactDecimalText(length.trimOff, 'mm'))).toEqual([
      undefined,
      undefined,
      '3', // 16 − 13
      '7', // 20 − 13
      '11', // 24 − 13
    ]);
  });

  test('without a thickness the usual 1.5D is taken (common practice, no source)', () => {
    const lengths = insertLengths({ thread: named('M8'), drill });
    expect(lengths.filter((length) => length.chosen).map((length) => length.times)).toEqual(['1.5D']);
  });
});

describe('a blind hole', () => {
  // ASME B18.29.2M notes: plug tap to M8 length + 0.5D + 6P, above M8 length + 6P, bottoming length + 4P; thread + 1P.
  test.each([
    { thread: 'M8', tap: 'plug', nominal: '12', full: '13.25', depth: '23.5', by: '12 + 4 + 7.5' },
    { thread: 'M10', tap: 'plug', nominal: '15', full: '16.5', depth: '24', by: '15 + 9' },
    { thread: 'M8', tap: 'bottoming', nominal: '12', full: '13.25', depth: '17', by: '12 + 5' },
    { thread: 'M6', tap: 'plug', nominal: '6', full: '7', depth: '15', by: '6 + 3 + 6' },
  ] as const)('$thread, $tap tap: drilled $depth mm deep ($by), full thread $full', (row) => {
    const depth = blindDepth({
      thread: named(row.thread),
      drill,
      tap: row.tap,
      nominal: lengthOf(`${row.nominal} mm`),
    });
    expect(exactDecimalText(depth.drilling, 'mm')).toBe(row.depth);
    expect(exactDecimalText(depth.fullThread, 'mm')).toBe(row.full);
  });

  // 5/16 in is 7.9375 mm: 8 mm or less; 3/8 in is 9.525 mm: above. Pitches .0625 in (3/8-16) and 1/18 in.
  test('inch sizes follow the same rule by diameter, and say so', () => {
    const large = blindDepth({
      thread: named('3/8-16'),
      drill,
      tap: 'plug',
      nominal: lengthOf('.5625 in'),
    });
    expect(exactDecimalText(large.drilling, 'in')).toBe('0.9375'); // .5625 + 6/16
    expect(large.source).toContain('inch sizes by diameter');
    const small = blindDepth({ thread: named('5/16-18'), drill, tap: 'plug', nominal: lengthOf('.625 in') });
    expect(Number(exactDecimalText(small.drilling, 'in'))).toBeCloseTo(1.114583, 6); // .625 + .15625 + 6/18
  });

  // M8, 8.4 drill: point 0.3004 · 8.4 = 2.52336. 1D with a plug tap: 8 + 4 + 7.5 = 19.5, to the point 22.02336,
  // and a floor of 1.5 under it (common practice): 23.52336.
  test.each([
    { thickness: '23.52336 mm', floor: '1.5', missing: undefined },
    { thickness: '23.5 mm', floor: '1.47664', missing: '0.02336' },
    { thickness: '22.03 mm', floor: '0.00664', missing: '1.49336' }, // seven micrometres of metal were called a floor
    { thickness: '20 mm', floor: '-2.02336', missing: '3.52336' },
  ])('in $thickness of metal has a floor of $floor, $missing missing', ({ thickness, floor, missing }) => {
    const q = { thread: named('M8'), drill, tap: 'plug', nominal: lengthOf('8 mm') } as const;
    const depth = blindDepth({ ...q, thickness: lengthOf(thickness) });
    expect(depth.floor && exactDecimalText(depth.floor, 'mm')).toBe(floor);
    expect(depth.floorMissing && exactDecimalText(depth.floorMissing, 'mm')).toBe(missing);
  });

  test('takes the metal as thin as its reading allows: 23.60 ± .10 misses .02336 of its floor', () => {
    const q = { thread: named('M8'), drill, tap: 'plug', nominal: lengthOf('8 mm') } as const;
    const depth = blindDepth({ ...q, thickness: lengthOf('23.6 mm'), thicknessOff: lengthOf('0.1 mm') });
    expect(exactDecimalText(depth.floorMissing ?? drill, 'mm')).toBe('0.02336');
  });

  test('with the fitter’s own least floor holds to that', () => {
    const q = { thread: named('M8'), drill, tap: 'plug', nominal: lengthOf('8 mm') } as const;
    const depth = blindDepth({ ...q, thickness: lengthOf('25 mm'), leastFloor: lengthOf('3 mm') });
    expect(exactDecimalText(depth.floorMissing ?? drill, 'mm')).toBe('0.02336'); // 22.02336 + 3 − 25
    expect(
      blindDepth({ ...q, thickness: lengthOf('25.1 mm'), leastFloor: lengthOf('3 mm') }).floorMissing,
    ).toBeUndefined();
  });

  // 1.5D: 12 + 4 + 7.5 + 2.52336 + 1.5 = 27.52336.
  test('the longest insert is taken that leaves a floor', () => {
    expect(chosen('27.6 mm', 'plug')?.times).toBe('1.5D');
    expect(chosen('27.5 mm', 'plug')?.times).toBe('1D');
    expect(chosen('26.1 mm', 'plug')?.times).toBe('1D');
  });
});
