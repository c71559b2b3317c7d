import { minus, plus, times, type Length } from '../../length/length.ts';
import { byEye, type CheckOffer } from '../../reading/check-offer.ts';
import { mean } from '../../reading/estimate.ts';
import { checksOfBushing } from '../bushing/checks-of-bushing.ts';
import { SHARE, type MisplacedHoleAnswer, type MisplacedHoleQuestion } from './misplaced-hole.ts';

/**
 * What can be proved: the bushing's offset before it goes in, its bore, where the hole stands now, and the lock.
 *
 * Units:   runout is twice the offset. From two edges each may be off by seven tenths of what the place may: both at once stay
 *          inside it.
 */
export function checksOfMisplacedHole(
  { where }: Pick<MisplacedHoleQuestion, 'where'>,
  { off, close, place, press, judgedPlace }: MisplacedHoleAnswer,
): readonly CheckOffer[] {
  const about = (size: Length, within: Length, by: 'length' | 'runout') => ({
    by,
    limits: { lower: minus(size, within), upper: plus(size, within), source: judgedPlace.limits.source },
  });
  const fromEdge = (name: string, size: Length): CheckOffer => ({
    name,
    ...about(size, times(close.within, SHARE), 'length'),
    how: 'A close plug in the hole. From the edge over the plug, less half of the plug.',
  });
  return [
    ...(off
      ? [
          {
            name: 'Bushing’s bore off its middle',
            ...about(times(off.by, 2), times(off.within, 2), 'runout'),
            how: 'On a true mandrel, indicator on its outside. Least to most over one turn: twice the offset.',
          },
        ]
      : []),
    ...checksOfBushing(press),
    ...(place.twoHoles
      ? [
          {
            name: 'Distance of both holes',
            ...about(place.twoHoles.after.apart, close.within, 'length'),
            how: 'A close plug in each hole. Over both, less half of each plug.',
          },
        ]
      : []),
    ...(where.by === 'edges'
      ? [
          fromEdge('Hole from the left edge', mean(where.wanted.across)),
          fromEdge('Hole from the lower edge', mean(where.wanted.up)),
        ]
      : []),
    byEye('Pin through both parts', 'By hand all the way, both parts in their place, nothing pulled over.'),
    ...(off ? [byEye('Bushing marked and locked', 'Its mark on the scribed line, and it can’t turn.')] : []),
  ];
}
