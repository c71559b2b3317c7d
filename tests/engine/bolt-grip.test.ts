import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boltGrip, usualNutHeight, type GripQuestion } from '../../src/engine/bolt-grip.ts';
import { typedEstimate, type Estimate } from '../../src/engine/estimate.ts';
import { lengthOf, plus, sameLength, type Length } from '../../src/engine/length.ts';
import { usualTools } from '../../src/engine/measuring-tool.ts';
import { sayBottoming, sayPastEnd, sayPlane } from '../../src/engine/say-engagement.ts';
import { threadNamed } from '../../src/engine/threads.ts';

function named(designation: string) {
  const thread = threadNamed(designation);
  if (!thread) throw new Error(`no thread ${designation}`);
  return thread;
}

const inch = (size: string): Estimate => typedEstimate(lengthOf(`${size} in`));
const is = (length: Length | undefined, text: string) =>
  length !== undefined && sameLength(length, lengthOf(text));

/** A 1/2-13 bolt through two 3/8 legs and a 1/4 one, washer .1 under head and nut, nut .4375. */
const joint: GripQuestion = {
  thread: named('1/2-13'),
  held: 'nut',
  legs: [
    { name: 'leg 1', thickness: inch('.375') },
    { name: 'leg 2', thickness: inch('.25') },
    { name: 'leg 3', thickness: inch('.375') },
  ],
  headWasher: lengthOf('.1 in'),
  nutWasher: lengthOf('.1 in'),
  nutHeight: lengthOf('.4375 in'),
};

describe('a bolt through with a nut', () => {
  test('grips its legs and both washers: .1 + .375 + .25 + .375 + .1 = 1.2 in', () => {
    expect(is(boltGrip(joint).grip, '1.2 in')).toBe(true);
  });

  test('has a shear plane between every two legs, at .475 and .725 in from under the head', () => {
    const { planes, shankWanted } = boltGrip(joint);
    expect(planes.map(({ at }) => is(at, '.475 in') || is(at, '.725 in'))).toEqual([true, true]);
    expect(planes.map(({ between }) => between.join(' / '))).toEqual(['leg 1 / leg 2', 'leg 2 / leg 3']);
    expect(is(shankWanted.least, '.725 in') && is(shankWanted.most, '1.2 in')).toBe(true);
  });

  test('needs grip, nut and two threads past it: 1.2 + .4375 + 2/13 = 1.7913, bought 1-7/8 in', () => {
    const { lengthLeast, lengthToBuy } = boltGrip(joint);
    const { pitch } = joint.thread;
    expect(sameLength(lengthLeast, plus(lengthOf('1.6375 in'), plus(pitch, pitch)))).toBe(true);
    expect(is(lengthToBuy, '1-7/8 in')).toBe(true);
  });

  test.each([
    { shank: '.7251', kinds: ['good', 'good'] },
    { shank: '.725', kinds: ['good', 'good'] },
    { shank: '.7249', kinds: ['good', 'no-good'] },
    { shank: '.4', kinds: ['no-good', 'no-good'] },
  ])('with $shank of plain shank: $kinds in its two planes', ({ shank, kinds }) => {
    const { planes } = boltGrip({ ...joint, shank: inch(shank) });
    expect(planes.map((plane) => plane.shank?.verdict.kind)).toEqual(kinds);
  });

  test.each([
    { shank: '1.2', kind: 'good' },
    { shank: '1.2001', kind: 'no-good' },
    { shank: '1.0', kind: 'good' },
  ])('with $shank of shank under its nut, 1.2 clamped: $kind', ({ shank, kind }) => {
    expect(boltGrip({ ...joint, shank: inch(shank) }).nutBottoms?.verdict.kind).toBe(kind);
  });

  test('2 in long it stands .3625 past the nut; two threads, .1538, are wanted', () => {
    const { past } = boltGrip({ ...joint, boltLength: inch('2') });
    expect(is(past?.over, '.3625 in') && past?.verdict.kind).toBe('good');
    expect(boltGrip({ ...joint, boltLength: inch('1.75') }).past?.verdict.kind).toBe('no-good');
  });

  test('its nut is about 7/8 of the diameter by inch and .9 metric where none is measured', () => {
    expect(is(usualNutHeight(named('1/2-13')), '.4375 in')).toBe(true);
    expect(is(usualNutHeight(named('M10')), '9 mm')).toBe(true);
    const { nutHeight: _measured, ...without } = joint;
    expect(sameLength(boltGrip(without).lengthLeast, boltGrip(joint).lengthLeast)).toBe(true);
  });

  test('legs read with a caliper make their planes uncertain, and a shank near one too close to call', () => {
    const caliper = usualTools.find((tool) => tool.id === 'digital-caliper');
    const read = (size: string) => typedEstimate(lengthOf(`${size} in`), caliper);
    const { planes } = boltGrip({
      ...joint,
      legs: [
        { name: 'leg 1', thickness: read('.375') },
        { name: 'leg 2', thickness: read('.25') },
      ],
      shank: inch('.4755'),
    });
    expect(planes[0]?.shank?.verdict.kind).toBe('too-close');
    expect(planes[0] && sayPlane(planes[0], 'in')).toMatch(
      /too close to call whether the shank reaches it, known to ±/,
    );
  });
});

describe('a bolt into the part', () => {
  const tapped: GripQuestion = { ...joint, held: 'tapped', engagement: lengthOf('.75 in') };

  test('has one more plane, at the tapped part’s face, and no washer under a nut', () => {
    const { planes, grip } = boltGrip(tapped);
    expect(planes.at(-1)?.between).toEqual(['leg 3', 'the tapped part']);
    expect(is(planes.at(-1)?.at, '1.1 in') && is(grip, '1.1 in')).toBe(true);
  });

  test('needs its grip and the engagement: 1.1 + .75 = 1.85, bought 1-7/8 in', () => {
    expect(is(boltGrip(tapped).lengthLeast, '1.85 in') && is(boltGrip(tapped).lengthToBuy, '1-7/8 in')).toBe(
      true,
    );
  });

  test.each([
    { length: '1.85', kind: 'good' },
    { length: '1.849', kind: 'no-good' },
  ])('$length in long it is $kind', ({ length, kind }) => {
    expect(boltGrip({ ...tapped, boltLength: inch(length) }).past?.verdict.kind).toBe(kind);
  });
});

describe('a stud', () => {
  const stud: GripQuestion = {
    thread: named('M10'),
    held: 'stud',
    legs: [{ name: 'leg', thickness: typedEstimate(lengthOf('20 mm')) }],
    nutWasher: lengthOf('2 mm'),
    nutHeight: lengthOf('8.4 mm'),
    engagement: lengthOf('15 mm'),
  };

  test('is engagement, leg, washer, nut and two threads long: 15 + 20 + 2 + 8.4 + 3 = 48.4, bought 50 mm', () => {
    expect(is(boltGrip(stud).lengthLeast, '48.4 mm') && is(boltGrip(stud).lengthToBuy, '50 mm')).toBe(true);
  });

  test('of 50 mm stands 50 − 15 − 22 − 8.4 = 4.6 mm past its nut, 3 wanted', () => {
    const { past } = boltGrip({ ...stud, boltLength: typedEstimate(lengthOf('50 mm')) });
    expect(is(past?.over, '4.6 mm') && is(past?.least, '3 mm') && past?.verdict.kind).toBe('good');
  });
});

describe('with no legs given', () => {
  test('there are no planes, and nothing is said of shank or end', () => {
    const answer = boltGrip({ ...joint, legs: [], shank: inch('1'), boltLength: inch('2') });
    expect(answer.planes).toEqual([]);
    expect(answer.nutBottoms ?? answer.past).toBeUndefined();
    expect(is(answer.shankWanted.least, '0 in')).toBe(true);
  });
});

test('legs in any order grip the same and want the same length', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 3000 }), { minLength: 1, maxLength: 6 }), (thous) => {
      const legsOf = (sizes: readonly number[]) =>
        sizes.map((thou) => ({ name: 'leg', thickness: typedEstimate(lengthOf(`${thou} thou`)) }));
      const there = boltGrip({ ...joint, legs: legsOf(thous) });
      const back = boltGrip({ ...joint, legs: legsOf(thous.toReversed()) });
      expect(sameLength(there.grip, back.grip) && sameLength(there.lengthLeast, back.lengthLeast)).toBe(true);
      expect(there.planes.length).toBe(thous.length - 1);
    }),
  );
});

describe('said to the fitter', () => {
  const shanked = (shank: string) => boltGrip({ ...joint, shank: inch(shank) });

  test('plain shank or threads in the plane, and by how much', () => {
    const say = (shank: string) => shanked(shank).planes.map((plane) => sayPlane(plane, 'in'));
    expect(say('.725')).toEqual([
      'leg 1 on leg 2, .475 in from under the head: plain shank lies in it, .250 in past it.',
      'leg 2 on leg 3, .725 in from under the head: plain shank lies in it, to the very face.',
    ]);
    expect(say('.7')[1]).toMatch(/threads lie in it, the shank ends \.025 in short of it\.$/);
    expect(boltGrip(joint).planes.map((plane) => sayPlane(plane, 'in'))[0]).toMatch(
      /has to reach past it\.$/,
    );
  });

  test('whether the nut clamps before it meets the end of the thread', () => {
    expect(sayBottoming(shanked('1.0'), 'nut', 'in')).toBe(
      'The nut clamps with .200 in of thread left before the shank.',
    );
    expect(sayBottoming(shanked('1.25'), 'nut', 'in')).toMatch(
      /meets the end of the thread \.050 in before it clamps/,
    );
    expect(sayBottoming(shanked('1.25'), 'tapped', 'in')).toMatch(/^The bolt meets/);
    expect(sayBottoming(boltGrip(joint), 'nut', 'in')).toBe('');
    const caliper = usualTools.find((tool) => tool.id === 'digital-caliper');
    const close = boltGrip({ ...joint, shank: typedEstimate(lengthOf('1.2 in'), caliper) });
    expect(sayBottoming(close, 'nut', 'in')).toMatch(/^Too close to call whether the nut/);
  });

  test('what stands past the nut, or that it is too short', () => {
    const end = (boltLength: Estimate, more: Partial<GripQuestion> = {}) =>
      boltGrip({ ...joint, ...more, boltLength });
    expect(sayPastEnd(end(inch('2')), 'nut', 'in')).toBe(
      '.3625 in of it stands past the nut, .1538 in wanted.',
    );
    expect(sayPastEnd(end(inch('1.5')), 'nut', 'in')).toMatch(/too short to fill its nut/);
    expect(sayPastEnd(end(inch('1.5'), { held: 'stud' }), 'stud', 'in')).toMatch(/^The stud is .* too short/);
    const tapped = { held: 'tapped', engagement: lengthOf('.75 in') } as const;
    expect(sayPastEnd(end(inch('1.9'), tapped), 'tapped', 'in')).toBe(
      '.050 in of engagement more than the least.',
    );
    expect(sayPastEnd(end(inch('1.8'), tapped), 'tapped', 'in')).toMatch(/too short to hold/);
    expect(sayPastEnd(boltGrip(joint), 'nut', 'in')).toBe('');
    const rule = usualTools.find((tool) => tool.id === 'steel-rule');
    expect(sayPastEnd(end(typedEstimate(lengthOf('1.79 in'), rule)), 'nut', 'in')).toMatch(
      /Too close to call\.$/,
    );
  });
});
