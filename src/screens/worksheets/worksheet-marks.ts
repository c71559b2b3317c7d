import { blocksOf } from '../../engine/worksheets/account.ts';
import { worksheetOf } from '../../engine/worksheets/all-worksheets.ts';
import type { Store } from '../../store/opening/open-store.ts';
import type { Id } from '../../store/base/records.ts';
import { knownChecks } from '../fit-up/check-data.ts';
import { readSheet } from '../sheet/sheet-data.ts';
import { worksheetDataOf } from '../sheet/worksheet-data-of.ts';
import { givenOf } from './given-of.ts';
import { provedVerdict } from './proved-verdict.ts';
import type { WorksheetData } from './worksheet-data.ts';
import type { WorksheetVerdict } from './worksheet-verdict.ts';

/** What a worksheet comes to, and the figure that its page leads with. */
export type WorksheetMark = WorksheetVerdict & { readonly lead?: string };

/** What each worksheet of a job comes to now, checks of it counted: the same that its sign-off asks. */
export async function worksheetMarks(store: Store, jobId: Id): Promise<ReadonlyMap<Id, WorksheetMark>> {
  const data = await readSheet(store, jobId);
  if (!data) return new Map();
  const proofs = { checks: knownChecks(data), cuts: data.cuts };
  return new Map(
    data.worksheets.map((worksheet) => {
      const known = worksheetDataOf(worksheet, data);
      const lead = leadOf(known);
      return [worksheet.id, { ...provedVerdict(known, proofs), ...(lead !== undefined && { lead }) }];
    }),
  );
}

/** `Face outer spacer .032 in off`; of several lengths that lead together the first. */
function leadOf(data: WorksheetData): string | undefined {
  const account = worksheetOf(data.worksheet.kind)?.account(givenOf(data)) ?? [];
  const [lead] = blocksOf(account, 'lead');
  if (lead) return `${lead.label} ${lead.figure} ${lead.unit}`;
  const row = blocksOf(account, 'rows').find(({ leads }) => leads)?.rows[0];
  return row && `${row.what} ${row.figure}`;
}
