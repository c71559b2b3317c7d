import { tapName } from '../../thread/tap-name.ts';
import type { CutOffer } from '../../cut/cut.ts';
import { wayOf, type CutWay } from '../../cut/cuts-of-way.ts';
import { insertLimits } from '../../thread/insert-limits.ts';
import { isLess, isMore, largest, smallest, type Length } from '../../length/length.ts';
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
 * Range:   none where the wall or the floor of a blind hole would be too thin, or where too little thread would be left
 *          to be worth tapping.
 */
export function cutsOfInsert({ thread }: InsertQuestion, answer: InsertAnswer): readonly CutWay[] {
  const { hole, drill, wallLeft, blindDepth } = answer;
  if (wallLeft?.enough === false || blindDepth?.floorMissing || leavesTooLittleThread(answer)) return [];
  return wayOf({
    id: 'insert',
    name: 'Thread insert',
    offers: insertOffers({
      thread,
      ...(needsDrill(answer) && { drill: drill.drill }),
      ...(hole.tightest && hole.loosest && { hole: { tightest: hole.tightest, loosest: hole.loosest } }),
    }),
  });
}

type InsertCuts = {
  readonly thread: Thread;
  readonly drill?: InsertDrillChoice['drill'];
  readonly hole?: { readonly tightest: Length; readonly loosest: Length };
};

/** Drill and tap, or the tap alone where the hole is large enough already. */
export function insertOffers({ thread, drill, hole }: InsertCuts): readonly CutOffer[] {
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
            name: `Hole, drilled ${drill.name}`,
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
      name: `Hole, ${tapName(thread.designation, 'insert')}`,
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
