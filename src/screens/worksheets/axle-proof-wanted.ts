import { mean, typedEstimate, type Estimate } from '../../engine/reading/estimate.ts';
import { lengthOf, times } from '../../engine/length/length.ts';
import { lineUp } from '../../engine/worksheets/axle-line-up/line-up.ts';
import type { FeatureKind } from '../../engine/reading/measuring-tool.ts';
import type { Leg } from '../../engine/reading/settle.ts';
import { axleLayouts } from '../../engine/worksheets/axle-line-up/tables/axle-layouts.ts';
import { axleFields } from './axle-line-up-fields.ts';
import { axleSide, isAxleLayout } from './axle-line-up-plan.ts';
import { axleLimits } from './axle-line-up-question.ts';
import type { Wanted } from './proof-wanted.ts';
import { knownSize, type WorksheetData } from './worksheet-data.ts';

const SOME_SIZE = typedEstimate(lengthOf('1/2 in'));
// Nothing is cut here, so any step will do.
const SOME_STEP = lengthOf('1 thou');

/**
 * How closely the spacers must come out, and the sizes of the longest sum that makes one of them (of those a size of
 * this name goes into). What isn't known yet is stood in for: the sum's terms don't hang on the sizes.
 */
export function axleWanted(data: WorksheetData, name: string | undefined): Wanted | undefined {
  const { choices } = data.worksheet;
  const { layout: named } = choices;
  if (!isAxleLayout(named)) return undefined;
  const layout = axleLayouts[named];
  const fields = axleFields(layout.name, axleSide(choices));
  const measured = new Map<string, FeatureKind>();
  for (const field of fields)
    if (field.enter === 'size' && field.measures && isMeasured(data, field.name))
      measured.set(field.name, field.measures);
  const asked = new Set([...layout.needs, ...Object.keys(data.worksheet.sizes)]);
  const sizes = Object.fromEntries([...asked].map((one) => [one, sizeOf(data, one)] as const));
  const limits = axleLimits(data);
  const answer = lineUp({ layout, side: axleSide(choices), sizes, onHand: {}, limits, step: SOME_STEP });
  if (!answer.ok) return undefined;
  const sums = answer.value.spacers
    .map(({ terms }) => terms.filter(({ of }) => measured.has(of)))
    .filter((terms) => name === undefined || terms.some(({ of }) => of === name));
  const longest = sums.toSorted((a, b) => b.length - a.length)[0];
  if (!longest || longest.length === 0) return undefined;
  // Tools are asked for whole multiples: halves are doubled, and the band halved again.
  const whole = Math.max(1, ...longest.map(({ bottom }) => bottom));
  const legs = longest.map(({ of, top, bottom }): Leg => ({
    kind: measured.get(of) ?? 'length',
    size: mean(sizes[of] ?? SOME_SIZE),
    coefficient: (top * whole) / bottom,
  }));
  const { by, source } = limits.spacer;
  return { limits: { lower: times(by, -1), upper: by, source }, legs, times: whole };
}

/** A size typed without a tool counts as exact: no tool has to prove it. */
function isMeasured(data: WorksheetData, name: string): boolean {
  const input = data.worksheet.sizes[name];
  return input?.from !== 'typed' || input.tool !== undefined;
}

function sizeOf(data: WorksheetData, name: string): Estimate {
  return knownSize(data, data.worksheet.sizes[name])?.tightest ?? SOME_SIZE;
}
