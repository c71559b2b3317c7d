import type { ShownUnit } from '../../length/show.ts';
import { stepsOfBushing } from '../bushing/steps-of-bushing.ts';
import type { StepOffer } from '../worksheet.ts';
import type { MisplacedHoleAnswer, MisplacedHoleQuestion } from './misplaced-hole.ts';
import { LOCKED, sayToward } from './say-misplaced-hole.ts';

const ON_THE_LINE = 'the mark of its thin side on the scribed line';

/** How it goes in: the line scribed, the mark on it, locked, and bored to size. */
export function stepsOfMisplacedHole(
  { lock }: Pick<MisplacedHoleQuestion, 'lock'>,
  { off, place, press }: MisplacedHoleAnswer,
  unit: ShownUnit,
): readonly StepOffer[] {
  const pressed = stepsOfBushing(press, unit);
  const last = { text: 'Bring the bushing to size by its cut, and try the pin through both parts' };
  if (!off) return [...pressed, last];
  return [
    {
      text: 'Scribe a line across the part through the hole, the way the hole has to go',
      orientation: `toward ${sayToward(place.towardDegrees)}`,
    },
    ...pressed.map((step, index) =>
      index === 1
        ? { ...step, orientation: [step.orientation, ON_THE_LINE].filter(Boolean).join('; ') }
        : step,
    ),
    { text: LOCKED[lock] },
    last,
  ];
}
