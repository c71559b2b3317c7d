import { surest } from '../../engine/fit/fit-check.ts';
import { sayClearance, sayFitClass, sayFitRefusal, sayLimits } from '../../engine/fit/say-fit.ts';
import { sayVerdict } from '../../engine/reading/say-verdict.ts';
import { FitDrawing } from '../worksheets/fit-drawing.tsx';
import { fitAnswer, fitQuestion } from '../worksheets/fit-question.ts';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';
import { UNFINISHED } from './sheet-words.ts';
import { WorksheetBand } from '../worksheets/said-assumed.tsx';

/** What the sheet prints of a fit: the class with its limits, and the verdict on the measured parts. */
export function FitSheet({ data }: { readonly data: WorksheetData }) {
  const { unit } = data;
  const question = fitQuestion(data);
  if (!question) return <p>{UNFINISHED}</p>;
  const result = fitAnswer(question);
  if (!result.ok) return <p>{sayFitRefusal(result.refusal, unit)}</p>;
  const { fit, clearance, pinForBore, boreForPin } = result.value;
  return (
    <>
      {clearance && (
        <WorksheetBand
          kind={clearance.verdict.kind}
          headline={sayVerdict(clearance.verdict, { ...clearance, quantity: 'clearance', unit })}
        />
      )}
      <FitDrawing fit={fit} bore={question.bore} pin={question.pin} unit={unit} />
      <p>
        <strong>{`${fit.fitClass}, ${sayFitClass(fit)}.`}</strong>
        {` Hole ${sayLimits(fit.hole, unit)}, pin ${sayLimits(fit.pin, unit)}, ${sayClearance(fit, unit)} (${fit.source}).`}
      </p>
      {pinForBore?.ok === true && <p>{`Pin for this bore: ${sayLimits(surest(pinForBore.value), unit)}.`}</p>}
      {boreForPin?.ok === true && <p>{`Bore for this pin: ${sayLimits(surest(boreForPin.value), unit)}.`}</p>}
    </>
  );
}
