import { expect, test } from 'vitest';
import {
  decimalText,
  isLess,
  isMore,
  lengthOf,
  minus,
  ratioOf,
  times,
} from '../../../src/engine/length/length.ts';
import { externalLimits } from '../../../src/engine/thread/thread-limits.ts';
import {
  bestWire,
  leadTerm,
  overThreeWires,
  overWiresAtTouch,
  sizeOverWires,
  wireRange,
  wiresOffered,
} from '../../../src/engine/thread/three-wires.ts';
import { allThreads, threadNamed } from '../../../src/engine/thread/threads.ts';

const halfThirteen = threadNamed('1/2-13 UNC');
if (!halfThirteen) throw new Error('1/2-13 is a thread');

test('1/2-13 over the best wires: W .04441, M .51662 with a pitch diameter of .4500 (standard 60° formula, WE33)', () => {
  const { wire, overWires } = overThreeWires(halfThirteen, lengthOf('.4500 in'));
  expect(decimalText(wire, 'in', 5)).toBe('0.04441');
  expect(decimalText(overWires, 'in', 5)).toBe('0.51662');
});

test('the basic pitch diameter stands in where none is measured: 1/2 − 0.649519 / 13 = .45004', () => {
  expect(decimalText(overThreeWires(halfThirteen).pitchDiameter, 'in', 5)).toBe('0.45004');
});

const sizes = (designation: string, pitchDiameter: string, wire: string) => {
  const thread = threadNamed(designation);
  if (!thread) throw new Error(`no thread ${designation}`);
  const unit = thread.threadsPerInch === undefined ? 'mm' : 'in';
  return {
    thread,
    unit,
    over: sizeOverWires({
      pitchDiameter: lengthOf(`${pitchDiameter} ${unit}`),
      pitch: thread.pitch,
      wire: lengthOf(`${wire} ${unit}`),
    }),
  } as const;
};

// M = E + 3W − 0.866025P, and 0.75 W (P / πE)² of the lead; each worked with a pocket calculator.
test.each([
  // .4500 + .1350 − .0666173 = .5183827; .75 · .045 · (.0769231 / 1.4137167)² = .0000999
  { thread: '1/2-13 UNC', pitch: '.4500', wire: '.0450', reads: '0.518483', places: 6 },
  // .4037 + .0900 − .0433013 = .4503987; .75 · .030 · (.05 / 1.2682609)² = .0000350
  { thread: '7/16-20 UNF', pitch: '.4037', wire: '.0300', reads: '0.450434', places: 6 },
  // 7.160 + 2.250 − 1.0825318 = 8.3274682; .75 · .75 · (1.25 / 22.4938)² = .0017371
  { thread: 'M8x1.25', pitch: '7.160', wire: '.75', reads: '8.32921', places: 5 },
])('$thread of pitch diameter $pitch reads $reads over wires of $wire, its lead counted', (row) => {
  const { over, unit } = sizes(row.thread, row.pitch, row.wire);
  expect(decimalText(over, unit, row.places)).toBe(row.reads);
});

test('without the lead it is the handbooks’ plain formula: 1/2-13 over the best wires .51662 (WE33)', () => {
  const wire = bestWire(halfThirteen.pitch);
  const of = { pitchDiameter: lengthOf('.4500 in'), pitch: halfThirteen.pitch, wire };
  expect(decimalText(minus(sizeOverWires(of), leadTerm(of)), 'in', 5)).toBe('0.51662');
});

test('on the basic profile wires stand proud from 0.505 P and reach the crests at 1.010 P (handbook)', () => {
  const basic = minus(halfThirteen.major, times(halfThirteen.pitch, '0.649519'));
  const { least, most } = wireRange(halfThirteen, {
    majorLeast: halfThirteen.major,
    majorMost: halfThirteen.major,
    pitchLeast: basic,
    pitchMost: basic,
  });
  expect(ratioOf(least, halfThirteen.pitch)).toBeCloseTo(0.50518, 4);
  expect(ratioOf(most, halfThirteen.pitch)).toBeCloseTo(1.01036, 4);
});

test.each(allThreads)(
  '$designation: from where the tool touches to the basic profile it goes in 0.61343 P (ASME B1.1 UN, ISO h3)',
  (thread) => {
    const wire = bestWire(thread.pitch);
    const touching = overWiresAtTouch({ outside: thread.major, pitch: thread.pitch, wire });
    const depth = minus(touching, overThreeWires(thread).overWires);
    expect(ratioOf(depth, thread.pitch) / 2).toBeCloseTo(0.61343, 4);
  },
);

test('three wires are offered, the best one first, and each lies in the range', () => {
  const limits = externalLimits(halfThirteen);
  const range = wireRange(halfThirteen, limits);
  const offered = wiresOffered(halfThirteen.pitch, range, 'in');
  // P = .0769231: .04441 best; of the number drills #57 is .0430 and #56 .0465 (drill gauge table)
  expect(offered.map(({ drill, size }) => [drill, decimalText(size, 'in', 4)])).toEqual([
    [undefined, '0.0444'],
    ['#57', '0.0430'],
    ['#56', '0.0465'],
  ]);
});

test('the best wire is in the range of every thread at every size its class allows', () => {
  const outside = allThreads.filter((thread) => {
    const { least, most } = wireRange(thread, externalLimits(thread));
    const best = bestWire(thread.pitch);
    return isLess(best, least) || isMore(best, most);
  });
  expect(outside).toEqual([]);
});
