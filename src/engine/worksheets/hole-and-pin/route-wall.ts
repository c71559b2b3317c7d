import type { RouteContext } from './hole-and-pin-routes.ts';
import { isLess, minus, type Length } from '../../length/length.ts';
import { takenFromWall } from '../../fit/worn-axis.ts';
import { ask, out, speaksFor, type Finding } from './route-findings.ts';
import { leastParentWall, leastWallSource } from '../../fit/tables/least-walls.ts';

/** Metal a hole of this finished size takes from a side at the most: where it is worn least its edge moves furthest. */
export function takenEachSide({ bore: { tightest, oldAxis } }: RouteContext, finished: Length): Length {
  return takenFromWall({ finished, tightest, oldAxis: oldAxis?.nominal });
}

/** The wall beside a hole of this finished size; undefined where the wall now was never measured. */
export function wallLeft(context: RouteContext, finished: Length): Length | undefined {
  const { wall } = context.question;
  return wall && minus(wall, takenEachSide(context, finished));
}

/**
 * How thin that wall may be.
 *
 * Source: the user's own least wall, else half the hole's diameter: common practice, no source.
 */
export function leastWallBeside(context: RouteContext, finished: Length): Length {
  return context.question.leastWall ?? leastParentWall(finished);
}

/**
 * Whether the part keeps metal enough beside a hole of this finished size. A wall nobody has measured is asked for.
 *
 * Source: the user's own least wall, else half the hole's diameter: common practice, no source.
 */
export function wallFinding(context: RouteContext, finished: Length): Finding {
  const least = leastWallBeside(context, finished);
  const wall = wallLeft(context, finished);
  const source = context.question.leastWall ? leastWallSource.own : leastWallSource.besideHole;
  if (!wall) return ask({ code: 'ask-wall', takes: takenEachSide(context, finished), least, source });
  return isLess(wall, least)
    ? out({ code: 'wall-too-thin', wall, least, source })
    : speaksFor({ code: 'wall-left', wall, least, source });
}
