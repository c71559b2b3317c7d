import type { Length } from '../length/length.ts';
import { saySettler, sayTooWide } from '../reading/say-verdict.ts';
import { canProve, whatCouldProve, whatWouldSettle, type Leg } from '../reading/settle.ts';
import type { Limits, Verdict } from '../reading/verdict.ts';
import type { ProofBlock } from './account.ts';
import type { AnyGiven } from './given.ts';

/** A value held against its limits, with what its readings prove: one value for band, line and proof. */
export type Judged = {
  readonly verdict: Verdict;
  readonly value: Length;
  readonly halfWidth: Length;
  readonly limits: Limits;
  /** The sizes it is a sum of: what another tool would make of them. */
  readonly legs: readonly Leg[];
};

/** What the readings can't prove, and what would: only said where it matters. */
export function proofOf(
  { verdict, value, halfWidth, limits, legs }: Judged,
  { tools, unit }: Pick<AnyGiven, 'tools' | 'unit'>,
): ProofBlock | undefined {
  if (verdict.kind === 'too-close')
    return { is: 'proof', sentence: saySettler(whatWouldSettle({ value, limits, legs, tools }), unit) };
  if (canProve({ limits, halfWidth })) return undefined;
  const better = whatCouldProve({ limits, legs, tools });
  const tooWide = sayTooWide(halfWidth, better, unit);
  return { is: 'proof', sentence: better ? tooWide : `${tooWide} ${saySettler(better, unit)}` };
}
