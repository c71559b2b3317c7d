import { lessTheBands } from '../../fit/fit-check.ts';
import type { Route, RouteContext, RouteStep } from './hole-and-pin-routes.ts';
import { pressParts, unitOf } from './hole-and-pin-limits.ts';
import {
  dividedBy,
  isLess,
  isMore,
  largest,
  minus,
  plus,
  times,
  zero,
  type Length,
} from '../../length/length.ts';
import { judged, noCureNeeded, out, speaksFor, type Finding } from './route-findings.ts';
import { reamerBetween } from './route-larger-pin.ts';
import { reamersFrom } from './shop-first.ts';
import { pressFindings } from './route-press.ts';
import { leastWallBeside, takenEachSide, wallFinding, wallLeft } from './route-wall.ts';
import { leastBushingWall, leastWallSource } from '../../fit/tables/least-walls.ts';
import { standardReamers, type Reamer } from '../../fit/tables/reamer-sizes.ts';

export type Inside = { readonly lower: Length; readonly upper: Length };

/**
 * Open the bore to the smallest standard reamer that cleans it up and leaves a bushing wall enough, press a bushing
 * in, and finish the bushing to the pin that is there.
 *
 * Units:   bushing wall = (reamer − greatest inside) / 2. Outside by the press, for any hole the reamer may leave.
 * Refuses: (as `out`) wall-too-thin with the wall a bushing would have in the largest hole the part allows,
 *          pin-worn, no-reamer, not-needed, not-for-a-tight-bore.
 * Source:  tables/least-walls.ts, tables/reamer-sizes.ts, route-press.ts for what the press does.
 */
export function bushingRoute(context: RouteContext): Route {
  const noCure = noCureNeeded(context);
  if (noCure) return ruledOut(noCure);
  const inside = insideFor(context);
  if (!inside.ok) return ruledOut(inside.finding);
  const { least } = leastBushing(context);
  const needs = largest(context.bore.cleanUp, plus(inside.value.upper, times(least, 2)));
  const routes = reamersFrom(needs, context.question.shop).map((reamer) =>
    routeWith(context, { inside: inside.value, least, reamer }),
  );
  return (
    routes.find(({ state }) => state !== 'out') ?? routes[0] ?? ruledOut(out({ code: 'no-reamer', needs }))
  );
}

/** The limits of a bushing's bore for the pin that is there, or that the pin is worn too far for any. */
export function insideFor({
  pin,
  limits,
}: Pick<RouteContext, 'pin' | 'limits'>):
  | { readonly ok: true; readonly value: Inside }
  | { readonly ok: false; readonly finding: Finding } {
  const inside = { lower: plus(pin.largest, limits.lower), upper: plus(pin.smallest, limits.upper) };
  // What the pin's readings can't tell is taken off, as far as that leaves anything.
  const sure = lessTheBands(inside, { lower: pin.bands.tightest, upper: pin.bands.loosest });
  if (!isMore(inside.lower, inside.upper)) return { ok: true, value: sure ?? inside };
  const room = minus(limits.upper, limits.lower);
  return { ok: false, finding: out({ code: 'pin-worn', by: minus(pin.largest, pin.smallest), room }) };
}

/** The thinnest a bushing's wall may be, and whose word that is. */
export function leastBushing({ question: { leastBushingWall: own, shop } }: RouteContext): {
  readonly least: Length;
  readonly source: string;
} {
  return own
    ? { least: own, source: leastWallSource.own }
    : { least: leastBushingWall[unitOf(shop)], source: leastWallSource.bushing };
}

type Choice = { readonly inside: Inside; readonly least: Length; readonly reamer: Reamer };

function routeWith(context: RouteContext, choice: Choice): Route {
  const { inside, reamer } = choice;
  const left = wallLeft(context, reamer.size);
  const parent = wallFinding(context, reamer.size);
  return {
    kind: 'bushing',
    ...judged([
      parent,
      ...(parent.weighs === 'out' ? thinnerBushing(context, choice) : []),
      speaksFor({
        code: 'bushing-wall',
        wall: bushingWall(reamer, inside),
        ...leastBushing(context),
      }),
      ...(parent.weighs === 'out' ? [] : pressFindings(context, { reamer, inside })),
    ]),
    steps: stepsFor(context, choice),
    ...(left && { wallLeft: left }),
    takes: takenEachSide(context, reamer.size),
    irreversibleSteps: 2,
  };
}

function stepsFor({ question }: RouteContext, { inside, reamer }: Choice): readonly RouteStep[] {
  const { outside } = pressParts(question, reamer.size);
  const finish = reamerBetween(inside.lower, inside.upper, question.shop);
  return [
    { do: 'ream-for-bushing', reamer },
    {
      do: 'press-bushing',
      outsideLower: outside.lower,
      outsideUpper: outside.upper,
      wall: bushingWall(reamer, inside),
      ...(question.thickness && { length: question.thickness }),
    },
    { do: 'finish-bushing', ...inside, ...(finish && { reamer: finish }) },
  ];
}

// What would be left for the bushing in the largest hole the part can bear: the figure that shows why it can't be done.
function thinnerBushing(context: RouteContext, { inside }: Choice): readonly Finding[] {
  const bearable = standardReamers.findLast(({ size }) => {
    const left = wallLeft(context, size);
    const isEnough = left !== undefined && !isLess(left, leastWallBeside(context, size));
    return isEnough && !isLess(size, context.bore.cleanUp) && isMore(size, inside.upper);
  });
  if (!bearable) return [];
  const wall = bushingWall(bearable, inside);
  return [out({ code: 'bushing-wall-too-thin', reamer: bearable, wall, ...leastBushing(context) })];
}

function bushingWall(reamer: Reamer, inside: Inside): Length {
  return dividedBy(minus(reamer.size, inside.upper), 2);
}

function ruledOut(finding: Finding): Route {
  return { kind: 'bushing', ...judged([finding]), steps: [], takes: zero, irreversibleSteps: 2 };
}
