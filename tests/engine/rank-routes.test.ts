import { expect, test } from 'vitest';
import type { Route } from '../../src/engine/hole-and-pin-routes.ts';
import { lengthOf } from '../../src/engine/length.ts';
import { rankRoutes } from '../../src/engine/rank-routes.ts';

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
const order = (...routes: readonly Route[]) => rankRoutes(routes).map(({ kind }) => kind);

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
