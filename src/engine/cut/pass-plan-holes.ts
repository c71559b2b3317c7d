import type { CutSizes, Operation } from './cut.ts';
import { drillNamed, drillsOf, type Drill, type DrillSeries } from '../thread/drill-series.ts';
import { absolute, byLength, dividedBy, isLess, isMore, minus, type Length } from '../length/length.ts';
import { refuse, worked, type Refusal, type Result } from '../length/refusal.ts';
import { leastReamed, pilotFrom } from './tables/cut-holes.ts';
import { leftToReam, mostReamed } from '../press/tables/press-practice.ts';

export type HoleOperation = Extract<Operation, 'drill' | 'ream' | 'tap'>;

/** One tool run through a hole, in order. */
export type HoleStep =
  | { readonly do: 'centre-drill' }
  | { readonly do: 'pilot'; readonly drill: Drill }
  | { readonly do: 'drill'; readonly drill: Drill }
  /** No drill does it: the hole is bored. */
  | { readonly do: 'bore'; readonly to: Length }
  | {
      readonly do: 'ream';
      readonly to: Length;
      readonly takes: Length;
      /** So little that the reamer may burnish and not cut. */
      readonly isLittle: boolean;
    }
  | { readonly do: 'tap'; readonly thread?: string; readonly hole: Length };

export type HolePlan = { readonly steps: readonly HoleStep[]; readonly source: string };

export type HolePlanRefusal = Extract<Refusal, { code: 'metal-gone' }>;

export type HoleQuestion = CutSizes & {
  readonly operation: HoleOperation;
  /** The hole as it is; left out: there is none yet, or nobody has measured it. */
  readonly present?: Length;
  readonly drill?: string;
  readonly thread?: string;
};

/** Whether a hole is made to size by the tool itself, in one go. */
export function isHoleOperation(operation: Operation): operation is HoleOperation {
  return operation === 'drill' || operation === 'ream' || operation === 'tap';
}

/**
 * The tools to run through a hole in order: centre drill, pilots, drill, then reamer or tap.
 *
 * Units:   diameters. A drill over a half inch follows the largest of its kind that is not over half its size. The reamer is left ten thou, five to
 *          twenty by the drills there are; the hole is bored where no drill leaves that. A drill is the one named, else
 *          one of just the target, else the nearest to it inside the limits.
 * Range:   a hole that is there already is not drilled again: pilots smaller than it are left out.
 * Refuses: metal-gone where the hole is larger than the limits already.
 * Source:  War Department TM 1-420, paragraph 37, for what the reamer is left; the rest common practice, no source.
 */
export function holePlan(q: HoleQuestion): Result<HolePlan, HolePlanRefusal> {
  const { present, upper } = q;
  if (present && isMore(present, upper))
    return refuse({ code: 'metal-gone', present, limit: upper, past: minus(present, upper) });
  return worked({ steps: stepsFor(q), source: 'common practice, no source' });
}

function stepsFor(q: HoleQuestion): readonly HoleStep[] {
  switch (q.operation) {
    case 'drill':
      return drilled(q, q);
    case 'ream':
      return [...openedForReamer(q), reamed(q)];
    case 'tap':
      return [
        ...openedForTap(q),
        { do: 'tap', hole: q.target, ...(q.thread !== undefined && { thread: q.thread }) },
      ];
    default:
      return q.operation satisfies never;
  }
}

type Wanted = Pick<HoleQuestion, 'target' | 'lower' | 'upper' | 'drill'>;

/** A hole drilled to size, or bored where no drill lies inside the limits. */
function drilled({ present }: HoleQuestion, wanted: Wanted): readonly HoleStep[] {
  if (present && !isLess(present, wanted.target)) return [];
  const drill = drillFor(wanted);
  const series = drill?.series === 'metric' ? 'metric' : 'fraction';
  const before = pilotsBefore(drill?.size ?? wanted.target, present, series);
  const start: readonly HoleStep[] = present ? [] : [{ do: 'centre-drill' }];
  const finish: HoleStep = drill ? { do: 'drill', drill } : { do: 'bore', to: wanted.target };
  // A bore needs a hole to start in.
  const opening = drill || present || before.length > 0 ? before : pilotOf(wanted.target, series);
  return [...start, ...opening.map((pilot) => ({ do: 'pilot', drill: pilot }) as const), finish];
}

function openedForReamer(q: HoleQuestion): readonly HoleStep[] {
  if (q.present && !isMore(minus(q.target, q.present), mostReamed)) return [];
  return drilled(q, {
    target: minus(q.target, leftToReam),
    lower: minus(q.target, mostReamed),
    upper: minus(q.target, leastReamed),
    ...(q.drill !== undefined && { drill: q.drill }),
  });
}

function reamed(q: HoleQuestion): HoleStep {
  const last = openedForReamer(q).at(-1);
  const before = (last && sizeOf(last)) ?? q.present ?? minus(q.target, leftToReam);
  const takes = minus(q.target, before);
  return { do: 'ream', to: q.target, takes, isLittle: isLess(takes, leastReamed) };
}

function openedForTap(q: HoleQuestion): readonly HoleStep[] {
  const isOpen = q.present ? !isLess(q.present, q.lower) : q.drill === undefined;
  return isOpen ? [] : drilled(q, q);
}

function sizeOf(step: HoleStep): Length | undefined {
  if (step.do === 'drill') return step.drill.size;
  return step.do === 'bore' ? step.to : undefined;
}

function drillFor({ drill, target, lower, upper }: Wanted): Drill | undefined {
  const named = drill === undefined ? undefined : drillNamed(drill);
  if (named) return named;
  const series: readonly DrillSeries[] = ['fraction', 'letter', 'number', 'metric'];
  const inside = series.flatMap(drillsOf).filter(({ size }) => !isLess(size, lower) && !isMore(size, upper));
  const off = (one: Drill) => absolute(minus(one.size, target));
  return inside.toSorted((a, b) => byLength(off(a), off(b)))[0];
}

type PilotSeries = 'fraction' | 'metric';

/** From the smallest up: each about half of the next, as long as that is over a half inch. */
function pilotsBefore(size: Length, present: Length | undefined, series: PilotSeries): readonly Drill[] {
  if (!isMore(size, pilotFrom)) return [];
  const [pilot] = pilotOf(size, series);
  if (!pilot || (present && !isMore(pilot.size, present))) return [];
  return [...pilotsBefore(pilot.size, present, series), pilot];
}

/** The largest that is not over half the size. */
function pilotOf(size: Length, series: PilotSeries): readonly Drill[] {
  const half = dividedBy(size, 2);
  return drillsOf(series)
    .filter((drill) => !isMore(drill.size, half))
    .slice(-1);
}
