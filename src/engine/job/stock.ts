import { fractionText } from '../length/fraction.ts';
import { isLess, isMore, lengthOf, plus, ratioOf, roundToStep, type Length } from '../length/length.ts';
import { uncapital } from '../length/say-words.ts';
import { show, showBetween, type ShownUnit } from '../length/show.ts';
import type { GetOffer } from './get-list.ts';
import { barCleanUp, inchBars, metricBars, metricBarStep } from './tables/bar-sizes.ts';

/** A part that is made out of stock; what isn't known of it isn't said. */
export type PartFromStock = {
  /** As its cuts name it: once one of them has begun, its stock is there. */
  readonly part: string;
  readonly outside?: Length | undefined;
  readonly length?: Length | undefined;
  /** What it is made of, as the chart names it. */
  readonly metal?: string | undefined;
};

/**
 * The bar a round part is turned from, as it is asked for: `bar for the bushing, 5/8 in or larger, 1.500 in long when
 * finished, bearing bronze`.
 *
 * Units:  the next size sold that is larger than the part by the skin that comes off; the length is the finished part's.
 * Range:  without an outside it is bar or tube, and the fitter knows how wide.
 * Source: tables/bar-sizes.ts: common practice.
 */
export function stockFor({ part, outside, length, metal }: PartFromStock, unit: ShownUnit): GetOffer {
  const words = [
    outside ? `bar for the ${part}, ${barFor(outside, unit)} or larger` : `bar or tube for the ${part}`,
    ...(length ? [`${show(length, unit)} long when finished`] : []),
    ...(metal === undefined ? [] : [uncapital(metal)]),
  ];
  return { kind: 'stock', what: words.join(', '), count: 1, part };
}

/** `5/8 in`, `16 mm`: the next bar sold that has room for the part and its skin. */
export function barFor(outside: Length, unit: ShownUnit): string {
  const least = plus(outside, barCleanUp[unit]);
  if (unit === 'mm') {
    const sold = metricBars.find((size) => !isLess(size, least)) ?? roundToStep(least, metricBarStep, 'up');
    return `${ratioOf(sold, lengthOf('1 mm'))} mm`;
  }
  const { step } = inchBars.find(({ upTo }) => !isMore(least, upTo)) ?? { step: lengthOf('1/4 in') };
  const sixteenths = ratioOf(roundToStep(least, step, 'up'), lengthOf('1/16 in'));
  return `${fractionText(sixteenths, 16)} in`;
}

type Shims = { readonly aim: Length; readonly lower: Length; readonly upper: Length };

/** Shims as they are asked for, from where to where they do: `shims, .030 in in all, .026 to .034 in`. */
export function shimsToGet({ aim, lower, upper }: Shims, unit: ShownUnit): GetOffer {
  return {
    kind: 'part',
    what: `shim of ${show(aim, unit)}, or several: ${showBetween(lower, upper, unit)} ${unit} in all`,
    count: 1,
  };
}
