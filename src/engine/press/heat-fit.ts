import { celsiusForShrink, shrinkBetween, type ColdShrink } from '../material/cold-shrink.ts';
import { isMore, minus, plus, ratioOf, times, zero, type Length } from '../length/length.ts';

/**
 * Change of temperature that makes a size grow or shrink by an amount. Floating point.
 *
 * Units:   degrees of the scale the expansion is given for; by / (α·base), nothing for an amount at or below zero.
 * Source:  linear expansion.
 */
export function degreesFor({
  by,
  base,
  expansionPerDegree,
}: {
  readonly by: Length;
  readonly base: Length;
  readonly expansionPerDegree: number;
}): number {
  return isMore(by, zero) ? ratioOf(by, base) / expansionPerDegree : 0;
}

/**
 * A size after a change of temperature; below zero it was cooled.
 *
 * Units:   size · (1 + α·ΔT); the factor is floating point, the length isn't.
 * Source:  linear expansion.
 */
export function sizeAfter(size: Length, change: { degrees: number; expansionPerDegree: number }): Length {
  return times(size, (1 + change.degrees * change.expansionPerDegree).toFixed(15));
}

/**
 * What is left of an interference when the whole joint is warmer or colder than the shop: an aluminium hub grows off a steel
 * bushing, an acetal bushing shrinks out of a steel hub. Below zero the bushing is loose.
 *
 * Units:   interference − d·(α outer − α inner)·(T − shop).
 * Source:  linear expansion.
 */
export function interferenceAt({
  interference,
  at,
  outerPerCelsius,
  innerPerCelsius,
  celsius,
  shopCelsius,
}: {
  readonly interference: Length;
  readonly at: Length;
  readonly outerPerCelsius: number;
  readonly innerPerCelsius: number;
  readonly celsius: number;
  readonly shopCelsius: number;
}): Length {
  const factor = (outerPerCelsius - innerPerCelsius) * (celsius - shopCelsius);
  return minus(interference, times(at, factor.toFixed(15)));
}

export type HeatQuestion = {
  /** The smallest bore and the largest outside, both at shop temperature. */
  readonly bore: Length;
  readonly outside: Length;
  /** Clearance wanted while it drops in. */
  readonly room: Length;
  readonly borePerCelsius: number;
  readonly outsideShrinks: ColdShrink;
  readonly shopCelsius: number;
  /** The coldest the shop can make the inner part; that cold it is made when both are used. */
  readonly coldCelsius: number;
  /** The hottest either part may get: the inner one soon is as hot as the outer. */
  readonly mostCelsius: number;
};

/** One way to drop it in. A temperature is left out where that part stays at shop temperature, or where no cold does it. */
export type HeatWay = {
  readonly way: 'heat' | 'cold' | 'both';
  readonly heatCelsius?: number;
  readonly coldCelsius?: number;
  readonly allowed: boolean;
};

/**
 * How hot, how cold, or how much of both lets the inner part drop in by hand.
 *
 * Units:   °C, floating point; needed = outside − bore + room. Heat grows the bore, cold shrinks the outside by its mean
 *          expansion over the range.
 * Source:  linear expansion; cold-shrink.ts.
 */
export function heatWays(q: HeatQuestion): readonly HeatWay[] {
  const needed = plus(minus(q.outside, q.bore), q.room);
  const heat = (by: Length) =>
    q.shopCelsius + degreesFor({ by, base: q.bore, expansionPerDegree: q.borePerCelsius });
  const heatCelsius = heat(needed);
  const coldCelsius = celsiusForShrink(
    q.outsideShrinks,
    q.shopCelsius,
    Math.max(0, ratioOf(needed, q.outside)),
  );
  const lost = times(
    q.outside,
    Math.max(0, shrinkBetween(q.outsideShrinks, q.shopCelsius, q.coldCelsius)).toFixed(15),
  );
  const besideCold = heat(minus(needed, lost));
  return [
    { way: 'heat', heatCelsius, allowed: isAtMost(heatCelsius, q.mostCelsius) },
    {
      way: 'cold',
      ...(coldCelsius !== undefined && { coldCelsius }),
      allowed: coldCelsius !== undefined && coldCelsius >= q.coldCelsius,
    },
    {
      way: 'both',
      heatCelsius: besideCold,
      coldCelsius: q.coldCelsius,
      allowed: isAtMost(besideCold, q.mostCelsius),
    },
  ];
}

// What floating point adds doesn't take a way past its limit.
function isAtMost(celsius: number, most: number): boolean {
  return celsius <= most + 1e-6;
}

/** °C as °F; floating point. */
export function fahrenheitOf(celsius: number): number {
  return celsius * 1.8 + 32;
}
