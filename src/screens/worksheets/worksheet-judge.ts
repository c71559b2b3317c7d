import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import { sayContradiction } from '../../engine/reading/say-readings.ts';
import type { WorksheetFound } from '../../engine/job/sign-off-question.ts';
import { givenOf } from './given-of.ts';
import { doubtsOf, type WorksheetData } from './worksheet-data.ts';

/** What a worksheet comes to as it stands, and its sentence in the fitter's unit. */
export type WorksheetVerdict = { readonly found: WorksheetFound; readonly said: string };

const NO_ANSWER: WorksheetVerdict = { found: 'no-answer', said: 'A size it needs is missing.' };

/**
 * The verdict of a worksheet of any kind, the worst of all it judges. An answer that is refused, as no such part can be, is
 * no good. A kind of a newer Slipfit has no answer here. What it hangs on is not said yet: `worksheetVerdict` does.
 */
export function judgeWorksheet(data: WorksheetData): WorksheetVerdict {
  const verdict = worksheetOf(data.worksheet.kind)?.verdict(givenOf(data)) ?? NO_ANSWER;
  const doubt = verdict.found === 'no-answer' ? undefined : sayDoubt(data);
  if (doubt !== undefined && verdict.found !== 'no-good') return { found: 'too-close', said: doubt };
  return verdict;
}

/** The first of its sizes whose readings contradict each other: nothing that stands on it is good. */
function sayDoubt(data: WorksheetData): string | undefined {
  const [first] = doubtsOf(data);
  const [contradiction] = first?.contradictions ?? [];
  return first && contradiction && `${first.feature.name}: ${sayContradiction(contradiction, data.unit)}`;
}
