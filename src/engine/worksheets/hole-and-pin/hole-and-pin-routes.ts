import type { BushingWarning } from '../../press/bushing-warnings.ts';
import type { Drill } from '../../thread/drill-series.ts';
import type { Range } from '../../fit/fits.ts';
import type { HoleAndPinQuestion } from './hole-and-pin.ts';
import type { InsertLength } from '../../thread/insert-lengths.ts';
import type { ClearanceLimits, Joint } from '../../fit/joint-limits.ts';
import { largest, minus, type Length } from '../../length/length.ts';
import { rankRoutes } from './rank-routes.ts';
import { bushingRoute } from './route-bushing.ts';
import { largerPinRoute } from './route-larger-pin.ts';
import { leaveRoute } from './route-leave.ts';
import { offsetBushingRoute } from './route-offset-bushing.ts';
import { plugRoute } from './route-plug.ts';
import { sleeveRoute } from './route-sleeve.ts';
import { threadInsertRoute } from './route-thread-insert.ts';
import { leftToReam } from '../../press/tables/press-practice.ts';
import type { Reamer } from '../../fit/tables/reamer-sizes.ts';
import type { Shank } from '../../fit/tables/shank-sizes.ts';
import type { Verdict } from '../../reading/verdict.ts';

export type RouteKind =
  | 'leave'
  | 'thread-insert'
  | 'larger-pin'
  | 'bushing'
  | 'sleeve'
  | 'offset-bushing'
  | 'plug';

/** Why a route is in, out, or waits for an answer: a code with its figures; `say-routes.ts` has the sentences. */
export type RouteReason =
  | { readonly code: 'fits'; readonly tightest: Length; readonly loosest: Length }
  | { readonly code: 'too-close'; readonly near: 'lower' | 'upper' | 'both'; readonly short: Length }
  | {
      readonly code: 'too-loose';
      readonly loosest: Length;
      readonly upper: Length;
      readonly by: Length;
      /** How many times the most the joint may have; left out where that is nothing. */
      readonly timesTheMost?: number;
    }
  | {
      readonly code: 'too-tight';
      readonly by: Length;
      readonly boreLower: Length;
      readonly boreUpper: Length;
    }
  | { readonly code: 'not-needed' }
  | { readonly code: 'not-for-a-tight-bore'; readonly by: Length }
  | { readonly code: 'insert-not-for-this-joint'; readonly joint: Exclude<Joint, 'located'> }
  | { readonly code: 'insert-needs-a-bolt' }
  | { readonly code: 'thread-not-known'; readonly thread: string }
  | { readonly code: 'no-insert-made'; readonly thread: string }
  | {
      readonly code: 'hole-past-insert-thread';
      readonly thread: string;
      readonly hole: Length;
      readonly major: Length;
    }
  | { readonly code: 'shank-must-pass'; readonly thread: string }
  | { readonly code: 'closer-than-thread-play'; readonly play: Length; readonly upper: Length }
  | { readonly code: 'threads-in-shear'; readonly thread: string }
  | { readonly code: 'faces-carry' }
  | { readonly code: 'straight-to-tap'; readonly percent: number }
  | { readonly code: 'drill-first'; readonly drill: Drill; readonly percent: number }
  | { readonly code: 'drill-anyway'; readonly drill: Drill; readonly percent: number }
  | { readonly code: 'hole-over'; readonly overBy: Length; readonly percent: number }
  | { readonly code: 'too-little-thread'; readonly percent: number; readonly leastPercent: number }
  | { readonly code: 'ask-shank-passes'; readonly thread: string }
  | { readonly code: 'ask-clamped-faces' }
  | { readonly code: 'ask-metal'; readonly aluminium: Drill; readonly steel: Drill }
  | { readonly code: 'ask-wall'; readonly takes: Length; readonly least: Length; readonly source: string }
  | { readonly code: 'wall-left'; readonly wall: Length; readonly least: Length; readonly source: string }
  | { readonly code: 'wall-too-thin'; readonly wall: Length; readonly least: Length; readonly source: string }
  | { readonly code: 'cleans-up-to'; readonly shank: Shank; readonly loosest: Length }
  | { readonly code: 'no-larger-shank'; readonly needs: Length }
  | { readonly code: 'bushing-wall'; readonly wall: Length; readonly least: Length; readonly source: string }
  | {
      readonly code: 'bushing-wall-too-thin';
      readonly reamer: Reamer;
      readonly wall: Length;
      readonly least: Length;
      readonly source: string;
    }
  | { readonly code: 'no-reamer'; readonly needs: Length }
  | { readonly code: 'pin-worn'; readonly by: Length; readonly room: Length }
  | PressReason
  | SleeveReason
  | PlaceReason;

export type PressReason =
  | {
      readonly code: 'press-grip';
      readonly least: Length;
      readonly greatest: Length;
      readonly source: string;
    }
  | { readonly code: 'bushing-closes'; readonly lower: Length; readonly upper: Length }
  | { readonly code: 'press-force'; readonly pressN: number; readonly holdN: number }
  | { readonly code: 'press-metals'; readonly part: string; readonly bushing: string }
  /** What carries load is never taken to be of some metal. */
  | { readonly code: 'ask-press-metals'; readonly missing: 'part' | 'bushing' | 'both' }
  | { readonly code: 'press-warning'; readonly warning: BushingWarning };

export type SleeveReason =
  | { readonly code: 'sleeve-not-on-a-bolt'; readonly thread?: string }
  | {
      readonly code: 'no-room-for-sleeve';
      readonly thread: string;
      readonly wall: Length;
      readonly least: Length;
    }
  | { readonly code: 'sleeve-wall'; readonly wall: Length; readonly least: Length; readonly source: string }
  | {
      readonly code: 'pin-core-left' | 'pin-core-too-thin';
      readonly turnTo: Length;
      readonly least: Length;
      readonly source: string;
      /** Of its strength in bending; a share. */
      readonly bendingLeft: number;
    }
  /** A case is a few thou deep: turned off, the pin is soft and wears at once. */
  | { readonly code: 'ask-case-hardened' | 'case-hardened' };

export type PlaceReason =
  | { readonly code: 'hole-not-off' }
  /** Zero where nobody has measured by how much. */
  | { readonly code: 'place-stays'; readonly by: Length }
  | { readonly code: 'ask-off-by' }
  | {
      readonly code: 'offset-walls';
      readonly by: Length;
      readonly thin: Length;
      readonly thick: Length;
      readonly least: Length;
      readonly source: string;
    }
  | { readonly code: 'other-cures-first' }
  | { readonly code: 'last-resort' };

/** One thing to do on a route, in order. Limits are of the finished size. */
export type RouteStep =
  | { readonly do: 'drill'; readonly drill: Drill }
  | { readonly do: 'tap-for-insert'; readonly thread: string }
  | { readonly do: 'fit-insert'; readonly thread: string; readonly length?: InsertLength }
  | { readonly do: 'new-pin'; readonly shank: Shank; readonly otherFamily?: Shank }
  | {
      readonly do: 'open-bore';
      /** Left out where no standard reamer falls between the limits. */
      readonly reamer?: Reamer;
      readonly lower: Length;
      readonly upper: Length;
    }
  | { readonly do: 'open-mating-holes' }
  /** Before the cut that follows a hole: to so much under what that is to be. */
  | {
      readonly do: 'bore-on-axis';
      readonly to: Length;
      readonly before: Length;
      /** Less than this leaves the wear to lead the reamer after it. */
      readonly atLeast?: Length;
    }
  | { readonly do: 'ream-for-bushing'; readonly reamer: Reamer }
  | {
      readonly do: 'press-bushing';
      readonly outsideLower: Length;
      readonly outsideUpper: Length;
      readonly wall: Length;
      readonly length?: Length;
    }
  | {
      readonly do: 'finish-bushing';
      readonly reamer?: Reamer;
      readonly lower: Length;
      readonly upper: Length;
    }
  | { readonly do: 'ream-true'; readonly reamer: Reamer }
  | { readonly do: 'turn-pin'; readonly to: Length; readonly lower: Length; readonly upper: Length }
  | {
      readonly do: 'fit-sleeve';
      readonly inside: Range;
      readonly outside: Range;
      readonly wall: Length;
      readonly length?: Length;
    }
  | {
      readonly do: 'press-blank';
      readonly outsideLower: Length;
      readonly outsideUpper: Length;
      readonly length?: Length;
    }
  | {
      readonly do: 'bore-offset';
      readonly by: Length;
      readonly reamer?: Reamer;
      readonly lower: Length;
      readonly upper: Length;
    };

export type Route = {
  readonly kind: RouteKind;
  readonly state: 'in' | 'out' | 'ask';
  readonly why: readonly RouteReason[];
  readonly steps: readonly RouteStep[];
  /** Metal left between the finished hole and the part's edge; left out where the wall is not known. */
  readonly wallLeft?: Length;
  /** Metal the route takes from each side of the hole. */
  readonly takes: Length;
  /** Where the pin loses metal too. */
  readonly turnsPin?: { readonly from: Length; readonly to: Length };
  readonly irreversibleSteps: number;
};

/** How closely the tightest and the loosest place are known: a pin's largest and smallest. */
export type PlaceBands = { readonly tightest: Length; readonly loosest: Length };

/** What every route starts from, worked out once. */
export type RouteContext = {
  readonly question: HoleAndPinQuestion;
  readonly limits: ClearanceLimits;
  /** What those limits are taken at. */
  readonly nominal: Length;
  readonly verdict: Verdict;
  readonly tightest: Length;
  readonly loosest: Length;
  readonly bore: {
    readonly tightest: Length;
    readonly loosest: Length;
    /** The least size a reamer has to have to clean the bore up all round. */
    readonly cleanUp: Length;
    /** The nominal of a worn bore that is opened on its old axis, and what it touches metal at all round there. */
    readonly oldAxis?: { readonly nominal: Length; readonly touches: Length };
    readonly bands: PlaceBands;
  };
  readonly pin: { readonly largest: Length; readonly smallest: Length; readonly bands: PlaceBands };
};

/** Every route there is for a hole and its pin, the best first. */
export function routesFor(context: RouteContext): readonly Route[] {
  const routes = [
    leaveRoute,
    threadInsertRoute,
    largerPinRoute,
    bushingRoute,
    sleeveRoute,
    offsetBushingRoute,
  ].map((route) => onOldAxis(route(context), context));
  const { wall } = context.question;
  return rankRoutes([...routes, plugRoute(context, routes)], wall ?? context.bore.loosest);
}

/** A reamer follows the hole it finds: a hole that has to stand on its old axis is bored there first. */
function onOldAxis(route: Route, { question, bore }: RouteContext): Route {
  if (question.keepsAxis !== true) return route;
  const atLeast = bore.oldAxis?.touches;
  return { ...route, steps: route.steps.flatMap((step) => [...boredFirst(step, atLeast), step]) };
}

function boredFirst(step: RouteStep, atLeast: Length | undefined): readonly RouteStep[] {
  const before = openedTo(step);
  if (!before) return [];
  const usual = minus(before, leftToReam);
  const to = atLeast ? largest(usual, atLeast) : usual;
  return [{ do: 'bore-on-axis', to, before, ...(atLeast && { atLeast }) }];
}

function openedTo(step: RouteStep): Length | undefined {
  if (step.do === 'open-bore') return step.reamer?.size ?? step.lower;
  return step.do === 'ream-for-bushing' || step.do === 'ream-true' ? step.reamer.size : undefined;
}
