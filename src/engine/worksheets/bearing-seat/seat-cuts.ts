import type { Change } from '../../shim/change-wanted.ts';
import type { CutOfAll, SettingWant } from './change-of-places.ts';
import type { Band } from '../../reading/estimate.ts';
import { isLess, isMore, negate, plus, zero, type Length } from '../../length/length.ts';
import { cutTarget } from '../../length/metal-on.ts';
import { refuse, worked, type Result } from '../../length/refusal.ts';
import type { Verdict } from '../../reading/verdict.ts';

/** A size to cut to or a shim to add, with what the band leaves of the limits. */
export type Between = { readonly aim: Length; readonly lower: Length; readonly upper: Length };

/** A cut from one size to another. */
export type SeatCut = Between & { readonly from: Length; readonly to: Length; readonly take: Length };

/** What is known of the figure that is wanted, and whether it is good. */
export type Known = {
  readonly value: Length;
  readonly band: Band;
  readonly verdict: Verdict;
  /** Its places are so far from each other that what one wants takes another out: no one remedy does. */
  readonly apart?: Length;
};

export type CutRefusal = Extract<Result<never>, { ok: false }>['refusal'];

/** The cut that brings a size inside what is wanted of it; refuses where the band leaves nothing of the limits. */
export function cutWithin(
  q: CutOfAll & {
    readonly kind: 'length' | 'recess-depth';
    readonly step: Length;
    readonly want: SettingWant;
    readonly band: Band;
  },
): Result<SeatCut> {
  const { from, aim, lower, upper, kind, step } = q;
  if (isMore(lower, upper))
    return refuse({ code: 'no-proof', halfWidth: q.band.halfWidth, ...sidesOf(q.want.limits) });
  const cut = cutTarget({ aim, lower, upper, present: from, kind, step });
  if (!cut.ok) return cut;
  return worked({ aim, lower, upper, from, to: cut.value.target, take: cut.value.take });
}

/** A shim makes up what is missing; none where the band leaves nothing of the limits. */
export function shimFor({ aim, least, most }: Change): Between | undefined {
  if (!isLess(aim, zero) || isMore(least, most)) return undefined;
  return { aim: negate(aim), lower: negate(most), upper: negate(least) };
}

/** The same seen from the other side: what is too long here is missing there. */
export function turnedRound({ aim, lower, upper }: Between): Between {
  return { aim: negate(aim), lower: negate(upper), upper: negate(lower) };
}

/** Limits of a change as limits of the size it is made to. */
export function movedBy(from: Length, { aim, lower, upper }: Between): Between {
  return { aim: plus(from, aim), lower: plus(from, lower), upper: plus(from, upper) };
}

/** Limits without what else is known of them, as a refusal carries them. */
export function sidesOf({ lower, upper }: SettingWant['limits']) {
  return { lower, upper };
}
