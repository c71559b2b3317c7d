import type { Held } from '../../thread/bolt-grip.ts';
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

/** What is seen of a wire thread insert once it is in. */
export function checksOfInsert(): readonly CheckOffer[] {
  return [
    byEye(
      'Insert set down, tang out',
      'Its first coil lies 3/4 to 1-1/2 pitches below the face, the tang is broken off and out of the hole, no coil has jumped a thread.',
    ),
    byEye('The bolt goes in by hand', 'The real bolt, clean and dry, to its full depth without a tool.'),
  ];
}
