import { byEye, type CheckOffer } from '../../reading/check-offer.ts';

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
