import { inShopWords } from '../../length/american-words.ts';
import type { ShownUnit } from '../../length/show.ts';
import { withUnit } from '../../length/show.ts';
import type { StepOffer } from '../worksheet.ts';
import type { AlignmentAnswer, AlignmentQuestion } from './alignment.ts';
import { moveFigure, sayFitting, sayTurns } from './say-alignment.ts';

/** In which order it is set, and what is tightened after it. */
export function stepsOfAlignment(
  q: AlignmentQuestion,
  answer: AlignmentAnswer,
  unit: ShownUnit,
): readonly StepOffer[] {
  const first: StepOffer = {
    text: inShopWords('Stand it on a level floor, tyres at pressure, loaded as it runs; chock it', unit),
    drawn: true,
  };
  const last: readonly StepOffer[] = [
    { text: 'Tighten every fitting that was slackened', torqueIn: unit === 'in' ? 'lbf-ft' : 'Nm' },
    { text: 'Measure it again, tight, and try it slowly' },
  ];
  if (q.of === 'outfit' && answer.of === 'outfit')
    return [
      first,
      { text: 'Set track and lead, then lean-out', orientation: 'toe-in comes last' },
      ...(answer.toe.judged.verdict.kind === 'good'
        ? []
        : [
            {
              text: `${sayFitting(answer.move, q)} ${withUnit(moveFigure(answer.move, unit), unit)}`,
              orientation: sayTurns(answer.move, q),
            },
          ]),
      ...last,
    ];
  if (answer.of !== 'trailer') return [first, ...last];
  const { slide, judged } = answer.axle;
  return [
    first,
    ...(judged.verdict.kind === 'good'
      ? []
      : [
          {
            text: `Slide the ${slide.side} seat forward ${withUnit(moveFigure(slide, unit), unit)}`,
            orientation: 'other seat held; U-bolts slack, not off',
          },
        ]),
    ...last,
  ];
}
