import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { floatMm, isNegative, lengthOf, sameLength } from '../../../../src/engine/length/length.ts';
import { usualTools } from '../../../../src/engine/reading/measuring-tool.ts';
import { typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import { alignment, type OutfitQuestion } from '../../../../src/engine/worksheets/alignment/alignment.ts';
import { leanOut, outOfPlumb } from '../../../../src/engine/worksheets/alignment/lean.ts';
import {
  squareAxle,
  twoAxles,
  type AxleAsked,
} from '../../../../src/engine/worksheets/alignment/square-axle.ts';
import { goesIn, inTurns, moveForToe, toeIn } from '../../../../src/engine/worksheets/alignment/toe.ts';

const exactly = (text: string) => typedEstimate(lengthOf(text));
const mm = (size: number) => exactly(`${size.toFixed(9)} mm`);
const source = 'common practice, no source';
const tape = usualTools.find(({ id }) => id === 'tape-measure');

const toeOf = (front: string, rear: string, want = ['.375 in', '.75 in']) =>
  toeIn({
    front: exactly(front),
    rear: exactly(rear),
    apart: exactly('60 in'),
    want: { lower: lengthOf(want[0] ?? ''), upper: lengthOf(want[1] ?? ''), source },
  });

describe('toe-in over two straight edges', () => {
  test('is what they are closer in front; 41.125 behind, 41 in front: .125', () => {
    const { judged, lacks } = toeOf('41 in', '41.125 in');
    expect(sameLength(judged.value, lengthOf('.125 in'))).toBe(true);
    expect(judged.verdict).toMatchObject({ kind: 'no-good', way: 'under' });
    // Half-way between .375 and .75 is .5625.
    expect(sameLength(lacks, lengthOf('.4375 in'))).toBe(true);
  });

  test('wider in front is toe-out, below zero', () => {
    expect(isNegative(toeOf('41.25 in', '41 in').judged.value)).toBe(true);
  });

  // One degree is 1.047 in 60, as 60 · sin 1°: a service table's 5/8 in 36 is 1° (sine .01736 against .01745).
  test('5/8 over 36 is a degree', () => {
    const { degrees } = toeIn({
      front: exactly('30 in'),
      rear: exactly('30.625 in'),
      apart: exactly('36 in'),
      want: { lower: lengthOf('0 in'), upper: lengthOf('1 in'), source },
    });
    expect(degrees).toBeCloseTo(1, 1);
  });

  test('moved by what is said, the toe-in is what was aimed at: the sidecar turned point by point', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 30, noNaN: true }),
        fc.double({ min: 300, max: 900, noNaN: true }),
        (now, fittings) => {
          const apart = 1500;
          const toe = toeIn({
            front: mm(1000),
            rear: mm(1000 + now),
            apart: mm(apart),
            want: { lower: lengthOf('10 mm'), upper: lengthOf('20 mm'), source },
          });
          const by = floatMm(moveForToe(toe, { turnsOver: mm(fittings), apart: mm(apart) }).by);
          // The straight edge on the sidecar is turned with it about the rear fitting: two points of it, before and after.
          const turn = Math.asin(by / fittings);
          const edge = (along: number) => along * Math.sin(turn);
          const after = now + (edge(apart) - edge(0));
          expect(after).toBeCloseTo(15, 1);
        },
      ),
      { numRuns: 50 },
    );
  });

  test('lacking toe-in the front fitting goes in or the rear one out; with too much the other way', () => {
    const lacking = moveForToe(toeOf('41 in', '41.125 in'), {
      turnsOver: exactly('22 in'),
      apart: exactly('60 in'),
    });
    const tooMuch = moveForToe(toeOf('41 in', '42 in'), {
      turnsOver: exactly('22 in'),
      apart: exactly('60 in'),
    });
    expect([goesIn(lacking, 'front'), goesIn(lacking, 'rear')]).toEqual([true, false]);
    expect([goesIn(tooMuch, 'front'), goesIn(tooMuch, 'rear')]).toEqual([false, true]);
    // .4375 · 22 / 60
    expect(floatMm(lacking.by) / 25.4).toBeCloseTo((0.4375 * 22) / 60, 9);
  });

  test('turns: a 1/20 in pitch takes twenty to the inch, a turnbuckle of it ten', () => {
    const move = { by: lengthOf('.25 in'), halfWidth: lengthOf('0 in') };
    const pitch = lengthOf('.05 in');
    expect(inTurns(move, pitch, 'screw').turns).toBeCloseTo(5, 9);
    expect(inTurns(move, pitch, 'turnbuckle').turns).toBeCloseTo(2.5, 9);
    expect(inTurns(move, pitch, 'shim').turns).toBeUndefined();
  });

  test('read by a tape the band goes over to the fitting on the same scale', () => {
    const read = (size: string) => typedEstimate(lengthOf(size), tape);
    const toe = toeIn({
      front: read('41 in'),
      rear: read('41.125 in'),
      apart: exactly('60 in'),
      want: { lower: lengthOf('.375 in'), upper: lengthOf('.75 in'), source },
    });
    const move = moveForToe(toe, { turnsOver: exactly('22 in'), apart: exactly('60 in') });
    expect(floatMm(move.halfWidth)).toBeCloseTo((floatMm(toe.judged.halfWidth) * 22) / 60, 6);
    expect(floatMm(move.halfWidth)).toBeGreaterThan(0);
  });
});

describe('lean-out', () => {
  const want = { lower: 0.5, upper: 3, source };

  test('inside is good, outside is not, and near a limit the level can’t tell', () => {
    const kind = (degrees: number) => leanOut({ degrees, withinDegrees: 0.2, want }).verdict.kind;
    expect([kind(-1), kind(0.6), kind(1.5), kind(3.5)]).toEqual(['no-good', 'too-close', 'good', 'no-good']);
  });

  test('the strut is as long as from its fitting, turned about the lower ones, to its foot: by coordinates', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -5, max: 5, noNaN: true }),
        fc.double({ min: 200, max: 800, noNaN: true }),
        fc.double({ min: 200, max: 900, noNaN: true }),
        (degrees, up, across) => {
          const found = leanOut({
            degrees,
            withinDegrees: 0.2,
            want,
            strut: { up: mm(up), across: mm(across) },
          });
          // Away from the sidecar is to the left of upright; the foot lies to the right.
          const long = (lean: number) => {
            const angle = (lean * Math.PI) / 180;
            return Math.hypot(across + up * Math.sin(angle), up * Math.cos(angle));
          };
          expect(floatMm(found.strut?.by ?? lengthOf('0 mm'))).toBeCloseTo(long(1.75) - long(degrees), 6);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('a plumb line 1 m up hangs 17.455 mm off at 1° (tangent .017455, textbooks’ tables)', () => {
    expect(floatMm(outOfPlumb(1, lengthOf('1000 mm')))).toBeCloseTo(17.455, 3);
  });
});

const axleOf = (more: Partial<AxleAsked> & Pick<AxleAsked, 'left' | 'right'>): AxleAsked => ({
  track: exactly('60 in'),
  within: lengthOf('.125 in'),
  withinFrom: source,
  ...more,
});

function square(q: AxleAsked) {
  const found = squareAxle(q);
  if (!found.ok) throw new Error(found.refusal.code);
  return found.value;
}

describe('an axle square to its coupling', () => {
  test('the same diagonals are square: 100 and 100 over 60 reach √(100² − 30²) = 95.394', () => {
    const found = square(axleOf({ left: exactly('100 in'), right: exactly('100 in') }));
    expect(found.judged.verdict.kind).toBe('good');
    expect(found.degrees).toBe(0);
    expect(floatMm(found.reach) / 25.4).toBeCloseTo(Math.sqrt(100 ** 2 - 30 ** 2), 8);
  });

  test('laid out by coordinates, turned and off the middle, it is found as it was laid', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: -40, max: 40, noNaN: true }),
        fc.double({ min: 1200, max: 2200, noNaN: true }),
        (degrees, off, track) => {
          const reach = 2600;
          const turn = (degrees * Math.PI) / 180;
          // Coupling at nothing, running away from the axle: its left end back is further from the coupling.
          const end = (side: -1 | 1) => [
            off + (side * track * Math.cos(turn)) / 2,
            reach - (side * track * Math.sin(turn)) / 2,
          ];
          const far = (side: -1 | 1) => Math.hypot(...end(side));
          const found = square(
            axleOf({
              left: mm(far(-1)),
              right: mm(far(1)),
              track: mm(track),
              seats: mm(1000),
              sides: { left: mm(100 - off), right: mm(100 + off) },
            }),
          );
          expect(found.degrees).toBeCloseTo(degrees, 5);
          expect(floatMm(found.slide.by)).toBeCloseTo(1000 * Math.abs(Math.sin(turn)), 4);
          // Square to a thousandth of a degree it is neither's.
          const side = degrees >= 0 ? 'left' : 'right';
          expect(Math.abs(degrees) < 0.001 ? side : found.slide.side).toBe(side);
        },
      ),
      { numRuns: 80 },
    );
  });

  test('an axle that stands aside and square is square once both sides were read, and isn’t taken for turned', () => {
    const [left, right] = [Math.hypot(29, 95), Math.hypot(31, 95)].map((size) => mm(size * 25.4));
    if (!left || !right) throw new Error('two');
    const blind = square(axleOf({ left, right }));
    const sides = { left: exactly('3 in'), right: exactly('5 in') };
    const seeing = square(axleOf({ left, right, sides }));
    expect(blind.judged.verdict.kind).toBe('no-good');
    expect(seeing.judged.verdict.kind).toBe('good');
    expect(seeing.degrees).toBeCloseTo(0, 5);
  });

  test('half an inch on the left diagonal: the left end slides forward', () => {
    const found = square(axleOf({ left: exactly('100.5 in'), right: exactly('100 in') }));
    expect(found.judged.verdict.kind).toBe('no-good');
    expect(found.slide.side).toBe('left');
    // (100.5² − 100²) / (2 · reach), reach by Apollonius
    const reach = Math.sqrt(2 * 100.5 ** 2 + 2 * 100 ** 2 - 60 ** 2) / 2;
    expect(floatMm(found.slide.by) / 25.4).toBeCloseTo((100.5 ** 2 - 100 ** 2) / (2 * reach), 7);
  });

  test('diagonals that make no triangle with the axle are refused', () => {
    expect(squareAxle(axleOf({ left: exactly('20 in'), right: exactly('30 in') })).ok).toBe(false);
    expect(squareAxle(axleOf({ left: exactly('100 in'), right: exactly('161 in') })).ok).toBe(false);
  });

  test('two axles a quarter apart on the left: the rear one slides a quarter of that between the seats', () => {
    const found = twoAxles(
      { left: exactly('34.25 in'), right: exactly('34 in') },
      { track: exactly('80 in'), seats: exactly('40 in'), within: lengthOf('.125 in'), withinFrom: source },
    );
    expect(found.slide.side).toBe('left');
    // .25 · 40/80
    expect(sameLength(found.slide.by, lengthOf('.125 in'))).toBe(true);
  });
});

describe('as a whole', () => {
  const outfit = (more: Partial<OutfitQuestion> = {}): OutfitQuestion => ({
    of: 'outfit',
    toe: {
      front: exactly('41 in'),
      rear: exactly('41.125 in'),
      apart: exactly('60 in'),
      want: { lower: lengthOf('.375 in'), upper: lengthOf('.75 in'), source },
    },
    fittings: exactly('22 in'),
    moves: 'front',
    adjuster: 'shim',
    ...more,
  });
  const refused = (q: OutfitQuestion) => {
    const found = alignment(q);
    return found.ok ? 'answered' : found.refusal.code;
  };

  test('limits the wrong way round, places or fittings that don’t lie apart are refused', () => {
    const { toe } = outfit();
    const crossed = { lower: lengthOf('1 in'), upper: lengthOf('.5 in'), source };
    expect(refused(outfit({ toe: { ...toe, want: crossed } }))).toBe('limits-crossed');
    expect(refused(outfit({ toe: { ...toe, apart: exactly('0 in') } }))).toBe('places-together');
    expect(refused(outfit({ fittings: exactly('0 in') }))).toBe('fittings-together');
    expect(refused(outfit())).toBe('answered');
  });

  test('a trailer’s wheels share what toe-in lacks: half behind each flange', () => {
    const found = alignment({
      of: 'trailer',
      axle: axleOf({ left: exactly('100 in'), right: exactly('100 in') }),
      toe: {
        front: exactly('60.25 in'),
        rear: exactly('60 in'),
        apart: exactly('30 in'),
        want: { lower: lengthOf('0 in'), upper: lengthOf('.125 in'), source },
        flange: exactly('4 in'),
      },
    });
    if (!found.ok || found.value.of !== 'trailer') throw new Error('a trailer');
    // Lacks .0625 + .25 = .3125 over 30; 4/30 of that, and half for each wheel.
    expect(floatMm(found.value.toe?.shim?.by ?? lengthOf('0 in')) / 25.4).toBeCloseTo(
      (0.3125 * 4) / 30 / 2,
      9,
    );
  });
});
