import type { Route, RouteContext, RouteReason } from './hole-and-pin-routes.ts';
import { isMore, plus, ratioOf, zero } from '../../length/length.ts';
import { insideFor } from './route-bushing.ts';
import { judged, placeStays } from './route-findings.ts';

/** Leave the joint as it is: in when the readings prove that it fits, a question while they can't. */
export function leaveRoute(context: RouteContext): Route {
  const { verdict } = context;
  const weighs = { good: 'for', 'no-good': 'out', 'too-close': 'ask' } as const;
  const stays = placeStays(context);
  return {
    kind: 'leave',
    ...judged([{ weighs: weighs[verdict.kind], reason: reasonFor(context) }, ...(stays ? [stays] : [])]),
    steps: [],
    ...(context.question.wall && { wallLeft: context.question.wall }),
    takes: zero,
    irreversibleSteps: 0,
  };
}

function reasonFor(context: RouteContext): RouteReason {
  const { verdict, tightest, loosest, limits, pin } = context;
  if (verdict.kind === 'good') return { code: 'fits', tightest, loosest };
  if (verdict.kind === 'too-close') return { code: 'too-close', near: verdict.near, short: verdict.short };
  if (verdict.way === 'under') {
    const inside = insideFor(context);
    const open = inside.ok
      ? inside.value
      : { lower: plus(pin.largest, limits.lower), upper: plus(pin.smallest, limits.upper) };
    return {
      code: 'too-tight',
      by: verdict.by,
      boreLower: open.lower,
      boreUpper: open.upper,
    };
  }
  return {
    code: 'too-loose',
    loosest,
    upper: limits.upper,
    by: verdict.by,
    ...(isMore(limits.upper, zero) && { timesTheMost: ratioOf(loosest, limits.upper) }),
  };
}
