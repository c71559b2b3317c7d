import type { BushingQuestion } from './bushing.ts';
import type { Interference } from './bushing-stress.ts';
import { heatWays, interferenceWhenHot } from './heat-fit.ts';
import { dividedBy, isMore, lengthOf, plus, type Length } from './length.ts';
import { expansionPerCelsius } from './material.ts';
import { coldCelsius, leastDropRoom, mostHeatByCondition, mostHeatCelsius } from './tables/press-practice.ts';

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
  const most = Math.min(mostHeatCelsius[q.part.id], mostHeatByCondition[q.condition]);
  const part = expansionPerCelsius(q.part);
  const inner = expansionPerCelsius(q.bushing);
  const { hotCelsius } = q;
  return {
    dropRoom,
    mostHeatCelsius: most,
    heat: heatWays({
      bore: size,
      outside: plus(size, greatest),
      room: dropRoom,
      borePerCelsius: part.low,
      outsidePerCelsius: inner.low,
      shopCelsius: q.shopCelsius,
      coldCelsius: coldCelsius[q.cold],
      mostCelsius: most,
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
