import { isWorksheetKind, worksheetOf, type WorksheetKind } from '../../engine/worksheets/all-worksheets.ts';
import { blocksOf } from '../../engine/worksheets/account.ts';
import { drawings } from '../worksheets/all-drawings.ts';
import { AccountCaution } from '../worksheets/frame/account-caution.tsx';
import { FormDrawing } from '../worksheets/frame/form-drawing.tsx';
import { givenOf } from '../worksheets/given-of.ts';
import { useWorksheetData } from '../worksheets/use-worksheet-data.ts';
import type { WorksheetData } from '../worksheets/worksheet-data.ts';

/** The drawing of a step's worksheet, the same that the worksheet shows, with its caution; no drawing while it has no answer. */
export function StepDrawing({ jobId, worksheetId }: { jobId: string; worksheetId: string }) {
  const { data } = useWorksheetData(jobId, worksheetId);
  if (!data) return null;
  const { kind } = data.worksheet;
  return isWorksheetKind(kind) ? <RegisteredDrawing data={data} kind={kind} /> : null;
}

const BESIDE_A_STEP = { width: 320, height: 130 };

function RegisteredDrawing({ data, kind }: { data: WorksheetData; kind: WorksheetKind }) {
  const given = givenOf(data);
  const worksheet = worksheetOf(kind);
  if (worksheet?.standing(given) !== 'answered') return null;
  return (
    <>
      <FormDrawing drawn={drawings[kind](given, BESIDE_A_STEP)} box={BESIDE_A_STEP} />
      {blocksOf(worksheet.account(given), 'caution').map(({ of }) => (
        <AccountCaution key={of} of={of} />
      ))}
    </>
  );
}

/** Whether a worksheet draws how parts go together. */
export function drawsSteps(kind: string): boolean {
  return worksheetOf(kind)?.givesSteps === true;
}
