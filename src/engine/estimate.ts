import { dividedBy, floatMm, largest, lengthFromFloat, lengthOf, sum, times, zero } from './length.ts';
import type { Length } from './length.ts';
import type { ToolInForce } from './measuring-tool.ts';
import type { Reading } from './reading.ts';
import { t95 } from './student-t.ts';

/** What is known of one size from its readings. */
export type Estimate = {
  /** The mean is kept as sum and count, so that it stays exact until it is divided last. */
  readonly sum: Length;
  readonly count: number;
  /** Standard uncertainty of the mean from repeats. */
  readonly scatter: Length;
  /** Of the scatter; Infinity where the tool's usual repeatability stands in. */
  readonly degreesOfFreedom: number;
  readonly tool?: {
    readonly id: string;
    readonly name: string;
    readonly mpe: Length;
    /** Zero where the error limit counts the resolution already. */
    readonly resolutionBeside: Length;
    readonly zeroChecked: boolean;
  };
};

/** A value is proved to ± halfWidth at 95 %: U = coverage · u. */
export type Band = {
  readonly halfWidth: Length;
  readonly degreesOfFreedom: number;
  readonly coverage: number;
};

export type Term = { readonly estimate: Estimate; readonly coefficient: number };

/** Statistics come back from floating point to a millionth of a micrometre: far finer than any reading, so it decides nothing. */
export const STATISTICS_STEP = lengthOf('0.000000001 mm');

/**
 * One group of readings (same feature, place, direction) as its mean and what its repeats say.
 *
 * Units:   scatter = s/√n. With one reading, or readings all alike, the tool's usual repeatability stands in for s.
 *          Readings of several tools in one group: the largest error limit, step and repeatability speak for all.
 * Source:  JCGM 100:2008 4.2 (type A) and 4.3.8 (a judgment in its place).
 */
export function estimateOf(readings: readonly [Reading, ...Reading[]]): Estimate {
  const sizes = readings.map((reading) => reading.exact);
  const total = sum(sizes);
  const count = readings.length;
  const spread = spreadMm(sizes.map(floatMm), floatMm(dividedBy(total, count)));
  const [{ tool: first }, ...others] = readings;
  const tools = others.map((reading) => reading.tool);
  const repeatability = largest(first.repeatability, ...tools.map((tool) => tool.repeatability));
  const deviationMm = spread > 0 ? spread : floatMm(repeatability);
  return {
    sum: total,
    count,
    scatter: lengthFromFloat(deviationMm / Math.sqrt(count), STATISTICS_STEP),
    degreesOfFreedom: spread > 0 ? count - 1 : Infinity,
    tool: {
      id: first.id,
      name: first.name,
      mpe: largest(first.mpe, ...tools.map((tool) => tool.mpe)),
      resolutionBeside: largest(resolutionBeside(first), ...tools.map(resolutionBeside)),
      zeroChecked: readings.every((reading) => reading.zeroChecked),
    },
  };
}

/**
 * A size typed on a worksheet: it counts as one reading with that tool; without a tool it is taken as exact.
 *
 * Source:  JCGM 100:2008 4.3.
 */
export function typedEstimate(exact: Length, tool?: ToolInForce): Estimate {
  if (tool) return estimateOf([{ exact, tool, zeroChecked: false }]);
  return { sum: exact, count: 1, scatter: zero, degreesOfFreedom: Infinity };
}

/**
 * A size known only by its stated tolerance: the tolerance is taken as its 95 % band, which makes a stack of such
 * parts come out as the usual root-sum-square tolerance stack.
 *
 * Source:  common practice in tolerance stacks.
 */
export function toleranceEstimate(exact: Length, plusMinus: Length): Estimate {
  return {
    sum: exact,
    count: 1,
    scatter: dividedBy(plusMinus, String(t95(Infinity))),
    degreesOfFreedom: Infinity,
  };
}

export function mean(estimate: Estimate): Length {
  return dividedBy(estimate.sum, estimate.count);
}

/**
 * How closely one size is known.
 *
 * Units:   u² = s²/n + MPE²/3 (+ resolution²/12 where the MPE doesn't contain it); U = t95(ν)·u.
 * Source:  JCGM 100:2008 4.3.7 (rectangular), G.4 (Welch–Satterthwaite); only the scatter has few degrees of freedom.
 */
export function bandOf(estimate: Estimate): Band {
  return combinedBand([{ estimate, coefficient: 1 }]);
}

/**
 * A sum or difference of sizes, how closely it is known, and the worst case if every error stood against it at once.
 *
 * Units:   coefficients are whole: +1 for a bore, −1 for its pin, −3 for three washers of one thickness. Scatter and
 *          resolution combine by root-sum-square. A tool's own error is common to all it measured: it counts with its
 *          net coefficient (four parts less one sleeve: 3), but never with less than the root-sum-square of its
 *          coefficients, because a difference of two sizes doesn't cancel the whole error: jaws and scale err
 *          differently at different sizes. Where its zero was checked, by root-sum-square.
 *          worstCase = Σ |coefficient| · U of each size.
 * Source:  JCGM 100:2008 5.1, 5.2 and F.1.2; the floor under the net coefficient is common practice, no source.
 */
export function combine(terms: readonly Term[]): {
  readonly value: Length;
  readonly band: Band;
  readonly worstCase: Length;
} {
  return {
    value: exactSum(terms),
    band: combinedBand(terms),
    worstCase: sum(
      terms.map(({ estimate, coefficient }) => times(bandOf(estimate).halfWidth, Math.abs(coefficient))),
    ),
  };
}

function combinedBand(terms: readonly Term[]): Band {
  const scatters = terms.map(({ estimate, coefficient }) => ({
    variance: (coefficient * floatMm(estimate.scatter)) ** 2,
    degreesOfFreedom: estimate.degreesOfFreedom,
  }));
  const variance =
    total(scatters.map((part) => part.variance)) + resolutionVariance(terms) + toolVariance(terms);
  const quotient = total(scatters.map((part) => part.variance ** 2 / part.degreesOfFreedom));
  const degreesOfFreedom = quotient > 0 ? variance ** 2 / quotient : Infinity;
  const coverage = t95(degreesOfFreedom);
  return {
    halfWidth: lengthFromFloat(coverage * Math.sqrt(variance), STATISTICS_STEP),
    degreesOfFreedom,
    coverage,
  };
}

function resolutionVariance(terms: readonly Term[]): number {
  return total(
    terms.map(({ estimate, coefficient }) =>
      estimate.tool ? (coefficient * floatMm(estimate.tool.resolutionBeside)) ** 2 / 12 : 0,
    ),
  );
}

function toolVariance(terms: readonly Term[]): number {
  const shares = terms.flatMap(({ estimate: { tool }, coefficient }) =>
    tool ? [{ id: tool.id, zeroChecked: tool.zeroChecked, errorMm: coefficient * floatMm(tool.mpe) }] : [],
  );
  const checked = shares.filter((share) => share.zeroChecked).map((share) => share.errorMm ** 2);
  const common = [...new Set(shares.map((share) => share.id))].map((id) =>
    commonVariance(
      shares.filter((share) => share.id === id && !share.zeroChecked).map((share) => share.errorMm),
    ),
  );
  return (total(checked) + total(common)) / 3;
}

function commonVariance(errorsMm: readonly number[]): number {
  return Math.max(total(errorsMm) ** 2, total(errorsMm.map((errorMm) => errorMm ** 2)));
}

/** Brought to one count first and divided once, so that thirds which cancel do cancel. */
function exactSum(terms: readonly Term[]): Length {
  const count = terms.reduce((so, { estimate }) => leastCommonMultiple(so, BigInt(estimate.count)), 1n);
  const whole = terms.map(({ estimate, coefficient }) =>
    times(estimate.sum, String((BigInt(coefficient) * count) / BigInt(estimate.count))),
  );
  return dividedBy(sum(whole), String(count));
}

function leastCommonMultiple(a: bigint, b: bigint): bigint {
  let [large, small] = [a, b];
  while (small !== 0n) [large, small] = [small, large % small];
  return (a / large) * b;
}

/** What a tool's step adds beside its error limit. */
export function resolutionBeside(tool: ToolInForce): Length {
  return tool.resolutionInMpe ? zero : tool.resolution;
}

/** Standard deviation (n − 1) from differences to the mean; exactly 0 where all are alike. */
function spreadMm(sizesMm: readonly number[], meanMm: number): number {
  const [first] = sizesMm;
  if (sizesMm.length < 2 || sizesMm.every((sizeMm) => sizeMm === first)) return 0;
  return Math.sqrt(total(sizesMm.map((sizeMm) => (sizeMm - meanMm) ** 2)) / (sizesMm.length - 1));
}

function total(numbers: readonly number[]): number {
  return numbers.reduce((so, next) => so + next, 0);
}
