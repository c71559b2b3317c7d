import type { GetOffer } from '../../job/get-list.ts';
import { show, type ShownUnit } from '../../length/show.ts';
import { cutsOfRing, NEW_BLANK } from './cuts-of-ring.ts';
import type { RingAnswer, RingQuestion } from './ring.ts';

/** What a ring is cut from, where nothing in hand or in the drawer would do. */
export function getsOfRing(q: RingQuestion, answer: RingAnswer, unit: ShownUnit): readonly GetOffer[] {
  const isNew = cutsOfRing(q, answer).some(({ id }) => id === NEW_BLANK);
  if (!isNew) return [];
  const { outside, inside, thickness } = answer;
  const sizes = [
    `${show(outside.target, unit)} or more outside`,
    `hole ${show(inside.target, unit)} or less`,
    ...(thickness ? [`${show(thickness.target, unit)} or more thick`] : []),
  ];
  return [
    { kind: 'stock', what: `washer or plate for the ring, ${sizes.join(', ')}`, count: 1, part: 'ring' },
  ];
}
