import { floatMm } from '../length/length.ts';
import { t95 } from './student-t.ts';
import { type Estimate, type Term } from './estimate.ts';

/** Of steps and of a last digit: anywhere inside is as likely. mm², floating point, as all here. */
export function stepVariance(terms: readonly Term[]): number {
  const digitsMm = terms.flatMap(({ estimate: { tool }, coefficient }) =>
    tool ? [coefficient * floatMm(tool.resolutionBeside)] : [],
  );
  return total([...digitsMm, ...stepsMm(terms)].map((widthMm) => widthMm ** 2 / 12));
}

/** Of parts measured warm: their doubts may all lie the same way, as they lay in one shop. */
export function warmthVariance(terms: readonly Term[]): number {
  const doubtsMm = terms.flatMap(({ estimate: { warmthDoubt }, coefficient }) =>
    warmthDoubt ? [Math.abs(coefficient) * floatMm(warmthDoubt)] : [],
  );
  return total(doubtsMm) ** 2;
}

/**
 * Of sizes of which nobody said how warm they were read: one shop, so that all were too warm or all too cold, each grown by
 * anything from nothing to what its metal may. What is added and what is taken away can't both be against the sum.
 */
export function unsaidVariance(terms: readonly Term[]): number {
  const doubtsMm = terms.map(({ estimate, coefficient }) => coefficient * unsaidMm(estimate));
  const added = total(doubtsMm.filter((doubtMm) => doubtMm > 0));
  const taken = total(doubtsMm.filter((doubtMm) => doubtMm < 0));
  return Math.max(added, -taken) ** 2;
}

// Chosen, not published, as the question is (`unaskedWarmth`): small parts and coarse tools are as they were.
const SHARE_THAT_MATTERS = 1 / 3;

function unsaidMm({ warmthUnsaid, tool, scatter }: Estimate): number {
  if (!warmthUnsaid || !tool) return 0;
  const doubtMm = floatMm(warmthUnsaid);
  const provedMm = t95(Infinity) * Math.hypot(floatMm(scatter), floatMm(tool.mpe) / Math.sqrt(3));
  return doubtMm * Math.sqrt(3) < provedMm * SHARE_THAT_MATTERS ? 0 : doubtMm;
}

/** The widths between the leaves or plugs that were tried, each as it weighs in the sum; mm, floating point. */
export function stepsMm(terms: readonly Term[]): readonly number[] {
  return terms.flatMap(({ estimate: { step }, coefficient }) =>
    step ? [Math.abs(coefficient) * floatMm(step)] : [],
  );
}

/** Standard deviation (n − 1) from differences to the mean; exactly 0 where all are alike. */
export function spreadMm(sizesMm: readonly number[], meanMm: number): number {
  const [first] = sizesMm;
  if (sizesMm.length < 2 || sizesMm.every((sizeMm) => sizeMm === first)) return 0;
  return Math.sqrt(total(sizesMm.map((sizeMm) => (sizeMm - meanMm) ** 2)) / (sizesMm.length - 1));
}

/** Their sum; floating point. */
export function total(numbers: readonly number[]): number {
  return numbers.reduce((so, next) => so + next, 0);
}
