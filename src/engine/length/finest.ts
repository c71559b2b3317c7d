import { lengthOf, type Length } from './length.ts';
import type { ShownUnit } from './show.ts';

/** The finest figure that is shown, and that a size is set to. */
export const finest: Readonly<Record<ShownUnit, Length>> = {
  in: lengthOf('.0001 in'),
  mm: lengthOf('0.001 mm'),
};
