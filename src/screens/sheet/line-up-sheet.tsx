import { inWorkOrder, lineUp, type LineUpQuestion } from '../../engine/worksheets/axle-line-up/line-up.ts';
import {
  lineUpVerdict,
  sayCheck,
  sayDeed,
  sayLineUp,
  sayLineUpRefusal,
  sayNotJudged,
} from '../../engine/worksheets/axle-line-up/say-line-up.ts';
import { spacerLetter, spacerName } from '../../engine/worksheets/axle-line-up/say-line-up-names.ts';
import { isShared, sayWorst } from '../../engine/worksheets/axle-line-up/say-line-up-shared.ts';
import { figure, showBand } from '../../engine/length/show.ts';
import { AxleDrawing } from '../worksheets/axle-drawing.tsx';
import { axleFields } from '../worksheets/axle-line-up-fields.ts';
import { axleLineUpQuestion } from '../worksheets/axle-line-up-question.ts';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';
import { UNFINISHED } from './sheet-words.ts';
import { WorksheetBand } from '../worksheets/said-assumed.tsx';

/** What the sheet prints of an axle's line-up. */
export function LineUpSheet({ data }: { readonly data: WorksheetData }) {
  const question = axleLineUpQuestion(data);
  if (!question) return <p>{UNFINISHED}</p>;
  const { unit } = data;
  const result = lineUp(question);
  if (!result.ok) return <p>{sayLineUpRefusal(result.refusal)}</p>;
  const answer = result.value;
  const headline = sayLineUp(answer, { ...question, unit });
  const notJudged = sayNotJudged(answer).filter((said) => said !== headline);
  const anchor = chosenWords(data, question, 'anchor');
  return (
    <>
      <WorksheetBand kind={lineUpVerdict(answer)} headline={headline} />
      <AxleDrawing question={question} answer={answer} unit={unit} />
      <ol class="sheet-parts">
        {inWorkOrder(answer).map((spacer) => {
          const { act, more } = sayDeed(spacer, unit);
          const name = `${spacerLetter(spacer.name, question.layout)} ${spacerName(spacer.name, question)}`;
          return (
            <li key={spacer.name}>
              {spacer.deed.kind === 'last'
                ? `${name.trim()}: ${act}. ${more}`
                : `${name.trim()}: ${figure(spacer.fitted, unit)} ${unit}, ${showBand(spacer.band.halfWidth, unit)}; ${act}. ${more}`}
            </li>
          );
        })}
      </ol>
      {answer.checks.map((check) => (
        <p key={`${check.kind} ${check.terms[0]?.of ?? ''} ${check.name}`}>{sayCheck(check, unit)}</p>
      ))}
      {notJudged.map((said) => (
        <p key={said}>{said}</p>
      ))}
      {answer.shared.filter(isShared).map((check) => (
        <p key={`${check.kind} ${check.name}`}>
          {check.verdict.kind === 'good'
            ? `At the worst of what is allowed: ${sayWorst(check, unit)}`
            : sayCheck(check, unit)}
        </p>
      ))}
      {question.layout.discs.length > 0 && <p>{`What holds the bracket: ${anchor ?? 'not named'}.`}</p>}
    </>
  );
}

/** What was chosen in a field, in the words it was chosen by. */
function chosenWords(
  { worksheet }: WorksheetData,
  { layout, side }: LineUpQuestion,
  name: string,
): string | undefined {
  const field = axleFields(layout.name, side).find((one) => one.name === name);
  const options = field?.enter === 'choice' ? field.options : [];
  return options.find(({ value }) => value === worksheet.choices[name])?.words.toLowerCase();
}
