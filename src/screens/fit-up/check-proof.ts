import type { Band, Estimate } from '../../engine/reading/estimate.ts';
import { dividedBy, plus, type Length } from '../../engine/length/length.ts';
import type { FeatureKind, MeasuringTool } from '../../engine/reading/measuring-tool.ts';
import { sayCheckSettler } from '../../engine/reading/say-check.ts';
import { WHICH_STANDS } from '../../engine/reading/say-readings.ts';
import { sayCannotProve, sayTooWide } from '../../engine/reading/say-verdict.ts';
import {
  canProve,
  legOf,
  predictedBand,
  whatCouldProve,
  whatWouldSettle,
  type Leg,
} from '../../engine/reading/settle.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import type { Limits, Verdict } from '../../engine/reading/verdict.ts';

// Three readings: what a careful fitter takes. Chosen, not published.
const PLANNED_READINGS = 3;

type Read = {
  readonly by: FeatureKind;
  readonly value: Length;
  readonly estimate: Estimate;
  readonly band: Band;
  readonly verdict: Verdict;
  readonly provable: boolean;
  readonly limits: Limits;
  readonly tools: readonly MeasuringTool[];
  readonly unit: ShownUnit;
};

/** What would settle a check that is too close to call, or what could prove limits that these readings never can. */
export function proofWords({
  by,
  value,
  estimate,
  band,
  verdict,
  provable,
  limits,
  tools,
  unit,
}: Read): string {
  if (verdict.kind === 'too-close' && verdict.doubt) return WHICH_STANDS;
  if (verdict.kind === 'too-close')
    return sayCheckSettler(whatWouldSettle({ value, limits, legs: [legOf(by, estimate, 1)], tools }), unit);
  if (provable) return '';
  const legs = [legAt(by, limits)].flatMap((leg) => (leg ? [{ ...leg, known: estimate }] : []));
  const better = whatCouldProve({ limits, legs, tools });
  return sayTooWide(band.halfWidth, better, unit);
}

/** Said before the first reading: that the tool in hand can't prove these limits, and what could. */
export function cannotProve({
  by,
  limits,
  tool,
  tools,
  unit,
}: Pick<Read, 'by' | 'limits' | 'tools' | 'unit'> & { readonly tool: MeasuringTool }): string | undefined {
  const leg = legAt(by, limits);
  if (!leg) return undefined;
  const halfWidth = predictedBand([{ leg, tool }], PLANNED_READINGS);
  if (canProve({ limits, halfWidth })) return undefined;
  return sayCannotProve({
    tool,
    halfWidth,
    limits,
    better: whatCouldProve({ limits, legs: [leg], tools }),
    unit,
  });
}

/** A size in the middle of its limits; with one limit alone there is always a size that can be proved. */
function legAt(kind: FeatureKind, { lower, upper }: Limits): Leg | undefined {
  return lower && upper && { kind, size: dividedBy(plus(lower, upper), 2), coefficient: 1 };
}
