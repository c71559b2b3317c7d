import { stepsIn } from '../../cut/dial.ts';
import { combine, mean } from '../../reading/estimate.ts';
import {
  isLess,
  isMore,
  largest,
  minus,
  negate,
  plus,
  smallest,
  times,
  zero,
  type Length,
} from '../../length/length.ts';
import type { StackPart, StackQuestion, StackWant } from './spacer-stack.ts';
import { gapTerms, gapWanted, neededChange, wantWithout, type Proof } from './stack-change.ts';

/** A part left out of the stack, where it would be faced too short. */
export type LeftOut = Proof & {
  /** Pieces of it that go. */
  readonly pieces: number;
  /** What is left without them and with nothing in their place: float or end play, or how far the parts stand proud. */
  readonly leaves: Length;
  readonly kind: StackWant['kind'];
  /** What goes into their place: a shim so thick, or, where one piece fewer goes out, that one faced to this. */
  readonly put?: { readonly aim: Length; readonly lower: Length; readonly upper: Length };
  /** What still has to come off other parts once all of them are out. */
  readonly still?: Length;
};

type Asked = {
  readonly gap: Length;
  readonly place: number;
  readonly part: StackPart;
  /** Whether something thinner than the part's least length may stand in its place. */
  readonly mayShim: boolean;
};

/**
 * The fewest pieces of a part whose leaving out gives room enough, and what goes into their place.
 *
 * Units:   gap + pieces · L; what goes into their place is what that is too much, within what its own band leaves of the want.
 * Range:   undefined where leaving it out is too much and nothing may stand in its place.
 */
export function outOfStack(q: StackQuestion, { gap, place, part, mayShim }: Asked): LeftOut | undefined {
  for (let pieces = fewestOut(gapWanted(q.want), gap, part); pieces <= part.count; pieces += 1) {
    const want = wantWithout(q.want, [{ part, count: pieces }]);
    const wanted = gapWanted(want);
    const left = plus(gap, times(mean(part.thickness), pieces));
    const { band } = combine(gapTerms(q, { place, pieces }));
    const change = neededChange({ gap: left, want, band });
    const { halfWidth, proved } = change;
    const { kind } = q.want;
    const leaves = kind === 'clamp' ? negate(left) : left;
    const out = { pieces, leaves, kind, halfWidth, proved };
    const surely = !isMore(change.least, zero) && !isLess(change.most, zero);
    const isInside = !isLess(left, wanted.least) && !isMore(left, wanted.most);
    if (isInside && (surely || !proved)) return out;
    if (isLess(change.aim, zero)) {
      const put = {
        aim: negate(change.aim),
        lower: largest(zero, negate(change.most)),
        upper: negate(change.least),
      };
      return mayShim ? { ...out, put } : undefined;
    }
    if (pieces === part.count) return { ...out, still: change.aim };
  }
  return undefined;
}

/** Fewer than so many leave less than what is wanted for sure: of a thousand pieces nobody waits for each. */
function fewestOut(
  { aim, least }: { readonly aim: Length; readonly least: Length },
  gap: Length,
  { thickness, count }: StackPart,
): number {
  const one = mean(thickness);
  if (!isMore(one, zero)) return 1;
  return Math.max(1, Math.min(count, stepsIn(minus(smallest(aim, least), gap), one)));
}
