import { metalBetween } from './cut.ts';
import { bandOf, typedEstimate } from '../reading/estimate.ts';
import { isMore, plus, type Length } from '../length/length.ts';
import type { CutKind } from '../length/metal-on.ts';
import type { MeasuredPass } from './spring.ts';

type Measured = Pick<MeasuredPass, 'measured' | 'tool'>;

/**
 * How much metal a part seems to have grown since it was measured last: a bore that shrank, an outside that got larger.
 * Cutting only takes metal away, so one of the two figures is wrong.
 *
 * Units:   off the size; undefined where the two agree within both their bands, as two measurements of one size may.
 * Range:   a size measured without a named tool has no band of its own.
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

function bandWidth({ measured, tool }: Measured): Length {
  return bandOf(typedEstimate(measured, tool)).halfWidth;
}
