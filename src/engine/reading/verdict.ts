import {
  absolute,
  dividedBy,
  isLess,
  isMore,
  minus,
  plus,
  smallest,
  zero,
  type Length,
} from '../length/length.ts';

/** What a size must keep to; a side left out is free. Every limit carries its source. */
export type Limits = { readonly lower?: Length; readonly upper?: Length; readonly source: string };

export type Verdict =
  | { readonly kind: 'good' }
  | { readonly kind: 'no-good'; readonly way: 'under' | 'over'; readonly by: Length }
  | {
      readonly kind: 'too-close';
      readonly near: 'lower' | 'upper' | 'both';
      /** How far it lies from the limit that can't be called, inside or outside. */
      readonly short: Length;
      /** Not for want of closeness: readings of it contradict each other, and one of them has to be struck out first. */
      readonly doubt?: true;
    };

/**
 * What readings prove about a size with limits.
 *
 * Range:   inside every limit by at least the half width: good. Outside one by more than the half width: no good, by
 *          how much past the limit. Anything else is too close to call. Known exactly and exactly at the limit: good.
 *          In doubt, nothing is called: neither of two readings that contradict each other is taken for the size.
 * Source:  ISO 14253-1, default rule.
 */
export function verdictOf(q: {
  readonly value: Length;
  readonly halfWidth: Length;
  readonly limits: Limits;
  readonly doubt?: boolean | undefined;
}): Verdict {
  const verdict = undoubted(q);
  if (q.doubt !== true) return verdict;
  return verdict.kind === 'too-close'
    ? { ...verdict, doubt: true }
    : { kind: 'too-close', near: 'both', short: zero, doubt: true };
}

function undoubted({
  value,
  halfWidth,
  limits: { lower, upper },
}: {
  readonly value: Length;
  readonly halfWidth: Length;
  readonly limits: Limits;
}): Verdict {
  const least = minus(value, halfWidth);
  const most = plus(value, halfWidth);
  if (lower && isLess(most, lower)) return { kind: 'no-good', way: 'under', by: minus(lower, value) };
  if (upper && isMore(least, upper)) return { kind: 'no-good', way: 'over', by: minus(value, upper) };
  const fromLower = lower && isLess(least, lower) ? absolute(minus(value, lower)) : undefined;
  const fromUpper = upper && isMore(most, upper) ? absolute(minus(upper, value)) : undefined;
  if (fromLower && fromUpper)
    return { kind: 'too-close', near: 'both', short: smallest(fromLower, fromUpper) };
  if (fromLower) return { kind: 'too-close', near: 'lower', short: fromLower };
  return fromUpper ? { kind: 'too-close', near: 'upper', short: fromUpper } : { kind: 'good' };
}

/** No good beats too close, too close beats good; of two that are no good, the one further out. */
export function worseVerdict(tight: Verdict, loose: Verdict): Verdict {
  if (tight.kind === 'no-good' && loose.kind === 'no-good') return isMore(tight.by, loose.by) ? tight : loose;
  if (tight.kind === 'no-good' || loose.kind === 'good') return tight;
  if (loose.kind === 'no-good' || tight.kind === 'good') return loose;
  const short = isLess(tight.short, loose.short) ? tight.short : loose.short;
  const doubt = tight.doubt ?? loose.doubt;
  return { kind: 'too-close', near: 'both', short, ...(doubt && { doubt }) };
}

/** Whether it is the lower limit that a verdict hangs on; one that is good hangs on neither. */
export function hangsOnLower(verdict: Verdict): boolean {
  if (verdict.kind === 'good') return false;
  return verdict.kind === 'no-good' ? verdict.way === 'under' : verdict.near === 'lower';
}

/**
 * Of several places held against one limit, the one that rules: the first, whose band reaches furthest, unless another is
 * surely past the limit where that one isn't.
 */
export function rulingPlace<Place extends { readonly verdict: Verdict }>(
  first: Place,
  others: readonly Place[],
): Place {
  return others.reduce(
    (so, one) =>
      one.verdict.kind === 'no-good' && worseVerdict(so.verdict, one.verdict) === one.verdict ? one : so,
    first,
  );
}

/** Half-way between two limits. */
export function middleOf({ lower, upper }: { readonly lower: Length; readonly upper: Length }): Length {
  return dividedBy(plus(lower, upper), 2);
}
