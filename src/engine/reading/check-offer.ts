import type { CheckBy } from './check.ts';
import { isMore, zero } from '../length/length.ts';
import type { Limits } from './verdict.ts';

/** A check as a worksheet or a list offers it, to be made on the assembled thing. */
export type CheckOffer = {
  /** "Float", "Rock at the end of the arm". */
  readonly name: string;
  readonly by: CheckBy;
  /** Free on both sides for a check by eye, and where only the maker knows them. */
  readonly limits: Limits;
  /** What to do: where to put the indicator, which way to push. */
  readonly how: string;
  /** The worksheet's size that a reading of this check stands in for. */
  readonly sizeName?: string;
};

export const BY_EYE_SOURCE = 'by eye';

/** A check that is looked at: it holds or it doesn't. */
export function byEye(name: string, how: string): CheckOffer {
  return { name, by: 'by-eye', limits: { source: BY_EYE_SOURCE }, how };
}

/** A check that is read, where its limits say anything: without any it could never be judged. */
export function ifJudged(offer: CheckOffer): readonly CheckOffer[] {
  return offer.limits.lower || offer.limits.upper ? [offer] : [];
}

/**
 * Limits as they hold for what a tool can read on the assembled thing.
 *
 * Range:  play that is read is never below zero, so that a lower limit of zero or less says nothing and is left out:
 *         held against it, the smallest play could never be proved.
 */
export function readable({ lower, upper, source }: Limits): Limits {
  return { source, ...(lower && isMore(lower, zero) && { lower }), ...(upper && { upper }) };
}
