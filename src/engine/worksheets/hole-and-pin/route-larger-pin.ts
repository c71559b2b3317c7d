import { limitsInForce } from './hole-and-pin-limits.ts';
import type { Route, RouteContext, RouteStep } from './hole-and-pin-routes.ts';

import {
  absolute,
  byLength,
  dividedBy,
  isLess,
  isMore,
  largest,
  minus,
  plus,
  zero,
  type Length,
} from '../../length/length.ts';
import { judged, noCureNeeded, out, speaksFor, type Finding } from './route-findings.ts';
import { takenEachSide, wallFinding, wallLeft } from './route-wall.ts';
import { allReamers, familyOf, type Reamer, type ShopFamily } from '../../fit/tables/reamer-sizes.ts';
import { shopFirst } from './shop-first.ts';
import { inchShanks, metricShanks, type Shank } from '../../fit/tables/shank-sizes.ts';

type WantedBore = { readonly shank: Shank; readonly lower: Length; readonly upper: Length };

/**
 * Open the bore to the next bolt or pin that can be bought and that the bore cleans up to.
 *
 * Units:   the bore's limits are the shank's nominal size plus the joint's limits; a real shank is measured before
 *          the cut. Wall left is worked at the greatest bore the limits allow.
 * Refuses: (as `out`) no-larger-shank, wall-too-thin, not-needed, not-for-a-tight-bore.
 * Source:  tables/shank-sizes.ts, tables/reamer-sizes.ts.
 */
export function largerPinRoute(context: RouteContext): Route {
  const { bore } = context;
  const noCure = noCureNeeded(context);
  if (noCure) return ruledOut(noCure);
  const wanted = wantedBores(context, [...inchShanks, ...metricShanks]);
  const [next, ...others] = shopFirst(wanted, ({ shank }) => shank.family, context.question.shop);
  if (!next) return ruledOut(out({ code: 'no-larger-shank', needs: bore.cleanUp }));
  const own = routeTo(context, next);
  // One of the other family that takes less, where the part has no wall for the shop's own.
  const less = others.find(({ upper }) => isLess(upper, next.upper));
  const other = own.state === 'out' && less ? routeTo(context, less) : own;
  return other.state === 'out' ? own : other;
}

function routeTo(context: RouteContext, next: WantedBore): Route {
  const wall = wallLeft(context, next.upper);
  return {
    kind: 'larger-pin',
    ...judged([
      wallFinding(context, next.upper),
      speaksFor({ code: 'cleans-up-to', shank: next.shank, loosest: context.bore.loosest }),
    ]),
    steps: stepsFor(context, next),
    ...(wall && { wallLeft: wall }),
    takes: takenEachSide(context, next.upper),
    // Its own bore, and the holes of the parts it joins: they fitted the old pin.
    irreversibleSteps: 2,
  };
}

function stepsFor(context: RouteContext, { shank, lower, upper }: WantedBore): readonly RouteStep[] {
  const [other] = wantedBores(context, shank.family === 'inch' ? metricShanks : inchShanks);
  const reamer = reamerBetween(lower, upper, context.question.shop);
  return [
    { do: 'new-pin', shank, ...(other && { otherFamily: other.shank }) },
    { do: 'open-bore', lower, upper, ...(reamer && { reamer }) },
    { do: 'open-mating-holes' },
  ];
}

function wantedBores(context: RouteContext, shanks: readonly Shank[]): readonly WantedBore[] {
  const { question, bore, pin } = context;
  return shanks
    .filter((shank) => isMore(shank.size, pin.largest))
    .map((shank) => {
      const limits = limitsInForce(question, shank.size);
      const lower = largest(plus(shank.size, limits.lower), bore.cleanUp);
      return { shank, lower, upper: plus(shank.size, limits.upper) };
    })
    .filter(({ lower, upper }) => !isMore(lower, upper))
    .sort((a, b) => byLength(a.shank.size, b.shank.size));
}

/** The standard reamer nearest the middle of two limits, both counting as inside; one of the shop's own where there is one. */
export function reamerBetween(lower: Length, upper: Length, shop?: ShopFamily): Reamer | undefined {
  const middle = dividedBy(plus(lower, upper), 2);
  const off = (reamer: Reamer): Length => absolute(minus(reamer.size, middle));
  const inside = allReamers
    .filter(({ size }) => !isLess(size, lower) && !isMore(size, upper))
    .sort((a, b) => byLength(off(a), off(b)));
  return shopFirst(inside, familyOf, shop)[0];
}

function ruledOut(finding: Finding): Route {
  return { kind: 'larger-pin', ...judged([finding]), steps: [], takes: zero, irreversibleSteps: 2 };
}
