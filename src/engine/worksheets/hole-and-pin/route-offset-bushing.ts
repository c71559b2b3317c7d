import type { Route, RouteContext, RouteStep } from './hole-and-pin-routes.ts';
import { pressParts } from './hole-and-pin-limits.ts';
import { dividedBy, isZero, largest, minus, plus, times, zero, type Length } from '../../length/length.ts';
import { insideFor, leastBushing, type Inside } from './route-bushing.ts';
import { ask, judged, noCureNeeded, out, speaksFor, type Finding } from './route-findings.ts';
import { takenEachSide, wallFinding, wallLeft } from './route-wall.ts';
import { reamerBetween } from './route-larger-pin.ts';
import { reamersFrom } from './shop-first.ts';
import type { Reamer } from '../../fit/tables/reamer-sizes.ts';

type Offset = { readonly inside: Inside; readonly by: Length; readonly reamer: Reamer };

/**
 * A bushing whose bore stands off its middle puts a hole that is in the wrong place where it belongs.
 *
 * Units:   thin side = (reamer − greatest inside) / 2 − off by, thick side with + off by. Bored in place, after pressing.
 * Range:   only where the hole was said to be in the wrong place, whether its pin fits or not.
 * Refuses: (as `out`) hole-not-off, not-needed, not-for-a-tight-bore, pin-worn, no-reamer, wall-too-thin;
 *          (as `ask`) ask-off-by.
 * Source:  geometry; tables/least-walls.ts, tables/reamer-sizes.ts.
 */
export function offsetBushingRoute(context: RouteContext): Route {
  const { offBy: by } = context.question;
  if (!by) return withoutSteps(noCureNeeded(context) ?? out({ code: 'hole-not-off' }));
  if (isZero(by)) return withoutSteps(ask({ code: 'ask-off-by' }));
  const inside = insideFor(context);
  if (!inside.ok) return withoutSteps(inside.finding);
  const { least } = leastBushing(context);
  const needs = largest(context.bore.cleanUp, plus(inside.value.upper, times(plus(least, by), 2)));
  const routes = reamersFrom(needs, context.question.shop).map((reamer) =>
    routeWith(context, { inside: inside.value, by, reamer }),
  );
  return (
    routes.find(({ state }) => state !== 'out') ??
    routes[0] ??
    withoutSteps(out({ code: 'no-reamer', needs }))
  );
}

function routeWith(context: RouteContext, offset: Offset): Route {
  const { reamer, by } = offset;
  const left = wallLeft(context, reamer.size);
  return {
    kind: 'offset-bushing',
    ...judged([
      wallFinding(context, reamer.size),
      speaksFor({ code: 'offset-walls', by, ...sides(offset), ...leastBushing(context) }),
    ]),
    steps: stepsFor(context, offset),
    ...(left && { wallLeft: left }),
    takes: takenEachSide(context, reamer.size),
    // The reamed hole, the lock that keeps it from turning, and the bore.
    irreversibleSteps: 3,
  };
}

function sides({ inside, by, reamer }: Offset): { readonly thin: Length; readonly thick: Length } {
  const even = dividedBy(minus(reamer.size, inside.upper), 2);
  return { thin: minus(even, by), thick: plus(even, by) };
}

function stepsFor({ question }: RouteContext, offset: Offset): readonly RouteStep[] {
  const { inside, by, reamer } = offset;
  const { outside } = pressParts(question, reamer.size);
  const finish = reamerBetween(inside.lower, inside.upper, question.shop);
  return [
    { do: 'ream-for-bushing', reamer },
    {
      do: 'press-blank',
      outsideLower: outside.lower,
      outsideUpper: outside.upper,
      ...(question.thickness && { length: question.thickness }),
    },
    { do: 'bore-offset', by, ...inside, ...(finish && { reamer: finish }) },
  ];
}

function withoutSteps(finding: Finding): Route {
  return { kind: 'offset-bushing', ...judged([finding]), steps: [], takes: zero, irreversibleSteps: 3 };
}
