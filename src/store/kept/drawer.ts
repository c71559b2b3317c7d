import { act } from '../opening/act.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import { readAll } from '../opening/read.ts';
import type { DrawerPiece, Id } from '../base/records.ts';
import { drawerCountKind, drawerPieceKind } from './drawer-schema.ts';
import { plainSize } from './size-input.ts';
import type { StoreResult } from '../base/store-refusal.ts';

export type CountedPiece = { readonly piece: DrawerPiece; readonly count: number };

/** What is in the drawer, by name, and how many of each: the sum of its log, so that two phones' counts add up. */
export async function drawerPieces(store: Store): Promise<CountedPiece[]> {
  const [pieces, log] = await Promise.all([readAll(store, drawerPieceKind), readAll(store, drawerCountKind)]);
  const counts = new Map<Id, number>();
  for (const { pieceId, change } of log) counts.set(pieceId, (counts.get(pieceId) ?? 0) + change);
  return pieces
    .toSorted((a, b) => a.name.localeCompare(b.name) || a.createdAt - b.createdAt)
    .map((piece) => ({ piece, count: counts.get(piece.id) ?? 0 }));
}

export type NewPiece = Omit<DrawerPiece, 'id' | 'createdAt'>;

export async function addPiece(
  store: Store,
  piece: NewPiece,
  count: number,
): Promise<StoreResult<DrawerPiece>> {
  const id = newId();
  const countId = newId();
  return act(store, { stores: ['drawer', 'drawerCounts'] }, (a) => {
    const { thickness, inside, outside, ...rest } = piece;
    const made = a.make(drawerPieceKind, {
      ...rest,
      ...(thickness ? { thickness: plainSize(thickness) } : {}),
      ...(inside ? { inside: plainSize(inside) } : {}),
      ...(outside ? { outside: plainSize(outside) } : {}),
      id,
      createdAt: a.at,
    });
    a.make(drawerCountKind, { id: countId, pieceId: id, change: count, why: 'put in', at: a.at });
    a.undoable(`Put ${piece.name} into the drawer`);
    return made;
  });
}

/** Counts a piece up or down, as one more line of its log: `change` is +n or −n. */
export async function countPiece(
  store: Store,
  pieceId: Id,
  change: number,
  why: string,
): Promise<StoreResult<void>> {
  const id = newId();
  return act(store, { stores: ['drawer', 'drawerCounts'] }, async (a) => {
    const piece = await a.get(drawerPieceKind, pieceId);
    a.make(drawerCountKind, { id, pieceId, change, why, at: a.at });
    a.undoable(`Counted ${piece.name} ${change < 0 ? 'down' : 'up'}`);
  });
}

export type PieceChanges = Partial<
  Pick<DrawerPiece, 'name' | 'thickness' | 'outside' | 'inside' | 'material'>
>;

/** Names a piece, or gives it a size it had not. */
export async function changePiece(
  store: Store,
  id: Id,
  changes: PieceChanges,
  draftKey?: string,
): Promise<StoreResult<DrawerPiece>> {
  return act(store, { stores: ['drawer', 'drafts'] }, async (a) => {
    const before = await a.get(drawerPieceKind, id);
    if (draftKey !== undefined) a.drop('drafts', draftKey);
    const { thickness, inside, outside, ...rest } = changes;
    const after = await a.change(drawerPieceKind, id, (piece) => ({
      ...piece,
      ...rest,
      ...(thickness && { thickness: plainSize(thickness) }),
      ...(inside && { inside: plainSize(inside) }),
      ...(outside && { outside: plainSize(outside) }),
    }));
    a.undoable(`Changed ${before.name}`);
    return after;
  });
}

export async function removePiece(store: Store, id: Id): Promise<StoreResult<void>> {
  return act(store, { stores: ['drawer'] }, async (a) => {
    const piece = await a.get(drawerPieceKind, id);
    await a.remove('drawer', id);
    a.undoable(`Took ${piece.name} out of the drawer`);
  });
}
