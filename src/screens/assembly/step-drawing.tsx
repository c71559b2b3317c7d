import { bushing } from '../../engine/press/bushing.ts';
import { lineUp } from '../../engine/worksheets/axle-line-up/line-up.ts';
import { spacerStack } from '../../engine/worksheets/spacer-stack/spacer-stack.ts';
import { threadInsert } from '../../engine/worksheets/thread-insert/thread-insert.ts';
import { AxleDrawing } from '../worksheets/axle-drawing.tsx';
import { axleLineUpQuestion } from '../worksheets/axle-line-up-question.ts';
import { BushingDrawing } from '../worksheets/bushing-drawing.tsx';
import { bushingQuestion } from '../worksheets/bushing-question.ts';
import { InsertDrawing } from '../worksheets/insert-drawing.tsx';
import { spacerStackQuestion } from '../worksheets/spacer-stack-question.ts';
import { StackDrawing } from '../worksheets/stack-drawing.tsx';
import { threadInsertQuestion } from '../worksheets/thread-insert-question.ts';
import { useWorksheetData } from '../worksheets/use-worksheet-data.ts';
import { BushingCaution, InsertCaution } from '../worksheets/worksheet-cautions.tsx';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';

/** The drawing of a step's worksheet, the same that the worksheet shows, with its caution; no drawing while it has no answer. */
export function StepDrawing({ jobId, worksheetId }: { jobId: string; worksheetId: string }) {
  const { data } = useWorksheetData(jobId, worksheetId);
  if (!data) return null;
  const { kind } = data.worksheet;
  return (
    <>
      <WorksheetDrawing data={data} />
      {kind === 'thread-insert' && <InsertCaution />}
      {kind === 'bushing' && <BushingCaution />}
    </>
  );
}

/** The kinds whose worksheet draws how parts go together. */
export const DRAWN_KINDS: ReadonlySet<string> = new Set([
  'spacer-stack',
  'axle-line-up',
  'thread-insert',
  'bushing',
]);

function WorksheetDrawing({ data }: { data: WorksheetData }) {
  switch (data.worksheet.kind) {
    case 'spacer-stack': {
      const question = spacerStackQuestion(data);
      const answer = question && spacerStack(question);
      return question && answer ? (
        <StackDrawing question={question} answer={answer} changing={undefined} unit={data.unit} />
      ) : null;
    }
    case 'axle-line-up': {
      const question = axleLineUpQuestion(data);
      const result = question && lineUp(question);
      return question && result?.ok === true ? (
        <AxleDrawing question={question} answer={result.value} unit={data.unit} />
      ) : null;
    }
    default:
      return <HoleDrawing data={data} />;
  }
}

function HoleDrawing({ data }: { data: WorksheetData }) {
  const insert = data.worksheet.kind === 'thread-insert' ? threadInsertQuestion(data) : undefined;
  const inserted = insert && threadInsert(insert);
  if (insert && inserted?.ok === true)
    return <InsertDrawing answer={inserted.value} thread={insert.thread.designation} unit={data.unit} />;
  const question = data.worksheet.kind === 'bushing' ? bushingQuestion(data) : undefined;
  const result = question && bushing(question);
  return question && result?.ok === true ? <BushingDrawing answer={result.value} unit={data.unit} /> : null;
}
