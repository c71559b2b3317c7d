import {
  dividedBy,
  floatMm,
  largest,
  lengthFromFloat,
  lengthOf,
  sum,
  times,
  zero,
} from '../length/length.ts';
import type { Length } from '../length/length.ts';
import { toolThatCounts, type ToolInForce } from './measuring-tool.ts';
import { sizeRead, stepWidth, type Reading } from './reading.ts';
import { t95 } from './student-t.ts';
import { toolErrorVariances, type ErrorShare } from './tool-error.ts';
import {
  stepVariance,
  warmthVariance,
  unsaidVariance,
  stepsMm,
  spreadMm,
  total,
} from './estimate-variances.ts';

/** What is known of one size from its readings. */
export type Estimate = {
  /** The mean is kept as sum and count, so that it stays exact until it is divided last. */
  readonly sum: Length;
  readonly count: number;
  /** Standard uncertainty of the mean from repeats. */
  readonly scatter: Length;
  /** Of the scatter; Infinity where the tool's usual repeatability stands in. */
  readonly degreesOfFreedom: number;
  /** One leaf or plug goes and the next doesn't: how far the two are apart. The size lies anywhere between them. */
  readonly step?: Length;
  /** Standard uncertainty of a correction for warmth: the same for every reading of it. */
  readonly warmthDoubt?: Length;
  /** The same of a size of which nobody said how warm it was read; it counts where the tool is fine enough for it. */
  readonly warmthUnsaid?: Length;
  /** Readings of it contradict each other: until one is struck out nothing worked out from it is good. */
  readonly doubt?: true;
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
  /** A size in it is in doubt, see Estimate. */
  readonly doubt?: true;
};

export type Term = { readonly estimate: Estimate; readonly coefficient: number };

/** Statistics come back from floating point to a millionth of a micrometre: far finer than any reading, so it decides nothing. */
export const STATISTICS_STEP = lengthOf('0.000000001 mm');

// Standard deviation of two readings a last digit apart, in last digits.
const ONE_DIGIT_APART = Math.SQRT1_2;

// Two readings whose scatter is exactly the usual one must not come out above it by a floating point's last digit.
const ROUNDING_MM = 1e-9;

/**
 * One group of readings (same feature, place, direction) as its mean and what its repeats say.
 *
 * Units:   scatter = s/√n; s is never less than the tool's usual repeatability, which stands in for it in one reading, in
 *          readings all alike and in those that happen to agree: a worse pair never proves more than a better one. Two that
 *          are one last digit apart say no more of scatter than two alike: the digit is rounded.
 *          Readings of several tools in one group: the largest error limit, step and repeatability speak for all.
 *          A leaf or plug that goes while the next doesn't: the middle of the step; repeats don't make a step finer.
 * Range:   a tool that can't have read that size counts as the usual caliper in its place (`toolThatCounts`).
 * Source:  JCGM 100:2008 4.2 (type A) and 4.3.8 (a judgment in its place).
 */
export function estimateOf([read, ...more]: readonly [Reading, ...Reading[]]): Estimate {
  const readings = [counting(read), ...more.map(counting)] as const;
  const sizes = readings.map(sizeRead);
  const total = sum(sizes);
  const count = readings.length;
  const spread = spreadMm(sizes.map(floatMm), floatMm(dividedBy(total, count)));
  const [{ tool: first }, ...others] = readings;
  const tools = others.map((reading) => reading.tool);
  const repeatabilityMm = floatMm(largest(first.repeatability, ...tools.map((tool) => tool.repeatability)));
  const steps = readings.map(stepWidth).filter((width) => width !== undefined);
  const [step, ...moreSteps] = steps;
  const [warmth, ...moreWarmth] = readings.flatMap(({ warmthDoubt }) => warmthDoubt ?? []);
  const [unsaid, ...moreUnsaid] = readings.flatMap(({ warmthUnsaid }) => warmthUnsaid ?? []);
  const digitMm = step ? 0 : floatMm(largest(first.resolution, ...tools.map((tool) => tool.resolution)));
  const usualMm = Math.max(repeatabilityMm, digitMm * ONE_DIGIT_APART);
  return {
    sum: total,
    count,
    scatter: lengthFromFloat(Math.max(spread, repeatabilityMm) / Math.sqrt(count), STATISTICS_STEP),
    degreesOfFreedom: spread > usualMm + ROUNDING_MM ? count - 1 : Infinity,
    ...(step && { step: largest(step, ...moreSteps) }),
    ...(warmth && { warmthDoubt: largest(warmth, ...moreWarmth) }),
    ...(unsaid && { warmthUnsaid: largest(unsaid, ...moreUnsaid) }),
    tool: {
      id: first.id,
      name: first.name,
      mpe: largest(first.mpe, ...tools.map((tool) => tool.mpe)),
      resolutionBeside: step ? zero : largest(resolutionBeside(first), ...tools.map(resolutionBeside)),
      zeroChecked: readings.every((reading) => reading.zeroChecked),
    },
  };
}

function counting(reading: Reading): Reading {
  const { tool, exact, asRead = exact } = reading;
  return { ...reading, tool: toolThatCounts(tool, asRead) };
}

/**
 * A size typed on a worksheet: it counts as one reading with that tool; without a tool it is taken as exact. A size read
 * warm is handed in as it is at 20 °C, with what is not known of it.
 *
 * Source:  JCGM 100:2008 4.3.
 */
export function typedEstimate(
  exact: Length,
  tool?: ToolInForce,
  warmth: Pick<Reading, 'warmthDoubt' | 'warmthUnsaid'> = {},
): Estimate {
  if (tool) return estimateOf([{ exact, tool, ...warmth, zeroChecked: false }]);
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
 * Units:   u² = s²/n + MPE²/3 + step²/12 + (warmth’s doubt)² (+ resolution²/12 where the MPE doesn't contain it); U = t95(ν)·u, and never less
 *          than half the step: against one limit the whole step counts. A warmth that nobody said counts from where its
 *          3 °C come to a third of what the tool proves.
 * Source:  JCGM 100:2008 4.3.7 (rectangular), G.4 (Welch–Satterthwaite); only the scatter has few degrees of freedom.
 */
export function bandOf(estimate: Estimate): Band {
  return combinedBand([{ estimate, coefficient: 1 }]);
}

/**
 * A sum or difference of sizes, how closely it is known, and the worst case if every error stood against it at once.
 *
 * Units:   coefficients are whole: +1 for a bore, −1 for its pin, −3 for three washers of one thickness. Scatter, steps
 *          and resolution combine by root-sum-square, but steps count whole where that is more. A tool's own error is
 *          common to all it measured, see `toolErrorVariances`. A size in doubt puts the sum in doubt.
 *          worstCase = Σ |coefficient| · U of each size.
 * Source:  JCGM 100:2008 5.1, 5.2 and F.1.2.
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
  const apartFromTools =
    total(scatters.map((part) => part.variance)) +
    stepVariance(terms) +
    warmthVariance(terms) +
    unsaidVariance(terms);
  const quotient = total(scatters.map((part) => part.variance ** 2 / part.degreesOfFreedom));
  const { halfWidthMm, ...known } = narrowest(
    toolErrorVariances(errorShares(terms)).map((ofTools) => expanded(apartFromTools + ofTools, quotient)),
  );
  const wholeStepsMm = total(stepsMm(terms)) / 2;
  return {
    halfWidth: lengthFromFloat(Math.max(halfWidthMm, wholeStepsMm), STATISTICS_STEP),
    ...known,
    ...(terms.some(({ estimate }) => estimate.doubt) && { doubt: true as const }),
  };
}

type Expanded = Pick<Band, 'degreesOfFreedom' | 'coverage'> & { readonly halfWidthMm: number };

/** U = t95(ν)·u, ν by Welch–Satterthwaite: u⁴ over what the scatters bring of it. */
function expanded(variance: number, quotient: number): Expanded {
  const degreesOfFreedom = quotient > 0 ? variance ** 2 / quotient : Infinity;
  const coverage = t95(degreesOfFreedom);
  return { halfWidthMm: coverage * Math.sqrt(variance), degreesOfFreedom, coverage };
}

function narrowest(bands: readonly Expanded[]): Expanded {
  return bands.reduce((so, one) => (one.halfWidthMm < so.halfWidthMm ? one : so));
}

function errorShares(terms: readonly Term[]): readonly ErrorShare[] {
  return terms.flatMap(({ estimate, coefficient }) =>
    estimate.tool
      ? [
          {
            toolId: estimate.tool.id,
            zeroChecked: estimate.tool.zeroChecked,
            sizeMm: floatMm(mean(estimate)),
            errorMm: coefficient * floatMm(estimate.tool.mpe),
          },
        ]
      : [],
  );
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
