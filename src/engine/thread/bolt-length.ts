import { allClamped, lastPlane } from './grip-clamped.ts';
import { heldPast, inPart } from './grip-ends.ts';
import { longer } from './bolt-grip.ts';
import type { GripQuestion } from './grip-question.ts';
import { combine } from '../reading/estimate.ts';
import {
  isMore,
  lengthOf,
  minus,
  plus,
  roundToStep,
  smallest,
  sum,
  times,
  zero,
  type Length,
} from '../length/length.ts';
import { RUN_OUT_PITCHES } from './tables/bolt-threads.ts';
import { moreThreadPast, usualThreadLength } from './thread-length.ts';
import { isInchThread, type Thread } from './threads.ts';

/** The lengths that hold, clamp and don't bottom; a stud's over all, with its share in the part. */
export type LengthToBuy = {
  /** Holds with every whole thread it must; and where it can be had, with plain shank through every plane. */
  readonly least: Length;
  /** Longer, and the nut meets the run-out or the bolt the end of its hole; or it is made with more thread, which reaches into a plane. */
  readonly most: Length;
  readonly mostBy: 'run-out' | 'hole' | 'more-thread';
  /** Lengths that are made, shortest and longest of them; left out where none lies between. */
  readonly made?: { readonly least: Length; readonly most: Length };
  /** The unit they are sold by, whatever the shop works in. */
  readonly soldBy: 'in' | 'mm';
  /** So much washer more, and a usual bolt both clamps and has plain shank in every plane. */
  readonly washersMissing?: Length;
  /** Of a stud: what of its length is in the part. */
  readonly inPart?: Length;
  /** Of a stud: so much deeper the hole's thread would have to be; no length holds in it. */
  readonly holeMissing?: Length;
};

/**
 * Which lengths of bolt or stud to buy for what is clamped.
 *
 * Units:   Lengths, a bolt's from under the head, a stud's over all. The legs' band is against both ends of the range.
 * Range:   least: what is clamped, its nut or what the part must hold, two whole threads past a nut, the point, an
 *          insert's set-down; and plain shank past the last plane between clamped parts, where both can be had. Most: the
 *          nut still clear of the thread's run-out, the end clear of a blind hole's end. A hole that wasn't given counts as
 *          one that goes through.
 * Refuses: by undefined, without legs.
 * Source:  as tables/bolt-threads.ts; steps of 1/8 in or 5 mm: common practice, no source.
 */
export function lengthToBuy(q: GripQuestion): LengthToBuy | undefined {
  if (q.legs.length === 0) return undefined;
  const thick = combine(allClamped(q, 'thickest'));
  const holds = sum([thick.value, thick.band.halfWidth, heldPast(q).most]);
  const part = q.held === 'stud' ? inPart(q).most : zero;
  const clears = plus(clearsRunOut(q, minus(holds, part)), part);
  const bottoms = endOfHole(q);
  const shank = shankThrough(q, holds, part);
  const canHaveBoth = !shank || !isMore(shank.length, clears);
  const least = canHaveBoth ? longer(holds, shank?.length) : holds;
  const border = shank && canHaveBoth ? borderOf(q.thread, shank.past, minus(least, part)) : undefined;
  const ends = [
    { mostBy: 'run-out' as const, length: clears },
    ...(bottoms ? [{ mostBy: 'hole' as const, length: bottoms }] : []),
    ...(border ? [{ mostBy: 'more-thread' as const, length: plus(border, part) }] : []),
  ];
  const most = smallest(clears, ...ends.map(({ length }) => length));
  const holeMissing = holeMissingFor(q, part);
  const made = holeMissing ? undefined : madeBetween(q.thread, least, most);
  return {
    least,
    most,
    mostBy: ends.find(({ length }) => !isMore(length, most))?.mostBy ?? 'run-out',
    ...(made && { made }),
    soldBy: isInchThread(q.thread) ? 'in' : 'mm',
    ...(shank && !canHaveBoth && { washersMissing: minus(shank.length, clears) }),
    ...(q.held === 'stud' && { inPart: part }),
    ...(holeMissing && { holeMissing }),
  };
}

/** A stud's end goes as deep as it must hold, however long it is. */
function holeMissingFor({ held, hole }: GripQuestion, part: Length): Length | undefined {
  if (held !== 'stud' || !hole || hole === 'through') return undefined;
  const { value, band } = combine([{ estimate: hole.depth, coefficient: 1 }]);
  const missing = minus(part, minus(value, band.halfWidth));
  return isMore(missing, zero) ? missing : undefined;
}

/** The longest whose whole thread still begins within what is clamped. */
function clearsRunOut(q: GripQuestion, least: Length): Length {
  const { value, band } = combine(allClamped(q, 'thickness'));
  const grip = minus(value, band.halfWidth);
  const first = plus(grip, usualThreadLength(q.thread, least));
  // Past a border of the list there is more thread, which may allow a longer one yet.
  return longer(first, plus(grip, usualThreadLength(q.thread, first)));
}

/** The first border of the list past which a bolt's longer thread reaches into a plane again, where `past` must be clear of it. */
function borderOf(thread: Thread, past: Length, least: Length): Length | undefined {
  const borders = moreThreadPast(thread).filter(({ border }) => !isMore(least, border));
  return borders.find((more) => isMore(plus(past, more.thread), more.border))?.border;
}

/** The plane and run-out that a bolt's whole thread begins past, and from which length it does. */
function shankThrough(
  q: GripQuestion,
  holds: Length,
  part: Length,
): { readonly past: Length; readonly length: Length } | undefined {
  const terms = lastPlane(q);
  if (!terms) return undefined;
  const { value, band } = combine(terms);
  const past = sum([value, band.halfWidth, times(q.thread.pitch, RUN_OUT_PITCHES)]);
  const outside = minus(holds, part);
  const first = plus(past, usualThreadLength(q.thread, outside));
  const length = plus(past, usualThreadLength(q.thread, longer(first, outside)));
  return { past, length: plus(length, part) };
}

function endOfHole(q: GripQuestion): Length | undefined {
  if (q.held !== 'tapped' || !q.hole || q.hole === 'through') return undefined;
  const { value, band } = combine([
    ...allClamped(q, 'thickness'),
    { estimate: q.hole.depth, coefficient: 1 },
  ]);
  return minus(value, band.halfWidth);
}

function madeBetween(thread: Thread, least: Length, most: Length): LengthToBuy['made'] {
  const step = lengthOf(isInchThread(thread) ? '1/8 in' : '5 mm');
  const shortest = roundToStep(least, step, 'up');
  const longest = roundToStep(most, step, 'down');
  return isMore(shortest, longest) ? undefined : { least: shortest, most: longest };
}
