import { wayOf, type CutWay } from '../../cut/cuts-of-way.ts';
import type { RingSeatAnswer, RingSeatQuestion } from './ring-seat.ts';

export const SHAFT_TURNED = 'Bearing seat, turned';
export const HOUSING_BORED = 'Bearing seat, bored';

/**
 * What is cut for a bearing's ring: its shaft turned, or its housing bored. The ring itself is never cut.
 *
 * Range:   none where the seat is good, or where no metal is left to cut.
 */
export function cutsOfRingSeat(
  { ring }: RingSeatQuestion,
  { fit, seat, cut }: RingSeatAnswer,
): readonly CutWay[] {
  if (!cut) return [];
  const isShaft = ring === 'inner';
  return wayOf({
    id: 'ring-seat',
    name: isShaft ? 'Turn the shaft to its seat' : 'Bore the housing to its seat',
    offers: [
      {
        name: isShaft ? SHAFT_TURNED : HOUSING_BORED,
        part: isShaft ? 'shaft' : 'housing',
        operation: isShaft ? 'turn' : 'bore',
        of: isShaft ? 'outside' : 'bore',
        ...(cut.present && { present: cut.present }),
        target: cut.target,
        ...fit.seat,
        limitsFrom: fit.source,
      },
    ],
    ...(seat?.verdict.kind === 'too-close' && { unsure: true }),
  });
}
