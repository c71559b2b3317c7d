import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boltGrip } from '../../../src/engine/thread/bolt-grip.ts';
import type { GripQuestion } from '../../../src/engine/thread/grip-question.ts';
import { lengthToBuy } from '../../../src/engine/thread/bolt-length.ts';
import { usualThreadLength } from '../../../src/engine/thread/thread-length.ts';
import { typedEstimate } from '../../../src/engine/reading/estimate.ts';
import { floatMm, isMore, lengthOf, minus } from '../../../src/engine/length/length.ts';
import { sayLengthRange, sayLengthToBuy } from '../../../src/engine/thread/say-grip.ts';
import { threadNamed } from '../../../src/engine/thread/threads.ts';

function named(designation: string) {
  const thread = threadNamed(designation);
  if (!thread) throw new Error(`no thread ${designation}`);
  return thread;
}

const typed = (size: string) => typedEstimate(lengthOf(size));
const legs = (...sizes: readonly string[]) =>
  sizes.map((size, index) => ({ name: `leg ${index + 1}`, thickness: typed(size) }));

function bought(q: GripQuestion) {
  const length = lengthToBuy(q);
  if (!length) throw new Error('no length');
  return length;
}

describe('the thread on a bolt', () => {
  test.each([
    // ISO 888: 2d + 6 up to 125, 2d + 12 up to 200, 2d + 25 over it; M8 to M16 as ISO 4014 lists them.
    { thread: 'M8', length: '60 mm', is: 22 },
    { thread: 'M12', length: '125 mm', is: 30 },
    { thread: 'M12', length: '126 mm', is: 36 },
    { thread: 'M16', length: '201 mm', is: 57 },
    // ASME B18.2.1: twice the diameter and 1/4 in, 1/2 in over 6 in.
    { thread: '1/2-13', length: '6 in', is: 1.25 * 25.4 },
    { thread: '1/2-13', length: '6.1 in', is: 1.5 * 25.4 },
  ])('$thread, $length long', ({ thread, length, is }) => {
    expect(floatMm(usualThreadLength(named(thread), lengthOf(length)))).toBeCloseTo(is, 6);
  });
});

describe('a bolt through with a nut', () => {
  test('M12 on legs of 10 and 20: shank past 10, nut clear of the run-out', () => {
    const through: GripQuestion = { thread: named('M12'), held: 'nut', legs: legs('10 mm', '20 mm') };
    const { least, most, made, mostBy } = bought(through);
    // Holds: 30 + nut 10.8 + two threads 3.5 + point 3.5 = 47.8. Shank: 10 + run-out 8.75 + thread 30 = 48.75.
    expect(floatMm(least)).toBeCloseTo(48.75, 6);
    // 30 + thread 30.
    expect(floatMm(most)).toBeCloseTo(60, 6);
    expect(mostBy).toBe('run-out');
    expect(made && [floatMm(made.least), floatMm(made.most)]).toEqual([50, 60]);
    // Sold by the millimetre to an inch shop too.
    expect(['in', 'mm'].map((unit) => sayLengthToBuy(bought(through), unit === 'in' ? 'in' : 'mm'))).toEqual([
      '50 to 60 mm',
      '50 to 60 mm',
    ]);
  });

  test('M12 on 59, 26.4 and 9.7: over 125 long there is 6 more thread, and it reaches into the last plane', () => {
    const through: GripQuestion = {
      thread: named('M12'),
      held: 'nut',
      legs: legs('59 mm', '26.4 mm', '9.7 mm'),
    };
    const length = bought(through);
    // Shank: 85.4 + run-out 8.75 + thread 30 = 124.15. At 130 the shank ends at 130 − 36 − 8.75 = 85.25, short of 85.4.
    expect(floatMm(length.least)).toBeCloseTo(124.15, 6);
    expect(floatMm(length.most)).toBeCloseTo(125, 6);
    expect(length.mostBy).toBe('more-thread');
    expect(sayLengthToBuy(length, 'mm')).toBe('125 mm');
    expect(sayLengthRange(length, 'nut', 'mm').join(' ')).toMatch(/longer ones have more thread/);
  });

  test('a last leg thinner than the run-out asks for washers where shank must lie in the plane', () => {
    const q: GripQuestion = { thread: named('M12'), held: 'nut', legs: legs('10 mm', '6 mm') };
    const length = bought(q);
    // Plane at 10, run-out 8.75: 18.75 where 16 is clamped.
    expect(length.washersMissing && floatMm(length.washersMissing)).toBeCloseTo(2.75, 6);
    const { missing } = boltGrip(q).shankWanted;
    expect(missing && floatMm(missing)).toBeCloseTo(2.75, 6);
    // It holds from 16 + 10.8 + 7 = 33.8 on, to 16 + 30 = 46.
    expect([floatMm(length.least), floatMm(length.most)]).toEqual([33.8, 46]);
    expect(sayLengthRange(length, 'nut', 'mm').join(' ')).toMatch(/takes 2\.75 mm more of washers/);
    const more = bought({ ...q, nutWasher: lengthOf('2.75 mm') });
    expect(more.washersMissing).toBeUndefined();
    expect(isMore(more.least, more.most)).toBe(false);
  });

  test('is said as a range of lengths that are made', () => {
    const length = bought({
      thread: named('1/2-13'),
      held: 'nut',
      legs: legs('.6 in', '.5 in'),
      headWasher: lengthOf('.1 in'),
      nutHeight: lengthOf('.4375 in'),
    });
    // Holds 1.2 + .4375 + 4/13 = 1.9452; shank .7 + 5/13 + 1.25 = 2.3346; most 1.2 + 1.25 = 2.45: 2-3/8.
    expect(sayLengthToBuy(length, 'in')).toBe('2-3/8 in');
    expect(sayLengthRange(length, 'nut', 'in')).toEqual([
      'At least 2.3346 in, at most 2.450 in: longer, the run-out is in the way.',
    ]);
  });
});

describe('a bolt into the part', () => {
  const inInsert: GripQuestion = {
    thread: named('M8'),
    held: 'tapped',
    legs: legs('13 mm'),
    engagement: lengthOf('11.98 mm'),
    withInsert: true,
  };

  test('M8 in an insert: 13 + 11.98, set-down 1.875, point 2.5; no longer than the hole lets it', () => {
    const open = bought({ ...inInsert, hole: 'through' });
    expect(floatMm(open.least)).toBeCloseTo(29.355, 6);
    // 13 + thread 22: longer, and its run-out meets the part.
    expect(floatMm(open.most)).toBeCloseTo(35, 6);
    const blind = bought({ ...inInsert, hole: { depth: typed('18 mm') } });
    expect(blind.mostBy).toBe('hole');
    expect(sayLengthToBuy(blind, 'mm')).toBe('30 mm');
    const shallow = bought({ ...inInsert, hole: { depth: typed('16 mm') } });
    // 29.355 to 29: none.
    expect(shallow.made).toBeUndefined();
    expect(sayLengthToBuy(shallow, 'mm')).toBe('none fits');
    expect(sayLengthRange(shallow, 'tapped', 'mm').join(' ')).toMatch(/No length of bolt does both/);
  });
});

describe('a stud', () => {
  test('is bought over all, with its share in the part', () => {
    const length = bought({
      thread: named('M10'),
      held: 'stud',
      legs: legs('10 mm', '12 mm'),
      nutWasher: lengthOf('2 mm'),
      nutHeight: lengthOf('8.4 mm'),
      engagement: lengthOf('15 mm'),
    });
    // In the part 15 + point 3 = 18. Outside: 24 + 8.4 + 3 + 3 = 38.4; shank 10 + 7.5 + thread 26 = 43.5: 61.5 over all.
    expect(length.inPart && floatMm(length.inPart)).toBeCloseTo(18, 6);
    expect(floatMm(length.least)).toBeCloseTo(61.5, 6);
    // 24 + thread 26 outside, 18 in the part.
    expect(floatMm(length.most)).toBeCloseTo(68, 6);
    expect(sayLengthToBuy(length, 'mm')).toBe('65 mm');
  });
});

test('a bolt of any length made in the range is good on hand: it holds, clamps, and its shank lies in the planes', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 20, max: 600 }), { minLength: 1, maxLength: 4 }),
      fc.constantFrom('M6', 'M8', 'M10', 'M12', 'M16'),
      (tenths, designation) => {
        const q: GripQuestion = {
          thread: named(designation),
          held: 'nut',
          legs: legs(...tenths.map((size) => `${size / 10} mm`)),
        };
        const { made, washersMissing } = bought(q);
        for (const boltLength of made ? [made.least, made.most] : []) {
          const whole = minus(boltLength, usualThreadLength(q.thread, boltLength));
          const answer = boltGrip({
            ...q,
            boltLength: typedEstimate(boltLength),
            nutRunsTo: typedEstimate(whole),
          });
          expect(answer.past?.verdict.kind).toBe('good');
          expect(answer.nutBottoms?.verdict.kind).toBe('good');
          const leastShank = minus(whole, lengthOf(`${5 * floatMm(q.thread.pitch)} mm`));
          const shanked = boltGrip({ ...q, shank: typedEstimate(leastShank) });
          const inPlanes = shanked.planes.every(({ shank }) => shank?.verdict.kind === 'good');
          expect(inPlanes || washersMissing !== undefined).toBe(true);
        }
      },
    ),
  );
});

test('a bolt or stud of any length made for a part holds in it, clamps, and meets no end of its hole', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 20, max: 600 }), { minLength: 1, maxLength: 3 }),
      fc.constantFrom('M6', 'M8', 'M10', '5/16-18', '7/16-20', '1/2-13'),
      fc.constantFrom('tapped' as const, 'stud' as const),
      fc.boolean(),
      fc.integer({ min: 50, max: 300 }),
      fc.integer({ min: 100, max: 600 }),
      (tenths, designation, held, withInsert, engagement, depth) => {
        const q: GripQuestion = {
          thread: named(designation),
          held,
          withInsert,
          legs: legs(...tenths.map((size) => `${size / 10} mm`)),
          engagement: lengthOf(`${engagement / 10} mm`),
          hole: { depth: typed(`${depth / 10} mm`) },
        };
        const { made, inPart } = bought(q);
        for (const boltLength of made ? [made.least, made.most] : []) {
          const outside = inPart ? minus(boltLength, inPart) : boltLength;
          const whole = minus(outside, usualThreadLength(q.thread, outside));
          const answer = boltGrip({
            ...q,
            boltLength: typedEstimate(boltLength),
            nutRunsTo: typedEstimate(whole),
          });
          expect(answer.past?.verdict.kind).toBe('good');
          expect(answer.nutBottoms?.verdict.kind).toBe('good');
          expect(answer.hole?.verdict.kind ?? 'good').toBe('good');
        }
      },
    ),
  );
});
