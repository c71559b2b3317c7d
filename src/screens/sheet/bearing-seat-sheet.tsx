import {
  bearingInSeat,
  innerSleeve,
  taperSetting,
} from '../../engine/worksheets/bearing-seat/bearing-seat.ts';
import { mean } from '../../engine/reading/estimate.ts';
import {
  MOCK_UP_SENTENCE,
  sayGoodBetween,
  sayShimBetween,
  sayPlay,
  saySeat,
  saySeatCut,
  saySleeveRefusal,
  sayTaper,
} from '../../engine/worksheets/bearing-seat/say-bearing-seat.ts';
import { sayVerdict } from '../../engine/reading/say-verdict.ts';
import { show, type ShownUnit } from '../../engine/length/show.ts';
import type { Limits, Verdict } from '../../engine/reading/verdict.ts';
import type { Length } from '../../engine/length/length.ts';
import { SeatDrawing, SleeveDrawing, TaperDrawing } from '../worksheets/bearing-drawing.tsx';
import { bearingQuestion, type BearingQuestion } from '../worksheets/bearing-seat-question.ts';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';
import { UNFINISHED } from './sheet-words.ts';
import { WorksheetBand } from '../worksheets/said-assumed.tsx';

type SheetProps = { readonly data: WorksheetData };

/** What the sheet prints of a bearing's seat; a mock-up is named first. */
export function BearingSeatSheet({ data }: SheetProps) {
  const question = bearingQuestion(data);
  return (
    <>
      {data.worksheet.choices['mockUp'] === 'yes' && (
        <p>
          <strong>Mock-up bearing.</strong> {MOCK_UP_SENTENCE}
        </p>
      )}
      {question ? <BearingAnswer question={question} unit={data.unit} /> : <p>{UNFINISHED}</p>}
    </>
  );
}

function BearingAnswer({ question, unit }: { question: BearingQuestion; unit: ShownUnit }) {
  switch (question.kind) {
    case 'ball':
      return <SleeveAnswer question={question} unit={unit} />;
    case 'taper': {
      const answer = taperSetting(question.ask);
      const { limits } = question.ask.want;
      return (
        <>
          <Judged
            verdict={answer.verdict}
            value={answer.value}
            limits={limits}
            unit={unit}
            quantity="end play"
          />
          <TaperDrawing said={`${sayPlay(answer.value, unit)} now`} setBy={question.ask.setBy} />
          <p>{`${sayTaper(answer, unit)} Limits: ${limits.source}.`}</p>
        </>
      );
    }
    case 'seat': {
      const answer = bearingInSeat(question.ask);
      const limits = question.ask.want?.limits;
      return (
        <>
          {answer.verdict && limits && (
            <Judged
              verdict={answer.verdict}
              value={answer.proud}
              limits={limits}
              unit={unit}
              quantity="projection"
            />
          )}
          <SeatDrawing proud={answer.proud} unit={unit} />
          <p>{saySeat(answer, unit)}</p>
          {answer.shim && <p>{`Shim behind it: ${sayShimBetween(answer.shim, unit)}.`}</p>}
          {answer.deepen && <p>{`Recess: ${saySeatCut(answer.deepen, 'deeper', unit)}`}</p>}
        </>
      );
    }
    default:
      return question satisfies never;
  }
}

function SleeveAnswer({
  question,
  unit,
}: {
  question: Extract<BearingQuestion, { kind: 'ball' }>;
  unit: ShownUnit;
}) {
  const { ask } = question;
  const result = innerSleeve(ask);
  if (!result.ok) return <p>{saySleeveRefusal(result.refusal, unit)}</p>;
  const { make, present } = result.value;
  const { limits } = ask.want;
  return (
    <>
      {present && (
        <Judged
          verdict={present.verdict}
          value={present.value}
          limits={limits}
          unit={unit}
          quantity="excess length"
        />
      )}
      <SleeveDrawing
        between={mean(ask.between)}
        sleeve={ask.sleeve ? mean(ask.sleeve) : make.target}
        {...(present && { excess: present.value })}
        unit={unit}
      />
      {present?.trim && <p>{`Face the sleeve: ${saySeatCut(present.trim, 'off', unit)}`}</p>}
      {present?.shim && <p>{`Shim beside the sleeve: ${sayShimBetween(present.shim, unit)}.`}</p>}
      <p>{`A new sleeve: ${show(make.target, unit)}, ${sayGoodBetween(make, unit)} (${limits.source}).`}</p>
    </>
  );
}

type JudgedProps = {
  readonly verdict: Verdict;
  readonly value: Length;
  readonly limits: Limits;
  readonly unit: ShownUnit;
  readonly quantity: string;
};

function Judged({ verdict, ...said }: JudgedProps) {
  return <WorksheetBand kind={verdict.kind} headline={sayVerdict(verdict, said)} />;
}
