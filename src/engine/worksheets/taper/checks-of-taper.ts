import { minus, plus } from '../../length/length.ts';
import { show, type ShownUnit } from '../../length/show.ts';
import { byEye, type CheckOffer } from '../../reading/check-offer.ts';
import { around, gaugePlace, type TaperAnswer, type TaperQuestion } from './taper.ts';
import { grownOver, sizeAt } from './cone.ts';

/**
 * What can be proved of a taper: its size at a gauge line, how its diameter grows, and its contact.
 *
 * Units:   size at the place asked for, else half-way down it; growth between two marks so far apart as the taper is long.
 */
export function checksOfTaper(
  q: Pick<TaperQuestion, 'side' | 'within' | 'withinFrom' | 'mateWithin' | 'mateWithinFrom'>,
  { cone, at, mate }: TaperAnswer,
  unit: ShownUnit,
): readonly CheckOffer[] {
  const place = at?.from ?? gaugePlace(cone);
  const isBore = q.side === 'bore';
  const growth = grownOver(mate?.taper.slope ?? cone.slope, cone.length);
  return [
    {
      name: 'Size at the gauge line',
      by: isBore ? 'bore' : 'pin',
      limits: { ...around(sizeAt(cone, place), q.within), source: q.withinFrom },
      how: `Scribe a line ${show(place, unit)} from the big end. Read the diameter on it.`,
    },
    ...(isBore
      ? []
      : [
          {
            name: 'Big end less small end',
            by: 'length',
            limits: {
              lower: minus(growth, q.mateWithin),
              upper: plus(growth, q.mateWithin),
              source: q.mateWithinFrom,
            },
            how: `Read the diameter at two lines ${show(cone.length, unit)} apart, the same micrometer. Log the difference.`,
          } as const,
        ]),
    byEye(
      'Blue contact',
      'Three thin lines of blue along it, seated and turned a quarter. The blue is wiped over its whole length.',
    ),
    byEye('No rock', 'Seated by hand it does not rock at either end.'),
  ];
}
