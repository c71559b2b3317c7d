import type { BushingQuestion } from './bushing.ts';
import { coldShrinkOf } from '../material/cold-shrink.ts';
import type { Interference } from './bushing-stress.ts';
import { heatWays, interferenceAt } from './heat-fit.ts';
import { dividedBy, isMore, largest, lengthOf, plus, type Length } from '../length/length.ts';
import { expansionPerCelsius } from '../material/material.ts';
import { rowOf } from '../material/tables/materials.ts';
import {
  coldCelsius,
  leastDropRoom,
  mostHeatByCondition,
  mostHeatCelsius,
  type Condition,
} from './tables/press-practice.ts';

/** The hottest the joint may get, and what would be spoilt first. */
export type HeatLimit = {
  readonly celsius: number;
  readonly of: 'part' | 'bushing' | Exclude<Condition, 'plain'>;
  readonly material: string;
  /** The part is plated: it is not heated at all to drop a bushing in, as plating gives off fumes. */
  readonly plated?: true;
};

/**
 * The lesser heat limit of a part and its bushing, which soon are as hot as each other.
 *
 * Units:   °C. Of equal limits the part's is named.
 * Source:  tables/press-practice.ts: common practice, no source.
 */
export function heatLimit(q: Pick<BushingQuestion, 'part' | 'bushing' | 'condition'>): HeatLimit {
  const limits: readonly HeatLimit[] = [
    { celsius: mostHeatCelsius[rowOf(q.part.id)], of: 'part', material: q.part.name },
    { celsius: mostHeatCelsius[rowOf(q.bushing.id)], of: 'bushing', material: q.bushing.name },
    ...(q.condition === 'plain'
      ? []
      : [{ celsius: mostHeatByCondition[q.condition], of: q.condition, material: q.part.name }]),
  ];
  const least = limits.reduce((so, one) => (one.celsius < so.celsius ? one : so));
  return q.condition === 'plated' ? { ...least, plated: true } : least;
}

/**
 * How to drop a bushing in, and what is left of its grip when the joint is hot.
 *
 * Units:   °C, floating point. In: the greatest interference and the lowest expansion the books give, so that it is hot
 *          enough. Hot: the least interference left, the part's highest expansion beside the bushing's lowest.
 *          A plated part stays at shop temperature, so that no way in says what its caution forbids.
 * Source:  heat-fit.ts, tables/materials.ts; limits and room are common practice.
 */
export function bushingHeat(
  q: BushingQuestion,
  size: Length,
  { leastAfterFlattening, greatest }: Interference,
) {
  const inch = lengthOf('1 in');
  const dropRoom = isMore(size, inch) ? dividedBy(size, 1000) : leastDropRoom[q.shop ?? 'in'];
  const mostHeat = heatLimit(q);
  const part = expansionPerCelsius(q.part);
  return {
    dropRoom,
    mostHeat,
    heat: heatWays({
      bore: size,
      outside: plus(size, greatest),
      room: dropRoom,
      borePerCelsius: part.low,
      outsideShrinks: coldShrinkOf(q.bushing),
      shopCelsius: q.shopCelsius,
      coldCelsius: coldCelsius[q.cold],
      mostCelsius: mostHeat.plated ? q.shopCelsius : mostHeat.celsius,
    }),
    ...inUse(q, size, { leastAfterFlattening, greatest }),
  };
}

/**
 * What the hottest and the coldest that the joint sees do to its grip.
 *
 * Units:   the least that is left, part and bushing each by the end of its expansion that loosens it most; the greatest by the
 *          ends that tighten it most, where that is more than in the shop.
 * Source:  heat-fit.ts, tables/materials.ts. In the cold the figure for room temperature stands: it says more than comes.
 */
function inUse(
  { part, bushing, hotCelsius, coldestCelsius, shopCelsius }: BushingQuestion,
  at: Length,
  { leastAfterFlattening, greatest }: Pick<Interference, 'leastAfterFlattening' | 'greatest'>,
) {
  const outer = expansionPerCelsius(part);
  const inner = expansionPerCelsius(bushing);
  const left = (interference: Length, celsius: number, looser: boolean): Length => {
    // Warmer, it is loosest with the part growing most and the bushing least; colder the other way round.
    const partGrows = looser === celsius > shopCelsius;
    return interferenceAt({
      interference,
      at,
      outerPerCelsius: partGrows ? outer.high : outer.low,
      innerPerCelsius: partGrows ? inner.low : inner.high,
      celsius,
      shopCelsius,
    });
  };
  const seen = [hotCelsius, coldestCelsius].filter((celsius) => celsius !== undefined);
  return {
    ...(hotCelsius !== undefined && { interferenceHot: left(leastAfterFlattening, hotCelsius, true) }),
    ...(coldestCelsius !== undefined && {
      interferenceCold: left(leastAfterFlattening, coldestCelsius, true),
    }),
    greatestInUse: largest(greatest, ...seen.map((celsius) => left(greatest, celsius, false))),
  };
}
