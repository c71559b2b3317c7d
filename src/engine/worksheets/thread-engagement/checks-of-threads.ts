import type { Held } from '../../thread/grip-question.ts';
import { byEye, type CheckOffer } from '../../reading/check-offer.ts';

/** What is seen of a bolt once it is in. */
export function checksOfEngagement(held: Held): readonly CheckOffer[] {
  const past = byEye(
    'Threads past the nut',
    'Nut torqued: at least two whole threads stand past it (common practice, no source), and the nut is not against the end of the thread.',
  );
  const clear = byEye(
    'The bolt doesn’t bottom',
    'Turn it in by hand without its washers: it goes further than with them, so that it clamps before it meets the end of its hole.',
  );
  return held === 'tapped' ? [clear] : [past];
}
