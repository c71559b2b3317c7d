import type { BushingQuestion } from './bushing.ts';
import { coldShrinkOf } from './cold-shrink.ts';
import type { Interference } from './bushing-stress.ts';
import { heatWays, interferenceWhenHot } from './heat-fit.ts';
import { dividedBy, isMore, lengthOf, plus, type Length } from './length.ts';
import { expansionPerCelsius } from './material.ts';
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
};

/**
 * The lesser heat limit of a part and its bushing, which soon are as hot as each other.
 *
 * Units:   °C. Of equal limits the part's is named.
 * Source:  tables/press-practice.ts: common practice, no source.
 */
export function heatLimit(q: Pick<BushingQuestion, 'part' | 'bushing' | 'condition'>): HeatLimit {
  const limits: readonly HeatLimit[] = [
    { celsius: mostHeatCelsius[q.part.id], of: 'part', material: q.part.name },
    { celsius: mostHeatCelsius[q.bushing.id], of: 'bushing', material: q.bushing.name },
    ...(q.condition === 'plain'
      ? []
      : [{ celsius: mostHeatByCondition[q.condition], of: q.condition, material: q.part.name }]),
  ];
  return limits.reduce((least, one) => (one.celsius < least.celsius ? one : least));
}

/**
 * How to drop a bushing in, and what is left of its grip when the joint is hot.
 *
 * Units:   °C, floating point. In: the greatest interference and the lowest expansion the books give, so that it is hot
 *          enough. Hot: the least interference left, the part's highest expansion beside the bushing's lowest.
 * Source:  heat-fit.ts, tables/materials.ts; limits and room are common practice.
 */
export function bushingHeat(
  q: BushingQuestion,
  size: Length,
  { leastAfterFlattening, greatest }: Interference,
) {
  const inch = lengthOf('1 in');
  const dropRoom = isMore(size, inch) ? dividedBy(size, 1000) : leastDropRoom;
  const mostHeat = heatLimit(q);
  const part = expansionPerCelsius(q.part);
  const inner = expansionPerCelsius(q.bushing);
  const { hotCelsius } = q;
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
      mostCelsius: mostHeat.celsius,
    }),
    ...(hotCelsius !== undefined && {
      interferenceHot: interferenceWhenHot({
        interference: leastAfterFlattening,
        at: size,
        outerPerCelsius: part.high,
        innerPerCelsius: inner.low,
        celsius: hotCelsius,
        shopCelsius: q.shopCelsius,
      }),
    }),
  };
}
