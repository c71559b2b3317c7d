import type { CutOffer } from './cut.ts';

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

/** What stands behind limits that allow for how well the readings know the sizes they come from. */
export const LESS_THE_BAND = 'less what the readings can’t tell';

/** What stands behind limits that the sizes alone give, with nothing left of them after the band. */
export const NOT_PROVED = 'by the sizes alone: these readings can’t prove it';
