import { isMore, largest, smallest, type Length } from '../length/length.ts';

/** By how much something has to become smaller for the aim, below zero larger; and the least and most that can be proved to do. */
export type Change = { readonly aim: Length; readonly least: Length; readonly most: Length };

/**
 * The change with its aim where it can be proved.
 *
 * Range:   an aim closer to a limit than the band would cut a part that wants a shim, or shim one that wants a cut. Where
 *          the band leaves nothing of the limits the aim is left as it is.
 */
export function aimedInside({ aim, least, most }: Change): Change {
  return { aim: isMore(least, most) ? aim : smallest(largest(aim, least), most), least, most };
}
