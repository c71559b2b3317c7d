import { act } from '../opening/act.ts';
import { touchJob } from './jobs.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import { withPartsChange } from './parts-changed.ts';
import type { Id, StackPartInput, Worksheet } from '../base/records.ts';
import { worksheetKind } from './worksheet-schema.ts';
import { plainPart } from './size-input.ts';
import type { StoreResult } from '../base/store-refusal.ts';

export type MadePart = {
  readonly worksheetId: Id;
  readonly part: Omit<StackPartInput, 'order'>;
  /** The parts it stands in for; none where it goes in besides. */
  readonly gone: readonly Id[];
};

/** Puts a part that was made into a stack, and takes out those it stands in for, in one act. */
export async function putInMade(
  store: Store,
  { worksheetId, part, gone }: MadePart,
): Promise<StoreResult<Worksheet>> {
  const id = newId();
  return act(store, { stores: ['jobs', 'worksheets'] }, async (a) => {
    const before = await a.get(worksheetKind, worksheetId);
    await touchJob(a, before.jobId);
    const after = await a.change(worksheetKind, worksheetId, (worksheet) => {
      const all = Object.entries(worksheet.parts);
      const stay = all.filter(([partId]) => !gone.includes(partId));
      const place = all.flatMap(([partId, { order }]) => (gone.includes(partId) ? [order] : []));
      // Where the first of them stood; besides, behind the last.
      const order =
        place.length > 0 ? Math.min(...place) : Math.max(0, ...all.map(([, one]) => one.order)) + 1;
      const parts = { ...Object.fromEntries(stay), [id]: plainPart({ ...part, order }) };
      return { ...withPartsChange(worksheet, { ...worksheet, parts }, a.at), touchedAt: a.at };
    });
    a.undoable(`Changed ${before.title}: ${part.name} put in`, before.jobId);
    return after;
  });
}
