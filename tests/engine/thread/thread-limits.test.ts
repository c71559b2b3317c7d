import { describe, expect, test } from 'vitest';
import { decimalText, dividedBy, isLess, lengthOf, minus } from '../../../src/engine/length/length.ts';
import { externalLimits, internalLimits, type ThreadForm } from '../../../src/engine/thread/thread-limits.ts';
import { allThreads, threadNamed } from '../../../src/engine/thread/threads.ts';
import { readReference } from '../../reference/read-csv.ts';

function named(designation: string): ThreadForm {
  const thread = threadNamed(designation);
  if (!thread) throw new Error(`no thread ${designation}`);
  return thread;
}

const inchRows = readReference('threads_un.csv').map((row) => ({
  thread: row.cell('designation'),
  minor: [row.cell('minor_2B_min_in'), row.cell('minor_2B_max_in')],
  major: [row.cell('major_2A_min_in'), row.cell('major_2A_max_in')],
}));
const metricRows = readReference('threads_metric.csv').map((row) => ({
  thread: row.cell('designation'),
  minor: [row.cell('minor_6H_min_mm'), row.cell('minor_6H_max_mm')],
}));

describe('the limits of a thread', () => {
  test.each(inchRows)('$thread 2B minor is $minor in (ASME B1.1, threads_un.csv)', ({ thread, minor }) => {
    const { minorLeast, minorMost } = internalLimits(named(thread));
    const places = minor[0]?.split('.')[1]?.length ?? 0;
    expect([decimalText(minorLeast, 'in', places), decimalText(minorMost, 'in', places)]).toEqual(minor);
  });

  test.each(inchRows)('$thread 2A major is $major in (ASME B1.1, threads_un.csv)', ({ thread, major }) => {
    const { majorLeast, majorMost } = externalLimits(named(thread));
    expect([decimalText(majorLeast, 'in', 4), decimalText(majorMost, 'in', 4)]).toEqual(major);
  });

  test.each(metricRows)('$thread 6H minor is $minor mm (ISO 965-1, threads_metric.csv)', (row) => {
    const { minorLeast, minorMost } = internalLimits(named(row.thread));
    expect([decimalText(minorLeast, 'mm', 3), decimalText(minorMost, 'mm', 3)]).toEqual(row.minor);
  });

  // Rows that the reference leaves out, as ASME B1.1 prints them; from memory.
  test.each([
    { thread: '#1-64 UNC', minor: ['.0561', '.0623'], major: ['.0686', '.0724'] },
    { thread: '#0-80 UNF', minor: ['.0465', '.0514'], major: ['.0563', '.0595'] },
    { thread: '#1-72 UNF', minor: ['.0580', '.0635'], major: ['.0689', '.0724'] },
    { thread: '#4-40 UNC', minor: ['.0849', '.0939'], major: ['.1061', '.1112'] },
    { thread: '#6-40 UNF', minor: ['.111', '.119'], major: ['.1321', '.1372'] },
    { thread: '#10-24 UNC', minor: ['.145', '.156'], major: ['.1818', '.1890'] },
    { thread: '#12-28 UNF', minor: ['.177', '.186'], major: ['.2085', '.2150'] },
    { thread: '5/16-24 UNF', minor: ['.267', '.277'], major: ['.3042', '.3114'] },
    { thread: '3/8-16 UNC', minor: ['.307', '.321'], major: ['.3643', '.3737'] },
    { thread: '1/2-20 UNF', minor: ['.446', '.457'], major: ['.4906', '.4987'] },
    { thread: '5/8-11 UNC', minor: ['.527', '.546'], major: ['.6113', '.6234'] },
    { thread: '5/8-18 UNF', minor: ['.565', '.578'], major: ['.6149', '.6236'] },
    { thread: '3/4-20 UNEF', minor: ['.696', '.707'], major: ['.7406', '.7487'] },
    { thread: '1-12 UNF', minor: ['.910', '.928'], major: ['.9868', '.9982'] },
  ])('$thread: 2B minor $minor, 2A major $major in (ASME B1.1, from memory)', ({ thread, minor, major }) => {
    const hole = internalLimits(named(thread));
    const bolt = externalLimits(named(thread));
    const shown = (sizes: readonly Parameters<typeof decimalText>[0][], places: number) =>
      sizes.map((size) => decimalText(size, 'in', places).slice(1));
    expect(shown([hole.minorLeast, hole.minorMost], (minor[0]?.length ?? 0) - 1)).toEqual(minor);
    expect(shown([bolt.majorLeast, bolt.majorMost], 4)).toEqual(major);
  });

  test('WE22: 1/4-20 minor is .196 to .207 in, tolerance .25P − .4P² = .0115', () => {
    const { minorLeast, minorMost } = internalLimits(named('1/4-20'));
    expect([minorLeast, minorMost].map((size) => decimalText(size, 'in', 3))).toEqual(['0.196', '0.207']);
  });

  // The example says 28 threads; its own figures (.2789 = .2969 − .649519/36; .0066 = .25/36 − .4/36²) are those of 36.
  test('WE21: 19/64-36 UNS minor is .267 to .273 in, pitch diameter .2789 at least', () => {
    const { minorLeast, minorMost, pitchLeast } = internalLimits({
      designation: '19/64-36 UNS',
      series: 'UNS',
      major: lengthOf('.2969 in'),
      pitch: dividedBy(lengthOf('1 in'), 36),
      threadsPerInch: 36,
    });
    expect([minorLeast, minorMost].map((size) => decimalText(size, 'in', 3))).toEqual(['0.267', '0.273']);
    expect(decimalText(pitchLeast, 'in', 4)).toBe('0.2789');
  });

  // Pitch diameters, least bolt, greatest bolt, least hole, greatest hole: ASME B1.1 and ISO 965-2, from memory.
  test.each([
    { thread: '1/4-20', unit: 'in', places: 4, diameters: ['0.2127', '0.2164', '0.2175', '0.2224'] },
    { thread: '7/16-20', unit: 'in', places: 4, diameters: ['0.3995', '0.4037', '0.4050', '0.4104'] },
    { thread: '1/2-13', unit: 'in', places: 4, diameters: ['0.4435', '0.4485', '0.4500', '0.4565'] },
    { thread: 'M8', unit: 'mm', places: 3, diameters: ['7.042', '7.160', '7.188', '7.348'] },
    { thread: 'M10', unit: 'mm', places: 3, diameters: ['8.862', '8.994', '9.026', '9.206'] },
    { thread: 'M12', unit: 'mm', places: 3, diameters: ['10.679', '10.829', '10.863', '11.063'] },
  ] as const)('$thread has pitch diameters $diameters $unit', ({ thread, unit, places, diameters }) => {
    const bolt = externalLimits(named(thread));
    const hole = internalLimits(named(thread));
    const sizes = [bolt.pitchLeast, bolt.pitchMost, hole.pitchLeast, hole.pitchMost];
    expect(sizes.map((size) => decimalText(size, unit, places))).toEqual(diameters);
  });

  test.each(allThreads)(
    'a $designation bolt always goes into its hole, and both have room between their limits',
    (thread) => {
      const bolt = externalLimits(thread);
      const hole = internalLimits(thread);
      const rising = [
        [bolt.pitchLeast, bolt.pitchMost],
        [bolt.pitchMost, hole.pitchLeast],
        [hole.pitchLeast, hole.pitchMost],
        [bolt.majorLeast, bolt.majorMost],
        [bolt.majorMost, thread.major],
        [hole.minorLeast, hole.minorMost],
      ] as const;
      for (const [smaller, larger] of rising) expect(isLess(smaller, larger)).toBe(true);
    },
  );

  // ISO 965-1 annex: Td2 = 90 P^0.4 d^0.1, d the geometric mean of the range; printed values are rounded, within 6 %.
  test.each(allThreads.filter((thread) => thread.threadsPerInch === undefined))(
    'the pitch tolerance of $designation is near the standard’s formula',
    (thread) => {
      const { pitchMost, pitchLeast } = externalLimits(thread);
      const pitchMm = Number(decimalText(thread.pitch, 'mm', 3));
      const majorMm = Number(decimalText(thread.major, 'mm', 3));
      const top = [2.8, 5.6, 11.2, 22.4, 45].find((end) => majorMm <= end) ?? 45;
      const formula = 90 * pitchMm ** 0.4 * (top / Math.SQRT2) ** 0.1;
      const tolerance = 1000 * Number(decimalText(minus(pitchMost, pitchLeast), 'mm', 3));
      expect(Math.abs(tolerance / formula - 1)).toBeLessThan(0.06);
    },
  );

  // A broken promise of our own tables, never a size that a fitter typed.
  test('a pitch with no tolerances in the table is not guessed at', () => {
    const odd = { ...named('M10'), pitch: lengthOf('0.9 mm') };
    expect(() => externalLimits(odd)).toThrow('no metric tolerances for pitch 0.9');
    const coarseForItsSize = { ...named('M3'), pitch: lengthOf('3 mm') };
    expect(() => externalLimits(coarseForItsSize)).toThrow('no pitch diameter tolerances for pitch 3');
  });
});
