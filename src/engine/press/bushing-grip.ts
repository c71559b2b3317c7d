import type { BushingAnswer, BushingQuestion } from './bushing.ts';
import { gripOf, type Grip } from './bushing-stress.ts';
import { bandOf, mean } from '../reading/estimate.ts';
import type { FitLimits, Range } from '../fit/fits.ts';
import { minus, zero } from '../length/length.ts';
import { platedOutside } from './plating.ts';
import { verdictOf, worseVerdict } from '../reading/verdict.ts';

/** Bushing less bore: measured, planned for a measured bore, or as the class leaves it. */
export function gripNow(
  { reamed, outside: turned, plating = zero }: BushingQuestion,
  { pressFit, outside }: Pick<BushingAnswer, 'pressFit' | 'outside'>,
): Grip {
  if (reamed && turned)
    return gripOf({
      bore: reamed,
      outside: {
        tightest: platedOutside(turned.tightest, plating),
        loosest: platedOutside(turned.loosest, plating),
      },
    });
  if (reamed)
    return {
      loose: {
        value: minus(outside.lower, mean(reamed.loosest)),
        ...bandOf(reamed.loosest),
      },
      tight: {
        value: minus(outside.upper, mean(reamed.tightest)),
        ...bandOf(reamed.tightest),
      },
    };
  const { lower, upper } = negated(pressFit.clearance);
  return { loose: { value: lower, halfWidth: zero }, tight: { value: upper, halfWidth: zero } };
}

function negated({ lower, upper }: Range): Range {
  return { lower: minus(zero, upper), upper: minus(zero, lower) };
}

/** Whether two measured parts grip as the class wants: the loosest places for the least, the tightest for the most. */
export function checkGrip(
  { clearance, source }: FitLimits,
  { loose, tight }: Grip,
): NonNullable<BushingAnswer['measured']> {
  const limits = { ...negated(clearance), source };
  const verdict = worseVerdict(
    verdictOf({ ...loose, limits: { lower: limits.lower, source } }),
    verdictOf({ ...tight, limits: { upper: limits.upper, source } }),
  );
  const isTight =
    (verdict.kind === 'no-good' && verdict.way === 'over') ||
    (verdict.kind === 'too-close' && verdict.near === 'upper');
  return { ...(isTight ? tight : loose), limits, verdict };
}
