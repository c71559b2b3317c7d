import type { Route } from './hole-and-pin-routes.ts';
import { byLength } from './length.ts';

/**
 * Routes in the order to think of them: ruled out last, then fewest steps that can't be undone, then most metal left.
 *
 * Units:   metal left is compared by what a route takes from each side, as all start from the same hole.
 * Source:  common practice, no source.
 */
export function rankRoutes(routes: readonly Route[]): readonly Route[] {
  return routes.toSorted(
    (a, b) =>
      Number(a.state === 'out') - Number(b.state === 'out') ||
      a.irreversibleSteps - b.irreversibleSteps ||
      byLength(a.takes, b.takes),
  );
}
