import type { Length } from '../../length/length.ts';
import type { Limits, Verdict } from '../../reading/verdict.ts';
import { isZero } from '../../length/length.ts';
import { sayVerdict } from '../../reading/say-verdict.ts';
import type { ShownUnit } from '../../length/show.ts';
import type { HoleAndPinAnswer } from './hole-and-pin.ts';

type Deciding = {
  readonly quantity: 'clearance' | 'slop';
  readonly verdict: Verdict;
  readonly value: Length;
  readonly halfWidth: Length;
  readonly limits: Limits;
};

/** The clearance a verdict hangs on: the tightest place or the loosest, whichever decides. */
export function decidingClearance({
  verdict,
  limits,
  tightest,
  loosest,
  band,
  tightestBand,
}: HoleAndPinAnswer): Deciding {
  const tight =
    (verdict.kind === 'no-good' && verdict.way === 'under') ||
    (verdict.kind === 'too-close' && verdict.near === 'lower');
  return tight
    ? { quantity: 'clearance', value: tightest, halfWidth: tightestBand.halfWidth, verdict, limits }
    : { quantity: 'slop', value: loosest, halfWidth: band.halfWidth, verdict, limits };
}

/**
 * The verdict in one line: `Too loose: slop .018, want .002 or less.` A least of nothing needs no saying beside slop that
 * is judged by its most.
 */
export function sayClearance(answer: HoleAndPinAnswer, unit: ShownUnit): string {
  const { quantity, verdict, value, halfWidth, limits } = decidingClearance(answer);
  const { lower, upper, source } = limits;
  const isMostOnly = quantity === 'slop' && upper !== undefined && lower !== undefined && isZero(lower);
  return sayVerdict(verdict, {
    quantity,
    value,
    halfWidth,
    limits: isMostOnly ? { upper, source } : limits,
    unit,
  });
}
