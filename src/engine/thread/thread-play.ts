import { minus, type Length } from '../length/length.ts';
import { externalLimits, internalLimits } from './thread-limits.ts';
import type { Thread } from './threads.ts';

/**
 * How far a bolt can shift sideways in its thread, least and most, both threads at the limits of their usual class.
 *
 * Units:  Lengths, on the pitch diameter.
 * Range:  2A in 2B, 6g in 6H.
 * Source: as `externalLimits` and `internalLimits` say.
 */
export function threadPlay(thread: Thread): { readonly least: Length; readonly most: Length } {
  const bolt = externalLimits(thread);
  const hole = internalLimits(thread);
  return {
    least: minus(hole.pitchLeast, bolt.pitchMost),
    most: minus(hole.pitchMost, bolt.pitchLeast),
  };
}
