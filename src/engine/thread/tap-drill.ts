import { drillNamed, nextDrills, type Drill, type DrillSeries } from './drill-series.ts';
import { isLess, isMore, lengthOf, minus, times, type Length } from '../length/length.ts';
import { listedTapDrills } from './tables/tap-drills.ts';
import { internalLimits, type InternalLimits } from './thread-limits.ts';
import { isInchThread, percentOfHeight, type Thread } from './threads.ts';

/** A drill with the thread it leaves, and whether its hole lies inside the minor diameter's limits. */
export type TapDrill = { readonly drill: Drill; readonly percent: number; readonly insideLimits: boolean };

export type TapDrillAnswer = {
  /** The hole that leaves just that percentage. */
  readonly hole: Length;
  /** The next drills to that hole, smaller and larger; a drill that is exactly it is `exact`. */
  readonly below?: TapDrill;
  readonly exact?: TapDrill;
  readonly above?: TapDrill;
  readonly listed?: TapDrill & { readonly basis: 'published' | 'memory' };
  readonly limits: InternalLimits;
};

const INCH_SERIES = ['fraction', 'letter', 'number'] as const satisfies readonly DrillSeries[];
const METRIC_SERIES = ['metric'] as const satisfies readonly DrillSeries[];

/**
 * The hole before the tap for a percentage of thread, the drills next to it, and the drill that charts list.
 *
 * Units:  hole = D − 1.299038P · percent/100; percentages with at most two decimals.
 * Range:  0 to 100 %; inch threads with inch drills, metric ones with metric drills.
 * Source: handbook formula; listed drills as tables/tap-drills.ts says; limits as `internalLimits`.
 */
export function tapDrill(thread: Thread, percent: number): TapDrillAnswer {
  const hole = holeForPercent(thread, percent);
  const series = isInchThread(thread) ? INCH_SERIES : METRIC_SERIES;
  const limits = internalLimits(thread);
  const told = (drill: Drill): TapDrill => ({
    drill,
    percent: percentOfHeight({ major: thread.major, pitch: thread.pitch, hole: drill.size }),
    insideLimits: !isLess(drill.size, limits.minorLeast) && !isMore(drill.size, limits.minorMost),
  });
  const { below, above } = nextDrills(hole, series);
  const exact = exactDrill(hole, below, series);
  const listed = listedTapDrill(thread);
  return {
    hole,
    limits,
    ...(below && { below: told(below) }),
    ...(exact && { exact: told(exact) }),
    ...(above && { above: told(above) }),
    ...(listed && { listed: { ...told(listed.drill), basis: listed.basis } }),
  };
}

/** The hole that leaves a percentage of thread: D − 1.299038P · percent/100. */
export function holeForPercent(thread: Pick<Thread, 'major' | 'pitch'>, percent: number): Length {
  const hundredths = Math.round(percent * 100);
  return minus(thread.major, times(times(thread.pitch, hundredths), '0.0001299038'));
}

/** The drill that charts list for a thread. Where it isn't in a usual set of drills it is named by its size. */
function listedTapDrill(
  thread: Thread,
): { readonly drill: Drill; readonly basis: 'published' | 'memory' } | undefined {
  const listed = listedTapDrills.get(thread.designation);
  if (!listed) return undefined;
  const { name, basis } = listed;
  const drill = drillNamed(name) ?? { name, series: 'metric', size: lengthOf(name) };
  return { drill, basis };
}

// `nextDrills` looks strictly to either side: a drill that is the hole itself stands just above the one below it.
function exactDrill(
  hole: Length,
  below: Drill | undefined,
  series: readonly DrillSeries[],
): Drill | undefined {
  const next = nextDrills(below?.size ?? lengthOf('0 mm'), series).above;
  return next && !isMore(next.size, hole) ? next : undefined;
}
