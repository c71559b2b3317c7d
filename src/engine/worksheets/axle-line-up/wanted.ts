import type { FeatureKind } from '../../reading/measuring-tool.ts';
import { mean, typedEstimate, type Estimate } from '../../reading/estimate.ts';
import { lengthOf, times } from '../../length/length.ts';
import type { Leg } from '../../reading/settle.ts';
import type { Wanted } from '../worksheet.ts';
import {
  axleFieldsOf,
  axleSideOf,
  axleSizeNames,
  isAxleLayout,
  isAxleSize,
  type AxleGiven,
} from './fields.ts';
import { lineUp } from './line-up.ts';
import { axleLimits, sizeNamed } from './question.ts';
import { axleLayouts } from './tables/axle-layouts.ts';

const SOME_SIZE = typedEstimate(lengthOf('1/2 in'));
// Nothing is cut here, so any step will do.
const SOME_STEP = lengthOf('1 thou');

/**
 * How closely the spacers must come out, and the sizes of the longest sum that makes one of them (of those a size of
 * this name goes into). What isn't known yet is stood in for: the sum's terms don't hang on the sizes.
 */
export function axleWanted(given: AxleGiven, name: string | undefined): Wanted | undefined {
  const named = given.choice('layout');
  if (!isAxleLayout(named)) return undefined;
  const layout = axleLayouts[named];
  const side = axleSideOf(given);
  const measured = new Map<string, FeatureKind>(
    Object.entries(axleFieldsOf(named, side)).flatMap(([of, field]) =>
      field.enter === 'size' && field.measures && isMeasured(given, of)
        ? [[of, field.measures] as const]
        : [],
    ),
  );
  const asked = new Set([...layout.needs, ...axleSizeNames.filter((one) => given.has(one))]);
  const sizes = Object.fromEntries([...asked].map((one) => [one, sizeOr(given, one)] as const));
  const limits = axleLimits(given);
  const answer = lineUp({ layout, side, sizes, onHand: {}, limits, step: SOME_STEP });
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
function isMeasured(given: AxleGiven, name: string): boolean {
  if (!isAxleSize(name)) return false;
  const known = given.size(name);
  return !known || known.tightest.tool !== undefined;
}

function sizeOr(given: AxleGiven, name: string): Estimate {
  return sizeNamed(given, name)?.tightest ?? SOME_SIZE;
}
