import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { finest } from '../../../../src/engine/length/finest.ts';
import {
  exactDecimalText,
  floatMm,
  lengthOf,
  zero,
  type Length,
} from '../../../../src/engine/length/length.ts';
import { bandOf, typedEstimate } from '../../../../src/engine/reading/estimate.ts';
import { usualTools } from '../../../../src/engine/reading/measuring-tool.ts';
import { checksOfPlate } from '../../../../src/engine/worksheets/adapter-plate/checks-of-plate.ts';
import { cutsOfPlate } from '../../../../src/engine/worksheets/adapter-plate/cuts-of-plate.ts';
import { drillingOrder } from '../../../../src/engine/worksheets/adapter-plate/drilling-order.ts';
import { adapterPlate, type PlateAnswer } from '../../../../src/engine/worksheets/adapter-plate/plate.ts';
import type {
  PatternAsked,
  PlateQuestion,
} from '../../../../src/engine/worksheets/adapter-plate/plate-question.ts';
import { sayPlateRefusal } from '../../../../src/engine/worksheets/adapter-plate/say-plate.ts';
import { readReference } from '../../../reference/read-csv.ts';

const inches = (text: string): Length => lengthOf(`${text} in`);
const known = (text: string) => typedEstimate(inches(text));
const inInches = (size: Length) => Number(exactDecimalText(size, 'in'));

const circle = (count: number, across: string, hole: string, startDegrees = 0): PatternAsked => ({
  known: { by: 'circle', count, across: known(across), startDegrees },
  hole: inches(hole),
});
const points = (hole: string, ...at: readonly (readonly [string, string])[]): PatternAsked => ({
  known: { by: 'points', count: at.length, points: at.map(([x, y]) => ({ x: known(x), y: known(y) })) },
  hole: inches(hole),
});
const onMiddle = { shift: { x: zero, y: zero } };

/** Five on 4.500 and four on 5.500 in a plate of 7.250. */
const wheel: PlateQuestion = {
  a: circle(5, '4.5', '17/32'),
  b: { ...circle(4, '5.5', '1/2'), ...onMiddle },
  outline: { is: 'round', across: known('7.25') },
  zero: 'middle',
  within: inches('.003'),
  finest: finest.in,
};

function answered(more: Partial<PlateQuestion> = {}): PlateAnswer {
  const answer = adapterPlate({ ...wheel, ...more });
  if (!answer.ok) throw new Error(answer.refusal.code);
  return answer.value;
}

function saidOf(more: Partial<PlateQuestion>): string {
  const answer = adapterPlate({ ...wheel, ...more });
  return answer.ok ? 'no refusal' : sayPlateRefusal(answer.refusal, 'in');
}

const judgedOf = (answer: PlateAnswer, of: string) => answer.judged.find((place) => place.of === of);
const setOf = ({ holes }: PlateAnswer, name: string) => {
  const hole = holes.find((one) => one.name === name);
  return hole && [inInches(hole.set.x), inInches(hole.set.y)];
};

describe('five on 4.5 and four on 5.5', () => {
  const answer = answered();

  test('a turn that nobody said is 9°, half of the 18° that five and four come round to', () => {
    // A at 0, 72 …, B at 0, 90 …: in line they stand .500 apart from middle to middle. 360 ÷ 20 is 18, half of that 9.
    expect([answer.turnIsWorkedOut, answer.b?.turnDegrees]).toEqual([true, 9]);
  });

  test('the web is √(2.25² + 2.75² − 2 · 2.25 · 2.75 · cos 9°) less half of both holes', () => {
    // 5.0625 + 7.5625 − 12.375 · .9876883 = .4023568; its root .6343160, less .515625 is .118691. Least .6 · 1.03125 = .61875.
    const web = judgedOf(answer, 'web')?.judged;
    expect(web && inInches(web.value)).toBeCloseTo(0.118691, 5);
    expect(web?.limits.lower && inInches(web.limits.lower)).toBeCloseTo(0.61875, 9);
    expect(web?.verdict.kind).toBe('no-good');
  });

  test('nothing is cut while too little is left', () => {
    expect(cutsOfPlate(answer, 'in')).toEqual([]);
  });
});

/** Four on 4 and four on 7, which leave enough. */
const wide: Partial<PlateQuestion> = {
  a: circle(4, '4', '17/32'),
  b: { ...circle(4, '7', '1/2'), ...onMiddle },
  outline: { is: 'round', across: known('9') },
};

describe('four on 4 and four on 7', () => {
  const answer = answered(wide);

  test('are not turned: 1.5 from middle to middle leaves .984, and .619 is wanted', () => {
    expect(answer.b?.turnDegrees).toBe(0);
    const web = judgedOf(answer, 'web')?.judged;
    expect(web && inInches(web.value)).toBeCloseTo(1.5 - (17 / 32 + 0.5) / 2, 9);
    expect(web?.verdict.kind).toBe('good');
  });

  test('the edge is 4.5 − 3.5 − .25', () => {
    const edge = judgedOf(answer, 'edge')?.judged;
    expect(edge && inInches(edge.value)).toBe(0.75);
    expect(edge?.limits.lower && inInches(edge.limits.lower)).toBeCloseTo(0.35, 9);
  });

  test.each([
    { zero: 'middle', name: 'A1', at: [2, 0] },
    { zero: 'middle', name: 'B2', at: [0, 3.5] },
    { zero: 'edges', name: 'A1', at: [6.5, 4.5] },
    { zero: 'edges', name: 'B3', at: [1, 4.5] },
    { zero: 'first-hole', name: 'A1', at: [0, 0] },
    { zero: 'first-hole', name: 'A2', at: [-2, 2] },
  ] as const)('from $zero hole $name is set to $at', ({ zero: from, name, at }) => {
    expect(setOf(answered({ ...wide, zero: from }), name)).toEqual(at);
  });

  test('every hole is a cut of its own with its place, H13 wide by ISO 286', () => {
    const [way] = cutsOfPlate(answer, 'in');
    const offers = way?.offers ?? [];
    expect(offers.map(({ name }) => name).toSorted()).toEqual(
      ['A1', 'A2', 'A3', 'A4', 'B1', 'B2', 'B3', 'B4'].map((name) => `Hole ${name}`),
    );
    expect(offers.map(({ drill }) => drill)).toEqual([...Array(4).fill('1/2'), ...Array(4).fill('17/32')]);
    const row = readReference('iso286_it.csv').find(
      (one) =>
        one.cell('grade') === 'IT13' &&
        Number(one.cell('over_mm')) < 12.7 &&
        Number(one.cell('up_to_mm')) >= 12.7,
    );
    const [first] = offers;
    expect(first && floatMm(first.upper) - floatMm(first.lower)).toBeCloseTo(
      Number(row?.cell('tolerance_um')) / 1000,
      9,
    );
    for (const { name, at } of offers) {
      const hole = answer.holes.find((one) => `Hole ${one.name}` === name);
      expect(at).toEqual(hole?.set);
    }
  });

  test('are drilled one size after the other, each from left to right', () => {
    expect(drillingOrder(answer.holes).map(({ name }) => name)).toEqual([
      'B3',
      'B4',
      'B2',
      'B1',
      'A3',
      'A4',
      'A2',
      'A1',
    ]);
  });

  test('is proved by holes over pins: neighbours 2√2, opposite 4, the fourth from the second 4, each ± .006', () => {
    const checks = checksOfPlate({ ...wheel, ...wide }, answer);
    const limits = checks
      .filter(({ by }) => by !== 'by-eye')
      .map(({ name, limits: { lower, upper } }) => [
        name,
        lower && Number(inInches(lower).toFixed(4)),
        upper && Number(inInches(upper).toFixed(4)),
      ]);
    expect(limits).toEqual([
      ['A1 to A2', 2.8224, 2.8344],
      ['A1 to A3', 3.994, 4.006],
      ['A2 to A4, the fourth hole', 3.994, 4.006],
      ['B1 to B2', 4.9437, 4.9557],
      ['B1 to B3', 6.994, 7.006],
      ['B2 to B4, the fourth hole', 6.994, 7.006],
      // 4.5 − 2 − .265625
      ['A1 from the nearest edge', 2.2314, 2.2374],
    ]);
  });
});

describe('bands', () => {
  const caliper = usualTools.find(({ id }) => id === 'digital-caliper');
  if (!caliper) throw new Error('no caliper');

  test('half of what is not known of the plate’s width counts at its edge, and .003 for the hole', () => {
    const across = typedEstimate(inches('9'), caliper);
    const edge = judgedOf(answered({ ...wide, outline: { is: 'round', across } }), 'edge')?.judged;
    const expected = floatMm(bandOf(across).halfWidth) / 2 + 0.003 * 25.4;
    expect(edge && floatMm(edge.halfWidth)).toBeCloseTo(expected, 6);
  });

  test('of a web between two circles in line, half of what is not known of each', () => {
    const [four, seven] = [typedEstimate(inches('4'), caliper), typedEstimate(inches('7'))];
    const a: PatternAsked = {
      known: { by: 'circle', count: 4, across: four, startDegrees: 0 },
      hole: inches('17/32'),
    };
    const b = {
      known: { by: 'circle' as const, count: 4, across: seven, startDegrees: 0 },
      hole: inches('1/2'),
      ...onMiddle,
    };
    const web = judgedOf(answered({ ...wide, a, b }), 'web')?.judged;
    expect(web && floatMm(web.halfWidth)).toBeCloseTo(
      floatMm(bandOf(four).halfWidth) / 2 + 2 * 0.003 * 25.4,
      6,
    );
  });

  test('a web no wider than what two holes may be off its least is too close to call', () => {
    // 3 and 4 from middle to middle 5; less .5 is 4.5. Own least 4.497: .003 over, and .006 may be off.
    const two = points('1/2', ['0', '0'], ['3', '4']);
    const web = judgedOf(
      answered({ a: two, b: undefined, outline: { is: 'none' }, ownWeb: inches('4.497') }),
      'web',
    )?.judged;
    expect(web && inInches(web.value)).toBe(4.5);
    expect(web?.verdict.kind).toBe('too-close');
    expect(
      judgedOf(answered({ a: two, b: undefined, outline: { is: 'none' }, ownWeb: inches('4.494') }), 'web')
        ?.judged.verdict.kind,
    ).toBe('good');
  });
});

describe('a rectangle', () => {
  const plate = (more: Partial<Extract<PlateQuestion['outline'], { is: 'rectangle' }>> = {}) =>
    answered({
      a: points('1/4', ['0', '0'], ['2', '1']),
      b: undefined,
      zero: 'edges',
      outline: { is: 'rectangle', wide: known('6'), high: known('4'), ...more },
    });

  test('has its middle half way; the nearest of its four edges counts', () => {
    // A at 3 and 2. Its second hole at 5 and 3: 1 from the right edge, 1 from the upper one, less .125.
    expect(setOf(plate(), 'A2')).toEqual([5, 3]);
    const edge = judgedOf(plate(), 'edge');
    expect([edge?.where, edge && inInches(edge.judged.value)]).toEqual(['A2', 0.875]);
  });

  test('stands where it is said to: .75 from the left edge', () => {
    const answer = plate({ fromLeft: known('.75'), fromBelow: known('1.5') });
    expect(setOf(answer, 'A1')).toEqual([0.75, 1.5]);
    const edge = judgedOf(answer, 'edge');
    expect([edge?.where, edge && inInches(edge.judged.value)]).toEqual(['A1', 0.625]);
  });
});

describe('whatever the plate', () => {
  test('turning both patterns together leaves every web, edge and verdict as it was', () => {
    const quarterInches = fc.integer({ min: 12, max: 32 });
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 8 }),
        fc.integer({ min: 3, max: 8 }),
        quarterInches,
        quarterInches,
        fc.integer({ min: -180, max: 180 }),
        fc.integer({ min: 0, max: 90 }),
        (countA, countB, acrossA, acrossB, both, turnDegrees) => {
          const of = (start: number) =>
            adapterPlate({
              ...wheel,
              a: circle(countA, String(acrossA / 4), '1/4', start),
              b: { ...circle(countB, String(acrossB / 4), '1/4', start), ...onMiddle, turnDegrees },
              outline: { is: 'round', across: known('12') },
            });
          const [now, turned] = [of(0), of(both)];
          expect(turned.ok).toBe(now.ok);
          if (!now.ok || !turned.ok) return;
          const left = ({ judged }: PlateAnswer) =>
            judged.map(({ of: sort, judged: { value, verdict } }) => [
              sort,
              inInches(value).toFixed(6),
              verdict.kind,
            ]);
          expect(left(turned.value)).toEqual(left(now.value));
        },
      ),
      { numRuns: 40 },
    );
  });

  test('another zero moves every hole alike and leaves what is left between them', () => {
    const [middle, edges] = [answered(wide), answered({ ...wide, zero: 'edges' })];
    const far = middle.holes.map(({ name }) => {
      const [[x = 0, y = 0] = [], [toX = 0, toY = 0] = []] = [setOf(middle, name), setOf(edges, name)];
      return [toX - x, toY - y];
    });
    expect(new Set(far.map(String)).size).toBe(1);
    expect(edges.judged.map(({ judged }) => judged.value)).toEqual(
      middle.judged.map(({ judged }) => judged.value),
    );
  });
});

describe('is refused in the fitter’s words', () => {
  test.each([
    [
      'holes that run into each other, with the turn that parts them',
      { b: { ...circle(5, '4.75', '1/2'), ...onMiddle, turnDegrees: 0 } },
      // 2.375 − 2.25 = .125 apart; .515625 − .125 = .390625. Five and five part best at 36°.
      'Holes A1 and B1 run .3906 in into each other. Turn B to 36°.',
    ],
    [
      'a hole off the plate',
      { outline: { is: 'round', across: known('5.9') }, b: undefined, a: circle(5, '5.5', '1/2') },
      // 2.75 + .25 − 2.95
      'Hole A1 runs .050 in over the edge. Take a larger plate.',
    ],
    [
      'a hole that runs into the middle one',
      { a: circle(5, '4.5', '1/2'), b: undefined, bore: inches('4.2') },
      // 2.1 + .25 − 2.25
      'Hole A1 runs .100 in into the middle hole. Make that smaller.',
    ],
    [
      'three measured holes in a line',
      {
        a: {
          known: {
            by: 'three',
            count: 3,
            over: { first: known('1'), second: known('1'), across: known('2') },
            startDegrees: 0,
          },
          hole: inches('1/4'),
        },
        b: undefined,
      },
      'Holes 1, 2 and 3 of A stand in a line: no circle goes through them.',
    ],
    [
      'a counterbore no wider than its hole',
      { a: { ...circle(4, '4', '1/2'), head: { across: inches('.5') } }, b: undefined },
      'Counterbore .500 in of A is no wider than its hole, .500 in.',
    ],
    [
      'a counterbore through the plate',
      {
        a: { ...circle(4, '4', '1/2'), head: { across: inches('.8'), deep: inches('.5') } },
        b: undefined,
        thick: known('.5'),
      },
      'Counterbore of A, .500 in deep, goes through .500 in of plate.',
    ],
    [
      'a zero at edges that there are none of',
      { zero: 'edges', outline: { is: 'none' } },
      'Without an edge nothing can be set from one. Give the plate, or another zero.',
    ],
  ] as readonly (readonly [string, Partial<PlateQuestion>, string])[])('%s', (_name, more, said) => {
    expect(saidOf(more)).toBe(said);
  });
});

describe('counterbores', () => {
  const sunk = (across: string, deep: string) =>
    answered({
      a: { ...circle(4, '4', '17/32'), head: { across: inches(across), deep: inches(deep) } },
      b: undefined,
      thick: known('.75'),
      outline: { is: 'round', across: known('5.2') },
    });

  test('the floor is thickness less depth, and half the hole is wanted under a head', () => {
    const floor = judgedOf(sunk('.8', '.5'), 'floor')?.judged;
    expect(floor && inInches(floor.value)).toBe(0.25);
    expect(floor?.verdict.kind).toBe('no-good');
    expect(judgedOf(sunk('.8', '.45'), 'floor')?.judged.verdict.kind).toBe('good');
  });

  test('beside a head 2.6 − 2 − .4 is left to the edge', () => {
    const head = judgedOf(sunk('.8', '.45'), 'head');
    expect([head?.where, head && inInches(head.judged.value).toFixed(6)]).toEqual([
      'A1 to the edge',
      '0.200000',
    ]);
  });

  test('each is a cut to its depth, behind the holes', () => {
    const [way] = cutsOfPlate(
      answered({
        a: { ...circle(4, '4', '17/32'), head: { across: inches('.8'), deep: inches('.3') } },
        b: undefined,
      }),
      'in',
    );
    expect(way?.offers.map(({ name }) => name.split(' ')[0])).toEqual([
      ...Array(4).fill('Hole'),
      ...Array(4).fill('Counterbore'),
    ]);
  });
});
