const NORMAL_95 = 1.959963984540054; // 97.5 % point of the normal distribution
const SERIES_UP_TO = 200;
const LEVEL = 0.95;

/**
 * Two-sided 95 % factor of Student's t.
 *
 * Range:   degrees of freedom 1 and more; a fraction is cut to the next lower whole number, Infinity gives 1.95996.
 * Source:  JCGM 100:2008 G.3 and G.4.1 (truncation); the finite series and the expansion for many degrees of freedom
 *          are Abramowitz and Stegun 26.7.3, 26.7.4 and 26.7.5.
 */
export function t95(degreesOfFreedom: number): number {
  // A hair is added first: a whole number that floating point left at 1.9999999999 is still two.
  const whole = Math.max(1, Math.floor(degreesOfFreedom + 1e-6));
  if (whole === Infinity) return NORMAL_95;
  return whole > SERIES_UP_TO ? expanded(whole) : solved(whole);
}

/** Bisection over the angle θ = atan(t/√ν), where the share inside ±t rises steadily from 0 to 1. */
function solved(degreesOfFreedom: number): number {
  let below = 0;
  let above = Math.PI / 2;
  for (let step = 0; step < 60; step += 1) {
    const angleRadians = (below + above) / 2;
    if (shareInside(angleRadians, degreesOfFreedom) < LEVEL) below = angleRadians;
    else above = angleRadians;
  }
  return Math.tan((below + above) / 2) * Math.sqrt(degreesOfFreedom);
}

function shareInside(angleRadians: number, degreesOfFreedom: number): number {
  const cosine = Math.cos(angleRadians);
  const isOdd = degreesOfFreedom % 2 === 1;
  let term = isOdd ? cosine : 1;
  let series = degreesOfFreedom === 1 ? 0 : term;
  for (let k = isOdd ? 3 : 2; k <= degreesOfFreedom - 2; k += 2) {
    term *= (cosine * cosine * (k - 1)) / k;
    series += term;
  }
  const whole = Math.sin(angleRadians) * series;
  return isOdd ? (2 / Math.PI) * (angleRadians + whole) : whole;
}

function expanded(degreesOfFreedom: number): number {
  const z = NORMAL_95;
  const first = (z ** 3 + z) / 4;
  const second = (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96;
  const third = (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384;
  return z + first / degreesOfFreedom + second / degreesOfFreedom ** 2 + third / degreesOfFreedom ** 3;
}
