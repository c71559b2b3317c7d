import { byEye, ifJudged, readable, type CheckOffer } from '../../reading/check-offer.ts';
import { isMore, scaledBy, times, zero, type Length } from '../../length/length.ts';
import { show, type ShownUnit } from '../../length/show.ts';
import type { Limits } from '../../reading/verdict.ts';
import { rockRatio, type HoleAndPinQuestion } from './hole-and-pin.ts';

/** How slop is read at a bore, of any pair. */
export const INDICATOR_AT_BORE =
  'Indicator on the pin close to the bore, square to it, its foot on the part with the bore. Push and pull the pin: read the whole swing, then once more a quarter turn round.';

/**
 * What can be proved of a pin in its bore once it is together: the rock at the arm's end, or the slop itself.
 *
 * Units:   in all = 2 · clearance · reach / (bore length less bell-mouth); each limit of the clearance so.
 * Range:   nothing can be read of a joint that always grips, nor against a least of nothing and no most.
 * Source:  geometry of a pin that touches at both ends; limits as the clearance's.
 */
export function checksOfHoleAndPin(
  { joint, arm }: Pick<HoleAndPinQuestion, 'joint' | 'arm'>,
  limits: Limits,
  unit: ShownUnit,
): readonly CheckOffer[] {
  if (limits.upper && !isMore(limits.upper, zero))
    return [byEye('Holds by its grip', 'Pressed home against its shoulder, and it can’t be moved by hand.')];
  const ratio = arm && rockRatio(arm);
  const turns = joint === 'turns' || joint === 'turns-under-load';
  return [
    ...ifJudged(arm && ratio ? rockCheck(arm, ratio, limits, unit) : slopCheck(limits)),
    ...(turns
      ? [
          byEye(
            'Turns free',
            'Nut torqued. Swing it through its whole travel by hand: no tight spot, no catch.',
          ),
        ]
      : []),
    ...(joint === 'slides'
      ? [byEye('Slides by hand', 'Push it in and draw it out by hand, dry: no tight spot, no drop.')]
      : []),
  ];
}

type Arm = NonNullable<HoleAndPinQuestion['arm']>;

function rockCheck(
  arm: Arm,
  factor: NonNullable<ReturnType<typeof rockRatio>>,
  limits: Limits,
  unit: ShownUnit,
): CheckOffer {
  const inAll = (clearance: Length) => scaledBy(times(clearance, 2), factor);
  const wanted = readable({
    source: limits.source,
    ...(limits.lower && { lower: inAll(limits.lower) }),
    ...(limits.upper && { upper: inAll(limits.upper) }),
  });
  const each = limits.upper && show(scaledBy(limits.upper, factor), unit);
  return {
    name: 'Rock at the end of the arm',
    by: 'gap',
    limits: wanted,
    how: `Nut torqued. Indicator square to the arm, ${show(arm.reach, unit)} from the middle of the bore. Rock it by hand without sliding it along the pin: read the whole swing, both ways together${each === undefined ? '' : ` (±${each} each way)`}.`,
    sizeName: 'rockInAll',
  };
}

function slopCheck(limits: Limits): CheckOffer {
  return { name: 'Slop', by: 'gap', limits: readable(limits), how: INDICATOR_AT_BORE, sizeName: 'slop' };
}
