import { isLess, isMore, largest, plus, smallest, sum, times, zero, type Length } from '../length/length.ts';
import { expansionPerCelsius } from './material.ts';
import type { Material } from './tables/materials.ts';

/** A size that goes into a sum so many times: a bore once, the pin in it less once, two washers less twice. */
export type GrowingLeg = { readonly size: Length; readonly coefficient: number; readonly metal: Material };

export type LeastAndMost = { readonly least: Length; readonly most: Length };

const ROOM_CELSIUS = 20; // ISO 1: every size is as it is at 20 °C

/**
 * By how much a sum of sizes grows from 20 °C to a temperature that all of its parts have; below zero it shrinks.
 *
 * Units:   Σ coefficient · size · α · (T − 20). What is of one metal grows by one α: its net size counts, so that parts
 *          of one metal between faces of the same one keep their gap but for its own growth. Of a range of expansions
 *          both ends count, each metal's by itself.
 * Range:   −60 to 500 °C, as it is asked for; α is taken as constant, which below −60 °C it isn't.
 * Source:  linear expansion; figures of tables/materials.ts. By hand: a .500 in acetal pin in a steel bore at 60 °C,
 *          12.7 · (110 − 11.7)·10⁻⁶ · 40 = 0.050 mm less clearance.
 */
export function growthTo(celsius: number, legs: readonly GrowingLeg[]): LeastAndMost {
  const metals = [...new Map(legs.map(({ metal }) => [metal.id, metal])).values()];
  const changes = metals.map((metal) => {
    const ofIt = legs.filter((leg) => leg.metal.id === metal.id);
    const net = sum(ofIt.map(({ size, coefficient }) => times(size, coefficient)));
    const { low, high } = expansionPerCelsius(metal);
    const ends = [low, high].map((share) => times(net, (share * (celsius - ROOM_CELSIUS)).toFixed(15)));
    const [first = zero, other = first] = ends;
    return { least: smallest(first, other), most: largest(first, other) };
  });
  return { least: sum(changes.map(({ least }) => least)), most: sum(changes.map(({ most }) => most)) };
}

/** What a range of it becomes at a temperature, and whether it still does what it is there for. */
export type InUse = LeastAndMost & {
  readonly celsius: number;
  /** What it must be at 20 °C to be above (or below) zero then, whichever end of an expansion holds. */
  readonly needs: Length;
  readonly keeps: 'surely' | 'perhaps' | 'not';
};

/**
 * A clearance, float or grip at the hottest or the coldest that its joint sees.
 *
 * Units:   the range at 20 °C, bands and all, and what the parts grow by.
 * Range:   `stays` above zero: room to move, or to clamp by; below zero: a grip. At exactly zero it has neither.
 * Source:  as `growthTo`; that nothing may seize or come loose, common practice.
 */
export function inUseAt(
  celsius: number,
  {
    range,
    legs,
    stays,
  }: {
    readonly range: LeastAndMost;
    readonly legs: readonly GrowingLeg[];
    readonly stays: 'above' | 'below';
  },
): InUse {
  const growth = growthTo(celsius, legs);
  const least = plus(range.least, growth.least);
  const most = plus(range.most, growth.most);
  const [surely, perhaps] =
    stays === 'above' ? [isMore(least, zero), isMore(most, zero)] : [isLess(most, zero), isLess(least, zero)];
  const keeps = surely ? 'surely' : perhaps ? 'perhaps' : 'not';
  return { celsius, least, most, keeps, needs: times(stays === 'above' ? growth.least : growth.most, -1) };
}
