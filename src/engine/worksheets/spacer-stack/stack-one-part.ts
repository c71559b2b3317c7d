import { targetBetween } from '../../length/target-between.ts';
import { combine, type Band, type Term } from '../../reading/estimate.ts';
import { isLess, isMore, largest, negate, zero, type Length } from '../../length/length.ts';
import { neededChange, outOfParallelBy, wantWithout, type Proof } from './stack-change.ts';
import { onePartInPlaceOf, type StackPart, type StackQuestion } from './spacer-stack.ts';
import { usualLeastLength } from '../../fit/tables/least-part.ts';

/** The one part that can stand in for several: as long as they are together, and as long as it should be. */
export type OnePart = {
  readonly parts: readonly StackPart[];
  /** Leaves the same gap. */
  readonly length: Length;
  readonly band: Band;
  readonly worstCase: Length;
  /** Brings what is wanted; left out where nothing above zero would. */
  readonly made?: MadeOne;
};

export type MadeOne = Proof & {
  /** Left full to the dial. */
  readonly target: Length;
  readonly lower: Length;
  readonly upper: Length;
  /** Shorter than a spacer can be: a shim does it, and nothing is cut. */
  readonly isShim: boolean;
};

/**
 * One part in place of several, and how long it should be for what the stack should do with it in.
 *
 * Units:   length = their sum. Made: what is left of the fixed length beside the other parts, less the aim (a clamp: and the
 *          aim); limits likewise, less the band of the sizes that stay. A gap that was read directly is taken together with
 *          the sizes of the parts that go. `places` count the parts from 0.
 * Range:   undefined for fewer than two pieces, and for a place the stack hasn't got. Where the band leaves nothing, the limits stand whole and it isn't proved.
 */
export function onePart(q: StackQuestion, places: readonly number[]): OnePart | undefined {
  const parts = q.parts.filter((_, place) => places.includes(place));
  if (places.some((place) => place >= q.parts.length)) return undefined;
  if (parts.reduce((so, { count }) => so + count, 0) < 2) return undefined;
  const made = madeOne(q, parts, places);
  return { parts, ...onePartInPlaceOf(parts), ...(made && { made }) };
}

function madeOne(
  q: StackQuestion,
  gone: readonly StackPart[],
  places: readonly number[],
): MadeOne | undefined {
  const { value: room, band } = combine(roomTerms(q, gone, places));
  // With nothing in their place the room itself would be the gap: so much longer the parts have to become.
  const want = wantWithout(
    q.want,
    gone.map((part) => ({ part, count: part.count })),
  );
  const change = neededChange({ gap: room, want, band });
  const { halfWidth, proved } = change;
  const least = q.usualLeast ?? usualLeastLength.in;
  const [aim, upper] = [negate(change.aim), negate(change.least)];
  if (!isMore(aim, zero) || outOfParallelBy(want)) return undefined;
  const isShim = isLess(upper, least);
  const lower = isShim ? largest(zero, negate(change.most)) : largest(least, negate(change.most));
  const target = isShim ? aim : targetBetween({ lower, upper, aim: largest(aim, least) }, 'length', q.step);
  return { target, lower, upper, halfWidth, proved, isShim };
}

/** The room the one part has: the fixed length less the parts that stay, or a read gap and the parts that go. */
function roomTerms(
  { fixed, parts, direct }: StackQuestion,
  gone: readonly StackPart[],
  places: readonly number[],
): readonly Term[] {
  if (direct) return [{ estimate: direct, coefficient: 1 }, ...gone.map((part) => term(part, 1))];
  const stay = parts.filter((_, place) => !places.includes(place));
  return [{ estimate: fixed.length, coefficient: 1 }, ...stay.map((part) => term(part, -1))];
}

function term({ thickness, count }: StackPart, sign: 1 | -1): Term {
  return { estimate: thickness, coefficient: sign * count };
}
