import { minus } from '../../length/length.ts';
import { show, type ShownUnit } from '../../length/show.ts';
import type { LeggedRefusal } from './insert-in-legs.ts';
import type { InsertRefusal } from './thread-insert.ts';

/** The sentence for an insert that can't be worked out. Apart from say-insert.ts, so that it stays small at first load. */
export function sayInsertRefusal(refusal: InsertRefusal, unit: ShownUnit): string {
  switch (refusal.code) {
    case 'no-insert-made':
      return `No wire insert is usually made for ${refusal.thread}. Take another bolt of about that size, or bush the hole.`;
    case 'hole-past-insert-thread':
      return `Nothing is left to tap. Hole ${show(refusal.hole, unit)} at its loosest, ${show(minus(refusal.hole, refusal.major), unit)} past the insert’s thread. Bush the hole first, or go to a larger bolt. The insert’s thread for ${refusal.thread} is ${show(refusal.major, unit)} outside.`;
    case 'wall-without-hole':
      return "A wall measured from the hole's edge needs the hole's size too. Log the bore, or measure from the hole's centre to the edge.";
    case 'no-metal-for-insert':
      return 'A thickness of nothing holds no insert. Measure the metal the bolt screws into.';
    default:
      return refusal satisfies never;
  }
}

/** The same with the leg it is about, where there are several. */
export function sayLegRefusal(refusal: LeggedRefusal, unit: ShownUnit): string {
  const said = sayInsertRefusal(refusal, unit);
  return refusal.leg === undefined ? said : `Leg ${refusal.leg}: ${said}`;
}
