/** A rational number in lowest terms, bottom above zero: what stands before a length in a chain. */
export type Fraction = { readonly top: bigint; readonly bottom: bigint };

export const NONE: Fraction = { top: 0n, bottom: 1n };
export const WHOLE: Fraction = { top: 1n, bottom: 1n };

/**
 * top / bottom in lowest terms.
 *
 * Range:  any whole numbers; a bottom of zero is a broken promise of our own code, and throws.
 */
export function fraction(top: bigint, bottom: bigint): Fraction {
  if (bottom === 0n) throw new Error('a fraction without a bottom');
  const shared = greatestCommonDivisor(top < 0n ? -top : top, bottom < 0n ? -bottom : bottom);
  const sign = bottom < 0n ? -1n : 1n;
  return { top: (sign * top) / shared, bottom: (sign * bottom) / shared };
}

export function addFractions(a: Fraction, b: Fraction): Fraction {
  return fraction(a.top * b.bottom + b.top * a.bottom, a.bottom * b.bottom);
}

export function multiplyFractions(a: Fraction, b: Fraction): Fraction {
  return fraction(a.top * b.top, a.bottom * b.bottom);
}

/** a / b; b is not zero. */
export function divideFractions(a: Fraction, b: Fraction): Fraction {
  return fraction(a.top * b.bottom, a.bottom * b.top);
}

/** The least bottom all of them can be brought to. */
export function commonBottom(fractions: readonly Fraction[]): bigint {
  return fractions.reduce((so, { bottom }) => (so / greatestCommonDivisor(so, bottom)) * bottom, 1n);
}

export function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  let [large, small] = [a, b];
  while (small !== 0n) [large, small] = [small, large % small];
  return large;
}
