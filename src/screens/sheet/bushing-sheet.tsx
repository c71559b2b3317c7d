import { bushing } from '../../engine/press/bushing.ts';
import {
  sayBushingRefusal,
  sayBushingWarning,
  sayForce,
  sayHold,
  sayInterference,
} from '../../engine/press/say-bushing.ts';
import { sayLimits } from '../../engine/fit/say-fit.ts';
import { sayNominal } from '../../engine/fit/nominal.ts';
import { sayVerdict } from '../../engine/reading/say-verdict.ts';
import { uncapital } from '../../engine/length/say-words.ts';
import { show } from '../../engine/length/show.ts';
import { BushingDrawing } from '../worksheets/bushing-drawing.tsx';
import { bushingQuestion } from '../worksheets/bushing-question.ts';
import { BushingCaution } from '../worksheets/worksheet-cautions.tsx';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';
import { UNFINISHED } from './sheet-words.ts';
import { useWithAssumed, WorksheetBand } from '../worksheets/said-assumed.tsx';

/** What the sheet prints of a bushing: its sizes, its metals, how it goes in, and what speaks against it. */
export function BushingSheet({ data }: { readonly data: WorksheetData }) {
  const { unit } = data;
  const withAssumed = useWithAssumed();
  const question = bushingQuestion(data);
  if (!question) return <p>{UNFINISHED}</p>;
  const result = bushing(question);
  if (!result.ok) return <p>{sayBushingRefusal(result.refusal, unit)}</p>;
  const answer = result.value;
  const { measured, stress, interference } = answer;
  return (
    <>
      {measured && (
        <WorksheetBand
          kind={measured.verdict.kind}
          headline={sayVerdict(measured.verdict, { ...measured, quantity: 'interference', unit })}
        />
      )}
      <p>
        <strong>{withAssumed(`${question.bushing.name} in ${uncapital(question.part.name)}.`)}</strong>
        {` Ream to ${show(answer.ream.size, unit)}, turn the outside to ${sayLimits(answer.turn, unit)} (${answer.pressFit.source}), bore after pressing to ${sayLimits(answer.inside, unit)} (${answer.insideFit.source}).`}
        {` ${sayNominal(answer.nominal, unit)}`}
      </p>
      <BushingDrawing answer={answer} unit={unit} />
      <p>
        {`Interference ${sayInterference(interference.least, interference.greatest, unit)}.`}
        {stress?.force &&
          ` Press with up to ${sayForce(stress.force.pressN, unit)}; ${sayHold(stress.force.holdN, unit)}.`}
      </p>
      {answer.warnings.length > 0 && (
        <ul>
          {answer.warnings.map((warning) => (
            <li key={sayBushingWarning(warning, unit)}>{sayBushingWarning(warning, unit)}</li>
          ))}
        </ul>
      )}
      <BushingCaution />
    </>
  );
}
