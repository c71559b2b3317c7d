import { act } from '../opening/act.ts';
import { drawnMarkIn, drawnStores } from './drawn-mark.ts';
import { touchJob } from './jobs.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import { readByIndex, readOne } from '../opening/read.ts';
import { countFromSigning } from './rechecks.ts';
import type { Id, SignedSheet } from '../base/records.ts';
import { jobKind } from './job-schema.ts';
import { sheetKind } from './sheet-schema.ts';
import { standingNow } from './signed-since.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/** A job's signed sheets, the newest first. */
export async function sheetsOf(store: Store, jobId: Id): Promise<SignedSheet[]> {
  const sheets = await readByIndex(store, sheetKind, { index: 'jobId', key: jobId });
  return sheets.sort((a, b) => b.signedAt - a.signedAt);
}

export async function getSheet(store: Store, id: Id): Promise<SignedSheet | undefined> {
  return readOne(store, sheetKind, id);
}

export type NewSheet = Omit<SignedSheet, 'id' | 'signedAt'>;

/**
 * Keeps a sheet as it was signed. It is on the disk when this comes back ok, and nothing changes or removes it after
 * that: whoever signs again makes another one. The job's re-checks count from then on, in the same act. With the mark of
 * what was drawn (`drawnMark`) it refuses where any of that was written anew since, by a tab this one heard nothing of. A
 * sheet that says on itself when it is signed is handed in as what it is at that time, the act's own.
 */
export async function signSheet(
  store: Store,
  given: NewSheet | ((at: number) => NewSheet),
  drawnFrom?: string,
): Promise<StoreResult<SignedSheet>> {
  const id = newId();
  return act(store, { stores: [...drawnStores, 'sheets'] }, async (a) => {
    const sheet = typeof given === 'function' ? given(a.at) : given;
    if (drawnFrom !== undefined && (await drawnMarkIn(a.tx, sheet.jobId)) !== drawnFrom)
      a.refuse({ code: 'drawn-is-old' });
    await touchJob(a, sheet.jobId);
    const stood = await standingNow(a.tx, sheet.jobId);
    const signedOff = { at: a.at, by: sheet.signedBy, sheetId: id, stood };
    const job = await a.change(jobKind, sheet.jobId, (before) => ({ ...before, signedOff }));
    await countFromSigning(store, a, job);
    return a.make(sheetKind, { ...sheet, id, signedAt: a.at });
  });
}
