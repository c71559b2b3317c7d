import { act } from './act.ts';
import { touchJob } from './jobs.ts';
import type { Store } from './open-store.ts';
import { withPartsChange } from './parts-changed.ts';
import type { Basis, Id, SizeInput, Worksheet } from './records.ts';
import { cutRecordKind } from './schemas/cut.ts';
import { worksheetKind } from './schemas/worksheet.ts';
import { plainSize } from './size-input.ts';
import type { StoreResult } from './store-refusal.ts';

export type GivenCutSize = {
  readonly worksheetId: Id;
  readonly partId: Id;
  /** As it was measured at the machine. */
  readonly size: SizeInput;
  /** Cuts that were made to figures which stood until now; their own outcome must not make them look out of date. */
  readonly cutIds: readonly Id[];
  /** What those stand on from now on: the worksheet with the new size. */
  readonly basis: Basis;
};

/** Gives a stack the size that one of its parts was cut to, in one act, so that one undo takes it back. */
export async function giveCutSize(
  store: Store,
  { worksheetId, partId, size, cutIds, basis }: GivenCutSize,
): Promise<StoreResult<Worksheet>> {
  return act(store, { stores: ['jobs', 'worksheets', 'cuts'] }, async (a) => {
    const before = await a.get(worksheetKind, worksheetId);
    await touchJob(a, before.jobId);
    const part = before.parts[partId];
    if (!part) return a.refuse({ code: 'gone', store: 'worksheets' });
    const after = await a.change(worksheetKind, worksheetId, (worksheet) => {
      const parts = { ...worksheet.parts, [partId]: { ...part, size: plainSize(size) } };
      return { ...withPartsChange(worksheet, { ...worksheet, parts }, a.at), touchedAt: a.at };
    });
    await Promise.all(cutIds.map((id) => a.change(cutRecordKind, id, (cut) => ({ ...cut, basis }))));
    a.undoable(`Changed ${before.title}`, before.jobId);
    return after;
  });
}
