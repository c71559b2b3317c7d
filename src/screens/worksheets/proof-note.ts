import { byLength, dividedBy, times } from '../../engine/length/length.ts';
import { canMeasure, type FeatureKind, type MeasuringTool } from '../../engine/reading/measuring-tool.ts';
import { sayCannotProve } from '../../engine/reading/say-verdict.ts';
import { canProve, predictedBand, whatCouldProve, type Leg } from '../../engine/reading/settle.ts';
import type { Limits } from '../../engine/reading/verdict.ts';
import { wantedOf, type Wanted } from './proof-wanted.ts';
import type { WorksheetData } from './worksheet-data.ts';

// Three readings of each size: what a careful fitter takes. Chosen, not published.
const PLANNED_READINGS = 3;

/**
 * Said before the first reading: the tool in hand can't prove what a worksheet wants of a size of this kind, and what
 * could. Empty where it can. `featureId` says which size is read, where that is known.
 */
export function proofNote(
  data: WorksheetData,
  kind: FeatureKind,
  tool: MeasuringTool,
  featureId?: string,
): string {
  const name = Object.entries(data.worksheet.sizes).find(
    ([, input]) => input.from === 'feature' && input.featureId === featureId,
  )?.[0];
  const wanted = wantedOf(data, kind, name);
  return wanted ? cannotProve({ wanted, tool, data }) : '';
}

type CannotProve = { readonly wanted: Wanted; readonly tool: MeasuringTool; readonly data: WorksheetData };

function cannotProve({ wanted, tool, data }: CannotProve): string {
  const { tools, unit } = data;
  const { legs, times: many = 1 } = wanted;
  const limits = ofSoMany(wanted.limits, many);
  const best = whatCouldProve({ limits, legs, tools });
  // The other sizes are read with the finest the shop has: this sentence is about the tool in hand.
  const halfWidth = predictedBand(
    legs.map((leg) => ({ leg, tool: canMeasure(tool, leg.kind) ? tool : (finestFor(tools, leg) ?? tool) })),
    PLANNED_READINGS,
  );
  if (canProve({ limits, halfWidth })) return '';
  return sayCannotProve({
    tool,
    halfWidth: dividedBy(halfWidth, many),
    limits: wanted.limits,
    better: best,
    unit,
  });
}

function ofSoMany({ lower, upper, source }: Limits, many: number): Limits {
  return {
    ...(lower && { lower: times(lower, many) }),
    ...(upper && { upper: times(upper, many) }),
    source,
  };
}

function finestFor(tools: readonly MeasuringTool[], leg: Leg): MeasuringTool | undefined {
  const able = tools.filter((tool) => canMeasure(tool, leg.kind, leg.size));
  return able.toSorted((a, b) =>
    byLength(predictedBand([{ leg, tool: a }], 1), predictedBand([{ leg, tool: b }], 1)),
  )[0];
}
