import type { StoreName } from '../base/stores.ts';
import type { Kept } from '../base/kept.ts';

const RECORDS_AT_ONCE = 500;

/** A transaction that reads; one that writes reads too. */
export type Looking = {
  objectStore(name: string): {
    getAll(range?: IDBKeyRange | null, count?: number): Promise<Kept[]>;
    get(id: string): Promise<unknown>;
  };
};

/** Every record of a store, removed ones too, some hundreds at a time so that memory stays light. */
export async function eachKept(tx: Looking, store: StoreName, look: (record: Kept) => void): Promise<void> {
  let last: string | undefined;
  for (;;) {
    const range = last === undefined ? null : IDBKeyRange.lowerBound(last, true);
    // oxlint-disable-next-line no-await-in-loop
    const records = await tx.objectStore(store).getAll(range, RECORDS_AT_ONCE);
    for (const record of records) look(record);
    last = records.at(-1)?.id;
    if (records.length < RECORDS_AT_ONCE || last === undefined) return;
  }
}
