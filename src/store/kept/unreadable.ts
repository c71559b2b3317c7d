import { backupStores, type BackupStore } from '../base/stores.ts';
import { isGone, type Kept } from '../base/kept.ts';
import type { Store } from '../opening/open-store.ts';
import { read } from '../opening/read.ts';
import type { Id } from '../base/records.ts';
import { checkRecord } from './any-record.ts';

const apart: ReadonlySet<BackupStore> = new Set([
  'drawer',
  'drawerCounts',
  'tools',
  'settings',
  'photoBytes',
]);
const ofJobs = backupStores.filter((name) => !apart.has(name));

/** How many records of a job this version can't read, removed ones apart. They are in no list and count in no result. */
export async function unreadableOfJob(store: Store, jobId: Id): Promise<number> {
  let count = 0;
  for (const name of ofJobs) {
    // Store after store, so that whoever presses a key meanwhile needn't wait for all of them.
    // oxlint-disable-next-line no-await-in-loop
    count += unreadableAmong(name, await keptOfJob(store, name, jobId));
  }
  return count;
}

/** The same for the drawer and the tools, which belong to no job. */
export async function unreadableOfShop(store: Store): Promise<number> {
  const names = ['drawer', 'drawerCounts', 'tools'] as const;
  const kept: Kept[][] = await read(store, names, (tx) =>
    Promise.all(names.map((name) => tx.objectStore(name).getAll())),
  );
  return names.reduce((count, name, index) => count + unreadableAmong(name, kept[index] ?? []), 0);
}

async function keptOfJob(store: Store, name: BackupStore, jobId: Id): Promise<Kept[]> {
  return read(store, [name], (tx) => {
    const records = tx.objectStore(name);
    if (name === 'jobs') return records.getAll(jobId);
    return name === 'readings'
      ? records.index('jobId+at').getAll(IDBKeyRange.bound([jobId], [jobId, []]))
      : records.index('jobId').getAll(jobId);
  });
}

/**
 * A reading without its time is in no index, so no list and not the count above has it. All readings of the phone are
 * counted for that, a hundred thousand perhaps: only asked where a job is to be signed.
 */
export async function unlistedReadings(store: Store, jobId: Id): Promise<number> {
  return read(store, ['readings'], async (tx) => {
    const readings = tx.objectStore('readings');
    const byTime = readings.index('jobId+at');
    if ((await readings.count()) === (await byTime.count())) return 0;
    const known = new Set(await byTime.getAllKeys());
    const ids = (await readings.getAllKeys()).filter((id) => !known.has(id));
    const others: (Kept | undefined)[] = await Promise.all(ids.map((id) => readings.get(id)));
    return unreadableAmong(
      'readings',
      others.flatMap((one) => (one?.['jobId'] === jobId ? [one] : [])),
    );
  });
}

function unreadableAmong(name: BackupStore, kept: readonly Kept[]): number {
  return kept.filter((one) => !isGone(one) && !checkRecord(name, one).ok).length;
}
