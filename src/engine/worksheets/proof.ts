import type { Length } from '../length/length.ts';
import type { ShownUnit } from '../length/show.ts';
import type { MeasuringTool } from '../reading/measuring-tool.ts';
import { isGlance, sayProves, saySettler, saySettlerShort, sayTooWide } from '../reading/say-verdict.ts';
import { WHICH_STANDS } from '../reading/say-readings.ts';
import { canProve, whatCouldProve, whatWouldSettle, type Leg, type Settler } from '../reading/settle.ts';
import { readsMillimetres } from '../reading/usual-tool.ts';
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
  const isClose = verdict.kind === 'too-close';
  if (isClose && verdict.doubt) return { is: 'proof', sentence: WHICH_STANDS };
  if (!isClose && canProve({ limits, halfWidth })) return undefined;
  const settler = ofTheShop(tools, unit, (some) =>
    isClose
      ? whatWouldSettle({ value, limits, legs, tools: some })
      : whatCouldProve({ limits, legs, tools: some }),
  );
  const whole = saySettler(settler, unit);
  const short = settler && !isGlance(whole) ? saySettlerShort(settler, unit) : whole;
  return {
    is: 'proof',
    sentence: isClose ? short : `${sayTooWideFor(legs, halfWidth, unit)} ${short}`,
    ...(short !== whole && { more: whole }),
  };
}

function sayTooWideFor(legs: readonly Leg[], halfWidth: Length, unit: ShownUnit): string {
  const sizes = legs.flatMap(({ known }) => known ?? []);
  const named = `${sayProves(sizes, halfWidth, unit)}, too wide for the limits.`;
  return isGlance(named) ? named : sayTooWide(halfWidth, undefined, unit);
}

/** Tools that read in the shop's own unit first; the others where those can't. */
function ofTheShop(
  tools: readonly MeasuringTool[],
  unit: ShownUnit,
  what: (tools: readonly MeasuringTool[]) => Settler | undefined,
): Settler | undefined {
  return what(tools.filter((tool) => readsMillimetres(tool) === (unit === 'mm'))) ?? what(tools);
}
