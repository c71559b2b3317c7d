import type { Length } from '../length/length.ts';
import type { Limits } from '../reading/verdict.ts';

/** What stands beside limits the user gave himself. */
export const OWN_LIMITS = 'your own limits';

/** The limits the user gave himself, one or both. */
export function ownLimitsIn(given: {
  readonly exact: (name: 'lower' | 'upper') => Length | undefined;
}): Limits | undefined {
  const lower = given.exact('lower');
  const upper = given.exact('upper');
  if (!lower && !upper) return undefined;
  return { ...(lower && { lower }), ...(upper && { upper }), source: OWN_LIMITS };
}
