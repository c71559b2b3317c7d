import type { Operation } from './cut.ts';
import { isLess, type Length } from '../length/length.ts';
import { thinRing } from './tables/thin-ring.ts';

/** Shown at the lathe, whatever is cut there. */
export const LATHE_CAUTION =
  'No gloves, no loose sleeves. Guard down, glasses on, chuck key out. Stop the spindle before you measure.';

const MANDREL_CAUTION = 'Thin ring: hold it on a mandrel; the jaws spring it out of round.';

/**
 * The cautions of a cut at the lathe, the one for thin rings first.
 *
 * Range:   a ring always; other work where its wall or its thickness is known and thin (tables/ring-practice.ts).
 */
export function latheCautions(q: {
  readonly operation: Operation;
  readonly wall?: Length;
  readonly thickness?: Length;
}): readonly string[] {
  const isThin =
    q.operation === 'ring' ||
    (q.wall !== undefined && isLess(q.wall, thinRing.wall)) ||
    (q.thickness !== undefined && isLess(q.thickness, thinRing.thickness));
  return isThin ? [MANDREL_CAUTION, LATHE_CAUTION] : [LATHE_CAUTION];
}
