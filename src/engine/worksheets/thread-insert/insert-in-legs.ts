import type { BlindDepth, BlindTap, InsertLength } from '../../thread/insert-lengths.ts';
import type { Length } from '../../length/length.ts';
import { refuse, worked, type Result } from '../../length/refusal.ts';
import { threadInsert, type InsertAnswer, type InsertQuestion, type InsertRefusal } from './thread-insert.ts';

/** The metal of one leg that the bolt is screwed into. */
export type InsertLegQuestion = {
  /** Left out while it isn't known. */
  readonly thickness?: Length;
  /** How far the thickness may be off its reading. */
  readonly thicknessOff?: Length;
  readonly blind?: { readonly tap: BlindTap };
};

/** One insert in each leg, from the head of the bolt on; all of them for one thread and through one drill. */
export type LeggedQuestion = Omit<InsertQuestion, 'thickness' | 'thicknessOff' | 'blind'> & {
  readonly legs: readonly InsertLegQuestion[];
};

/** What is bought for a leg, and what becomes of it there. */
export type InsertLeg = {
  readonly thickness?: Length;
  readonly lengths: readonly InsertLength[];
  readonly chosen: InsertLength;
  readonly blindDepth?: BlindDepth;
};

/** What all legs share, with what is each one's own. */
export type LeggedAnswer = Omit<InsertAnswer, 'lengths' | 'blindDepth'> & {
  readonly legs: readonly InsertLeg[];
};

/** A refusal, with the number of its leg where there are several and only that one is refused. */
export type LeggedRefusal = InsertRefusal & { readonly leg?: number };

/**
 * A wire thread insert in one leg or in several at once: drill, hole and wall once, length, what is trimmed and how deep a
 * blind hole goes for each.
 *
 * Units:   Lengths in and out. Without a leg nothing is known of the metal: one leg of no thickness.
 * Refuses: what `threadInsert` refuses; metal of nothing with the number of its leg.
 * Source:  as `threadInsert`.
 */
export function insertInLegs({ legs, ...q }: LeggedQuestion): Result<LeggedAnswer, LeggedRefusal> {
  const asked = legs.length === 0 ? [{}] : legs;
  const answers: InsertAnswer[] = [];
  for (const [index, leg] of asked.entries()) {
    const result = threadInsert({ ...q, ...leg });
    if (!result.ok) return refuse(ofLeg(result.refusal, asked.length > 1 ? index + 1 : undefined));
    answers.push(result.value);
  }
  const [first] = answers;
  if (!first) throw new Error('an insert without a leg');
  const { limits, drill, hole, wallLeft, setDown } = first;
  return worked({
    limits,
    drill,
    hole,
    ...(wallLeft && { wallLeft }),
    setDown,
    legs: answers.map((answer, index) => legOf(answer, asked[index]?.thickness)),
  });
}

/** Whether what stays under a blind hole is too thin in any leg. */
export function isSpoiltInALeg({ legs }: Pick<LeggedAnswer, 'legs'>): boolean {
  return legs.some(({ blindDepth }) => blindDepth?.floorMissing !== undefined);
}

function ofLeg(refusal: InsertRefusal, leg: number | undefined): LeggedRefusal {
  return refusal.code === 'no-metal-for-insert' && leg !== undefined ? { ...refusal, leg } : refusal;
}

function legOf({ lengths, blindDepth }: InsertAnswer, thickness: Length | undefined): InsertLeg {
  const chosen = lengths.find((length) => length.chosen);
  if (!chosen) throw new Error('no length of insert is chosen');
  return { ...(thickness && { thickness }), lengths, chosen, ...(blindDepth && { blindDepth }) };
}
