import { tapName } from '../../thread/tap-name.ts';
import type { CutOffer } from '../../cut/cut.ts';
import { wayOf, type CutWay } from '../../cut/cuts-of-way.ts';
import { insertLimits } from '../../thread/insert-limits.ts';
import { isLess, isMore, largest, smallest, zero, type Length } from '../../length/length.ts';
import { FOLLOWS_HOLE, wornAxis, type WornAxis } from '../../fit/worn-axis.ts';
import type { Estimate } from '../../reading/estimate.ts';
import { isSpoiltInALeg, type LeggedAnswer } from './insert-in-legs.ts';
import {
  leavesTooLittleThread,
  needsDrill,
  type InsertAnswer,
  type InsertDrillChoice,
  type InsertQuestion,
} from './thread-insert.ts';
import type { Thread } from '../../thread/threads.ts';

/**
 * What is cut for a wire thread insert: the drill where the hole needs it, then the insert's tap. Cutting an insert off is
 * no cut of the part.
 *
 * Units:   both are held to the minor diameter of the tapped hole, which is what can be measured after either.
 * Range:   none where the wall or the floor of a blind hole in any leg would be too thin, or where too little thread would be left
 *          to be worth tapping.
 */
export function cutsOfInsert(
  { thread, hole: now }: Pick<InsertQuestion, 'thread' | 'hole'>,
  answer: Pick<InsertAnswer, 'hole' | 'drill' | 'wallLeft'> & Pick<LeggedAnswer, 'legs'>,
): readonly CutWay[] {
  const { hole, drill, wallLeft } = answer;
  if (wallLeft?.enough === false || isSpoiltInALeg(answer) || leavesTooLittleThread(answer)) return [];
  return wayOf({
    id: 'insert',
    name: 'Thread insert',
    offers: insertOffers({
      thread,
      ...(needsDrill(answer) && { drill: drill.drill }),
      ...(hole.tightest && hole.loosest && { hole: { tightest: hole.tightest, loosest: hole.loosest } }),
      follows: now !== undefined && followsHole(thread, now.loosest),
    }),
  });
}

type InsertCuts = {
  readonly thread: Thread;
  readonly drill?: InsertDrillChoice['drill'];
  readonly hole?: { readonly tightest: Length; readonly loosest: Length };
  /** The hole may stand off its place: the drill goes where it is. */
  readonly follows?: boolean;
};

/** A hole larger than the bolt was its clearance hole once, and may have worn to one side. */
export function insertAxis(thread: Thread, loosest: Estimate): WornAxis | undefined {
  return wornAxis({ loosest, nominal: thread.major, most: zero });
}

export function followsHole(thread: Thread, loosest: Estimate): boolean {
  return insertAxis(thread, loosest) !== undefined;
}

/** Drill and tap, or the tap alone where the hole is large enough already. */
export function insertOffers({ thread, drill, hole, follows = false }: InsertCuts): readonly CutOffer[] {
  const where = follows ? FOLLOWS_HOLE : '';
  const { minorLeast, minorMost, minorMostSource } = insertLimits(thread);
  // A hole or a drill past the standard's most is known and accepted by then: it may not be called over for that.
  const past = largest(minorMost, ...[drill?.size, hole?.loosest].filter((size) => size !== undefined));
  const limits = {
    lower: minorLeast,
    upper: past,
    limitsFrom: `minor diameter of the hole for an insert ${thread.designation} (${
      isMore(past, minorMost) ? 'its most is the hole as it comes, past the standard’s' : minorMostSource
    })`,
  };
  const drilled = drill && largest(drill.size, hole?.loosest ?? drill.size);
  return [
    ...(drill && drilled
      ? [
          {
            name: `Hole, drilled ${drill.name}${where}`,
            part: 'hole',
            operation: 'drill',
            of: 'tap-drill',
            ...(hole && { present: hole.tightest }),
            target: drill.size,
            ...limits,
            drill: drill.name,
          } as const,
        ]
      : []),
    {
      // Behind a drill the tap has no other hole to follow.
      name: `Hole, ${tapName(thread.designation, 'insert')}${drill ? '' : where}`,
      part: 'hole',
      operation: 'tap',
      of: 'tap-drill',
      target: insideOf(drilled ?? hole?.tightest ?? minorLeast, limits),
      ...limits,
      thread: thread.designation,
    },
  ];
}

function insideOf(
  size: Length,
  { lower, upper }: { readonly lower: Length; readonly upper: Length },
): Length {
  if (isLess(size, lower)) return lower;
  return smallest(size, upper);
}
