import * as fc from 'fast-check';
import { Fraction } from 'fraction.js';
import { expect, test } from 'vitest';
import { estimateOf, typedEstimate, type Estimate } from '../../../../src/engine/reading/estimate.ts';
import {
  holeAndPin,
  type HoleAndPinQuestion,
} from '../../../../src/engine/worksheets/hole-and-pin/hole-and-pin.ts';
import { jointLimits, type Joint } from '../../../../src/engine/fit/joint-limits.ts';
import {
  byLength,
  lengthOf,
  minus,
  sameLength,
  toText,
  type Length,
} from '../../../../src/engine/length/length.ts';
import type { ToolInForce } from '../../../../src/engine/reading/measuring-tool.ts';

const inch = (text: string): Length => lengthOf(`${text} in`);
const exactly = (text: string): Estimate => typedEstimate(inch(text));
const spanOf = (tightest: string, loosest: string) => ({
  tightest: exactly(tightest),
  loosest: exactly(loosest),
});

// A worn bore on a 7/16 bolt whose shank measures .4372.
const worn: HoleAndPinQuestion = {
  bore: spanOf('.4484', '.4490'),
  pin: spanOf('.4372', '.4372'),
  joint: 'located',
};

const micrometer: ToolInForce = {
  id: 'micrometer',
  name: 'micrometer',
  kind: 'micrometer',
  mpe: inch('.0001'),
  resolution: inch('.0001'),
  resolutionInMpe: true,
  repeatability: inch('.00005'),
};
const caliper: ToolInForce = { ...micrometer, id: 'caliper', name: 'caliper', mpe: inch('.001') };

const joints: readonly Joint[] = ['turns-under-load', 'turns', 'slides', 'located', 'pressed'];

test('clearance is bore less pin: .4484 − .4372 = .0112 at the tightest, .4490 − .4372 = .0118 at the loosest', () => {
  const { tightest, loosest } = holeAndPin(worn);
  expect(sameLength(tightest, inch('.0112'))).toBe(true);
  expect(sameLength(loosest, inch('.0118'))).toBe(true);
});

test('a worn pin counts too: the smallest bore meets the largest pin, the largest bore the smallest pin', () => {
  const answer = holeAndPin({ ...worn, pin: spanOf('.4372', '.4365') });
  expect(sameLength(answer.tightest, inch('.0112'))).toBe(true); // .4484 − .4372
  expect(sameLength(answer.loosest, inch('.0125'))).toBe(true); // .4490 − .4365
});

test('a pin larger than its bore is a clearance below zero', () => {
  expect(sameLength(holeAndPin({ ...worn, pin: spanOf('.4500', '.4500') }).tightest, inch('-.0016'))).toBe(
    true,
  );
});

test('.0118 where a located 7/16 bolt may have 0 to .002 is no good, .0098 over', () => {
  const { verdict, limits } = holeAndPin(worn);
  expect(limits).toMatchObject({ source: 'common practice, no source' });
  expect(toText(limits.upper ?? inch('1'))).toBe('0.0508');
  expect(verdict).toMatchObject({ kind: 'no-good', way: 'over' });
  expect(verdict.kind === 'no-good' && toText(verdict.by)).toBe('0.24892'); // .0098 · 25.4
});

test('the tightest place is held against the least, the loosest against the most, and no good beats good', () => {
  const own = (lower: string, upper: string) => ({ lower: inch(lower), upper: inch(upper), source: 'own' });
  const verdictWith = (lower: string, upper: string) =>
    holeAndPin({ ...worn, ownLimits: own(lower, upper) }).verdict;
  expect(verdictWith('.0112', '.0118')).toMatchObject({ kind: 'good' });
  expect(verdictWith('.0113', '.0118')).toMatchObject({ kind: 'no-good', way: 'under' });
  expect(verdictWith('.0112', '.0117')).toMatchObject({ kind: 'no-good', way: 'over' });
});

test('the user’s limits with one side leave the other side free', () => {
  const { verdict } = holeAndPin({ ...worn, ownLimits: { upper: inch('.012'), source: 'own' } });
  expect(verdict.kind).toBe('good');
});

test('a caliper can’t tell .0019 from .0021 of slop, a micrometer and more readings can tell .0015', () => {
  const read = (size: string, tool: ToolInForce) =>
    estimateOf([
      { exact: inch(size), tool, zeroChecked: true },
      { exact: inch(size), tool, zeroChecked: true },
    ]);
  const answerWith = (bore: string, tool: ToolInForce) =>
    holeAndPin({
      ...worn,
      bore: { tightest: read(bore, tool), loosest: read(bore, tool) },
      pin: { tightest: read('.4372', tool), loosest: read('.4372', tool) },
    });
  // .4391 − .4372 = .0019; the caliper's U is about 2 · .001 · √(2/3) = .0016
  expect(answerWith('.4391', caliper).verdict).toMatchObject({ kind: 'too-close' });
  // .4387 − .4372 = .0015; the micrometer's U is about 2 · .0001 · √(2/3) = .0002
  expect(answerWith('.4387', micrometer).verdict).toMatchObject({ kind: 'good' });
});

test('the loosest clearance at a 15 in arm on a 1.875 in hold: ± .0118 · 15 / 1.875 = .0944, in all .1888', () => {
  const arm = { boreLength: inch('2'), bellMouth: inch('.125'), reach: inch('15') };
  const { rock } = holeAndPin({ ...worn, arm });
  expect(rock && toText(rock.eachWay)).toBe('2.39776'); // .0944 · 25.4
  expect(rock && toText(rock.inAll)).toBe('4.79552'); // .1888 · 25.4
});

test('rock is exact, and in all it is twice what it is each way (fraction.js)', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 9999 }), fc.integer({ min: 1, max: 400 }), (reach64, length64) => {
      const arm = { boreLength: lengthOf(`${length64}/64 in`), reach: lengthOf(`${reach64}/64 in`) };
      const { rock } = holeAndPin({ ...worn, arm });
      const want = new Fraction('0.29972').mul(reach64).div(length64); // .0118 · 25.4 = 0.29972 mm
      const off = (size: Length | undefined, times: number): number =>
        size ? new Fraction(toText(size)).sub(want.mul(times)).abs().valueOf() : Number.POSITIVE_INFINITY;
      expect(off(rock?.eachWay, 1)).toBeLessThan(1e-38);
      expect(off(rock?.inAll, 2)).toBeLessThan(1e-38);
    }),
    { seed: 20_127, numRuns: 1000 },
  );
});

test.each([
  { boreLength: '1', bellMouth: '1' },
  { boreLength: '1', bellMouth: '1.2' },
  { boreLength: '0', bellMouth: '0' },
])(
  'a hold of $boreLength in less $bellMouth in of bell-mouth leaves nothing to work the rock from',
  (row) => {
    const arm = { boreLength: inch(row.boreLength), bellMouth: inch(row.bellMouth), reach: inch('15') };
    const { rock, rockRefusal, verdict } = holeAndPin({ ...worn, arm });
    expect(rock).toBeUndefined();
    expect(rockRefusal).toMatchObject({ code: 'bell-mouth-eats-bore' });
    expect(verdict.kind).toBe('no-good');
  },
);

test('a pressed pin does not rock', () => {
  const arm = { boreLength: inch('2'), reach: inch('15') };
  const { rock } = holeAndPin({ ...worn, pin: spanOf('.4500', '.4500'), joint: 'pressed', arm });
  expect(rock && toText(rock.inAll)).toBe('0');
});

test('a joint that turns is never tighter than nothing, a pressed one is always tighter, and larger pins get more room', () => {
  for (const joint of joints) {
    const rows = ['.2', '.4375', '.9', '1.5', '3'].map((size) => jointLimits(joint, inch(size)));
    const lowers = rows.map((row) => Number(toText(row.lower)));
    const uppers = rows.map((row) => Number(toText(row.upper)));
    expect(lowers.every((lower) => (joint === 'pressed' ? lower < 0 : lower >= 0))).toBe(true);
    expect(uppers.every((upper, row) => upper > (lowers[row] ?? upper))).toBe(true);
    expect(uppers.every((upper) => (joint === 'pressed' ? upper < 0 : upper > 0))).toBe(true);
    const widths = rows.map((row) => minus(row.upper, row.lower));
    expect(widths.map(toText)).toEqual(widths.toSorted(byLength).map(toText));
    expect(rows[0]?.source).toMatch(/common practice, no source/);
  }
});

test('exactly 1/2 in still is in the row up to 1/2 in; past 4 in the limits say that the table has ended', () => {
  expect(sameLength(jointLimits('located', inch('.5')).upper, inch('.002'))).toBe(true);
  // .5001 is a 1/2 pin; .510 is made to 33/64
  expect(sameLength(jointLimits('located', inch('.5001')).upper, inch('.002'))).toBe(true);
  expect(sameLength(jointLimits('located', inch('.510')).upper, inch('.0025'))).toBe(true);
  expect(jointLimits('located', inch('4.5')).source).toMatch(/ends at 4 in/);
});

test('wider limits never turn good into no good', () => {
  const thou = fc.integer({ min: -30, max: 30 });
  fc.assert(
    fc.property(thou, thou, fc.nat({ max: 20 }), fc.nat({ max: 20 }), (lower, upper, down, up) => {
      const limits = (least: number, most: number) => ({
        lower: lengthOf(`${least} thou`),
        upper: lengthOf(`${most} thou`),
        source: 'own',
      });
      const narrow = holeAndPin({ ...worn, ownLimits: limits(lower, upper) }).verdict.kind;
      const wide = holeAndPin({ ...worn, ownLimits: limits(lower - down, upper + up) }).verdict.kind;
      expect(narrow !== 'good' || wide === 'good').toBe(true);
    }),
    { seed: 20_127, numRuns: 1000 },
  );
});
