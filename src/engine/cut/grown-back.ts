import { metalBetween } from './cut.ts';
import { bandOf, typedEstimate } from '../reading/estimate.ts';
import { isMore, plus, type Length } from '../length/length.ts';
import type { CutKind } from '../length/metal-on.ts';
import type { MeasuredPass } from './spring.ts';

/** As it is at 20 °C, with what of that is not known: a part measured warm is larger than it will be. */
type Measured = Pick<MeasuredPass, 'measured' | 'tool' | 'warmthDoubt'>;

/**
 * How much metal a part seems to have grown since it was measured last: a bore that shrank, an outside that got larger.
 * Cutting only takes metal away, so one of the two figures is wrong.
 *
 * Units:   off the size; undefined where the two agree within both their bands, as two measurements of one size may.
 * Range:   both sizes as they are at 20 °C; a size measured without a named tool has no band of its own.
 * Source:  common practice, no source; bands by JCGM 100:2008.
 */
export function grownBack({
  of,
  before,
  now,
}: {
  readonly of: CutKind;
  readonly before: Measured;
  readonly now: Measured;
}): Length | undefined {
  const grown = metalBetween(of, now.measured, before.measured);
  return isMore(grown, plus(bandWidth(before), bandWidth(now))) ? grown : undefined;
}

function bandWidth({ measured, tool, warmthDoubt }: Measured): Length {
  return bandOf(typedEstimate(measured, tool, warmthDoubt ? { warmthDoubt } : {})).halfWidth;
}
