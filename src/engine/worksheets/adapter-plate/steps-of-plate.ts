import type { ShownUnit } from '../../length/show.ts';
import type { StepOffer } from '../worksheet.ts';
import type { PlateAnswer } from './plate.ts';

/** How it goes on: clean, first part, second part, each by the manual's torque. */
export function stepsOfPlate({ holes }: Pick<PlateAnswer, 'holes'>, unit: ShownUnit): readonly StepOffer[] {
  const torqueIn = unit === 'in' ? 'lbf-ft' : 'Nm';
  const count = (name: 'A' | 'B') => holes.filter(({ pattern }) => pattern === name).length;
  const bolted = (name: 'A' | 'B', part: string): readonly StepOffer[] =>
    count(name) === 0
      ? []
      : [
          {
            text: `Bolt the plate to ${part} by its ${count(name)} holes ${name}, crosswise, in three goes`,
            orientation: `hole ${name}1 as marked`,
            torqueIn,
            drawn: true,
          },
        ];
  return [
    { text: 'Deburr every hole; both faces of the plate clean, dry and without paint' },
    ...bolted('A', 'the first part'),
    ...bolted('B', 'the second part'),
    { text: 'Turn it by hand all the way round: nothing touches, no bolt’s end stands out' },
  ];
}
