import type { StoreName } from '../base/stores.ts';
import type { IDBPTransaction } from 'idb';
import { seedStamp, type Stamp } from '../base/clock.ts';
import { isGone, type Kept } from '../base/kept.ts';
import { refuseClosed, type Store } from './open-store.ts';
import type { Id, Stamped } from '../base/records.ts';
import { parseKept, type RecordKind } from '../base/schema-common.ts';
import { refusalOf, type StoreRefusal } from '../base/store-refusal.ts';

export type Reads = IDBPTransaction<unknown, string[]>;

/**
 * A read that could not be done even after the database was opened again. Answering with an empty list would say that
 * nothing was ever kept, so this one is thrown, for the screen's outer boundary; `refusal` has what to say.
 */
export class StoreUnreadable extends Error {
  readonly refusal: StoreRefusal;
  constructor(refusal: StoreRefusal) {
    super(refusal.code);
    this.refusal = refusal;
  }
}

/** Reads in one transaction; opens the database again once when its connection was lost, as WebKit does in the background. */
export async function read<T>(
  store: Store,
  stores: readonly StoreName[],
  work: (tx: Reads) => Promise<T>,
): Promise<T> {
  try {
    return await tryRead(store, stores, work);
  } catch (error) {
    const refusal = store.closed ?? refusalOf(error);
    if (refusal.code === 'connection-lost' && (await store.reopen())) return readAgain(store, stores, work);
    throw new StoreUnreadable(store.closed ?? refusal);
  }
}

async function readAgain<T>(
  store: Store,
  stores: readonly StoreName[],
  work: (tx: Reads) => Promise<T>,
): Promise<T> {
  try {
    return await tryRead(store, stores, work);
  } catch (error) {
    throw new StoreUnreadable(refusalOf(error));
  }
}

async function tryRead<T>(
  store: Store,
  stores: readonly StoreName[],
  work: (tx: Reads) => Promise<T>,
): Promise<T> {
  const closed = refuseClosed(store);
  if (closed) throw new StoreUnreadable(closed.refusal);
  const tx = store.db.transaction([...stores], 'readonly');
  tx.done.catch(() => undefined);
  return work(tx);
}

/** One record; nothing when it isn't there, was removed, or doesn't parse. */
export async function readOne<T extends { readonly id: Id }>(
  store: Store,
  kind: RecordKind<T>,
  id: Id,
): Promise<T | undefined> {
  const kept: Kept | undefined = await read(store, [kind.store], (tx) => tx.objectStore(kind.store).get(id));
  return kept && !isGone(kept) ? readable(store, kind, [kept])[0] : undefined;
}

/** The records an index holds under this key, removed ones left out. */
export async function readByIndex<T extends { readonly id: Id }>(
  store: Store,
  kind: RecordKind<T>,
  { index, key }: { readonly index: string; readonly key: IDBValidKey | IDBKeyRange },
): Promise<T[]> {
  const kept: Kept[] = await read(store, [kind.store], (tx) =>
    tx.objectStore(kind.store).index(index).getAll(key),
  );
  return readable(store, kind, kept);
}

/**
 * The same in the order in which they were made: by their stamps, as the phone's clock may have been set back in between.
 * What one act made carries one stamp; its times tell the order then.
 */
export async function readAsMade<T extends { readonly id: Id } & Made>(
  store: Store,
  kind: RecordKind<T>,
  where: { readonly index: string; readonly key: IDBValidKey },
): Promise<T[]> {
  const records: readonly (T & Partial<Stamped>)[] = await readByIndex(store, kind, where);
  return records.toSorted((a, b) => {
    const [stampA, stampB] = [stampOf(a), stampOf(b)];
    return stampA === stampB ? timeOf(a) - timeOf(b) : stampA < stampB ? -1 : 1;
  });
}

type Made = { readonly createdAt: number } | { readonly at: number };

function timeOf(record: Made): number {
  return 'at' in record ? record.at : record.createdAt;
}

function stampOf({ stamps }: Partial<Stamped>): Stamp {
  return stamps?.['*'] ?? seedStamp;
}

/** Every record of a store that is small by nature: the tools, the drawer. */
export async function readAll<T extends { readonly id: Id }>(
  store: Store,
  kind: RecordKind<T>,
): Promise<T[]> {
  const kept: Kept[] = await read(store, [kind.store], (tx) => tx.objectStore(kind.store).getAll());
  return readable(store, kind, kept);
}

/** The records that are there and parse. One that doesn't is noted and left where it is. */
export function readable<T extends { readonly id: Id }>(
  store: Store,
  kind: RecordKind<T>,
  kept: readonly Kept[],
): T[] {
  const records: T[] = [];
  for (const one of kept) {
    if (isGone(one)) continue;
    const parsed = parseKept(kind, one);
    if (parsed.ok) records.push(parsed.value);
    else store.unreadable.set(`${kind.store}/${one.id}`, { store: kind.store, id: one.id });
  }
  return records;
}
