import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { typedEstimate, type Estimate } from '../../../../src/engine/reading/estimate.ts';
import { decimalText, floatMm, lengthOf, negate, type Length } from '../../../../src/engine/length/length.ts';
import { usualTools } from '../../../../src/engine/reading/measuring-tool.ts';
import {
  sayChange,
  sayDegrees,
  sayMoved,
  sayRise,
  saySteeringRefusal,
  sayTrailChange,
  sayTrailFeel,
  sayTrailSign,
  steeringFigure,
} from '../../../../src/engine/worksheets/steering-geometry/say-steering.ts';
import {
  offsetForTrail,
  steeringGeometry,
  trailOf,
  trailSign,
  trailVerdict,
  type SteeringAnswer,
  type SteeringBefore,
  type SteeringChange,
} from '../../../../src/engine/worksheets/steering-geometry/steering-geometry.ts';

const mm = (size: number | string): Length => lengthOf(`${size} mm`);
const exact = (size: number | string): Estimate => typedEstimate(mm(size));

const machine: SteeringBefore = {
  rakeDegrees: 27,
  rakeWithinDegrees: 0,
  frontRadius: exact(310),
  rearRadius: exact(300),
  wheelbase: exact(1450),
  clampOffset: exact(50),
  axleLead: exact(0),
  extraAngleDegrees: 0,
};

function answered(change: SteeringChange, more: Partial<SteeringBefore> = {}): SteeringAnswer {
  const result = steeringGeometry({ ...machine, ...more }, change);
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

function refusalOf(change: SteeringChange, more: Partial<SteeringBefore> = {}) {
  const result = steeringGeometry({ ...machine, ...more }, change);
  return result.ok ? undefined : result.refusal;
}

describe('the trail of a front wheel', () => {
  test.each([
    {
      rakeDegrees: 23.5,
      radius: '299.9',
      offset: '36',
      trail: '91.14',
      places: 2,
      source: 'WE61; the maker prints 91 mm',
    },
    // (350 sin 18° − 32.07) / cos 18°: WE64 turned round
    {
      rakeDegrees: 18,
      radius: '350',
      offset: '32.07',
      trail: '80.0',
      places: 1,
      source: 'WE64, Meijaard et al. 2007 (memory)',
    },
  ])('at $rakeDegrees° on a $radius wheel, offset $offset, is $trail mm ($source)', (row) => {
    const { trail } = trailOf({
      rakeDegrees: row.rakeDegrees,
      tyreRadius: mm(row.radius),
      offset: mm(row.offset),
    });
    expect(decimalText(trail, 'mm', row.places)).toBe(row.trail);
  });

  test('WE63: at 24.5° on 299.9 mm with 36 mm of offset the normal trail is 88.37 mm', () => {
    const { normalTrail } = trailOf({ rakeDegrees: 24.5, tyreRadius: mm('299.9'), offset: mm(36) });
    expect(decimalText(normalTrail, 'mm', 2)).toBe('88.37');
  });

  test('WE64: 350 mm wheel, axis at π/10, 80 mm of trail take 32.07 mm of offset', () => {
    const offset = offsetForTrail({ rakeDegrees: 18, tyreRadius: mm(350), trail: mm(80) });
    expect(decimalText(offset, 'mm', 2)).toBe('32.07');
  });

  test('with the offset that was worked out for it is what was wanted', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 45, noNaN: true }),
        fc.integer({ min: 100, max: 500 }),
        fc.integer({ min: -50, max: 200 }),
        (rakeDegrees, radius, wanted) => {
          const tyreRadius = mm(radius);
          const offset = offsetForTrail({ rakeDegrees, tyreRadius, trail: mm(wanted) });
          expect(floatMm(trailOf({ rakeDegrees, tyreRadius, offset }).trail)).toBeCloseTo(wanted, 2);
        },
      ),
    );
  });
});

describe('a machine left as it is', () => {
  test('keeps rake, trail, wheelbase and height', () => {
    const { before, after, rise, moved } = answered({});
    expect(after).toEqual(before);
    expect(moved).toEqual([]);
    expect([rise.front, rise.middle, rise.rear].map((one) => decimalText(one, 'mm', 3))).toEqual([
      '0.000',
      '0.000',
      '0.000',
    ]);
    // (310 sin 27° − 50) / cos 27° = (140.737 − 50) / .891007 = 101.84
    expect(decimalText(before.trail, 'mm', 1)).toBe('101.8');
    expect(before.rakeDegrees).toBeCloseTo(27, 9);
  });
});

describe('a longer fork', () => {
  /** The rule of the shop, gone round until it stands still: drop ΔL·cos ρ over the wheelbase tilts the frame. */
  function byIteration(longerMm: number): number {
    let rake = (27 * Math.PI) / 180;
    for (let round = 0; round < 50; round += 1)
      rake =
        (27 * Math.PI) / 180 + Math.atan((longerMm * Math.cos(rake)) / (1450 + longerMm * Math.sin(rake)));
    return (rake * 180) / Math.PI;
  }

  test.each([-60, -20, 10, 50])('of %i mm tilts the frame as ΔL·cos ρ over the wheelbase does', (longer) => {
    // Two ways to the same tilt; they part by the second order of a tilt of some degrees.
    expect(answered({ forkLonger: mm(longer) }).after.rakeDegrees).toBeCloseTo(byIteration(longer), 1);
  });

  test('of 50 mm: 50 cos 27° = 44.55 mm up in front, about 1.7° more rake and 11 mm more trail', () => {
    const { after, before, rise } = answered({ forkLonger: mm(50) });
    expect(floatMm(rise.front)).toBeGreaterThan(42);
    expect(floatMm(rise.front)).toBeLessThan(44.55);
    expect(floatMm(rise.rear)).toBeCloseTo(0, 6);
    expect(floatMm(rise.middle)).toBeCloseTo(floatMm(rise.front) / 2, 2);
    // atan(44.55 / 1472.7) = 1.733°; trail (310 sin 28.73° − 50) / cos 28.73° = 112.9, 11.1 more
    expect(after.rakeDegrees).toBeCloseTo(28.73, 1);
    expect(floatMm(after.trail) - floatMm(before.trail)).toBeCloseTo(11.1, 0);
  });

  test('and then a shorter one by as much is the machine it was', () => {
    fc.assert(
      fc.property(fc.integer({ min: -100, max: 150 }), (longer) => {
        const { after } = answered({ forkLonger: mm(longer) });
        const back = answered(
          { forkLonger: negate(mm(longer)) },
          { rakeDegrees: after.rakeDegrees, wheelbase: typedEstimate(after.wheelbase) },
        );
        expect(back.after.rakeDegrees).toBeCloseTo(27, 4);
        expect(floatMm(back.after.wheelbase)).toBeCloseTo(1450, 2);
        expect(floatMm(back.after.trail)).toBeCloseTo(
          floatMm(back.before.trail) - floatMm(after.trail) + floatMm(answered({}).before.trail),
          1,
        );
      }),
    );
  });
});

describe('tyres and rear height', () => {
  test('both tyres 10 mm taller lift the machine 10 mm and leave the rake', () => {
    const { after, rise } = answered({ frontRadius: mm(320), rearRadius: mm(310) });
    expect(after.rakeDegrees).toBeCloseTo(27, 9);
    expect([rise.front, rise.rear].map((one) => decimalText(one, 'mm', 2))).toEqual(['10.00', '10.00']);
    // (320 sin 27° − 50) / cos 27° = 106.93
    expect(decimalText(after.trail, 'mm', 1)).toBe('106.9');
  });

  test('a taller front tyre tilts by its radius over the wheelbase: 20 mm is asin(30/1450) − asin(10/1450) = .790°', () => {
    // On level ground x² + y² stays √(1450² + 10²): asin(30/1450.03) − atan(10/1450)
    expect(answered({ frontRadius: mm(330) }).after.rakeDegrees - 27).toBeCloseTo(0.7904, 3);
  });

  test('a rear raised 20 mm takes rake off: about 20/1450 = .79°', () => {
    const { after, rise } = answered({ rearHigher: mm(20) });
    expect(after.rakeDegrees - 27).toBeCloseTo(-0.79, 2);
    expect(floatMm(rise.rear)).toBeCloseTo(20, 2);
    expect(floatMm(rise.front)).toBeCloseTo(0, 0);
  });

  test('a taller rear tyre does to the rake what a raised rear does', () => {
    const tyre = answered({ rearRadius: mm(320) }).after;
    const raised = answered({ rearHigher: mm(20) }).after;
    expect(tyre.rakeDegrees).toBeCloseTo(raised.rakeDegrees, 2);
  });
});

describe('the whole offset', () => {
  test('counts the axle’s lead: 30 of clamps and 20 of lead are 50', () => {
    const { before } = answered({}, { clampOffset: exact(30), axleLead: exact(20) });
    expect(decimalText(before.offset, 'mm', 3)).toBe('50.000');
    expect(decimalText(before.trail, 'mm', 3)).toBe(decimalText(answered({}).before.trail, 'mm', 3));
  });

  test('counts the clamps’ extra angle over the fork’s length: 3° on 750 mm is 39.25 mm more', () => {
    // 750 sin 3° = 39.252
    const { before } = answered({}, { extraAngleDegrees: 3, forkLength: exact(750) });
    expect(decimalText(before.offset, 'mm', 2)).toBe('89.25');
  });

  test('10 mm more of clamps takes 10 / cos 27° = 11.2 mm of trail, and 1.1 more as the front comes down', () => {
    // The axle comes up 10 sin 27° = 4.54 mm in the frame: 4.54/1459 = .178° less rake, · 6.32 mm a degree = 1.13.
    const { after, before } = answered({ clampOffset: mm(60) });
    expect(floatMm(before.trail) - floatMm(after.trail)).toBeCloseTo(11.22 + 1.13, 1);
  });

  test('raked clamps take more trail than the same angle at the head would give', () => {
    const change = answered({ extraAngleDegrees: 3 }, { forkLength: exact(750) });
    expect(floatMm(change.after.trail)).toBeLessThan(floatMm(change.before.trail) - 35);
  });

  test('lead in raked clamps lies square to the leg: 20 mm at 27° + 10° lets the front down 20 sin 37° = 12.0 mm', () => {
    const { rise } = answered({ axleLead: mm(20) }, { extraAngleDegrees: 10, forkLength: exact(700) });
    // Less some hundredths, as the wheelbase grows by 20 cos 37° and the frame tilts.
    expect(-floatMm(rise.front)).toBeGreaterThan(11.7);
    expect(-floatMm(rise.front)).toBeLessThan(12.04);
  });

  test('5 mm of lead or 5 mm of clamps are the same where the fork is not raked', () => {
    const lead = answered({ axleLead: mm(5) }).after;
    const clamps = answered({ clampOffset: mm(55) }).after;
    expect(lead).toEqual(clamps);
  });
});

describe('which change moved the trail', () => {
  test('each by itself and what they do together add up to the whole', () => {
    const small = fc.integer({ min: -40, max: 40 });
    fc.assert(
      fc.property(small, small, small, small, (fork, front, rear, clamps) => {
        const { before, after, moved, together } = answered({
          forkLonger: mm(fork),
          frontRadius: mm(310 + front),
          rearRadius: mm(300 + rear),
          clampOffset: mm(50 + clamps),
        });
        const parts = moved.reduce((so, one) => so + floatMm(one.trail), floatMm(together));
        expect(parts).toBeCloseTo(floatMm(after.trail) - floatMm(before.trail), 1);
      }),
    );
  });

  test('is that change alone where nothing else was changed', () => {
    const { moved, together, before, after } = answered({ clampOffset: mm(60) });
    expect(moved.map(({ name }) => name)).toEqual(['clampOffset']);
    expect(floatMm(moved[0]?.trail ?? mm(0))).toBeCloseTo(floatMm(after.trail) - floatMm(before.trail), 2);
    expect(floatMm(together)).toBeCloseTo(0, 3);
  });
});

describe('how well the trail is known', () => {
  test('.2° of rake is 1.26 mm of trail: (310 − 50 sin 27°) / cos² 27° · .0034907', () => {
    // dT/dρ = (R − o sin ρ) / cos² ρ = (310 − 22.70) / .79389 = 361.9 mm a radian; · .0034907 = 1.263
    const { trailHalfWidth } = answered({}, { rakeWithinDegrees: 0.2 });
    expect(floatMm(trailHalfWidth)).toBeCloseTo(1.263, 2);
  });

  test('is exact where everything is, and worse with a rule', () => {
    const rule = usualTools.find((tool) => tool.id === 'steel-rule');
    expect(floatMm(answered({}).trailHalfWidth)).toBe(0);
    const read = answered({}, { clampOffset: typedEstimate(mm(50), rule), forkLength: exact(700) });
    expect(floatMm(read.trailHalfWidth)).toBeGreaterThan(0.1);
  });
});

describe('what can’t be worked out', () => {
  test.each([-1, 60, 90, Number.NaN])('a rake of %d° from the vertical', (rakeDegrees) => {
    expect(refusalOf({}, { rakeDegrees })?.code).toBe('rake-out-of-reach');
  });

  test('0° and 59.9° are angles a fork can have', () => {
    expect(refusalOf({}, { rakeDegrees: 0 })).toBeUndefined();
    expect(refusalOf({}, { rakeDegrees: 59.9 })).toBeUndefined();
  });

  test('raked clamps without the fork’s length, before or after', () => {
    expect(refusalOf({ extraAngleDegrees: 3 })?.code).toBe('fork-length-needed');
    expect(refusalOf({}, { extraAngleDegrees: 3 })?.code).toBe('fork-length-needed');
    expect(refusalOf({ extraAngleDegrees: 0 })).toBeUndefined();
  });

  test('a machine with no wheelbase, or wheels that can’t both stand', () => {
    expect(refusalOf({}, { wheelbase: exact(0) })?.code).toBe('wheels-do-not-reach');
    expect(refusalOf({ frontRadius: mm(3000) })?.code).toBe('wheels-do-not-reach');
    expect(refusalOf({ forkLonger: mm(2000) })?.code).toBe('wheels-do-not-reach');
    expect(refusalOf({ forkLonger: mm(-4000) })?.code).toBe('wheels-do-not-reach');
  });

  test('a change that can’t stand by itself is left out of the list, not guessed', () => {
    // Front wheel 1400 higher alone tips it past 60°; with the rear one as much it stands level.
    const { moved } = answered({ frontRadius: mm(1710), rearRadius: mm(1700) });
    expect(moved.map(({ name }) => name)).not.toContain('frontRadius');
  });

  test('is said with what to do', () => {
    expect(saySteeringRefusal({ code: 'rake-out-of-reach', degrees: 66, mostDegrees: 60 })).toMatch(
      /66\.0° is outside 0° to 60° from the vertical\. .*subtract it from 90°\.$/,
    );
    expect(saySteeringRefusal({ code: 'fork-length-needed' })).toMatch(/from the clamps to the axle/);
    expect(saySteeringRefusal({ code: 'wheels-do-not-reach' })).toMatch(/both wheels/);
  });
});

describe('said to the fitter', () => {
  test('trail beside what it was, and what it is felt as', () => {
    const less = answered({ clampOffset: mm(60) });
    expect(sayTrailChange(less, 'mm')).toMatch(/^was 101\.8 mm: 12\.3 mm less$/);
    expect(sayTrailFeel(less, 'mm')).toMatch(/^Less trail/);
    const more = answered({ forkLonger: mm(50) });
    expect(sayTrailChange(more, 'mm')).toMatch(/more$/);
    expect(sayTrailFeel(more, 'mm')).toMatch(/^More trail/);
    expect(sayTrailChange(answered({}), 'mm')).toMatch(/the same$/);
    expect(sayTrailFeel(answered({}), 'mm')).toBe('Trail is what it was.');
    expect(sayTrailFeel(answered({ clampOffset: mm(200) }), 'mm')).toMatch(/Do not ride it/);
  });

  // o = R sin ρ − trail · cos ρ = 310 · .453990 − 1.5 · .891007 = 139.4005: trail 1.5. A degree of rake is worth
  // (R − o sin ρ) / cos² ρ · π / 180 = 246.71 / .793893 / 57.2958 = 5.424 mm of it: ±2.5005 at ±.461°, shown rounded up.
  const little = (rakeWithinDegrees: number) =>
    answered({}, { clampOffset: exact('139.4005'), rakeWithinDegrees });

  test('a trail of 1.5 ± 2.5 mm may be negative: it is said, and not ridden', () => {
    const answer = little(0.461);
    expect(decimalText(answer.after.trail, 'mm', 2)).toBe('1.50');
    expect(decimalText(answer.trailHalfWidth, 'mm', 1)).toBe('2.5');
    expect(trailSign(answer)).toBe('may-be-negative');
    expect(sayTrailSign(answer, 'mm')).toBe('Trail possibly negative: 1.5 mm, ±2.51. Do not ride it.');
    expect(sayTrailFeel(answer, 'mm')).toContain('Do not ride it.');
  });

  test.each([
    // 1.5 / 5.424 = .2766°
    { within: 0.27, sign: 'positive' },
    { within: 0.283, sign: 'may-be-negative' },
  ])('a trail of 1.5 mm by a rake known to ±$within° is $sign', ({ within, sign }) => {
    expect(trailSign(little(within))).toBe(sign);
  });

  test.each([
    { trail: '1', half: '1', sign: 'may-be-negative' },
    { trail: '1.001', half: '1', sign: 'positive' },
    { trail: '0', half: '0', sign: 'may-be-negative' },
    { trail: '-1', half: '1', sign: 'may-be-negative' },
    { trail: '-1.001', half: '1', sign: 'negative' },
    { trail: '-.5', half: '0', sign: 'negative' },
  ])('a trail of $trail ± $half mm is $sign', ({ trail, half, sign }) => {
    const answer = little(0);
    const such = { after: { ...answer.after, trail: mm(trail) }, trailHalfWidth: mm(half) };
    expect(trailSign(such)).toBe(sign);
  });

  test.each([
    // Against limits of one's own that would let it pass, it is never good; one that fails them anyway stays so.
    { trail: '1.5', half: '2.5', upper: '120', kind: 'no-good' },
    { trail: '1.5', half: '2.5', upper: undefined, kind: 'no-good' },
    { trail: '-30', half: '2.5', upper: '120', kind: 'no-good' },
    { trail: '90', half: '2.5', upper: '120', kind: 'good' },
    { trail: '90', half: '2.5', upper: undefined, kind: undefined },
    { trail: '2', half: '2.5', upper: '-1', kind: 'no-good' },
  ])('$trail ± $half mm with $upper for its most is $kind', ({ trail, half, upper, kind }) => {
    const answer = little(0);
    const such = { after: { ...answer.after, trail: mm(trail) }, trailHalfWidth: mm(half) };
    const limits = upper === undefined ? undefined : { upper: mm(upper), source: 'test' };
    expect(trailVerdict(such, limits)?.kind).toBe(kind);
  });

  test('a trail by readings that contradict each other is not called, whatever its limits', () => {
    const inDoubt: Estimate = { ...exact('50'), doubt: true };
    const answer = answered({}, { clampOffset: inDoubt });
    expect(answer.doubt).toBe(true);
    expect(trailVerdict(answer, { upper: mm(120), source: 'test' })?.kind).toBe('too-close');
    expect(trailVerdict(answered({}), { upper: mm(120), source: 'test' })?.kind).toBe('good');
  });

  test('trail that is the same as shown is not felt: 0.1 mm shows in millimetres, and not in inches', () => {
    // 0.09 / cos 27° = 0.101 mm = .004 in
    const hair = answered({ clampOffset: mm('50.09') });
    expect(sayTrailChange(hair, 'mm')).toBe('was 101.8 mm: 0.1 mm less');
    expect(sayTrailFeel(hair, 'mm')).toMatch(/^Less trail/);
    expect(sayTrailChange(hair, 'in')).toBe('was 4.01 in: the same');
    expect(sayTrailFeel(hair, 'in')).toBe('Trail is what it was.');
  });

  test('angles to a tenth, never −0.0', () => {
    expect(sayDegrees(-0.01)).toBe('0.0°');
    expect(sayDegrees(-1.26)).toBe('−1.3°');
    expect(sayDegrees(28.7)).toBe('28.7°');
  });

  test('each change by itself, and the frame’s rise', () => {
    const [first] = answered({ clampOffset: mm(60) }).moved;
    expect(first && sayMoved(first, 'mm')).toMatch(/^trail −12\.3 mm, rake −0\.2° by itself$/);
    const [fork] = answered({ forkLonger: mm(50) }).moved;
    expect(fork && sayMoved(fork, 'mm')).toMatch(/rake \+1\.7° by itself$/);
    expect(sayChange('forkLonger')).toBe('Fork length');
    expect(sayRise(mm(12), 'mm')).toBe('12.0 mm higher');
    expect(sayRise(mm(-12), 'mm')).toBe('12.0 mm lower');
    expect(sayRise(mm('.04'), 'mm')).toBe('as it was');
    expect(steeringFigure(mm(-5), 'in')).toBe('−.20');
    expect(steeringFigure(mm('.3'), 'mm')).toBe('0.3');
  });
});
