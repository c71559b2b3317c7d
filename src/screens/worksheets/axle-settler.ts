import type { Share } from '../../engine/worksheets/axle-line-up/chain.ts';
import type { Estimate } from '../../engine/reading/estimate.ts';
import { dividedBy, times, type Length } from '../../engine/length/length.ts';
import type { LineUpQuestion, Spacer } from '../../engine/worksheets/axle-line-up/line-up.ts';
import type { FeatureKind } from '../../engine/reading/measuring-tool.ts';
import { WHICH_STANDS } from '../../engine/reading/say-readings.ts';
import { saySettler } from '../../engine/reading/say-verdict.ts';
import { legOf, whatWouldSettle, type Leg } from '../../engine/reading/settle.ts';
import type { Limits } from '../../engine/reading/verdict.ts';
import { onHandField, axleFields } from './axle-line-up-fields.ts';
import type { WorksheetData } from './worksheet-data.ts';

type TooClose = {
  readonly value: Length;
  readonly limits: Limits;
  readonly terms: readonly Share[];
  readonly sizes: Readonly<Record<string, Estimate>>;
};

/** Which tools would tell whether the part on hand will do. */
export function settlerSaid(data: WorksheetData, question: LineUpQuestion, spacer: Spacer): string {
  const { deed, name } = spacer;
  const onHand = question.onHand[name];
  if (deed.kind !== 'too-close' || !onHand) return '';
  return settled(data, question, {
    value: deed.off,
    limits: deed.limits,
    terms: deed.terms,
    sizes: { ...question.sizes, 'on hand': onHand, [onHandField(name)]: onHand },
  });
}

/** Which tools would settle a sum of sizes that is too close to call; only what was measured is measured again. */
export function settled(
  data: WorksheetData,
  { layout, side }: LineUpQuestion,
  { value, limits, terms, sizes }: TooClose,
): string {
  const fields = axleFields(layout.name, side);
  // Tools are asked for whole multiples: halves are doubled first, and the band halved again.
  const whole = Math.max(1, ...terms.map(({ bottom }) => bottom));
  const legs = terms.flatMap(({ of, top, bottom }): Leg[] => {
    const field = fields.find(({ name }) => name === of);
    const kind = of === 'on hand' || layout.spacers.includes(of) ? 'length' : measuredAs(field);
    const size = sizes[of];
    return kind && size?.tool ? [legOf(kind, size, (top * whole) / bottom)] : [];
  });
  if (legs.some(({ known }) => known?.doubt)) return WHICH_STANDS;
  const scaled = {
    ...(limits.lower && { lower: times(limits.lower, whole) }),
    ...(limits.upper && { upper: times(limits.upper, whole) }),
    source: limits.source,
  };
  const settler = whatWouldSettle({ value: times(value, whole), limits: scaled, legs, tools: data.tools });
  return saySettler(settler && { ...settler, halfWidth: dividedBy(settler.halfWidth, whole) }, data.unit);
}

function measuredAs(field: ReturnType<typeof axleFields>[number] | undefined): FeatureKind | undefined {
  return field?.enter === 'size' ? field.measures : undefined;
}
