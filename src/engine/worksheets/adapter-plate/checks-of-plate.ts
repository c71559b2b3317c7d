import { dividedBy, isMore, minus, plus, times, zero, type Length } from '../../length/length.ts';
import { byEye, type CheckOffer } from '../../reading/check-offer.ts';
import { mean } from '../../reading/estimate.ts';
import { toEdge, type PlateHole } from './laid-plate.ts';
import type { PlateAnswer } from './plate.ts';
import type { PlateQuestion } from './plate-question.ts';
import { apart } from './spots.ts';

const OVER_PINS = 'A close plug in each hole. Over both, less half of each plug.';
const SOURCE = 'each hole within what it may stand off its place';

/**
 * What proves a plate: hole to hole over pins, the fourth hole from the second, a hole from the edge, and both parts on it.
 *
 * Units:   middle to middle, ± twice what a hole may stand off: both may be off at once. From an edge ± once.
 */
export function checksOfPlate(
  { outline, within, a, b }: PlateQuestion,
  { holes }: Pick<PlateAnswer, 'holes'>,
): readonly CheckOffer[] {
  const about = (size: Length, by: Length) => ({
    by: 'length' as const,
    limits: { lower: positive(minus(size, by)), upper: plus(size, by), source: SOURCE },
  });
  const between = (one: PlateHole | undefined, other: PlateHole | undefined, said: string) =>
    one && other
      ? [
          {
            name: `${one.name} to ${other.name}${said}`,
            ...about(apart(one.spot, other.spot), times(within, 2)),
            how: OVER_PINS,
          },
        ]
      : [];
  const ofPattern = (name: 'A' | 'B') => {
    const [first, second, third, fourth] = holes.filter(({ pattern }) => pattern === name);
    return [
      ...between(first, second, ''),
      ...between(first, third, ''),
      ...between(second, fourth, ', the fourth hole'),
    ];
  };
  const [first] = holes;
  return [
    ...ofPattern('A'),
    ...ofPattern('B'),
    ...(first && outline.is !== 'none'
      ? [
          {
            name: `${first.name} from the nearest edge`,
            ...about(minus(toEdge(outline, first.spot, mean), dividedBy(first.hole, 2)), within),
            how: 'From the hole’s wall to the edge, where it is thinnest.',
          },
        ]
      : []),
    ...((a.head ?? b?.head)
      ? [byEye('Heads below the face', 'A straightedge over every counterbore rocks on no head.')]
      : []),
    byEye('Both parts on the plate', 'Every bolt starts by hand, faces flat together, nothing pulled over.'),
  ];
}

function positive(size: Length): Length {
  return isMore(size, zero) ? size : zero;
}
