import type { CutOffer } from '../../cut/cut.ts';
import { wayOf, type CutWay } from '../../cut/cuts-of-way.ts';
import { isoHole } from '../../fit/fits-iso.ts';
import { absolute, byLength, isLess, isMore, minus, plus, times, type Length } from '../../length/length.ts';
import { drillsOf, type Drill, type DrillSeries } from '../../thread/drill-series.ts';
import type { ShownUnit } from '../../length/show.ts';
import { drillingOrder } from './drilling-order.ts';
import type { PlateHole } from './laid-plate.ts';
import type { PlateAnswer } from './plate.ts';

/** A clearance hole of the middle series is H13: ISO 273. */
const HOLE_CLASS = 'H13';
const LIMITS_FROM = 'H13, a clearance hole of the middle series: ISO 273, from memory';
// Over 500 mm ISO 286 has no row here: common practice, no source.
const WIDEST_SHARE = '0.002';

/**
 * Every hole as a cut of its own, with where it stands; then the counterbores. In the order of work.
 *
 * Units:   diameters; a counterbore is its depth. From the hole to that with the tolerance of H13.
 * Range:   none while holes or edges are surely too near each other.
 */
export function cutsOfPlate(answer: PlateAnswer, unit: ShownUnit): readonly CutWay[] {
  if (answer.judged.some(({ judged }) => judged.verdict.kind === 'no-good')) return [];
  const order = drillingOrder(answer.holes);
  const offers = [
    ...order.map((hole) => drilledAt(hole, unit)),
    ...order.flatMap((hole) => counterboredAt(hole)),
  ];
  const isUnsure = answer.judged.some(({ judged }) => judged.verdict.kind !== 'good');
  return wayOf({ id: 'plate', name: 'Holes of the plate', offers, ...(isUnsure && { unsure: true }) });
}

/** What a hole is made with, and how large it becomes. */
export function holeTool(hole: Length, unit: ShownUnit): { readonly drill?: Drill; readonly upper: Length } {
  const upper = plus(hole, toleranceOf(hole));
  const own: readonly DrillSeries[] =
    unit === 'in' ? ['fraction', 'letter', 'number', 'metric'] : ['metric', 'fraction', 'letter', 'number'];
  for (const series of own) {
    const [nearest] = drillsOf(series)
      .filter(({ size }) => !isLess(size, hole) && !isMore(size, upper))
      .toSorted((a, b) => byLength(absolute(minus(a.size, hole)), absolute(minus(b.size, hole))));
    if (nearest) return { drill: nearest, upper };
  }
  return { upper };
}

function toleranceOf(hole: Length): Length {
  const limits = isoHole(hole, HOLE_CLASS);
  return limits.ok ? limits.value.upper : times(hole, WIDEST_SHARE);
}

export function cutNameOf({ name }: Pick<PlateHole, 'name'>): string {
  return `Hole ${name}`;
}

function drilledAt(plateHole: PlateHole, unit: ShownUnit): CutOffer {
  const { hole, set } = plateHole;
  const { drill, upper } = holeTool(hole, unit);
  return {
    name: cutNameOf(plateHole),
    part: 'adapter plate',
    operation: drill ? 'drill' : 'bore',
    of: 'bore',
    target: drill?.size ?? hole,
    lower: hole,
    upper,
    limitsFrom: LIMITS_FROM,
    ...(drill && { drill: drill.name }),
    at: set,
  };
}

function counterboredAt({ name, head, set }: PlateHole): readonly CutOffer[] {
  const deep = head?.deep;
  if (!deep) return [];
  return [
    {
      name: `Counterbore ${name}`,
      part: 'adapter plate',
      operation: 'bore',
      of: 'recess-depth',
      target: deep,
      lower: deep,
      upper: plus(deep, toleranceOf(deep)),
      limitsFrom: 'its depth as given, and no deeper than H13: common practice, no source',
      at: set,
    },
  ];
}
