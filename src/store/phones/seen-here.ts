import { backupStores } from '../base/stores.ts';
import { eachKept, type Looking } from '../opening/each-kept.ts';
import { isStamped } from '../base/kept.ts';
import type { Store } from '../opening/open-store.ts';
import { isPlainObject } from '../base/paths.ts';
import { read } from '../opening/read.ts';
import { EVERYTHING, noteStamps, ownLatest, seenByBoth, seenIn, seenUpTo, type Seen } from './seen.ts';

/** What this phone has seen of every phone's changes up to now, its own too. */
export async function seenHereNow(store: Store): Promise<Seen> {
  return read(store, [...backupStores, 'device'], async (tx) => {
    const clock: unknown = await tx.objectStore('device').get('clock');
    const before = (await keptSeen(tx)) ?? (await seenByRecords(tx));
    const own = ownLatest(clock);
    return own === undefined ? before : seenByBoth(before, seenUpTo(own));
  });
}

/** What was written down of it when the last file came in; nothing before the first. */
export async function keptSeen(tx: Looking): Promise<Seen | undefined> {
  const kept = await tx.objectStore('device').get('seen');
  return isPlainObject(kept) ? seenIn(kept['lists']) : undefined;
}

/** A phone that never wrote down what it has seen: what it holds tells the least. */
export async function seenByRecords(tx: Looking): Promise<Seen> {
  const latest = new Map<string, string>();
  for (const store of backupStores) {
    if (store === 'photoBytes') continue;
    // oxlint-disable-next-line no-await-in-loop
    await eachKept(tx, store, (record) => {
      if (isStamped(record)) noteStamps(latest, record);
    });
  }
  return new Map([[EVERYTHING, latest]]);
}
