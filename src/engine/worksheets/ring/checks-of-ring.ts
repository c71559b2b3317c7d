import { byEye, type CheckOffer } from '../../reading/check-offer.ts';
import { isNegative, isZero, negate, type Length } from '../../length/length.ts';

const SOURCE = 'what must stay free above the ring, as you gave it';

/**
 * What can be proved of a ring in its recess.
 *
 * Units:   stayFree as the ring's: above zero so much of the depth stays free, below zero it may stand so much proud. At
 *          nothing there is no figure to read, only whether it stands proud.
 */
export function checksOfRing({ stayFree }: { readonly stayFree?: Length }): readonly CheckOffer[] {
  return [
    ...heightCheck(stayFree),
    byEye('Ring clear all round', 'Turn what turns once round by hand: the ring touches on no side.'),
  ];
}

function heightCheck(stayFree: Length | undefined): readonly CheckOffer[] {
  if (!stayFree) return [];
  if (isZero(stayFree))
    return [
      byEye(
        'Ring not proud of the face',
        'Ring home in its recess. Straight edge across the face: it lies on the face all round and never rides on the ring.',
      ),
    ];
  if (isNegative(stayFree))
    return [
      {
        name: 'Ring proud of the face',
        by: 'depth',
        limits: { upper: negate(stayFree), source: SOURCE },
        how: 'Ring home in its recess. Depth gauge on the face beside it: read how far it stands proud, in three places round.',
      },
    ];
  return [
    {
      name: 'Free above the ring',
      by: 'depth',
      limits: { lower: stayFree, source: SOURCE },
      how: 'Ring home in its recess. Depth gauge across the recess: read how far the ring lies below the face, in three places round.',
    },
  ];
}
