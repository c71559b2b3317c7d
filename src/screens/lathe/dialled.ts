import { metalBetween } from '../../engine/cut.ts';
import {
  absolute,
  fromText,
  isMore,
  isZero,
  minus,
  plus,
  sum,
  toText,
  zero,
  type Length,
} from '../../engine/length.ts';
import type { CutKind } from '../../engine/metal-on.ts';
import type { Draft, Id } from '../../store/records.ts';

/**
 * What was dialled in and cut since the size was last measured. It hangs on that measurement: a new one starts from
 * nothing, and striking that one out brings back what was dialled before it.
 */
export function dialledKey(cutId: Id, lastPassId: Id | undefined): string {
  return `lathe/${cutId}/dialled-since/${lastPassId ?? 'blank'}`;
}

/** Off the size, in the order they were cut; exact millimetres one behind the other. */
export function dialledText(amounts: readonly Length[]): string {
  return amounts.map(toText).join(' ');
}

/** What can't be read was not written by us: nothing dialled. */
export function readDialled(draft: Draft | undefined): readonly Length[] {
  const words = draft?.typed.split(' ').filter((word) => word !== '') ?? [];
  return words.every((word) => /^\d{1,7}(\.\d{1,60})?$/.test(word)) ? words.map(fromText) : [];
}

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
