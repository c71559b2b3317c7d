import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boltGrip, gripVerdict } from '../../../src/engine/thread/bolt-grip.ts';
import { usualNutHeight } from '../../../src/engine/thread/grip-ends.ts';
import type { GripQuestion } from '../../../src/engine/thread/grip-question.ts';
import { typedEstimate, type Estimate } from '../../../src/engine/reading/estimate.ts';
import { floatMm, lengthOf, sameLength, type Length } from '../../../src/engine/length/length.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { lengthToBuy } from '../../../src/engine/thread/bolt-length.ts';
import {
  sayBottoming,
  sayHoleEnd,
  sayLengthRange,
  sayLengthToBuy,
  sayPastEnd,
  sayPlane,
} from '../../../src/engine/thread/say-grip.ts';
import { threadNamed } from '../../../src/engine/thread/threads.ts';

function named(designation: string) {
  const thread = threadNamed(designation);
  if (!thread) throw new Error(`no thread ${designation}`);
  return thread;
}

const inch = (size: string): Estimate => typedEstimate(lengthOf(`${size} in`));
const is = (length: Length | undefined, text: string) =>
  length !== undefined && sameLength(length, lengthOf(text));

const metric = (size: string): Estimate => typedEstimate(lengthOf(`${size} mm`));

const m12: GripQuestion = {
  thread: named('M12'),
  held: 'nut',
  legs: [
    { name: 'leg 1', thickness: metric('10') },
    { name: 'leg 2', thickness: metric('20') },
  ],
};

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
    // The nut stays clear of the run-out, five pitches at most (ISO 4014): 1.2 − 5/13 = .8154.
    expect(is(shankWanted.least, '.725 in') && floatMm(shankWanted.most) / 25.4).toBeCloseTo(0.81538, 5);
    expect(shankWanted.missing).toBeUndefined();
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
    // The run-out may take 5/13 = .3846 of the thread: 1.2 − .3846 = .8154 is clear of it at its worst.
    { shank: '.8153', kind: 'good' },
    { shank: '.8154', kind: 'too-close' },
    // One pitch, 1/13 = .0769, is run-out in any case: 1.2 − .0769 = 1.1231.
    { shank: '1.123', kind: 'too-close' },
    { shank: '1.1232', kind: 'no-good' },
    { shank: '1.2001', kind: 'no-good' },
  ])('with $shank of shank under its nut, 1.2 clamped: $kind', ({ shank, kind }) => {
    expect(boltGrip({ ...joint, shank: inch(shank) }).nutBottoms?.verdict.kind).toBe(kind);
  });

  test.each([
    { shank: '29.8', nutRunsTo: undefined, kind: 'no-good' },
    { shank: '28.26', nutRunsTo: undefined, kind: 'no-good' },
    { shank: '28.25', nutRunsTo: undefined, kind: 'too-close' },
    { shank: '21.25', nutRunsTo: undefined, kind: 'good' },
    { shank: '21.26', nutRunsTo: undefined, kind: 'too-close' },
    { shank: '30.01', nutRunsTo: undefined, kind: 'no-good' },
    { shank: '26', nutRunsTo: '30', kind: 'good' },
    { shank: '26', nutRunsTo: '30.1', kind: 'no-good' },
  ])(
    'M12 × 1.75 on legs of 10 and 20 with $shank of shank, a nut run on to $nutRunsTo: $kind',
    ({ shank, nutRunsTo, kind }) => {
      // 30 clamped; the run-out is 1.75 at least and 5 × 1.75 = 8.75 at most: only a nut run on by hand measures it.
      const answer = boltGrip({
        ...m12,
        shank: metric(shank),
        ...(nutRunsTo !== undefined && { nutRunsTo: metric(nutRunsTo) }),
      });
      expect(answer.nutBottoms?.verdict.kind).toBe(kind);
      expect(gripVerdict(answer)?.kind).toBe(kind);
    },
  );

  test('the thinnest place of its legs counts for the nut, the thickest for the shank', () => {
    const answer = boltGrip({
      ...m12,
      legs: [
        { name: 'leg 1', thickness: metric('10'), thickest: metric('10.2') },
        { name: 'leg 2', thickness: metric('20') },
      ],
      shank: metric('10.1'),
    });
    expect(answer.planes[0]?.shank?.verdict.kind).toBe('no-good');
    expect(is(answer.nutBottoms?.room, '19.9 mm')).toBe(true);
  });

  test.each([
    // 1.2 + .4375 = 1.6375 to the far side of the nut; two whole threads .1538, and a point of up to .1538 more.
    { length: '1.9453', kind: 'good' },
    { length: '1.945', kind: 'too-close' },
    { length: '1.792', kind: 'too-close' },
    { length: '1.791', kind: 'no-good' },
  ])('$length in long it is $kind past its nut', ({ length, kind }) => {
    expect(boltGrip({ ...joint, boltLength: inch(length) }).past?.verdict.kind).toBe(kind);
  });

  test('its nut is about 7/8 of the diameter by inch and .9 metric where none is measured', () => {
    expect(is(usualNutHeight(named('1/2-13')), '.4375 in')).toBe(true);
    expect(is(usualNutHeight(named('M10')), '9 mm')).toBe(true);
    const { nutHeight: _measured, ...without } = joint;
    const over = (q: GripQuestion) => boltGrip({ ...q, boltLength: inch('2') }).past?.over;
    expect(is(over(without), '.3625 in') && is(over(joint), '.3625 in')).toBe(true);
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

  test.each([
    // 1.1 + .75 = 1.85, and a point of up to 2/13 = .1538 that holds nothing.
    { length: '2.0039', kind: 'good' },
    { length: '2.0038', kind: 'too-close' },
    { length: '1.85', kind: 'too-close' },
    { length: '1.849', kind: 'no-good' },
  ])('$length in long it is $kind', ({ length, kind }) => {
    expect(boltGrip({ ...tapped, boltLength: inch(length) }).past?.verdict.kind).toBe(kind);
  });

  test('has thread at the part’s face whatever its shank: no verdict hangs on that', () => {
    // Planes at .475 and .725 between the legs, 1.1 at the part; clear of its run-out, 1.1 − .3846 = .7154.
    const answer = boltGrip({
      ...tapped,
      legs: tapped.legs.slice(0, 2),
      shank: inch('.48'),
      hole: 'through',
    });
    expect(answer.planes.map(({ shank }) => shank?.verdict.kind)).toEqual(['good', undefined]);
    expect(answer.planes[1] && sayPlane(answer.planes[1], 'in')).toMatch(
      /^leg 2 on the tapped part, \.725 in from under the head: thread lies in it\. Let a dowel/,
    );
    // .725 − .48 = .245 from the shank to the part: its run-out may take .3846.
    expect(gripVerdict(answer)?.kind).toBe('too-close');
    expect(gripVerdict(boltGrip({ ...tapped, shank: inch('.4') }))?.kind).toBe('no-good');
    const single = boltGrip({ ...tapped, legs: tapped.legs.slice(0, 1), shank: inch('.09') });
    // One leg, .475 clamped with its washer: .475 − .09 = .385, just clear.
    expect(gripVerdict(single)?.kind).toBe('good');
  });

  // M8 in an insert, 13 clamped, 11.98 wanted. Set-down .75 to 1.5 P = .9375 to 1.875, point up to 2 P = 2.5:
  // 13 + 11.98 + .9375 = 25.9175 at the least, 13 + 11.98 + 1.875 + 2.5 = 29.355 at the most.
  const inInsert: GripQuestion = {
    thread: named('M8'),
    held: 'tapped',
    legs: [{ name: 'leg 1', thickness: metric('13') }],
    engagement: lengthOf('11.98 mm'),
    withInsert: true,
    hole: 'through',
  };

  test.each([
    { length: '25', kind: 'no-good' },
    { length: '25.91', kind: 'no-good' },
    { length: '25.92', kind: 'too-close' },
    { length: '29.35', kind: 'too-close' },
    { length: '29.36', kind: 'good' },
  ])('M8 in an insert under 13 of leg, $length long: $kind', ({ length, kind }) => {
    const answer = boltGrip({ ...inInsert, boltLength: metric(length) });
    expect(answer.past?.verdict.kind).toBe(kind);
    expect(gripVerdict(answer)?.kind).toBe(kind);
  });

  test.each([
    { length: '60', depth: '20', kind: 'no-good' },
    { length: '33.01', depth: '20', kind: 'no-good' },
    { length: '33', depth: '20', kind: 'good' },
    { length: '30', depth: '16.99', kind: 'no-good' },
  ])('$length long over 13 of leg into a hole of $depth: $kind', ({ length, depth, kind }) => {
    const answer = boltGrip({
      ...inInsert,
      hole: { depth: metric(depth) },
      boltLength: metric(length),
    });
    expect(answer.hole?.verdict.kind).toBe(kind);
  });

  test('is never good while nobody said how deep its hole is', () => {
    const { hole: _unsaid, ...unsaid } = inInsert;
    const answer = boltGrip({ ...unsaid, boltLength: metric('60') });
    expect(answer.hole?.verdict.kind).toBe('too-close');
    expect(sayHoleEnd(answer, 'mm')).toMatch(/^Give how deep/);
    expect(gripVerdict(answer)?.kind).toBe('too-close');
    expect(boltGrip({ ...inInsert, boltLength: metric('60') }).hole).toBeUndefined();
  });
});

describe('a bolt far longer than its joint, its shank not given', () => {
  // Usual thread 2 d + 6 mm, or 2 d + 1/4 in (ISO 888, ASME B18.2.1). M12: 30, so 60 long stops at 30, which is what is clamped.
  const m12: GripQuestion = {
    thread: named('M12'),
    held: 'nut',
    legs: [
      { name: 'leg 1', thickness: metric('10') },
      { name: 'leg 2', thickness: metric('20') },
    ],
  };
  // M8: 22, over a leg of 13: 35 long. 1/2: 1.25, over 1 in: 2.25. A stud M10: 26 over 22, and 15 + 2 P in the part: 66.
  const m8: GripQuestion = { ...m12, thread: named('M8'), held: 'tapped', hole: 'through' };
  const half: GripQuestion = { ...m12, thread: named('1/2-20') };
  const stud: GripQuestion = { ...m8, thread: named('M10'), held: 'stud', engagement: lengthOf('15 mm') };
  test.each([
    { q: m12, legs: ['10 mm', '20 mm'], length: '60 mm', kind: 'good' },
    { q: m12, legs: ['10 mm', '20 mm'], length: '60.1 mm', kind: 'too-close' },
    { q: m12, legs: ['10 mm', '20 mm'], length: '80 mm', kind: 'too-close' },
    { q: m8, legs: ['13 mm'], length: '35 mm', kind: 'good' },
    { q: m8, legs: ['13 mm'], length: '60 mm', kind: 'too-close' },
    { q: half, legs: ['.5 in', '.5 in'], length: '2.25 in', kind: 'good' },
    { q: half, legs: ['.5 in', '.5 in'], length: '4 in', kind: 'too-close' },
    { q: stud, legs: ['10 mm', '12 mm'], length: '66 mm', kind: 'good' },
    { q: stud, legs: ['10 mm', '12 mm'], length: '120 mm', kind: 'too-close' },
  ])('$q.thread.designation, $legs, $length long: $kind', ({ q, legs, length, kind }) => {
    const known = legs.map((size, at) => ({
      name: `leg ${at + 1}`,
      thickness: typedEstimate(lengthOf(size)),
    }));
    const boltLength = typedEstimate(lengthOf(length));
    expect(gripVerdict(boltGrip({ ...q, legs: known, boltLength }))?.kind).toBe(kind);
  });

  test('asks for its shank, and counts it once it is given', () => {
    const long = { ...m12, boltLength: metric('80') };
    expect(sayBottoming(boltGrip(long), 'nut', 'mm')).toBe(
      'With its usual 30.00 mm of thread the nut stops 20.00 mm before it clamps. Give its plain shank.',
    );
    expect(gripVerdict(boltGrip({ ...long, shank: metric('12') }))?.kind).toBe('good');
    expect(gripVerdict(boltGrip({ ...long, shank: metric('45') }))?.kind).toBe('no-good');
  });
});

describe('a stud', () => {
  // Counted from the part's face: 10, then 12, the nut on top.
  const stud: GripQuestion = {
    thread: named('M10'),
    held: 'stud',
    legs: [
      { name: 'leg 1', thickness: metric('10') },
      { name: 'leg 2', thickness: metric('12') },
    ],
    nutWasher: lengthOf('2 mm'),
    nutHeight: lengthOf('8.4 mm'),
    engagement: lengthOf('15 mm'),
  };

  test.each([
    { plain: '11', kinds: ['good', 'good'] },
    { plain: '10', kinds: ['good', 'good'] },
    { plain: '9.99', kinds: ['good', 'no-good'] },
    { plain: '0', kinds: ['no-good', 'no-good'] },
  ])('with $plain plain over its part has shank in the planes at 0 and 10: $kinds', ({ plain, kinds }) => {
    const { planes } = boltGrip({ ...stud, shank: metric(plain) });
    expect(planes.map(({ shank }) => shank?.verdict.kind)).toEqual(kinds);
    expect(planes.map(({ between }) => between.join(' / '))).toEqual([
      'the tapped part / leg 1',
      'leg 1 / leg 2',
    ]);
    expect(is(planes[0]?.at, '0 mm') && is(planes[1]?.at, '10 mm')).toBe(true);
  });

  test('clamps where its plain shank and run-out end below the nut: 10 + 12 + 2 − 5 × 1.5 = 16.5', () => {
    const kind = (plain: string) => boltGrip({ ...stud, shank: metric(plain) }).nutBottoms?.verdict.kind;
    // And one pitch at least: 24 − 1.5 = 22.5.
    expect([kind('16.5'), kind('16.51'), kind('22.5'), kind('22.51')]).toEqual([
      'good',
      'too-close',
      'too-close',
      'no-good',
    ]);
  });

  test('a washer under a head that it hasn’t got is not counted', () => {
    expect(is(boltGrip({ ...stud, headWasher: lengthOf('3 mm') }).grip, '24 mm')).toBe(true);
  });

  // 15 in the part, 24 clamped, nut 8.4: 47.4. Past it 2 × 1.5 whole; points at both ends may take 3 each.
  test.each([
    { length: '56.4', kind: 'good' },
    { length: '56.3', kind: 'too-close' },
    { length: '50.4', kind: 'too-close' },
    { length: '50.3', kind: 'no-good' },
  ])('of $length mm over all: $kind', ({ length, kind }) => {
    expect(boltGrip({ ...stud, boltLength: metric(length) }).past?.verdict.kind).toBe(kind);
  });
});

describe('a stud in a blind hole', () => {
  // 15 must hold: with its point 15 to 18 deep (2 × 1.5). In an insert also .75 to 1.5 P down: 16.125 to 20.25.
  const stud: GripQuestion = {
    thread: named('M10'),
    held: 'stud',
    legs: [{ name: 'leg 1', thickness: metric('22') }],
    engagement: lengthOf('15 mm'),
    boltLength: metric('60'),
  };
  test.each([
    { depth: '18', withInsert: false, kind: 'good' },
    { depth: '17.9', withInsert: false, kind: 'too-close' },
    { depth: '15', withInsert: false, kind: 'too-close' },
    { depth: '14.9', withInsert: false, kind: 'no-good' },
    { depth: '20.25', withInsert: true, kind: 'good' },
    { depth: '16.1', withInsert: true, kind: 'no-good' },
  ])('$depth deep, in an insert: $withInsert, is $kind', ({ depth, withInsert, kind }) => {
    const answer = boltGrip({ ...stud, withInsert, hole: { depth: metric(depth) } });
    expect(answer.hole?.verdict.kind).toBe(kind);
  });

  test('is said as what it is, and asked for where nobody said how deep', () => {
    const said = (hole?: GripQuestion['hole']) =>
      sayHoleEnd(boltGrip({ ...stud, ...(hole && { hole }) }), 'mm', 'stud');
    expect(said({ depth: metric('12') })).toBe(
      'The hole’s thread is 3.00 mm too shallow for what must be in it.',
    );
    expect(said({ depth: metric('19') })).toBe(
      'The hole’s thread is 4.00 mm deeper than the stud must go in.',
    );
    expect(said()).toMatch(/^Give how deep/);
    expect(gripVerdict(boltGrip(stud))?.kind).toBe('too-close');
    expect(said('through')).toBe('');
    const toBuy = lengthToBuy({ ...stud, hole: { depth: metric('12') } });
    // 15 + 2 × 1.5 = 18 in the part: 6 more than 12.
    expect(toBuy && sayLengthToBuy(toBuy, 'mm')).toBe('none fits');
    expect(toBuy && sayLengthRange(toBuy, 'stud', 'mm')).toEqual([
      '18.00 mm of it must be in the part: thread the hole 6.00 mm deeper.',
    ]);
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

test('legs in any order grip the same', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 3000 }), { minLength: 1, maxLength: 6 }), (thous) => {
      const legsOf = (sizes: readonly number[]) =>
        sizes.map((thou) => ({ name: 'leg', thickness: typedEstimate(lengthOf(`${thou} thou`)) }));
      const there = boltGrip({ ...joint, legs: legsOf(thous) });
      const back = boltGrip({ ...joint, legs: legsOf(thous.toReversed()) });
      expect(sameLength(there.grip, back.grip)).toBe(true);
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
    // 1.2 − .7 − 5/13 = .1154
    expect(sayBottoming(shanked('.7'), 'nut', 'in')).toBe(
      'The nut clamps .1154 in clear of the thread’s run-out.',
    );
    expect(sayBottoming(shanked('1.0'), 'nut', 'in')).toBe(
      'Too close to call: .200 in from where it clamps to the shank, and run-out may take .3846 in of it. Run a nut up by hand and give where it stops.',
    );
    expect(sayBottoming(boltGrip({ ...joint, nutRunsTo: inch('1.0') }), 'nut', 'in')).toBe(
      'The nut clamps with .200 in of thread left.',
    );
    expect(sayBottoming(shanked('1.25'), 'nut', 'in')).toMatch(
      /meets the end of the thread \.050 in before it clamps/,
    );
    expect(sayBottoming(shanked('1.25'), 'tapped', 'in')).toMatch(/^The bolt meets/);
    expect(sayBottoming(shanked('1.15'), 'nut', 'in')).toBe(
      'The nut clamps .050 in from the shank: it meets the run-out first. A shorter shank, or washers.',
    );
    expect(sayBottoming(boltGrip(joint), 'nut', 'in')).toBe('');
    const caliper = usualTools.find((tool) => tool.id === 'digital-caliper');
    const close = boltGrip({ ...joint, nutRunsTo: typedEstimate(lengthOf('1.2 in'), caliper) });
    expect(sayBottoming(close, 'nut', 'in')).toMatch(/^Too close to call whether the nut/);
  });

  test('what stands past the nut, or that it is too short', () => {
    const end = (boltLength: Estimate, more: Partial<GripQuestion> = {}) =>
      boltGrip({ ...joint, ...more, boltLength });
    expect(sayPastEnd(end(inch('2')), 'nut', 'in')).toBe(
      '.3625 in of it stands past the nut, .1538 in of whole thread wanted.',
    );
    expect(sayPastEnd(end(inch('1.5')), 'nut', 'in')).toMatch(/too short to fill its nut/);
    expect(sayPastEnd(end(inch('1.5'), { held: 'stud' }), 'stud', 'in')).toMatch(/^The stud is .* too short/);
    const tapped = { held: 'tapped', engagement: lengthOf('.75 in') } as const;
    // 2.1 − 1.85 − 2/13 = .0962
    expect(sayPastEnd(end(inch('2.1'), tapped), 'tapped', 'in')).toBe(
      '.0962 in of whole thread in it more than the least.',
    );
    expect(sayPastEnd(end(inch('1.9'), tapped), 'tapped', 'in')).toBe(
      'Too close to call: .050 in more than the least, and its point may take .1538 in of that.',
    );
    expect(sayPastEnd(end(inch('1.8'), tapped), 'tapped', 'in')).toMatch(/too short to hold/);
    expect(sayPastEnd(boltGrip(joint), 'nut', 'in')).toBe('');
    const rule = usualTools.find((tool) => tool.id === 'steel-rule');
    expect(sayPastEnd(end(typedEstimate(lengthOf('1.79 in'), rule)), 'nut', 'in')).toMatch(
      /Too close to call: count the whole threads, two wanted\.$/,
    );
  });
});
