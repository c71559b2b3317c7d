import { show, type ShownUnit } from '../../length/show.ts';
import type { StepOffer } from '../worksheet.ts';
import type { LeggedAnswer, LeggedQuestion } from './insert-in-legs.ts';

/** How an insert goes in: clean, in below the face, tang out, flush; the middle ones leg by leg where there are several. */
export function stepsOfInsert(
  { thread }: Pick<LeggedQuestion, 'thread'>,
  { legs, setDown }: Pick<LeggedAnswer, 'legs' | 'setDown'>,
  unit: ShownUnit,
): readonly StepOffer[] {
  const name = thread.designation.replace('x', ' × ');
  const orientation = `its first turn ${show(setDown.least, unit)} to ${show(setDown.most, unit)} below the face`;
  const isOne = legs.length === 1;
  return [
    { text: 'Clean the tapped hole, no chip and no oil in it', drawn: true },
    ...legs.map(({ chosen }, index) => ({
      text: isOne
        ? `Wind the ${name} insert in`
        : `Leg ${index + 1}: wind the ${chosen.times} ${name} insert in`,
      orientation,
    })),
    { text: 'Break the tang off and take it out of the hole' },
    ...legs.flatMap(({ chosen: { trimOff } }, index) =>
      trimOff
        ? [
            {
              text: `${isOne ? 'Trim' : `Leg ${index + 1}: trim`} the insert or grind it flush: ${show(trimOff, unit)} stands out`,
            },
          ]
        : [],
    ),
  ];
}
