import { act } from '../opening/act.ts';
import { touchJob } from './jobs.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import { withPartsChange } from './parts-changed.ts';
import type { Id, SizeInput, Worksheet } from '../base/records.ts';
import { drawerCountKind, drawerPieceKind } from './drawer-schema.ts';
import { worksheetKind } from './worksheet-schema.ts';
import { plainSizes } from './size-input.ts';
import type { StoreResult } from '../base/store-refusal.ts';

export type TakenPiece = { readonly pieceId: Id; readonly count: number };

/**
 * Takes pieces out of the drawer for a worksheet and gives it their sizes: one act, so that one undo puts the pieces back
 * and the sizes as they were.
 */
export async function takePieces(
  store: Store,
  worksheetId: Id,
  pieces: readonly TakenPiece[],
  sizes: Readonly<Record<string, SizeInput>> = {},
): Promise<StoreResult<Worksheet>> {
  const ids = pieces.map(() => newId());
  return act(store, { stores: ['jobs', 'worksheets', 'drawer', 'drawerCounts'] }, async (a) => {
    const before = await a.get(worksheetKind, worksheetId);
    const taken = await Promise.all(pieces.map(({ pieceId }) => a.get(drawerPieceKind, pieceId)));
    await touchJob(a, before.jobId);
    const why = `taken for ${before.title}`;
    for (const [index, { pieceId, count }] of pieces.entries())
      a.make(drawerCountKind, { id: ids[index] ?? newId(), pieceId, change: -count, why, at: a.at });
    const after = await a.change(worksheetKind, worksheetId, (worksheet) => {
      const withSizes = { ...worksheet, sizes: { ...worksheet.sizes, ...plainSizes(sizes) } };
      return { ...withPartsChange(worksheet, withSizes, a.at), touchedAt: a.at };
    });
    a.undoable(
      `Changed ${before.title}: ${taken.map(({ name }) => name).join(', ')} taken from the drawer`,
      before.jobId,
    );
    return after;
  });
}
