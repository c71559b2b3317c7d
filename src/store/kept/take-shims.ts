import { act } from '../opening/act.ts';
import { touchJob } from './jobs.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import { withPartsChange } from './parts-changed.ts';
import type { Id, StackPartInput, Worksheet } from '../base/records.ts';
import { drawerCountKind, drawerPieceKind } from './drawer-schema.ts';
import { worksheetKind } from './worksheet-schema.ts';
import { plainPart } from './size-input.ts';
import type { StoreResult } from '../base/store-refusal.ts';

export type TakenShim = { readonly pieceId: Id; readonly count: number };

/**
 * Takes shims out of the drawer and puts them into a stack behind its last part: one act, so that one undo puts them
 * back and takes them out of the stack again.
 */
export async function takeShims(
  store: Store,
  worksheetId: Id,
  shims: readonly TakenShim[],
): Promise<StoreResult<Worksheet>> {
  const ids = shims.map(() => ({ count: newId(), part: newId() }));
  return act(store, { stores: ['jobs', 'worksheets', 'drawer', 'drawerCounts'] }, async (a) => {
    const before = await a.get(worksheetKind, worksheetId);
    const pieces = await Promise.all(shims.map(({ pieceId }) => a.get(drawerPieceKind, pieceId)));
    await touchJob(a, before.jobId);
    const why = `taken for ${before.title}`;
    for (const [index, { pieceId, count }] of shims.entries())
      a.make(drawerCountKind, { id: ids[index]?.count ?? newId(), pieceId, change: -count, why, at: a.at });
    const last = Math.max(0, ...Object.values(before.parts).map(({ order }) => order));
    const parts = pieces.map(({ name, thickness }, index): [Id, StackPartInput] => [
      ids[index]?.part ?? newId(),
      plainPart({
        name,
        order: last + index + 1,
        count: shims[index]?.count ?? 1,
        adjustable: false,
        ...(thickness && { size: thickness }),
      }),
    ]);
    const after = await a.change(worksheetKind, worksheetId, (worksheet) => {
      const withShims = { ...worksheet, parts: { ...worksheet.parts, ...Object.fromEntries(parts) } };
      return { ...withPartsChange(worksheet, withShims, a.at, { byItsAnswer: true }), touchedAt: a.at };
    });
    a.undoable(`Changed ${before.title}: shims taken from the drawer`, before.jobId);
    return after;
  });
}
