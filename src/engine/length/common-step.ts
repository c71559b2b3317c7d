import { greatestCommonDivisor } from './exact-fraction.ts';
import { toText, type Length } from './length.ts';

/** A size as a sum and how many sizes it is the sum of, so that a third stays exact. */
export type Fraction = { readonly sum: Length; readonly count: number };

export type InSteps = {
  /** Each size as a whole number of steps. */
  readonly sizes: readonly bigint[];
  /** Where a length lies between the steps: on or above this one, by less than one step. */
  readonly floor: (length: Length) => bigint;
  readonly ceiling: (length: Length) => bigint;
  /** In quarters of a step: 0 on it, 1 nearer to it than to the next, 2 half-way, 3 nearer to the next. */
  readonly quarters: (length: Length) => bigint;
};

/**
 * The largest step that measures every one of these sizes exactly, and any length against it.
 *
 * Range:   at least one size above zero. A length that is not itself a whole number of steps stays exact too: it is
 *          compared on the lowest common denominator of all.
 * Source:  greatest common divisor, Euclid.
 */
export function inCommonSteps(sizes: readonly Fraction[], others: readonly Length[]): InSteps {
  const places = Math.max(...[...sizes.map(({ sum }) => sum), ...others].map(decimalPlaces));
  const count = sizes.reduce((so, size) => leastCommonMultiple(so, BigInt(size.count)), 1n);
  const whole = sizes.map((size) => (digits(size.sum, places) * count) / BigInt(size.count));
  const step = whole.reduce(greatestCommonDivisor, 0n);
  const floor = (length: Length) => floorDivided(digits(length, places) * count, step);
  return {
    sizes: whole.map((size) => size / step),
    floor,
    ceiling: (length) => -floorDivided(-digits(length, places) * count, step),
    quarters: (length) => {
      const below = floor(length);
      const doubled = 2n * (digits(length, places) * count - below * step);
      if (doubled === 0n) return 4n * below;
      if (doubled === step) return 4n * below + 2n;
      return 4n * below + (doubled < step ? 1n : 3n);
    },
  };
}

function decimalPlaces(length: Length): number {
  return toText(length).split('.')[1]?.length ?? 0;
}

function digits(length: Length, places: number): bigint {
  const [whole = '', decimals = ''] = toText(length).split('.');
  return BigInt(whole + decimals.padEnd(places, '0'));
}

function floorDivided(a: bigint, b: bigint): bigint {
  const towardsZero = a / b;
  return a % b < 0n ? towardsZero - 1n : towardsZero;
}

function leastCommonMultiple(a: bigint, b: bigint): bigint {
  return (a / greatestCommonDivisor(a, b)) * b;
}
