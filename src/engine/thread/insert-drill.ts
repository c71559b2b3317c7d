import { drillNamed, drillsOf, nextDrills, type Drill, type DrillSeries } from './drill-series.ts';
import { insertLimits, percentOfThread, type InsertLimits } from './insert-limits.ts';
import { isLess, isMore, type Length } from '../length/length.ts';
import { listedInsertDrills } from './tables/insert-drills.ts';
import { isInchThread, type Thread } from './threads.ts';

export type InsertMetal = 'aluminium' | 'steel';

/** A drill on hand next to the chosen one, and what it would leave. */
export type InsertNeighbour = {
  readonly drill: Drill;
  readonly percent: number;
  readonly insideLimits: boolean;
};

export type InsertDrillChoice = {
  readonly drill: Drill;
  readonly percent: number;
  readonly listed: boolean;
  readonly basis: string;
  readonly insideLimits: boolean;
  /** A listed drill outside the limits, where another is inside: under them the tap would have to cut what the drill left. */
  readonly leftOut?: Drill;
  readonly below?: InsertNeighbour;
  readonly above?: InsertNeighbour;
};

type Pick = { readonly drill: Drill; readonly listed: boolean; readonly basis: string };

const FROM_MEMORY = "memory of insert makers' charts, unconfirmed";
const BY_LIMITS = 'chosen by the limits';
const NEXT_OVER = 'chosen by the limits: no drill lies inside them, this is the next one over';

// Common practice, no source: under this a tapped hole is bushed rather than used.
export const leastPercentWorthKeeping = 60;

/**
 * The drill to run before a wire insert's tap.
 *
 * The listed drill where it lies inside the tapped hole's minor limits. Else the smallest drill inside them among those
 * of the thread's own kind (inch: fractions first, then letters and numbers; metric: millimetres), as a drill cuts
 * large rather than small. Else a drill of the other kind inside, else a listed one somewhat over the maximum, else the
 * next one over. Never one below the minimum.
 *
 * Units:  percents of the insert thread; the neighbours are the next drills of the thread's own kind.
 * Source: tables/insert-drills.ts and the limits of `insertLimits`; `basis` says which.
 */
export function insertDrill(thread: Thread, metal: InsertMetal): InsertDrillChoice {
  const limits = insertLimits(thread);
  const listed = listedPick(thread, metal);
  const { drill, listed: isListed, basis } = pickDrill(thread, limits, listed);
  const { below, above } = nextDrills(drill.size, ownSeries(thread).flat());
  return {
    ...asNeighbour(thread, limits, drill),
    listed: isListed,
    basis,
    ...(listed && !isListed && { leftOut: listed.drill }),
    ...(below && { below: asNeighbour(thread, limits, below) }),
    ...(above && { above: asNeighbour(thread, limits, above) }),
  };
}

function pickDrill(thread: Thread, limits: InsertLimits, listed: Pick | undefined): Pick {
  if (listed && isInside(listed.drill.size, limits)) return listed;
  const own = firstInside(ownSeries(thread), limits);
  if (own) return { drill: own, listed: false, basis: BY_LIMITS };
  const other = firstInside(otherSeries(thread), limits);
  if (other) return { drill: other, listed: false, basis: BY_LIMITS };
  if (listed && isUsableOver(thread, limits, listed.drill)) return listed;
  const { above } = nextDrills(limits.minorMost, ownSeries(thread).flat());
  if (!above) throw new Error(`no drill for ${thread.designation}`);
  return { drill: above, listed: false, basis: NEXT_OVER };
}

function listedPick(thread: Thread, metal: InsertMetal): Pick | undefined {
  const row = listedInsertDrills[thread.designation];
  const name = row?.[metal];
  if (name === undefined) return undefined;
  const drill = drillNamed(name);
  if (!drill) throw new Error(`no drill is called ${name}`);
  return {
    drill,
    listed: true,
    basis: row?.published === undefined ? FROM_MEMORY : `published: ${row.published}`,
  };
}

function ownSeries(thread: Thread): readonly (readonly DrillSeries[])[] {
  return isInchThread(thread) ? [['fraction'], ['letter', 'number']] : [['metric']];
}

function otherSeries(thread: Thread): readonly (readonly DrillSeries[])[] {
  return isInchThread(thread) ? [['metric']] : [['fraction'], ['letter', 'number']];
}

function firstInside(order: readonly (readonly DrillSeries[])[], limits: InsertLimits): Drill | undefined {
  for (const series of order) {
    const inside = series.flatMap(drillsOf).filter((drill) => isInside(drill.size, limits));
    const [first, ...rest] = inside;
    if (first) return rest.reduce((least, next) => (isLess(next.size, least.size) ? next : least), first);
  }
  return undefined;
}

function isInside(size: Length, limits: InsertLimits): boolean {
  return !isLess(size, limits.minorLeast) && !isMore(size, limits.minorMost);
}

function isUsableOver(thread: Thread, limits: InsertLimits, drill: Drill): boolean {
  return (
    isMore(drill.size, limits.minorMost) && percentOfThread(thread, drill.size) >= leastPercentWorthKeeping
  );
}

function asNeighbour(thread: Thread, limits: InsertLimits, drill: Drill): InsertNeighbour {
  return {
    drill,
    percent: percentOfThread(thread, drill.size),
    insideLimits: isInside(drill.size, limits),
  };
}
