import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { floatMm, lengthOf, zero, type Length } from '../../../src/engine/length/length.ts';
import { sizeBeforePlating } from '../../../src/engine/press/plating.ts';
import {
  axialForceN,
  closingIn,
  contactPressureMpa,
  forcingPressureTons,
  innerStress,
  outerStress,
  outsideGrowth,
  pressureOfGrowthMpa,
  type Elastic,
  type PressedPair,
} from '../../../src/engine/press/press-fit.ts';

const mm = (size: number): Length => lengthOf(`${size} mm`);
const steel: Elastic = { modulusGpa: 210, poisson: 0.292 };
const bronze: Elastic = { modulusGpa: 100, poisson: 0.345 };

describe('worked examples', () => {
  test('WE43: solid 60 mm shaft in a 100 mm hub, 0.030 mm, E 210 GPa: 33.600 MPa (Shigley 9th ed. Eq. 3-56)', () => {
    const pair = { at: mm(60), outside: mm(100), inside: zero, outer: steel, inner: steel };
    expect(contactPressureMpa(pair, lengthOf('.030 mm'))).toBeCloseTo(33.6, 3);
  });

  test('WE46: a 200 mm bore opened by 0.2 mm in a 350 mm sleeve, E 200 GPa, ν 0.28: 88.90 MPa (Lamé)', () => {
    const ring = { bore: mm(200), outside: mm(350), elastic: { modulusGpa: 200, poisson: 0.28 } };
    expect(pressureOfGrowthMpa(ring, lengthOf('.2 mm'))).toBeCloseTo(88.9, 2);
  });

  test('WE47: 1 in shaft, 1 in long, .001 in, factor 500: 0.785 tons (force-fit pressure factor rule)', () => {
    const inch = lengthOf('1 in');
    const tons = forcingPressureTons({ at: inch, length: inch, allowance: lengthOf('.001 in'), factor: 500 });
    expect(tons).toBeCloseTo(0.785, 3);
  });

  test('the same rule at 1.25 in with its factor of 395: π · 1.25 · 2 · .002 · 395 / 2 = 3.102 tons', () => {
    const tons = forcingPressureTons({
      at: lengthOf('1.25 in'),
      length: lengthOf('2 in'),
      allowance: lengthOf('.002 in'),
      factor: 395,
    });
    expect(tons).toBeCloseTo(3.102, 3);
  });
});

// The general thick-wall formula (Timoshenko, Strength of Materials II), radii: a second route to all that follows.
function radialMm(
  at: number,
  ring: { a: number; b: number; pa: number; pb: number; elastic: Elastic },
): number {
  const { a, b, pa, pb } = ring;
  const { modulusGpa, poisson } = ring.elastic;
  const wall = b ** 2 - a ** 2;
  const even = ((1 - poisson) * (pa * a ** 2 - pb * b ** 2) * at) / wall;
  const bent = ((1 + poisson) * (pa - pb) * a ** 2 * b ** 2) / (wall * at);
  return (even + bent) / (modulusGpa * 1000);
}

const pairs = fc.record({
  at: fc.integer({ min: 10, max: 100 }),
  wall: fc.integer({ min: 2, max: 50 }),
  bore: fc.integer({ min: 1, max: 9 }),
  microns: fc.integer({ min: 1, max: 100 }),
});

function pairFrom({ at, wall, bore }: { at: number; wall: number; bore: number }): PressedPair {
  return {
    at: mm(at),
    outside: mm(at + 2 * wall),
    inside: mm((at * bore) / 10),
    outer: steel,
    inner: bronze,
  };
}

describe('by a second route', () => {
  test('hub opens and bushing closes by the interference between them', () => {
    fc.assert(
      fc.property(pairs, (given) => {
        const pair = pairFrom(given);
        const p = contactPressureMpa(pair, lengthOf(`${given.microns / 1000} mm`));
        const r = given.at / 2;
        const hub = radialMm(r, { a: r, b: r + given.wall, pa: p, pb: 0, elastic: steel });
        const inner = radialMm(r, { a: (r * given.bore) / 10, b: r, pa: 0, pb: p, elastic: bronze });
        expect(2 * (hub - inner)).toBeCloseTo(given.microns / 1000, 9);
      }),
    );
  });

  test('the bushing’s bore closes and the hub’s outside grows by as much as the general formula says', () => {
    fc.assert(
      fc.property(pairs, (given) => {
        const pair = pairFrom(given);
        const p = contactPressureMpa(pair, lengthOf(`${given.microns / 1000} mm`));
        const r = given.at / 2;
        const a = (r * given.bore) / 10;
        const closes = -2 * radialMm(a, { a, b: r, pa: 0, pb: p, elastic: bronze });
        const b = r + given.wall;
        const grows = 2 * radialMm(b, { a: r, b, pa: p, pb: 0, elastic: steel });
        expect(floatMm(closingIn(pair, p))).toBeCloseTo(closes, 4);
        expect(floatMm(outsideGrowth(pair, p))).toBeCloseTo(grows, 4);
      }),
    );
  });

  test('a sleeve opened by its own pressure gives that pressure back', () => {
    const p = 50;
    const grown = 2 * radialMm(20, { a: 20, b: 35, pa: p, pb: 0, elastic: steel });
    const ring = { bore: mm(40), outside: mm(70), elastic: steel };
    expect(pressureOfGrowthMpa(ring, lengthOf(`${grown.toFixed(12)} mm`))).toBeCloseTo(p, 6);
  });
});

describe('stress', () => {
  const pair = { at: mm(20), outside: mm(40), inside: mm(10), outer: steel, inner: bronze };

  test('a hub twice its bore at 30 MPa: 30 · (1600 + 400)/(1600 − 400) = 50 MPa of pull; √(50² + 50·30 + 30²) = 70 MPa', () => {
    const { hoopMpa, equivalentMpa } = outerStress(pair, 30);
    expect(hoopMpa).toBeCloseTo(50, 9);
    expect(equivalentMpa).toBeCloseTo(70, 9);
  });

  test('a bushing twice its bore at 30 MPa: −2 · 30 · 400/(400 − 100) = −80 MPa at its bore', () => {
    const { hoopMpa, equivalentMpa } = innerStress(pair, 30);
    expect(hoopMpa).toBeCloseTo(-80, 9);
    expect(equivalentMpa).toBeCloseTo(80, 9);
  });

  test('a solid pin is squeezed alike from all sides: −p, and √(p² − p² + p²) = p', () => {
    const { hoopMpa, equivalentMpa } = innerStress({ ...pair, inside: zero }, 30);
    expect(hoopMpa).toBe(-30);
    expect(equivalentMpa).toBeCloseTo(30, 9);
  });

  test('a solid pin has no bore to close', () => {
    expect(floatMm(closingIn({ ...pair, inside: zero }, 30))).toBe(0);
  });
});

describe('pressure and force', () => {
  const pair = { at: mm(20), outside: mm(40), inside: mm(10), outer: steel, inner: bronze };

  test('without interference there is no pressure, with clearance none either', () => {
    expect(contactPressureMpa(pair, zero)).toBe(0);
    expect(contactPressureMpa(pair, lengthOf('-.01 mm'))).toBe(0);
  });

  test('twice the interference is twice the pressure', () => {
    const once = contactPressureMpa(pair, lengthOf('.01 mm'));
    expect(contactPressureMpa(pair, lengthOf('.02 mm'))).toBeCloseTo(2 * once, 9);
  });

  test('0.1 · 20 MPa on 20 mm diameter, 30 mm long: 0.1 · 20 · π · 600 = 3770 N', () => {
    const newtons = axialForceN({ pressureMpa: 20, friction: 0.1, at: mm(20), length: mm(30) });
    expect(newtons).toBeCloseTo(3769.9, 1);
  });
});

describe('plating', () => {
  // .0003 in a side: diameters by .0006, pitch diameter by .0012
  test.each([
    { what: 'outside', cut: '.4994 in' },
    { what: 'bore', cut: '.5006 in' },
    { what: 'pitch-diameter', cut: '.4988 in' },
  ] as const)('with .0003 in of plating an $what that ends at .5000 is cut to $cut', ({ what, cut }) => {
    const size = sizeBeforePlating(lengthOf('.5000 in'), what, lengthOf('.0003 in'));
    expect(floatMm(size)).toBeCloseTo(floatMm(lengthOf(cut)), 12);
  });
});
