import type { BackupStore } from '../base/stores.ts';
import { worked } from '../../engine/length/refusal.ts';
import { act } from '../opening/act.ts';
import { bundleId, type Bundle, type StagedRecord } from './backup-staged.ts';
import type { StoreResult } from '../base/store-refusal.ts';
import type { Reading } from './backup-reading.ts';

// Chosen, not published: few enough to be light in memory, enough to make few trips to the disk.
const RECORDS_IN_A_BUNDLE = 250;

const CHARACTERS_IN_A_BUNDLE = 300_000;

/** Puts a record with others that go to the disk in one trip; a full bundle goes at once. */
export async function bundled(
  reading: Reading,
  store: BackupStore,
  { staged, length }: { readonly staged: StagedRecord; readonly length: number },
): Promise<StoreResult<void>> {
  const bundle = reading.bundles.get(store) ?? { entries: [], length: 0 };
  reading.bundles.set(store, bundle);
  bundle.entries.push(staged);
  bundle.length += length;
  const isFull = bundle.entries.length >= RECORDS_IN_A_BUNDLE || bundle.length >= CHARACTERS_IN_A_BUNDLE;
  return isFull ? flush(reading, store) : worked(undefined);
}

async function flush(reading: Reading, store: BackupStore): Promise<StoreResult<void>> {
  const entries = reading.bundles.get(store)?.entries ?? [];
  reading.bundles.delete(store);
  const [first] = entries;
  if (!first) return worked(undefined);
  const kept: Bundle = { id: bundleId(store, first.number), entries };
  return act(reading.store, { stores: ['staging'], durability: 'relaxed', stamped: false }, async (a) => {
    await a.tx.objectStore('staging').put(kept);
  });
}

/** All that is on its way goes to the disk. */
export async function flushAll(reading: Reading): Promise<StoreResult<void>> {
  for (const store of reading.bundles.keys()) {
    // oxlint-disable-next-line no-await-in-loop
    const flushed = await flush(reading, store);
    if (!flushed.ok) return flushed;
  }
  return reading.aside.flush();
}
