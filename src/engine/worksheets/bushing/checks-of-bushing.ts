import type { BushingAnswer } from '../../press/bushing.ts';
import { byEye, type CheckOffer } from '../../reading/check-offer.ts';

/** The bushing's bore once it is in: pressing closes it. */
export function checksOfBushing({ inside, insideFit }: BushingAnswer): readonly CheckOffer[] {
  return [
    {
      name: 'Bore of the bushing, pressed in',
      by: 'bore',
      limits: { ...inside, source: insideFit.source },
      how: 'Pressed home and cooled down. Read it at both ends and in the middle, two ways across.',
    },
    byEye(
      'Bushing against its seat',
      'Home all round, no gap under its flange or past its end, and it doesn’t turn.',
    ),
  ];
}
