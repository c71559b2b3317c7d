import { lengthOf, minus, ratioOf, roundToStep, type Length } from './length.ts';

export type FractionBottom = 8 | 16 | 32 | 64 | 128;
export type NearestFraction = { readonly text: string; readonly exact: Length; readonly off: Length };

/**
 * The shop fraction nearest to a size: `29/64`, `1-1/2`, `2`, `0`.
 *
 * Units:  any Length from 0 up; `off` is the size less the fraction, so below zero means the fraction is larger.
 * Source: exact arithmetic; a tie goes to the even count (ISO 80000-1 annex B).
 */
export function nearestFraction(size: Length, bottom: FractionBottom = 64): NearestFraction {
  const step = lengthOf(`1/${bottom} in`);
  const exact = roundToStep(size, step, 'nearest');
  return { text: fractionText(ratioOf(exact, step), bottom), exact, off: minus(size, exact) };
}

/** `29/64` from a count of 64ths in lowest terms, with whole inches in front: 96 of 64 is `1-1/2`. */
export function fractionText(count: number, bottom: number): string {
  const whole = Math.floor(count / bottom);
  let top = count % bottom;
  let below = bottom;
  while (top !== 0 && top % 2 === 0) {
    top /= 2;
    below /= 2;
  }
  if (top === 0) return String(whole);
  return whole === 0 ? `${top}/${below}` : `${whole}-${top}/${below}`;
}
