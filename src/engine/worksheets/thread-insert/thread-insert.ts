import { mean } from '../../reading/estimate.ts';
import {
  insertDrill,
  leastPercentWorthKeeping,
  type InsertDrillChoice,
  type InsertMetal,
} from '../../thread/insert-drill.ts';
import { insertHole, type InsertHole, type MeasuredHole } from '../../thread/insert-hole.ts';
import { blindDepth, insertLengths, setDown } from '../../thread/insert-lengths.ts';
import type { BlindDepth, BlindTap, InsertLength } from '../../thread/insert-lengths.ts';
import { insertLimits, tapReach, type InsertLimits } from '../../thread/insert-limits.ts';
import { dividedBy, isLess, isMore, minus, plus, zero, type Length } from '../../length/length.ts';
import type { ShownUnit } from '../../length/show.ts';
import { refuse, worked, type Result } from '../../length/refusal.ts';
import { hasInserts, type Thread } from '../../thread/threads.ts';

// Offered from here so that a worksheet has the whole subject in one place.
export { insertDrill, type InsertDrillChoice } from '../../thread/insert-drill.ts';
export { insertLimits, percentOfThread, type InsertLimits } from '../../thread/insert-limits.ts';

export type InsertWallQuestion =
  | { readonly kind: 'present'; readonly wall: Length }
  | { readonly kind: 'centre-to-edge'; readonly distance: Length };

export type InsertQuestion = {
  readonly thread: Thread;
  readonly metal: InsertMetal;
  readonly hole?: MeasuredHole;
  readonly wall?: InsertWallQuestion;
  readonly thickness?: Length;
  /** How far the thickness may be off its reading. */
  readonly thicknessOff?: Length;
  readonly leastFloor?: Length;
  /** What the usual one is round in; millimetres where it is left out. */
  readonly shop?: ShownUnit;
  readonly blind?: { readonly tap: BlindTap };
  readonly leastWall?: Length;
};

export type InsertWall = {
  readonly wall: Length;
  readonly least: Length;
  readonly enough: boolean;
  readonly source: string;
};

export type InsertAnswer = {
  readonly limits: InsertLimits;
  readonly drill: InsertDrillChoice;
  readonly hole: InsertHole;
  readonly wallLeft?: InsertWall;
  readonly lengths: readonly InsertLength[];
  readonly setDown: { readonly least: Length; readonly most: Length };
  readonly blindDepth?: BlindDepth;
};

/** Why no insert can be worked out; `say-insert.ts` has the sentences. */
export type InsertRefusal =
  | { readonly code: 'no-insert-made'; readonly thread: string }
  | {
      readonly code: 'hole-past-insert-thread';
      readonly thread: string;
      readonly hole: Length;
      readonly major: Length;
    }
  | { readonly code: 'wall-without-hole' }
  | { readonly code: 'no-metal-for-insert' };

/**
 * A wire thread insert for a bolt that is threaded and fixed: drill or not, thread left, wall left, length, depth.
 *
 * Units:   Lengths in and out; percents of the insert thread.
 * Range:   the threads of `insertThreads`; `hole` left out means solid metal.
 * Refuses: no-insert-made, hole-past-insert-thread (the hole leaves no thread at all), wall-without-hole (a wall from
 *          the hole's edge needs the hole), no-metal-for-insert (a thickness of nothing).
 * Source:  ASME B18.29.1, B18.29.2M; each figure names its own.
 */
export function threadInsert(q: InsertQuestion): Result<InsertAnswer, InsertRefusal> {
  const limits = insertLimits(q.thread);
  const refusal = insertRefusal(q, limits);
  if (refusal) return refuse(refusal);
  const drill = insertDrill(q.thread, q.metal);
  const wallLeft = insertWall(q, limits);
  const depthQuestion = {
    thread: q.thread,
    drill: drill.drill.size,
    ...(q.thickness && { thickness: q.thickness }),
    ...(q.thicknessOff && { thicknessOff: q.thicknessOff }),
    ...(q.leastFloor && { leastFloor: q.leastFloor }),
    ...(q.shop && { shop: q.shop }),
  };
  const lengths = insertLengths({ ...depthQuestion, ...(q.blind && { tap: q.blind.tap }) });
  const chosen = lengths.find((length) => length.chosen);
  return worked({
    limits,
    drill,
    hole: insertHole({ thread: q.thread, limits, drill, ...(q.hole && { hole: q.hole }) }),
    ...(wallLeft && { wallLeft }),
    lengths,
    setDown: setDown(q.thread),
    ...(q.blind &&
      chosen && {
        blindDepth: blindDepth({ ...depthQuestion, tap: q.blind.tap, nominal: chosen.nominal }),
      }),
  });
}

function insertRefusal(q: InsertQuestion, limits: InsertLimits): InsertRefusal | undefined {
  const thread = q.thread.designation;
  if (!hasInserts(q.thread)) return { code: 'no-insert-made', thread };
  if (q.thickness && !isMore(q.thickness, zero)) return { code: 'no-metal-for-insert' };
  if (q.wall?.kind === 'present' && !q.hole) return { code: 'wall-without-hole' };
  if (!q.hole) return undefined;
  const hole = mean(q.hole.loosest);
  return isLess(hole, limits.majorLeast)
    ? undefined
    : { code: 'hole-past-insert-thread', thread, hole, major: limits.majorLeast };
}

/** Metal between the tapped hole and the part's edge, at the greatest diameter the tap may cut. */
function insertWall(q: InsertQuestion, limits: InsertLimits): InsertWall | undefined {
  const wall = wallAfterTap(q, limits);
  if (!wall) return undefined;
  const least = leastWallOf(q);
  const threshold = q.leastWall
    ? 'least wall: your own'
    : "least wall: half the bolt's diameter, common practice, no source";
  return {
    wall,
    least,
    enough: !isLess(wall, least),
    source: `${threshold}; ${limits.majorMostSource}`,
  };
}

function leastWallOf({ leastWall, thread }: Pick<InsertQuestion, 'leastWall' | 'thread'>): Length {
  return leastWall ?? dividedBy(thread.major, 2);
}

/**
 * How thick the wall has to be now, so that enough of it is left after the tap.
 *
 * Units:   from the hole's edge to the part's edge; while there is no hole from its centre.
 * Source:  geometry; the least wall half the bolt's diameter: common practice, no source, unless the fitter gave his own.
 */
export function wallNeeded(
  q: Pick<InsertQuestion, 'hole' | 'leastWall' | 'thread'>,
  limits: InsertLimits,
): Length {
  const reach = q.hole ? tapReach(limits, mean(q.hole.tightest)) : dividedBy(limits.majorMost, 2);
  return plus(leastWallOf(q), reach);
}

// The hole's edge moves out by half of what the diameter grows; from the tightest place it moves furthest.
function wallAfterTap({ wall, hole }: InsertQuestion, limits: InsertLimits): Length | undefined {
  if (wall?.kind === 'centre-to-edge') return minus(wall.distance, dividedBy(limits.majorMost, 2));
  return wall && hole ? minus(wall.wall, tapReach(limits, mean(hole.tightest))) : undefined;
}

/**
 * Whether a hole leaves too little thread for an insert. One inside the standard's limits never does, however coarse its
 * thread: #2-56 has 56 % left at the standard's own most.
 *
 * Units:  percent of the insert's thread.
 * Source: ASME B18.29.1 for the limits; 60 % past them: common practice, no source.
 */
export function leavesTooLittleThread({ hole, drill }: Pick<InsertAnswer, 'hole' | 'drill'>): boolean {
  if (hole.state !== 'over' && drill.insideLimits) return false;
  return threadLeft({ hole, drill }) < leastPercentWorthKeeping;
}

/** Percent of thread that is left once the hole is ready for its tap. */
export function threadLeft({ hole, drill }: Pick<InsertAnswer, 'hole' | 'drill'>): number {
  return hole.percentAfterDrill ?? hole.percent ?? drill.percent;
}

/** Whether a drill goes through before the tap: not where the hole is right already, or too wide for it. */
export function needsDrill({ hole }: Pick<InsertAnswer, 'hole'>): boolean {
  return hole.state !== 'straight-to-tap' && !(hole.state === 'over' && hole.drillTightest !== true);
}
