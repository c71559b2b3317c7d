import type { CutOffer } from '../../cut/cut.ts';
import { wayOf, type CutWay } from '../../cut/cuts-of-way.ts';
import type { CutFromBlank } from './ring-blank.ts';
import type { RingAnswer, RingQuestion, RingSize } from './ring.ts';
import { isZero } from '../../length/length.ts';

/** The way that begins with no blank there is. */
export const NEW_BLANK = 'new';

/**
 * What is cut for a ring, in the order of work: inside first, then the outside on a mandrel, then to thickness. Each blank
 * that would do is a way of its own, the one with the least work first.
 *
 * Units:   outside and inside on the diameter.
 * Range:   a size of a blank that is good already isn't cut; a blank that goes in as it is takes none. Without a blank
 *          the sizes stand, and where metal stands now isn't known.
 */
export function cutsOfRing(q: RingQuestion, answer: RingAnswer): readonly CutWay[] {
  const { best, others } = answer.fromBlanks;
  if (!best) return wayOf({ id: NEW_BLANK, name: 'From a new blank', offers: fromNothing(q, answer) });
  if (best.cuts.length === 0) return [];
  return [best, ...others].flatMap((one) =>
    wayOf({ id: one.blank.id, name: `From ${one.blank.name}`, offers: fromBlank(q, one) }),
  );
}

function fromBlank(q: RingQuestion, { cuts }: CutFromBlank): readonly CutOffer[] {
  return cuts.map(({ kind, from, to, lower, upper }) => ({
    ...offerFor(q, kind),
    present: from,
    target: to,
    lower,
    upper,
  }));
}

function fromNothing(q: RingQuestion, { inside, outside, thickness }: RingAnswer): readonly CutOffer[] {
  return [inside, outside, ...(thickness ? [thickness] : [])].map(({ kind, target, lower, upper }) => ({
    ...offerFor(q, kind),
    target,
    lower,
    upper,
  }));
}

/** What a cut is called in every list. */
export function ringCutName(kind: RingSize['kind']): string {
  if (kind === 'bore') return 'Ring, inside';
  return kind === 'outside' ? 'Ring, outside' : 'Ring, to thickness';
}

function offerFor(q: RingQuestion, kind: RingSize['kind']) {
  const part = 'ring';
  if (kind === 'bore')
    return {
      name: ringCutName(kind),
      part,
      operation: 'bore',
      of: 'bore',
      limitsFrom: `stem and clearance (${q.insideClearance.source})`,
    } as const;
  if (kind === 'outside')
    return {
      name: ringCutName(kind),
      part,
      operation: 'ring',
      of: 'outside',
      limitsFrom: `recess less clearance (${q.outsideClearance.source})`,
    } as const;
  return {
    name: ringCutName(kind),
    part,
    operation: 'face',
    of: 'length',
    limitsFrom: `depth of the recess${q.stayFree && !isZero(q.stayFree) ? ' less what must stay free' : ''}`,
  } as const;
}
