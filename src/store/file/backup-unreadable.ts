import { backupStores, type BackupStore } from '../base/stores.ts';
import { worked } from '../../engine/length/refusal.ts';
import { act } from '../opening/act.ts';
import type { Kept } from '../base/kept.ts';
import { latestStamp } from '../base/merge.ts';
import type { Store } from '../opening/open-store.ts';
import { isPlainObject } from '../base/paths.ts';
import { read } from '../opening/read.ts';
import { hasSoundStamps } from '../kept/any-record.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/**
 * A record of a file that neither the phone it comes from could read, nor this one. It is put in as it is where nothing
 * has its place: what belongs to it finds it, it goes into every backup, and a later Slipfit may read it.
 */
export type Unreadable = { readonly store: BackupStore; readonly record: Kept };

type Row = Unreadable & { readonly id: string };

const LONGEST_ID = 100;

/** What of such a line can be kept. A picture's bytes that are none show nothing, and nothing belongs to them. */
export function unreadableIn(
  store: BackupStore,
  record: Readonly<Record<string, unknown>>,
): Unreadable | undefined {
  const { id } = record;
  const isNamed = typeof id === 'string' && id !== '' && id.length <= LONGEST_ID;
  return isNamed && store !== 'photoBytes' ? { store, record: { ...record, id } } : undefined;
}

/** Its latest stamp, where its stamps can be trusted. */
export function stampOfUnreadable({ record }: Unreadable): string {
  return hasSoundStamps(record) ? latestStamp(record) : '';
}

// Chosen, not published: as with the readable ones.
const ROWS_AT_ONCE = 250;
const CHARACTERS_AT_ONCE = 300_000;

/** Puts them aside with the rest of the file. */
export type Aside = {
  readonly add: (one: Unreadable, length: number) => Promise<StoreResult<void>>;
  readonly flush: () => Promise<StoreResult<void>>;
};

export function startAside(store: Store): Aside {
  let waiting: Row[] = [];
  let [length, count] = [0, 0];
  const flush = async (): Promise<StoreResult<void>> => {
    const rows = waiting;
    [waiting, length] = [[], 0];
    if (rows.length === 0) return worked(undefined);
    return act(store, { stores: ['staging'], durability: 'relaxed', stamped: false }, async (a) => {
      await Promise.all(rows.map((row) => a.tx.objectStore('staging').put(row)));
    });
  };
  return {
    flush,
    async add(one, itsLength) {
      count += 1;
      length += itsLength;
      waiting.push({ ...one, id: `unreadable/${String(count).padStart(9, '0')}` });
      const isFull = waiting.length >= ROWS_AT_ONCE || length >= CHARACTERS_AT_ONCE;
      return isFull ? flush() : worked(undefined);
    },
  };
}

type Staging = {
  objectStore(name: string): { getAll(range: IDBKeyRange, count: number): Promise<unknown[]> };
};

// A signed sheet comes to 12 MB at most.
const READ_AT_ONCE = 10;

/** Each of those that wait aside, in the transaction that puts them in. */
export async function eachUnreadable(tx: Staging, work: (one: Unreadable) => Promise<void>): Promise<void> {
  let last = 'unreadable/';
  for (;;) {
    const range = IDBKeyRange.bound(last, 'unreadable/:', true);
    // One handful after the other: a file may hold thousands of them.
    // oxlint-disable-next-line no-await-in-loop
    const rows = (await tx.objectStore('staging').getAll(range, READ_AT_ONCE)).filter(isRow);
    // oxlint-disable-next-line no-await-in-loop
    for (const row of rows) await work(row);
    last = rows.at(-1)?.id ?? '';
    if (last === '') return;
  }
}

/** The same for a look beforehand, with whether something has its place here already. */
export async function lookAtUnreadable(
  store: Store,
  look: (one: Unreadable, isHere: boolean) => void,
): Promise<void> {
  await read(store, [...backupStores, 'staging'], (tx) =>
    eachUnreadable(tx, async (one) =>
      look(one, (await tx.objectStore(one.store).getKey(one.record.id)) !== undefined),
    ),
  );
}

function isRow(value: unknown): value is Row {
  return isPlainObject(value) && isPlainObject(value['record']) && typeof value['id'] === 'string';
}
