import type { Route } from './hole-and-pin-routes.ts';
import { floatMm, ratioOf, type Length } from '../../length/length.ts';

/**
 * Routes in the order to think of them: ruled out last, then fewest steps that can't be undone, then what is left of the
 * strength.
 *
 * Units:   strength lost, as a share: of the part what a route takes of the wall round the hole, of the pin by d³, as it is
 *          bent; metal off the pin counts like metal off the part. Floating point.
 * Range:   of a wall nobody measured: as if it were as thick as the hole is wide.
 * Source:  bending of a round bar; the order is common practice, no source.
 */
export function rankRoutes(routes: readonly Route[], wall: Length): readonly Route[] {
  return routes.toSorted(
    (a, b) =>
      Number(a.state === 'out') - Number(b.state === 'out') ||
      a.irreversibleSteps - b.irreversibleSteps ||
      strengthLost(a, wall) - strengthLost(b, wall),
  );
}

function strengthLost({ takes, turnsPin }: Route, wall: Length): number {
  const ofPart = floatMm(wall) > 0 ? ratioOf(takes, wall) : floatMm(takes);
  return ofPart + (turnsPin ? 1 - bendingLeft(turnsPin) : 0);
}

/** The share of its strength in bending that a pin keeps when it is turned down: (to / from)³. Floating point. */
export function bendingLeft({ from, to }: { readonly from: Length; readonly to: Length }): number {
  return ratioOf(to, from) ** 3;
}
