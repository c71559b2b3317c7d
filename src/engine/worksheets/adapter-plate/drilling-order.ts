import { byLength } from '../../length/length.ts';
import type { PlateHole } from './laid-plate.ts';

/**
 * The holes in the order in which they are drilled: one size after the other, the smaller first, and each size from left to
 * right, so that the slide that goes furthest runs one way; holes one over the other from below.
 *
 * Source: common practice, no source: a tool is changed once, and backlash is taken up once.
 */
export function drillingOrder(holes: readonly PlateHole[]): readonly PlateHole[] {
  return holes.toSorted(
    (one, other) =>
      byLength(one.hole, other.hole) || byLength(one.set.x, other.set.x) || byLength(one.set.y, other.set.y),
  );
}
