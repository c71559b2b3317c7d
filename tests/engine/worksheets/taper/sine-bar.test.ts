import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { floatMm, lengthOf, minus, plus, sum, toText, zero } from '../../../../src/engine/length/length.ts';
import { fewestBlocks } from '../../../../src/engine/worksheets/taper/fewest-blocks.ts';
import { sineStack } from '../../../../src/engine/worksheets/taper/sine-bar.ts';
import { blockSets, without } from '../../../../src/engine/worksheets/taper/tables/gauge-block-sets.ts';

const inches = blockSets['inch-81'];

test('sets hold as many blocks as they are called by', () => {
  expect(Object.entries(blockSets).map(([name, { blocks }]) => [name, blocks.length])).toEqual([
    ['inch-81', 81],
    ['metric-88', 88],
    ['metric-47', 47],
  ]);
});

describe('a sine bar', () => {
  test('of 5 in over .2520 stands at 2° 53′ 20″ (published: inspecting a taper by sine bar)', () => {
    const stack = sineStack({ bar: lengthOf('5 in'), degrees: 2 + 53 / 60 + 20 / 3600, onHand: inches });
    expect(floatMm(stack?.height ?? zero) / 25.4).toBeCloseTo(0.252, 4);
    expect(toText(minus(sum(stack?.high ?? []), stack?.low ?? zero))).toBe(toText(lengthOf('.252 in')));
  });

  // Sines of the textbooks' tables, to five places.
  test.each([
    [30, 0.5],
    [14.5, 0.25038],
    [45, 0.70711],
    [10, 0.17365],
  ])('of 100 mm at %d° stands %d of it high', (degrees, sine) => {
    const stack = sineStack({ bar: lengthOf('100 mm'), degrees, onHand: blockSets['metric-88'] });
    expect(floatMm(stack?.height ?? zero)).toBeCloseTo(100 * sine, 2);
    // Within half of what the set can tell.
    expect(Math.abs(floatMm(stack?.off ?? zero))).toBeLessThanOrEqual(0.00025);
  });

  test('too low for any block: one goes under the low roll too, and the difference is the height', () => {
    const stack = sineStack({ bar: lengthOf('5 in'), degrees: 0.25, onHand: inches });
    expect(stack?.low).toBeDefined();
    // 5 · sin .25° = .02182
    expect(floatMm(minus(sum(stack?.high ?? []), stack?.low ?? zero)) / 25.4).toBeCloseTo(0.0218, 6);
  });

  test('past 60° and without blocks there is no stack', () => {
    const bar = lengthOf('5 in');
    expect(sineStack({ bar, degrees: 61, onHand: inches })).toBeUndefined();
    expect(sineStack({ bar, degrees: 10, onHand: { blocks: [], finest: inches.finest } })).toBeUndefined();
  });

  test('a block that the set lacks is not taken', () => {
    const bar = lengthOf('5 in');
    const whole = sineStack({ bar, degrees: 30, onHand: inches });
    // 2.5 = 2 + .5
    expect(whole?.high.map(toText)).toEqual([toText(lengthOf('2 in')), toText(lengthOf('.5 in'))]);
    const less = sineStack({
      bar,
      degrees: 30,
      onHand: { ...inches, blocks: without(inches.blocks, [lengthOf('.5 in')]) },
    });
    expect(less?.high.map(toText)).not.toContain(toText(lengthOf('.5 in')));
    expect(toText(sum(less?.high ?? []))).toBe(toText(lengthOf('2.5 in')));
  });
});

describe('fewest blocks', () => {
  const half = lengthOf('.00005 in');
  const stand = (height: string) =>
    fewestBlocks({ blocks: inches.blocks, height: lengthOf(height), half, over: 'plate' })?.high ?? [];

  test('3.9762 takes four of the 81, as a published guide to choosing them does (.1002, .126, .750, 3.000)', () => {
    expect(stand('3.9762 in')).toHaveLength(4);
    expect(toText(sum(stand('3.9762 in')))).toBe(toText(lengthOf('3.9762 in')));
  });

  test('58.345 mm takes no more of the 88 than the five a published example takes of a larger set', () => {
    const found = fewestBlocks({
      blocks: blockSets['metric-88'].blocks,
      height: lengthOf('58.345 mm'),
      half: lengthOf('0.00025 mm'),
      over: 'plate',
    });
    // 50 + 6 + 1.34 + 1.005
    expect(found?.high).toHaveLength(4);
  });

  test('of any few blocks none does with fewer: every choice of them tried', () => {
    const sizes = fc.uniqueArray(fc.integer({ min: 1, max: 400 }), { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(
        sizes,
        fc.integer({ min: 1, max: 900 }),
        fc.integer({ min: 0, max: 4 }),
        (steps, height, near) => {
          const length = (step: number) => lengthOf(`${(step / 1000).toFixed(3)} mm`);
          const fewest = (over: 'plate' | 'block') => {
            const found = fewestBlocks({
              blocks: steps.map(length),
              height: length(height),
              half: length(near),
              over,
            });
            return found?.high.length;
          };
          const choices = Array.from({ length: 2 ** steps.length - 1 }, (_, mask) =>
            steps.filter((_one, place) => (((mask + 1) >> place) & 1) === 1),
          );
          const total = (high: readonly number[]) => high.reduce((so, one) => so + one, 0);
          const least = (counts: readonly number[]) => {
            const most5 = counts.filter((count) => count <= 5);
            return most5.length === 0 ? undefined : Math.min(...most5);
          };
          const direct = choices.filter((high) => Math.abs(total(high) - height) <= near);
          const raised = choices.filter((high) =>
            steps.some((low) => !high.includes(low) && Math.abs(total(high) - low - height) <= near),
          );
          expect(fewest('plate')).toBe(least(direct.map(({ length: count }) => count)));
          expect(fewest('block')).toBe(least(raised.map(({ length: count }) => count)));
        },
      ),
      { numRuns: 150 },
    );
  });

  test('each block once, and the nearest of as many', () => {
    const blocks = ['1', '2', '2', '5'].map((size) => lengthOf(`${size} mm`));
    const found = (height: string, near: string) =>
      fewestBlocks({ blocks, height: lengthOf(height), half: lengthOf(near), over: 'plate' })?.high.map(
        toText,
      );
    expect(found('4 mm', '0 mm')).toEqual(['2', '2']);
    expect(found('6.9 mm', '1 mm')).toEqual(['2', '5']);
    expect(found('11 mm', '0.1 mm')).toBeUndefined();
    expect(toText(plus(lengthOf('5 mm'), lengthOf('5 mm')))).toBe('10');
    expect(found('10 mm', '0 mm')).toEqual(['1', '2', '2', '5']);
  });
});
