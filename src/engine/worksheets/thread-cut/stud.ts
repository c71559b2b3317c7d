import { isLess, isMore, minus, plus, sum, times, zero, type Length } from '../../length/length.ts';
import { bandOf, mean, type Estimate } from '../../reading/estimate.ts';
import { usualNutHeight } from '../../thread/grip-ends.ts';
import { PAST_NUT_PITCHES } from '../../thread/tables/bolt-threads.ts';
import type { Thread } from '../../thread/threads.ts';

/** Common practice, no source: chamfer and first thread of an end that is turned here. */
const CHAMFER_PITCHES = 1;

/** Common practice, no source: thread goes on under the nut's face, so that the nut clamps before it ends. */
const UNDER_FACE_PITCHES = 2;

/** Common practice, no source: a stud may be so much longer; it stands further out of its nut. */
const LONGER_PITCHES = 1;

export type StudQuestion = {
  readonly grip: { readonly least: Estimate; readonly most: Estimate };
  /** Left out: a nut at each end. */
  readonly inPart: Length | undefined;
  /** Under each nut. */
  readonly washer: Length | undefined;
  readonly nutHeight: Length | undefined;
};

export type Stud = {
  /** Over all. */
  readonly lower: Length;
  readonly upper: Length;
  /** Thread at either end, from the end to where it runs out. */
  readonly nutEnd: Length;
  readonly otherEnd: Length;
  readonly inPart: boolean;
  /** Left plain between them; left out where the threads meet, and it is threaded all along. */
  readonly plain?: Length;
};

/**
 * A stud for what it clamps, cut from bar: its length and the thread at both ends.
 *
 * Units:   a nut's end stands out of the grip by washer, nut, two whole threads past it and one pitch of chamfer; its thread
 *          goes on two pitches under the face, and by what the grip may be thinner than at its thickest. An end in a part
 *          is threaded for what stands in it and no further than one pitch. Over all at least the thickest grip with its
 *          band and both ends; up to one pitch more.
 * Range:   threads that meet make a stud threaded all along.
 * Source:  sum of a dimension chain; threads past the nut, under its face and chamfer: common practice, no source; a nut
 *          that isn't measured: thread/grip-ends.ts.
 */
export function studFor(thread: Thread, { grip, inPart, washer, nutHeight }: StudQuestion): Stud {
  const { pitch } = thread;
  const thickest = plus(mean(grip.most), bandOf(grip.most).halfWidth);
  const thinnest = minus(mean(grip.least), bandOf(grip.least).halfWidth);
  const out = sum([
    washer ?? zero,
    nutHeight ?? usualNutHeight(thread),
    times(pitch, PAST_NUT_PITCHES + CHAMFER_PITCHES),
  ]);
  const lower = sum([thickest, out, inPart ?? out]);
  const nutEnd = sum([out, times(pitch, UNDER_FACE_PITCHES), minus(thickest, thinnest)]);
  const otherEnd = inPart ? plus(inPart, times(pitch, CHAMFER_PITCHES)) : nutEnd;
  const plain = minus(lower, plus(nutEnd, otherEnd));
  return {
    lower,
    upper: plus(lower, times(pitch, LONGER_PITCHES)),
    nutEnd: isLess(nutEnd, lower) ? nutEnd : lower,
    otherEnd: isLess(otherEnd, lower) ? otherEnd : lower,
    inPart: inPart !== undefined,
    ...(isMore(plain, zero) && { plain }),
  };
}
