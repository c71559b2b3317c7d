import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decimalText, isLess, isMore, lengthOf, sameLength } from '../../../src/engine/length/length.ts';
import { holeForPercent, tapDrill } from '../../../src/engine/thread/tap-drill.ts';
import { allThreads, percentOfHeight, threadNamed, type Thread } from '../../../src/engine/thread/threads.ts';
import { readReference } from '../../reference/read-csv.ts';

function named(designation: string): Thread {
  const thread = threadNamed(designation);
  if (!thread) throw new Error(`no thread ${designation}`);
  return thread;
}

const inchRows = readReference('threads_un.csv').map((row) => ({
  thread: row.cell('designation'),
  drill: row.cell('tap_drill').replace('.0 mm', ' mm'),
  inches: row.cell('tap_drill_in'),
}));
const metricRows = readReference('threads_metric.csv').map((row) => ({
  thread: row.cell('designation'),
  drill: row.cell('tap_drill_mm'),
}));

describe('the drill on the charts', () => {
  test.each(inchRows)(
    'for $thread is $drill, $inches in (tap maker’s chart)',
    ({ thread, drill, inches }) => {
      const { listed } = tapDrill(named(thread), 75);
      expect(listed?.drill.name).toBe(drill);
      expect(listed && Number(decimalText(listed.drill.size, 'in', 6))).toBeCloseTo(Number(inches), 4);
      expect(listed?.basis).toBe('published');
    },
  );

  test.each(metricRows)('for $thread is $drill mm (ISO 2306)', ({ thread, drill }) => {
    const { listed } = tapDrill(named(thread), 75);
    expect(listed && sameLength(listed.drill.size, lengthOf(`${drill} mm`))).toBe(true);
  });

  // From memory of the same charts.
  test.each([
    ['#4-40 UNC', '#43'],
    ['#10-24 UNC', '#25'],
    ['3/8-16 UNC', '5/16'],
    ['5/8-11 UNC', '17/32'],
    ['1/2-20 UNF', '29/64'],
    ['1-14 UNS', '15/16'],
  ])('for %s is %s, and says that it is from memory', (thread, drill) => {
    const { listed } = tapDrill(named(thread), 75);
    expect([listed?.drill.name, listed?.basis]).toEqual([drill, 'memory']);
  });

  test('is known for every thread, and leaves half to nine tenths of the thread', () => {
    for (const thread of allThreads) {
      const { listed } = tapDrill(thread, 75);
      expect(listed && listed.percent > 50 && listed.percent < 90).toBe(true);
    }
  });
});

describe('the hole for a percentage of thread', () => {
  test('WE27: 3/8-16 at 75 % is .3141 in; 5/16 next to it gives 77.0 %', () => {
    const { hole, below } = tapDrill(named('3/8-16'), 75);
    expect(decimalText(hole, 'in', 4)).toBe('0.3141');
    expect([below?.drill.name, below?.percent.toFixed(1)]).toEqual(['5/16', '77.0']);
  });

  test('WE28: M8 at 75 % is 6.782 mm; 6.8 gives 73.9 %', () => {
    const { hole, above } = tapDrill(named('M8'), 75);
    expect(decimalText(hole, 'mm', 3)).toBe('6.782');
    expect([above?.drill.name, above?.percent.toFixed(1)]).toEqual(['6.8 mm', '73.9']);
  });

  test('gives that percentage back, to the hundredth, and shrinks as it grows', () => {
    fc.assert(
      fc.property(fc.constantFrom(...allThreads), fc.integer({ min: 0, max: 9900 }), (thread, hundredths) => {
        const hole = holeForPercent(thread, hundredths / 100);
        const { major, pitch } = thread;
        expect(percentOfHeight({ major, pitch, hole })).toBeCloseTo(hundredths / 100, 8);
        expect(isLess(holeForPercent(thread, hundredths / 100 + 1), hole)).toBe(true);
      }),
    );
  });

  test('lies between the drills on both sides of it, and is inside the limits only where they are', () => {
    fc.assert(
      fc.property(fc.constantFrom(...allThreads), fc.integer({ min: 40, max: 100 }), (thread, percent) => {
        const { hole, below, above, exact, limits } = tapDrill(thread, percent);
        expect(below === undefined || isLess(below.drill.size, hole)).toBe(true);
        expect(above === undefined || isMore(above.drill.size, hole)).toBe(true);
        expect(exact === undefined || sameLength(exact.drill.size, hole)).toBe(true);
        for (const told of [below, above, exact].flatMap((one) => one ?? []))
          expect(told.insideLimits).toBe(
            !isLess(told.drill.size, limits.minorLeast) && !isMore(told.drill.size, limits.minorMost),
          );
      }),
    );
  });

  test('that is a drill itself names that drill: 0 % of M8 is 8 mm', () => {
    const { exact, below, above } = tapDrill(named('M8'), 0);
    expect([exact?.drill.name, below?.drill.name, above?.drill.name]).toEqual(['8 mm', '7.9 mm', '8.1 mm']);
    expect(tapDrill(named('M8'), 75).exact).toBeUndefined();
  });

  test('smaller than every drill has none below it, and a thread on no chart has no listed drill', () => {
    const thread = { ...named('#0-80'), designation: '.012-80', major: lengthOf('.012 in') };
    const { below, above, exact, listed } = tapDrill(thread, 75);
    expect(below ?? exact ?? listed).toBeUndefined();
    // The smallest of the number drills, #97 (drill gauge table).
    expect(above?.drill.name).toBe('#97');
  });
});
