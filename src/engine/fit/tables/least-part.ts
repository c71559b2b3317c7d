import { lengthOf, type Length } from '../../length/length.ts';

/**
 * How short a spacer or washer may be faced when nobody says so: thinner than that it can't be held or bends, and is
 * left out, or a shim is put in its place.
 *
 * Source: common practice, no source.
 */
export const usualLeastLength: Readonly<Record<'in' | 'mm', Length>> = {
  in: lengthOf('.020 in'),
  mm: lengthOf('0.5 mm'),
};
