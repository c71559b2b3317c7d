import { bondedPair } from '../../press/bonded-sleeve.ts';
import { lessTheBands } from '../../fit/fit-check.ts';
import type { Range } from '../../fit/fits.ts';
import type { Route, RouteContext, RouteStep } from './hole-and-pin-routes.ts';
import { pressParts, unitOf } from './hole-and-pin-limits.ts';
import { jointLimits } from '../../fit/joint-limits.ts';
import { dividedBy, isLess, isMore, minus, plus, times, zero, type Length } from '../../length/length.ts';
import { bendingLeft } from './rank-routes.ts';
import { ask, judged, noCureNeeded, out, speaksFor, type Finding } from './route-findings.ts';
import { takenEachSide, wallFinding, wallLeft } from './route-wall.ts';
import { leastPinShare, leastSleeveWall, leastWallSource } from '../../fit/tables/least-walls.ts';
import type { Reamer } from '../../fit/tables/reamer-sizes.ts';
import { reamersFrom } from './shop-first.ts';

type Sleeve = {
  readonly outside: Range;
  readonly inside: Range;
  /** The bore is out of true and is reamed first. */
  readonly ream?: Reamer;
  /** What the pin is turned down to; left out where the sleeve goes on it as it is. */
  readonly turnTo?: Length;
};

/**
 * Bond a thin sleeve on the pin that fills the worn bore; the pin is turned down first where there is no room for one.
 *
 * Units:   sleeve wall = (least outside − greatest inside) / 2. Outside = bore less the joint's limits, inside = pin plus
 *          a sliding clearance for the bonding compound; a pin that is turned down and its sleeve share that room.
 * Range:   a bolt held by its nut gets none, and no bolt is turned down. A bore that is out of true by more than the
 *          joint's room is reamed first.
 * Refuses: (as `out`) sleeve-not-on-a-bolt, no-room-for-sleeve, case-hardened (as `ask` while nobody said), pin-core-too-thin, no-reamer, wall-too-thin,
 *          not-needed, not-for-a-tight-bore, place-stays.
 * Source:  tables/least-walls.ts, tables/running-clearances.ts (slides).
 */
export function sleeveRoute(context: RouteContext): Route {
  const { question, bore } = context;
  const noCure = noCureNeeded(context);
  if (noCure) return ruledOut(noCure);
  const { joint, pinThread: thread } = question;
  if (joint === 'located')
    return ruledOut(out({ code: 'sleeve-not-on-a-bolt', ...(thread !== undefined && { thread }) }));
  const outside = outsideIn(context, { lower: bore.tightest, upper: bore.loosest });
  if (!isMore(outside.lower, outside.upper))
    return sleeveWith(
      context,
      lessTheBands(outside, { lower: bore.bands.loosest, upper: bore.bands.tightest }) ?? outside,
    );
  const routes = reamersFrom(bore.cleanUp, question.shop).map((ream) =>
    sleeveWith(context, outsideInReamed(context, ream), ream),
  );
  return (
    routes.find(({ state }) => state !== 'out') ??
    routes[0] ??
    ruledOut(out({ code: 'no-reamer', needs: bore.cleanUp }))
  );
}

function leastSleeve({ shop }: RouteContext['question']): Length {
  return leastSleeveWall[unitOf(shop)];
}

function outsideIn({ limits }: RouteContext, bore: Range): Range {
  return { lower: minus(bore.upper, limits.upper), upper: minus(bore.lower, limits.lower) };
}

// Whatever hole the reamer leaves, where the joint has room for that; else the hole has to be the reamer's own size.
function outsideInReamed(context: RouteContext, { size }: Reamer): Range {
  const outside = outsideIn(context, pressParts(context.question, size).hole);
  return isMore(outside.lower, outside.upper) ? outsideIn(context, { lower: size, upper: size }) : outside;
}

function sleeveWith(context: RouteContext, outside: Range, ream?: Reamer): Route {
  const reamed = ream && { ream };
  const asIs = insideAsIs(context.pin);
  const isTrue = !isMore(asIs.lower, asIs.upper);
  if (isTrue && !isLess(wallOf({ outside, inside: asIs }), leastSleeve(context.question)))
    return routeOf(context, { outside, inside: asIs, ...reamed });
  const { pinThread, pinCaseHardened } = context.question;
  if (pinThread === undefined && pinCaseHardened === true) return ruledOut(out({ code: 'case-hardened' }));
  if (pinThread !== undefined) {
    const wall = wallOf({ outside, inside: asIs });
    return ruledOut(
      out({ code: 'no-room-for-sleeve', thread: pinThread, wall, least: leastSleeve(context.question) }),
    );
  }
  const turnTo = turnedPin(context, outside);
  const leastPin = times(context.pin.largest, leastPinShare);
  return isLess(turnTo, leastPin)
    ? ruledOut(out({ code: 'pin-core-too-thin', turnTo, ...coreOf(context, turnTo) }))
    : routeOf(context, { outside, inside: bondedPair(turnTo).inside, turnTo, ...reamed });
}

// The thinnest sleeve leaves the pin the most metal. A pin worn deeper than that is turned until it is clean.
function turnedPin({ pin, question }: RouteContext, outside: Range): Length {
  const room = minus(insideOn(pin.largest, pin.largest).upper, pin.largest);
  const forWall = minus(minus(outside.lower, times(leastSleeve(question), 2)), room);
  return isLess(pin.smallest, forWall) ? pin.smallest : forWall;
}

function insideAsIs({ largest: thick, smallest, bands }: RouteContext['pin']): Range {
  const inside = insideOn(thick, smallest);
  return lessTheBands(inside, { lower: bands.tightest, upper: bands.loosest }) ?? inside;
}

function insideOn(largest: Length, smallest: Length): Range {
  const bond = jointLimits('slides', largest);
  return { lower: plus(largest, bond.lower), upper: plus(smallest, bond.upper) };
}

function wallOf({ outside, inside }: Pick<Sleeve, 'outside' | 'inside'>): Length {
  return dividedBy(minus(outside.lower, inside.upper), 2);
}

function routeOf(context: RouteContext, sleeve: Sleeve): Route {
  const { ream, turnTo } = sleeve;
  const { wall, pinCaseHardened } = context.question;
  const left = ream ? wallLeft(context, ream.size) : wall;
  return {
    kind: 'sleeve',
    ...judged([
      ...(ream ? [wallFinding(context, ream.size)] : []),
      ...(turnTo && pinCaseHardened === undefined ? [ask({ code: 'ask-case-hardened' })] : []),
      speaksFor({
        code: 'sleeve-wall',
        wall: wallOf(sleeve),
        least: leastSleeve(context.question),
        source: leastWallSource.sleeve,
      }),
      ...(turnTo ? [speaksFor({ code: 'pin-core-left', turnTo, ...coreOf(context, turnTo) })] : []),
    ]),
    steps: stepsFor(context, sleeve),
    ...(left && { wallLeft: left }),
    takes: ream ? takenEachSide(context, ream.size) : zero,
    ...(turnTo && { turnsPin: { from: context.pin.largest, to: turnTo } }),
    // The pin is turned and the sleeve finished on it, as a bore is reamed and its bushing finished in it.
    irreversibleSteps: (ream ? 1 : 0) + (turnTo ? 2 : 0),
  };
}

function coreOf({ pin }: RouteContext, turnTo: Length) {
  return {
    least: times(pin.largest, leastPinShare),
    source: leastWallSource.pinCore,
    bendingLeft: bendingLeft({ from: pin.largest, to: turnTo }),
  };
}

function stepsFor({ question }: RouteContext, sleeve: Sleeve): readonly RouteStep[] {
  const { ream, turnTo, inside, outside } = sleeve;
  return [
    ...(ream ? [{ do: 'ream-true', reamer: ream } as const] : []),
    ...(turnTo ? [{ do: 'turn-pin', to: turnTo, ...bondedPair(turnTo).shaft } as const] : []),
    {
      do: 'fit-sleeve',
      inside,
      outside,
      wall: wallOf(sleeve),
      ...(question.thickness && { length: question.thickness }),
    },
  ];
}

function ruledOut(finding: Finding): Route {
  return { kind: 'sleeve', ...judged([finding]), steps: [], takes: zero, irreversibleSteps: 2 };
}
