import type { Route, RouteContext } from './hole-and-pin-routes.ts';
import { zero } from '../../length/length.ts';
import { ask, judged, noCureNeeded, out, type Finding } from './route-findings.ts';

/**
 * Plug the hole and bore it anew: named, never worked out. It is thought of only once everything else is ruled out, and
 * then it waits for an answer: whether the part may be plugged or welded at all is not for a sum to say.
 *
 * Refuses: (as `out`) not-needed, not-for-a-tight-bore, other-cures-first; (as `ask`) last-resort.
 */
export function plugRoute(context: RouteContext, others: readonly Route[]): Route {
  return {
    kind: 'plug',
    ...judged([finding(context, others)]),
    steps: [],
    takes: zero,
    irreversibleSteps: 4,
  };
}

function finding(context: RouteContext, others: readonly Route[]): Finding {
  const noCure = context.question.offBy ? undefined : noCureNeeded(context);
  if (noCure) return noCure;
  return others.every(({ state }) => state === 'out')
    ? ask({ code: 'last-resort' })
    : out({ code: 'other-cures-first' });
}
