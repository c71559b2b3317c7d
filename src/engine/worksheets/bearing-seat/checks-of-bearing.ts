import type { SettingWant } from './bearing-seat.ts';
import type { RingSeatQuestion } from './ring-seat.ts';
import { ringFit } from '../../fit/ring-fit.ts';
import { byEye, readable, type CheckOffer } from '../../reading/check-offer.ts';
import { isMore, isNegative, negate, zero } from '../../length/length.ts';
import type { Limits } from '../../reading/verdict.ts';

/** The sleeve between ball bearings: read against the shoulder, and the wheel felt with the axle torqued. */
export function checksOfSleeve({ limits }: SettingWant): readonly CheckOffer[] {
  return [
    {
      name: 'Sleeve longer than the distance',
      by: 'depth',
      limits,
      how: 'One bearing home in the hub, the sleeve against its inner race, the other bearing out. Depth gauge on the other shoulder: read how far the sleeve stands proud of it.',
      sizeName: 'direct',
    },
    byEye(
      'Turns free with the axle torqued',
      'Spin it before and after the nut is torqued. If it turns stiffer after, the sleeve is short and the balls are loaded sideways.',
    ),
  ];
}

/** End play of taper rollers by the maker's figure; preload can't be read as play, only felt. */
export function checksOfTaper({ limits }: SettingWant): readonly CheckOffer[] {
  const isPreload = !isMore(limits.upper, zero);
  return [
    ...(isPreload
      ? []
      : [
          {
            name: 'End play of the bearings',
            by: 'gap',
            limits: readable(limits),
            how: 'Nut and cotter pin as they will run. Indicator in line with the spindle on the hub’s face. Push and pull while turning it back and forth: read the whole swing.',
            sizeName: 'endPlay',
          } as const,
        ]),
    byEye(
      isPreload ? 'Preload by the maker’s way' : 'Turns free',
      isPreload
        ? 'Turned with a string or a torque wrench as the maker says; no play felt, no stiff spot.'
        : 'Spin it: it runs smooth and quiet, and no cup moves in the hub.',
    ),
  ];
}

/** A seat measured as it was cut: nothing shows it once the ring is on. */
export function checksOfRingSeat(question: RingSeatQuestion): readonly CheckOffer[] {
  const fit = ringFit(question);
  if (!fit.ok) return [];
  const { seat, source } = fit.value;
  const isShaft = question.ring === 'inner';
  return [
    {
      name: isShaft ? 'Shaft where the ring goes' : 'Housing where the ring goes',
      by: isShaft ? 'pin' : 'bore',
      limits: { ...seat, source },
      how: isShaft
        ? 'Micrometer at both ends of the seat, turned a quarter: before the ring goes on.'
        : 'Bore gauge at both ends of the seat, turned a quarter: before the ring goes in.',
      sizeName: isShaft ? 'shaft' : 'housing',
    },
    byEye(
      'Ring home and square',
      'Pressed by the ring that is tight, never through the balls; home all round; it turns free.',
    ),
  ];
}

/** How a bearing stands in its recess: only the side of the face that its limits allow can be read. */
export function checksOfSeat({ limits: { lower, upper, source } }: SettingWant): readonly CheckOffer[] {
  const proud: Limits = readable({ lower, upper, source });
  const below: Limits = readable({ lower: negate(upper), upper: negate(lower), source });
  return [
    ...(isMore(upper, zero)
      ? [
          {
            name: isNegative(lower) ? 'Proud of the face at most' : 'Stands proud of the face',
            by: 'depth',
            limits: proud,
            how: 'Bearing home in its recess with all that goes behind it. Depth gauge on the face beside it: read how far it stands proud, in three places round.',
            sizeName: 'directProud',
          } as const,
        ]
      : []),
    ...(isNegative(lower)
      ? [
          {
            name: isMore(upper, zero) ? 'Below the face at most' : 'Lies below the face',
            by: 'depth',
            limits: below,
            how: 'Bearing home in its recess with all that goes behind it. Depth gauge across the recess: read how far it lies below the face, in three places round.',
            sizeName: 'directBelow',
          } as const,
        ]
      : []),
  ];
}
