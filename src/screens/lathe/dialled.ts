import { metalBetween } from '../../engine/cut/cut.ts';
import { absolute, isMore, isZero, minus, plus, sum, zero, type Length } from '../../engine/length/length.ts';
import type { CutKind } from '../../engine/length/metal-on.ts';

export type CutBefore = 'shown' | 'dialled';

type AskedQuestion = {
  readonly of: CutKind;
  readonly before: Length;
  readonly measured: Length;
  readonly dialled: readonly Length[];
  /** What the screen asked for when it was measured; left out when nothing was left to take. */
  readonly shown?: Length;
};

/**
 * Whether the pass on the screen was cut before this measurement, or the tool only measured again what was there: of the
 * two sizes there could be, the nearer one. The fitter can say otherwise.
 */
export function cutBefore({ of, before, measured, dialled, shown }: AskedQuestion): CutBefore {
  if (!shown) return 'dialled';
  const got = metalBetween(of, before, measured);
  const already = sum(dialled);
  const offIfNot = absolute(minus(got, already));
  const offIfCut = absolute(minus(got, plus(already, shown)));
  return isMore(offIfCut, offIfNot) ? 'dialled' : 'shown';
}

/** All that was asked of the dial since the last measurement; nothing where nothing was cut. */
export function askedSince(
  cut: CutBefore,
  { dialled, shown }: { readonly dialled: readonly Length[]; readonly shown?: Length },
): Length | undefined {
  const asked = plus(sum(dialled), cut === 'shown' && shown ? shown : zero);
  return isZero(asked) ? undefined : asked;
}
