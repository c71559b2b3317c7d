import type { Store } from '../../store/open-store.ts';
import type { Id } from '../../store/records.ts';
import { knownChecks } from '../fit-up/check-data.ts';
import { readSheet } from '../sheet/sheet-data.ts';
import { worksheetDataOf } from '../sheet/worksheet-data-of.ts';
import { provedVerdict } from './proved-verdict.ts';
import type { WorksheetVerdict } from './worksheet-verdict.ts';

/** What each worksheet of a job comes to now, checks of it counted: the same that its sign-off asks. */
export async function worksheetMarks(store: Store, jobId: Id): Promise<ReadonlyMap<Id, WorksheetVerdict>> {
  const data = await readSheet(store, jobId);
  if (!data) return new Map();
  const proofs = { checks: knownChecks(data), cuts: data.cuts };
  return new Map(
    data.worksheets.map((worksheet) => [
      worksheet.id,
      provedVerdict(worksheetDataOf(worksheet, data), proofs),
    ]),
  );
}
