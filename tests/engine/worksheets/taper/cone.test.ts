import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sayAngle } from '../../../../src/engine/length/angle.ts';
import { floatMm, lengthOf, sameLength, toText, type Length } from '../../../../src/engine/length/length.ts';
import { usualTools } from '../../../../src/engine/reading/measuring-tool.ts';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import { coneOf, sizeAt, type TaperKnown } from '../../../../src/engine/worksheets/taper/cone.ts';
import { standardTaper } from '../../../../src/engine/worksheets/taper/tables/standard-tapers.ts';

const exactly = (text: string) => typedEstimate(lengthOf(text));
const mm = (size: number) => exactly(`${size.toFixed(9)} mm`);

function cone(known: TaperKnown, length: string) {
  const found = coneOf(known, exactly(length));
  if (!found.ok) throw new Error(found.refusal.code);
  return found.value;
}

function refused(known: TaperKnown, length = '1 in'): string {
  const found = coneOf(known, exactly(length));
  return found.ok ? 'answered' : found.refusal.code;
}

const ends = (large: string, small: string): TaperKnown => ({
  by: 'diameters',
  large: exactly(large),
  small: exactly(small),
});

describe('Morse tapers: ends and length of a printed chart against the ratio of the standard', () => {
  // Diameters and lengths: a printed shank chart, its lengths as fractions. 12 / ratio: ISO 296, from memory. Per foot:
  // ASME B5.10, from memory; of No. 3 seen in print as .60235.
  test.each([
    { id: 'morse-1', large: '.475', small: '.369', length: '2-1/8', perFoot: 0.59858 },
    { id: 'morse-2', large: '.700', small: '.572', length: '2-9/16', perFoot: 0.59941 },
    { id: 'morse-3', large: '.938', small: '.778', length: '3-3/16', perFoot: 0.60235 },
    { id: 'morse-4', large: '1.231', small: '1.020', length: '4-1/16', perFoot: 0.62326 },
    { id: 'morse-5', large: '1.748', small: '1.475', length: '5-3/16', perFoot: 0.63151 },
    { id: 'morse-6', large: '2.494', small: '2.116', length: '7-1/4', perFoot: 0.62565 },
  ])('$id has $perFoot in a foot', ({ id, large, small, length, perFoot }) => {
    const { slope } = cone(ends(`${large} in`, `${small} in`), `${length} in`);
    const standard = standardTaper(id)?.slope;
    const inAFoot = (rise: Length, over: Length) => (12 * floatMm(rise)) / floatMm(over);
    expect(inAFoot(slope.rise, slope.over)).toBeCloseTo(perFoot, 4);
    expect(standard && inAFoot(standard.rise, standard.over)).toBeCloseTo(perFoot, 4);
  });

  // Angles a side as printed in a table of Morse tapers.
  test.each([
    ['morse-2', 1.4307],
    ['morse-3', 1.4377],
  ])('%s stands %d° a side', (id, degrees) => {
    const standard = standardTaper(id);
    if (!standard?.gauge) throw new Error(id);
    const known = { by: 'slope', large: typedEstimate(standard.gauge), slope: standard.slope } as const;
    expect(cone(known, '2 in').halfDegrees).toBeCloseTo(degrees, 4);
  });
});

describe('other published tapers', () => {
  test('7/24 is 16° 35′ 39.4″ included (ISO 297, from memory) and 3.5 in a foot', () => {
    const large = exactly('1.75 in');
    const slope = { rise: lengthOf('3.5 in'), over: lengthOf('12 in') };
    const found = cone({ by: 'slope', large, slope }, '2.4 in');
    expect(sayAngle(2 * found.halfDegrees).replaceAll('\u00a0', ' ')).toBe('16° 35′ 39″');
    // 1.75 − 2.4 · 3.5/12 = 1.05, exactly
    expect(sameLength(found.small, lengthOf('1.05 in'))).toBe(true);
  });

  test('.745 and .620 an inch apart stand 3° 34′ 35″ a side (a published shop note)', () => {
    const { halfDegrees } = cone(ends('.745 in', '.620 in'), '1 in');
    expect(sayAngle(halfDegrees).replaceAll('\u00a0', ' ')).toBe('3° 34′ 35″');
  });

  test('a 60° taper of 20 mm is 2.6795 after 15 mm, and comes to a point after 17.3205 (20 / 2 · √3)', () => {
    const known = { by: 'angle', large: exactly('20 mm'), includedDegrees: 60 } as const;
    expect(floatMm(cone(known, '15 mm').small)).toBeCloseTo(20 - (2 * 15) / Math.sqrt(3), 8);
    const found = coneOf(known, exactly('18 mm'));
    const most = !found.ok && found.refusal.code === 'to-a-point' ? floatMm(found.refusal.most) : 0;
    expect(most).toBeCloseTo(10 * Math.sqrt(3), 6);
  });

  test('balls of 40 and 32, one 8 proud, the other 76 down: sin(half) = 4/80 (a published exam question)', () => {
    const found = cone(
      { by: 'balls', large: mm(40), small: mm(32), toLarge: mm(-8), toSmall: mm(76) },
      '100 mm',
    );
    expect(found.halfDegrees).toBeCloseTo(2.866, 3);
  });
});

describe('exact where the slope is', () => {
  test('size anywhere is the big end less its share of the growth', () => {
    const found = cone(ends('.750 in', '.650 in'), '1.2 in');
    // .750 − .100 · .3/1.2 = .725
    expect(sameLength(sizeAt(found, lengthOf('.3 in')), lengthOf('.725 in'))).toBe(true);
  });

  test('inches and millimetres give the same text', () => {
    const inches = cone(ends('.7531 in', '.6502 in'), '1.21 in');
    const metric = cone(ends('19.12874 mm', '16.51508 mm'), '30.734 mm');
    expect(toText(sizeAt(inches, lengthOf('.5 in')))).toBe(toText(sizeAt(metric, lengthOf('12.7 mm'))));
  });
});

/** The lowest place along a cone's axis at which a ball of a radius touches its wall: by halving, no formula of tangents. */
function restingPlace(radius: number, wallAt: (along: number) => number, from: number, to: number): number {
  const room = (middle: number) => {
    let least = Infinity;
    for (let step = -4000; step <= 4000; step += 1) {
      const along = middle + (step / 4000) * radius * 1.001;
      least = Math.min(least, Math.hypot(along - middle, wallAt(along)));
    }
    return least;
  };
  let [low, high] = [from, to];
  for (let turn = 0; turn < 60; turn += 1) {
    const middle = (low + high) / 2;
    if (room(middle) > radius) low = middle;
    else high = middle;
  }
  return low;
}

const slopes = fc.double({ min: 0.01, max: 0.5, noNaN: true });

describe('by laying balls and rollers on a cone, without a formula of tangents', () => {
  test('two balls give the cone back that they were laid in', () => {
    fc.assert(
      fc.property(slopes, fc.double({ min: 4, max: 12, noNaN: true }), (slope, large) => {
        const mouth = 2 * large + 4;
        const small = large * 0.7;
        const wallAt = (down: number) => mouth / 2 - down * slope;
        const deep = mouth / slope;
        const [down, further] = [large, small].map((radius) => restingPlace(radius, wallAt, -radius, deep));
        const found = coneOf(
          {
            by: 'balls',
            large: mm(2 * large),
            small: mm(2 * small),
            toLarge: mm((down ?? 0) - large),
            toSmall: mm((further ?? 0) - small),
          },
          mm(1),
        );
        if (!found.ok) throw new Error(found.refusal.code);
        expect(Math.tan((found.value.halfDegrees * Math.PI) / 180)).toBeCloseTo(slope, 4);
        expect(floatMm(found.value.large)).toBeCloseTo(mouth, 2);
      }),
      { numRuns: 12 },
    );
  });

  test('rollers on the plate and on blocks give the cone back that they were laid on', () => {
    fc.assert(
      fc.property(slopes, fc.double({ min: 8, max: 40, noNaN: true }), (slope, small) => {
        const radius = 5;
        // A roller so high touches where the distance to the flank is least: found by stepping along the flank.
        const middleAt = (high: number) => {
          let [low, far] = [0, 200];
          for (let turn = 0; turn < 60; turn += 1) {
            const middle = (low + far) / 2;
            let least = Infinity;
            for (let step = -3000; step <= 3000; step += 1) {
              const up = high + (step / 3000) * radius * 1.2;
              least = Math.min(least, Math.hypot(middle - (small / 2 + up * slope), up - high));
            }
            const isInside = middle < small / 2 + high * slope;
            if (isInside || least < radius) low = middle;
            else far = middle;
          }
          return low;
        };
        const over = (raised: number) => 2 * (middleAt(radius + raised) + radius);
        const found = coneOf(
          { by: 'rollers', roller: mm(2 * radius), block: mm(30), low: mm(over(0)), high: mm(over(30)) },
          mm(50),
        );
        if (!found.ok) throw new Error(found.refusal.code);
        expect(Math.tan((found.value.halfDegrees * Math.PI) / 180)).toBeCloseTo(slope, 4);
        expect(floatMm(found.value.small)).toBeCloseTo(small, 2);
      }),
      { numRuns: 12 },
    );
  });
});

describe('how far the readings prove it', () => {
  const micrometer = usualTools.find(({ id }) => id === 'micrometer-0-1');
  const caliper = usualTools.find(({ id }) => id === 'digital-caliper');
  const read = (tool: typeof caliper): TaperKnown => ({
    by: 'diameters',
    large: typedEstimate(lengthOf('.750 in'), tool),
    small: typedEstimate(lengthOf('.650 in'), tool),
  });

  test('a caliper proves less than a third of what a micrometer does; the drawing’s own sizes have no band', () => {
    const fine = cone(read(micrometer), '1 in').known;
    const coarse = cone(read(caliper), '1 in').known;
    if (!fine || !coarse) throw new Error('both are read');
    expect(floatMm(coarse.overLength)).toBeGreaterThan(3 * floatMm(fine.overLength));
    expect(coarse.minutes).toBeGreaterThan(3 * fine.minutes);
    expect(cone(ends('.750 in', '.650 in'), '1 in').known).toBeUndefined();
  });

  test('the band in minutes is that of the growth, moved by it: atan by hand', () => {
    const { known, slope } = cone(read(micrometer), '1 in');
    if (!known) throw new Error('read');
    const angle = (rise: number) => (2 * Math.atan(rise / (2 * 25.4)) * 180 * 60) / Math.PI;
    const moved = angle(floatMm(slope.rise) + floatMm(known.overLength)) - angle(floatMm(slope.rise));
    expect(known.minutes).toBeCloseTo(moved, 3);
  });

  // Moving every reading by a step and working the cone again: no formula of derivatives.
  test.each([0.05, 0.2, 0.6])(
    'balls: the band goes by what each reading moves the growth, sin %d',
    (sine) => {
      const at = (tool: typeof caliper, by: Partial<Record<'large' | 'toSmall', number>> = {}) => {
        const apart = 4 / sine;
        const [large, toSmall] = [20 + (by.large ?? 0), apart + 4 + (by.toSmall ?? 0)];
        const size = (one: number) => typedEstimate(lengthOf(`${one.toFixed(6)} mm`), tool);
        return cone(
          { by: 'balls', large: size(large), small: size(12), toLarge: size(0), toSmall: size(toSmall) },
          '10 mm',
        );
      };
      const growth = (found: ReturnType<typeof at>) => floatMm(found.slope.rise);
      const plain = at(undefined);
      const step = 0.0005;
      const byBall = Math.abs(growth(at(undefined, { large: step })) - growth(plain)) / step;
      const byDepth = Math.abs(growth(at(undefined, { toSmall: step })) - growth(plain)) / step;
      const known = at(caliper).known;
      const bandOfOne = floatMm(cone(read(caliper), '1 in').known?.overLength ?? lengthOf('0 mm'));
      // Both differences are read by the caliper, each with the band of a difference.
      const byHand = Math.hypot(byBall * bandOfOne, byDepth * bandOfOne);
      expect(floatMm(known?.overLength ?? lengthOf('0 mm')) / byHand).toBeGreaterThan(0.9);
      expect(floatMm(known?.overLength ?? lengthOf('0 mm')) / byHand).toBeLessThan(1.15);
    },
  );
});

describe('what is refused', () => {
  test.each([
    ['ends the wrong way round', ends('.650 in', '.750 in'), 'not-larger'],
    ['a plain cylinder', ends('.650 in', '.650 in'), 'not-larger'],
    [
      'no growth',
      { by: 'slope', large: exactly('1 in'), slope: { rise: lengthOf('0 in'), over: lengthOf('1 in') } },
      'no-slope',
    ],
    ['a face', { by: 'angle', large: exactly('9 in'), includedDegrees: 171 }, 'too-steep'],
    [
      'small end up',
      { by: 'rollers', roller: mm(5), block: mm(30), low: mm(40), high: mm(39) },
      'rollers-fall',
    ],
    ['no blocks', { by: 'rollers', roller: mm(5), block: mm(0), low: mm(40), high: mm(41) }, 'no-block'],
    [
      'balls alike',
      { by: 'balls', large: mm(5), small: mm(5), toLarge: mm(0), toSmall: mm(9) },
      'balls-alike',
    ],
    [
      'balls that touch',
      { by: 'balls', large: mm(20), small: mm(12), toLarge: mm(0), toSmall: mm(7.9) },
      'balls-deep',
    ],
  ] satisfies readonly (readonly [string, TaperKnown, string])[])('%s', (_name, known, code) => {
    expect(refused(known)).toBe(code);
  });

  test('a taper without a length', () => {
    expect(refused(ends('.75 in', '.65 in'), '0 in')).toBe('no-length');
  });
});
