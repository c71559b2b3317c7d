import { backupStores } from '../../src/store/base/stores.ts';
import { readEntry } from '../../src/engine/length/entry.ts';
import { usualTools } from '../../src/engine/reading/measuring-tool.ts';
import { backupLines, restoreBackup } from '../../src/store/file/backup.ts';
import { createFeature } from '../../src/store/kept/features.ts';
import { createJob } from '../../src/store/kept/jobs.ts';
import { derivedFields, type Kept } from '../../src/store/base/kept.ts';
import type { Store } from '../../src/store/opening/open-store.ts';
import { logReading } from '../../src/store/kept/readings.ts';
import { openForTest, tickingClock, worked } from './open-for-test.ts';

export async function backupOf(store: Store): Promise<string> {
  const lines: string[] = [];
  for await (const line of backupLines(store)) lines.push(line);
  return lines.join('');
}

export async function carry(from: Store, to: Store) {
  return worked(await restoreBackup(to, await backupOf(from)));
}

export async function exchange(a: Store, b: Store): Promise<void> {
  await carry(a, b);
  await carry(b, a);
}

export async function log(store: Store, featureId: string, jobId: string, typed: string) {
  const [tool] = usualTools;
  if (!tool) throw new Error('no tools');
  const entry = worked(readEntry(typed, { unit: 'in' }));
  return logReading(store, { featureId, jobId, entry, tool, zeroChecked: true });
}

export async function twoPhonesWithABore() {
  const owner = await openForTest();
  const helper = await openForTest({ now: tickingClock(1_700_000_500_000) });
  const job = worked(await createJob(owner, { name: 'Outfit', systems: [] }));
  const bore = worked(await createFeature(owner, { jobId: job.id, kind: 'bore', name: 'left bore' }));
  await exchange(owner, helper);
  return { owner, helper, job, bore };
}

export async function everythingIn(store: Store): Promise<string> {
  const all = await Promise.all(
    backupStores
      .filter((name) => name !== 'settings')
      .map(async (name) => {
        const records: Kept[] = await store.db.getAll(name);
        return records.map((one) =>
          Object.fromEntries(
            Object.entries(one).filter(([field]) => field === 'broughtBack' || !derivedFields.has(field)),
          ),
        );
      }),
  );
  return JSON.stringify(sortedDeep(all));
}

function sortedDeep(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sortedDeep);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .toSorted(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, inner]) => [key, sortedDeep(inner)]),
  );
}
