import { Decimal } from 'decimal.js';
import * as fc from 'fast-check';
import { Fraction } from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { exactDecimalText, floatMm, lengthOf, type Length } from '../../../../src/engine/length/length.ts';
import { typedEstimate, mean } from '../../../../src/engine/reading/estimate.ts';
import {
  laidPattern,
  type HolesKnown,
  type LaidPattern,
} from '../../../../src/engine/worksheets/adapter-plate/pattern.ts';
import {
  apart,
  circleThrough,
  turned,
  type Spot,
} from '../../../../src/engine/worksheets/adapter-plate/spots.ts';

const inches = (text: string) => lengthOf(`${text} in`);
const known = (text: string) => typedEstimate(inches(text));
const inInches = (size: Length) => Number(exactDecimalText(size, 'in'));

function laid(of: HolesKnown): LaidPattern {
  const pattern = laidPattern('A', of, mean);
  if (!pattern.ok) throw new Error(pattern.refusal.code);
  return pattern.value;
}

const circle = (count: number, across: string, startDegrees = 0): HolesKnown => ({
  by: 'circle',
  count,
  across: known(across),
  startDegrees,
});

function refusalOf(of: HolesKnown): string {
  const pattern = laidPattern('A', of, mean);
  return pattern.ok ? 'no refusal' : pattern.refusal.code;
}

describe('a bolt circle', () => {
  // Chords of a circle of diameter 1 for so many divisions, sin(180° ÷ n): the table of chords for spacing off a circle of
  // the machinists' handbooks, from memory.
  test.each([
    [3, 0.866025],
    [4, 0.707107],
    [5, 0.587785],
    [6, 0.5],
    [7, 0.433884],
    [8, 0.382683],
    [9, 0.34202],
    [10, 0.309017],
    [11, 0.281733],
    [12, 0.258819],
  ])('of diameter 1 with %i holes has neighbours %f apart', (count, chord) => {
    const [first, second] = laid(circle(count, '1', 17)).spots;
    if (!first || !second) throw new Error('no holes');
    expect(inInches(apart(first, second))).toBeCloseTo(chord, 6);
  });

  // Hole coordinate factors for a circle of diameter 1, first hole on top, from the left and from the upper tangent: the
  // handbooks' tables for jig boring, from memory.
  test.each([
    {
      count: 3,
      at: [
        [0.5, 0],
        [0.06699, 0.75],
        [0.93301, 0.75],
      ],
    },
    {
      count: 5,
      at: [
        [0.5, 0],
        [0.02447, 0.34549],
        [0.20611, 0.90451],
        [0.79389, 0.90451],
        [0.97553, 0.34549],
      ],
    },
    {
      count: 6,
      at: [
        [0.5, 0],
        [0.06699, 0.25],
        [0.06699, 0.75],
        [0.5, 1],
        [0.93301, 0.75],
        [0.93301, 0.25],
      ],
    },
  ])('with $count holes, the first on top, has the handbook’s coordinates', ({ count, at }) => {
    const found = laid(circle(count, '1', 90)).spots.map(({ x, y }) => [
      0.5 + inInches(x),
      0.5 - inInches(y),
    ]);
    expect(found.map((spot) => spot.map((size) => Math.abs(Number(size.toFixed(5)))))).toEqual(at);
  });

  test('has the coordinates that cosine and sine to 40 places give', () => {
    const Exact = Decimal.clone({ precision: 40 });
    const pi = Exact.acos(-1);
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 24 }),
        fc.integer({ min: 500, max: 30_000 }),
        fc.integer({ min: -3600, max: 3600 }),
        (count, thou, tenths) => {
          const across = new Exact(thou).div(1000);
          const { spots } = laid(circle(count, across.toFixed(3), tenths / 10));
          for (const [hole, { x, y }] of spots.entries()) {
            const angle = new Exact(tenths).div(10).plus(new Exact(360 * hole).div(count));
            const turn = angle.times(pi).div(180);
            const radius = across.times('12.7');
            expect(Math.abs(Number(radius.times(turn.cos()).minus(exactDecimalText(x, 'mm'))))).toBeLessThan(
              1e-7,
            );
            expect(Math.abs(Number(radius.times(turn.sin()).minus(exactDecimalText(y, 'mm'))))).toBeLessThan(
              1e-7,
            );
          }
        },
      ),
      { numRuns: 12 },
    );
  });

  test('of one hole is none', () => {
    expect(refusalOf(circle(1, '4'))).toBe('too-few');
  });
});

describe('two holes side by side over plugs', () => {
  test('of five, 2.6450 middle to middle, stand on a circle of 4.5: 2.6450 ÷ .587785', () => {
    // Over plugs of .500: 2.6450 + .5 = 3.1450. 2.6450 ÷ .587785 (the handbooks' chord of five, from memory) = 4.49994.
    const over: HolesKnown = {
      by: 'pair',
      count: 5,
      over: known('3.1450'),
      plug: known('.5'),
      startDegrees: 0,
    };
    const { circle: found } = laid(over);
    expect(found && 2 * inInches(found.radius)).toBeCloseTo(2.645 / 0.587785, 4);
  });

  test('over plugs thicker than the distance can’t be', () => {
    expect(refusalOf({ by: 'pair', count: 5, over: known('.9'), plug: known('.5'), startDegrees: 0 })).toBe(
      'plug-too-thick',
    );
  });
});

/** A circle through three points by determinants, in fractions: x0 = |Dx| ÷ 2|D|, y0 = |Dy| ÷ 2|D|, exact. */
function byDeterminants(points: readonly (readonly [number, number])[]) {
  const det = (rows: readonly (readonly Fraction[])[]): Fraction => {
    const [[a, b, c] = [], [d, e, f] = [], [g, h, i] = []] = rows;
    if (!a || !b || !c || !d || !e || !f || !g || !h || !i) throw new Error('three by three');
    return a
      .mul(e.mul(i).sub(f.mul(h)))
      .sub(b.mul(d.mul(i).sub(f.mul(g))))
      .add(c.mul(d.mul(h).sub(e.mul(g))));
  };
  const one = new Fraction(1);
  const exact = points.map(([x, y]) => [new Fraction(x), new Fraction(y)] as const);
  const square = ([x, y]: readonly [Fraction, Fraction]) => x.mul(x).add(y.mul(y));
  const d = det(exact.map(([x, y]) => [x, y, one])).mul(2);
  if (d.equals(0)) return undefined;
  const x = det(exact.map((spot) => [square(spot), spot[1], one])).div(d);
  const y = det(exact.map((spot) => [spot[0], square(spot), one])).div(d);
  const [[fromX, fromY] = [one, one]] = exact;
  return { x, y, square: square([fromX.sub(x), fromY.sub(y)]) };
}

const spotAt = (x: number, y: number): Spot => ({ x: lengthOf(`${x} mm`), y: lengthOf(`${y} mm`) });

describe('the circle through three holes', () => {
  test('is the one that determinants in fractions give', () => {
    const coordinate = fc.integer({ min: -200, max: 200 });
    fc.assert(
      fc.property(fc.array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 3 }), (points) => {
        const [a, b, c] = points.map(([x, y]) => spotAt(x, y));
        if (!a || !b || !c) throw new Error('three points');
        const exact = byDeterminants(points);
        const found = circleThrough([a, b, c]);
        // In a line: none. One far wider than its holes lie apart is refused: their readings couldn't tell it from a line.
        const isWide = !exact || exact.square.valueOf() > 200_000;
        expect(found.ok || isWide).toBe(true);
        fc.pre(exact !== undefined && found.ok);
        if (!exact || !found.ok) return;
        const far = Math.max(1, Math.sqrt(exact.square.valueOf()));
        const { middle, radius } = found.value;
        expect(Math.abs(floatMm(middle.x) - exact.x.valueOf()) / far).toBeLessThan(1e-6);
        expect(Math.abs(floatMm(middle.y) - exact.y.valueOf()) / far).toBeLessThan(1e-6);
        expect(floatMm(radius) ** 2 / exact.square.valueOf()).toBeCloseTo(1, 6);
      }),
    );
  });

  test('three in a line have none', () => {
    expect(circleThrough([spotAt(0, 0), spotAt(10, 5), spotAt(30, 15)]).ok).toBe(false);
  });

  test('of a 3, 4, 5 triangle stands half way along its 5', () => {
    const found = circleThrough([spotAt(0, 0), spotAt(30, 0), spotAt(0, 40)]);
    expect(found.ok && exactDecimalText(found.value.radius, 'mm')).toBe('25');
    expect(
      found.ok && [found.value.middle.x, found.value.middle.y].map((at) => exactDecimalText(at, 'mm')),
    ).toEqual(['15', '20']);
  });
});

const three = (
  first: string,
  second: string,
  across: string,
  more: Partial<{ count: number; fourth: [string, string] }> = {},
): Extract<HolesKnown, { by: 'three' }> => ({
  by: 'three',
  count: more.count ?? 3,
  over: {
    first: known(first),
    second: known(second),
    across: known(across),
    ...(more.fourth && { fourth: { fromFirst: known(more.fourth[0]), fromThird: known(more.fourth[1]) } }),
  },
  startDegrees: 0,
});

describe('three holes over plugs', () => {
  test('stand where they were measured: 3, 4 and 5 apart, on a circle of 5', () => {
    const { spots, circle: found } = laid(three('3', '4', '5'));
    const [a, b, c] = spots;
    if (!a || !b || !c || !found) throw new Error('no holes');
    expect(inInches(apart(a, b))).toBeCloseTo(3, 7);
    expect(inInches(apart(b, c))).toBeCloseTo(4, 7);
    expect(inInches(apart(a, c))).toBeCloseTo(5, 7);
    expect(inInches(found.radius)).toBeCloseTo(2.5, 7);
  });

  test('the fourth corner of a square of 3 stands on its circle; one that is pushed out .006 is said so', () => {
    // A square of 3: diagonals 3√2 = 4.242641. Its circle's radius 2.121320.
    const on = laid(three('3', '3', '4.2426407', { count: 4, fourth: ['3', '3'] })).offCircle;
    expect(on.map(({ hole }) => hole)).toEqual([4]);
    expect(on.map(({ by }) => inInches(by))[0]).toBeCloseTo(0, 6);
    // Pushed out along the diagonal by .006: from the first and the third √(2.12132² + 2.12732²) = 3.004246.
    const out = laid(
      three('3', '3', '4.2426407', { count: 4, fourth: ['3.0042461', '3.0042461'] }),
    ).offCircle;
    expect(out.map(({ by }) => inInches(by))[0]).toBeCloseTo(0.006, 5);
  });

  test('of five on a circle of 4.5 give that circle, all five even on it, and nothing off', () => {
    // Neighbours 4.5 · sin 36° = 2.6450336, over one 4.5 · sin 72° = 4.2797543.
    const {
      spots,
      circle: found,
      offEven,
    } = laid(three('2.6450336', '2.6450336', '4.2797543', { count: 5 }));
    expect(spots).toHaveLength(5);
    expect(found && inInches(found.radius)).toBeCloseTo(2.25, 5);
    expect(offEven && inInches(offEven)).toBeLessThan(0.00001);
  });

  test.each([
    ['distances that make no triangle', three('1', '1', '3'), 'does-not-close'],
    ['holes in a line', three('1', '2', '3'), 'in-line'],
    ['two holes', three('1', '1', '1', { count: 2 }), 'too-few'],
  ])('%s are refused', (_name, of, code) => {
    expect(refusalOf(of)).toBe(code);
  });

  test('any triangle keeps its three distances, whichever way it is started', () => {
    const side = fc.integer({ min: 1000, max: 3000 });
    fc.assert(
      fc.property(side, side, side, fc.integer({ min: -360, max: 360 }), (one, two, over, startDegrees) => {
        fc.pre(one + two > over + 50 && one + over > two + 50 && two + over > one + 50);
        const texts = [one, two, over].map((thou) => (thou / 1000).toFixed(3));
        const asked = three(texts[0] ?? '', texts[1] ?? '', texts[2] ?? '');
        const { spots } = laid({ ...asked, startDegrees });
        const [a, b, c] = spots;
        if (!a || !b || !c) throw new Error('no holes');
        expect(inInches(apart(a, b)) * 1000).toBeCloseTo(one, 3);
        expect(inInches(apart(b, c)) * 1000).toBeCloseTo(two, 3);
        expect(inInches(apart(a, c)) * 1000).toBeCloseTo(over, 3);
      }),
    );
  });
});

describe('points', () => {
  const points = (...at: readonly (readonly [string, string])[]): HolesKnown => ({
    by: 'points',
    count: at.length,
    points: at.map(([x, y]) => ({ x: known(x), y: known(y) })),
  });

  test('stand exactly where they were given', () => {
    const { spots } = laid(points(['1/3', '0'], ['2.0625', '1.1']));
    expect(spots.map(({ x, y }) => [exactDecimalText(x, 'in'), exactDecimalText(y, 'in')])).toEqual([
      [exactDecimalText(inches('1/3'), 'in'), '0'],
      ['2.0625', '1.1'],
    ]);
  });

  test('a quarter turn is exact: 1/3 across becomes 1/3 up', () => {
    const spot = { x: inches('1/3'), y: inches('0') };
    expect(exactDecimalText(turned(spot, 90).y, 'in')).toBe(exactDecimalText(inches('1/3'), 'in'));
    expect(exactDecimalText(turned(spot, -90).y, 'in')).toBe(exactDecimalText(inches('-1/3'), 'in'));
  });

  test('a fourth is held against the circle of the first three', () => {
    const { offCircle } = laid(points(['2', '0'], ['0', '2'], ['-2', '0'], ['0', '-2.01']));
    expect(offCircle.map(({ hole, by }) => [hole, Number(inInches(by).toFixed(6))])).toEqual([[4, 0.01]]);
  });
});
