import { lengthOf } from '../../length/length.ts';
import type { ShownUnit } from '../../length/show.ts';
import { byEye, type CheckOffer } from '../../reading/check-offer.ts';
import type { AlignmentAnswer, AlignmentQuestion, OutfitQuestion, TrailerQuestion } from './alignment.ts';
import { outOfPlumb } from './lean.ts';

// So high over the floor a plumb line is hung.
const PLUMB = {
  in: { high: lengthOf('36 in'), words: '36 in' },
  mm: { high: lengthOf('1000 mm'), words: '1 m' },
};

/**
 * What can be proved once everything is tight again: toe-in, lead and lean-out, or the diagonals; by differences that are logged.
 *
 * Units:   a difference is logged as it is, above zero only; lean-out by a plumb line, as far out as its angle makes over its
 *          height.
 */
export function checksOfAlignment(
  q: AlignmentQuestion,
  _answer: AlignmentAnswer,
  unit: ShownUnit,
): readonly CheckOffer[] {
  return [...(q.of === 'outfit' ? ofOutfit(q, unit) : ofTrailer(q)), ...BY_EYE];
}

const BY_EYE: readonly CheckOffer[] = [
  byEye('Fittings tight', 'Every fitting to the manual’s torque, marked with paint.'),
  byEye('Runs straight', 'Slowly on a level, empty road: it pulls to no side. Brakes too.'),
];

function ofOutfit({ toe, lead, lean }: OutfitQuestion, unit: ShownUnit): readonly CheckOffer[] {
  const plumb = PLUMB[unit];
  return [
    {
      name: 'Toe-in',
      by: 'length',
      limits: toe.want,
      how: 'Straight edges on rear wheel and sidecar wheel. Log behind less in front, same places.',
    },
    ...(lead
      ? [
          {
            name: 'Wheel lead',
            by: 'length',
            limits: lead.want,
            how: 'Plumb lines from both axles to the floor. Read along the machine.',
          } as const,
        ]
      : []),
    ...(lean && lean.want.lower >= 0
      ? [
          {
            name: 'Lean-out',
            by: 'length',
            limits: {
              lower: outOfPlumb(lean.want.lower, plumb.high),
              upper: outOfPlumb(lean.want.upper, plumb.high),
              source: lean.want.source,
            },
            how: `Plumb line at the wheel’s middle plane from ${plumb.words} up. Log how far it hangs off at the floor.`,
          } as const,
        ]
      : []),
  ];
}

function ofTrailer({ axle, toe }: TrailerQuestion): readonly CheckOffer[] {
  return [
    {
      name: 'Diagonals differ by',
      by: 'length',
      limits: { upper: axle.within, source: axle.withinFrom },
      how: 'Coupling to both ends of the axle, same tape, same pull. Log the difference.',
    },
    ...(toe
      ? [
          {
            name: 'Toe-in of its wheels',
            by: 'length',
            limits: toe.want,
            how: 'Straight edges on both hubs. Log behind less in front, same places.',
          } as const,
        ]
      : []),
  ];
}
