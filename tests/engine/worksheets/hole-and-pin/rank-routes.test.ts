import { describe, expect, test } from 'vitest';
import type { Route } from '../../../../src/engine/worksheets/hole-and-pin/hole-and-pin-routes.ts';
import { lengthOf } from '../../../../src/engine/length/length.ts';
import { bendingLeft, rankRoutes } from '../../../../src/engine/worksheets/hole-and-pin/rank-routes.ts';

const route = (
  kind: Route['kind'],
  state: Route['state'],
  irreversibleSteps: number,
  takes: string,
): Route => ({
  kind,
  state,
  why: [],
  steps: [],
  takes: lengthOf(`${takes} in`),
  irreversibleSteps,
});
const order = (...routes: readonly Route[]) =>
  rankRoutes(routes, lengthOf('.400 in')).map(({ kind }) => kind);
const turned = (from: string, to: string): Route => ({
  ...route('sleeve', 'in', 2, '0'),
  turnsPin: { from: lengthOf(`${from} in`), to: lengthOf(`${to} in`) },
});

test('a route ruled out comes last even if it would take nothing', () => {
  expect(order(route('leave', 'out', 0, '0'), route('bushing', 'in', 2, '.1'))).toEqual(['bushing', 'leave']);
});

test('fewer steps that can’t be undone come first, even if they take more metal', () => {
  expect(order(route('bushing', 'in', 2, '.01'), route('thread-insert', 'in', 1, '.05'))).toEqual([
    'thread-insert',
    'bushing',
  ]);
});

test('with as many steps, the route that leaves more metal comes first', () => {
  expect(order(route('bushing', 'in', 2, '.057'), route('larger-pin', 'in', 2, '.013'))).toEqual([
    'larger-pin',
    'bushing',
  ]);
});

test('a question still open does not push a route behind one with more steps', () => {
  expect(order(route('bushing', 'in', 2, '.05'), route('thread-insert', 'ask', 1, '.05'))).toEqual([
    'thread-insert',
    'bushing',
  ]);
});

describe('metal off the pin counts like metal off the part, by the cube of its size', () => {
  test('.437 turned to .403 keeps 78 % of its strength in bending', () => {
    // (.403 / .437)³ = .92220³ = .7843
    const left = bendingLeft({ from: lengthOf('.437 in'), to: lengthOf('.403 in') });
    expect(left).toBeCloseTo(0.7843, 4);
  });

  test('that is more than a bushing takes of the wall, .057 of .400 = 14 %: it comes after it', () => {
    expect(order(turned('.437', '.403'), route('bushing', 'in', 2, '.057'))).toEqual(['bushing', 'sleeve']);
  });

  test('turned by a thou it keeps 99 %, and comes first', () => {
    // 1 − (.436/.437)³ = .7 %
    expect(order(route('bushing', 'in', 2, '.057'), turned('.437', '.436'))).toEqual(['sleeve', 'bushing']);
  });

  test('where both lose metal, both count', () => {
    // .0228 of .400 is 5.7 %; .437 to .430 loses 4.7 %: 10.4 % in all, more than the 6.25 % of .025
    const both = { ...turned('.437', '.430'), takes: lengthOf('.0228 in') };
    expect(order(both, route('bushing', 'in', 2, '.025'))).toEqual(['bushing', 'sleeve']);
    expect(order(turned('.437', '.430'), route('bushing', 'in', 2, '.025'))).toEqual(['sleeve', 'bushing']);
  });
});
