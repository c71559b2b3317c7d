import type { CutOffer } from './cut.ts';
import type { Range } from './fits.ts';
import { dividedBy, plus, type Length } from './length.ts';
import { metalOnTarget, type CutKind } from './metal-on.ts';

/** One way of doing it: the cuts it takes, in the order of work. Of several ways only one is gone. */
export type CutWay = {
  /** Short and the same every time, so that it can stand in an address. */
  readonly id: string;
  readonly name: string;
  readonly offers: readonly CutOffer[];
  /** Something about it is still open: an unanswered question, a verdict that is too close to call. */
  readonly unsure?: true;
};

/** A way, or none where it takes no cut. */
export function wayOf(way: CutWay): readonly CutWay[] {
  return way.offers.length > 0 ? [way] : [];
}

/**
 * Where to cut to between two limits: half way, rounded metal-on to the dial; where no step of it lies inside, the limit
 * that leaves most metal.
 *
 * Units:   as `metalOnTarget`.
 */
export function targetBetween(
  { lower, upper, aim = dividedBy(plus(lower, upper), 2) }: Range & { readonly aim?: Length },
  kind: CutKind,
  step: Length,
): Length {
  const target = metalOnTarget({ aim, lower, upper }, kind, step);
  if (target.ok) return target.value;
  return kind === 'outside' || kind === 'length' ? upper : lower;
}

/** What stands behind limits that allow for how well the readings know the sizes they come from. */
export const LESS_THE_BAND = 'less what the readings can’t tell';
