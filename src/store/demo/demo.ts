import { refuse, worked } from '../../engine/length/refusal.ts';
import { EARLIEST_MS } from '../base/clock.ts';
import { isGone, type Kept, type KeptStamped } from '../base/kept.ts';
import { isPlainObject } from '../base/paths.ts';
import type { Id } from '../base/records.ts';
import type { StoreResult } from '../base/store-refusal.ts';
import type { BackupStore, StoreName } from '../base/stores.ts';
import { throughTheDoor } from '../file/backup-door.ts';
import type { BackupText } from '../file/backup-lines.ts';
import { recordOfLine } from '../file/backup-read-record.ts';
import type { BackupResult } from '../file/backup-refusal.ts';
import { originIn } from '../file/backup-staged.ts';
import { act, type Act } from '../opening/act.ts';
import type { Store } from '../opening/open-store.ts';
import { read } from '../opening/read.ts';
import { demoJobIds } from './demo-job-ids.ts';

/** What belongs to a job, each with its index on the job, the job itself apart. */
const ofAJob = [
  'parts',
  'features',
  'worksheets',
  'cuts',
  'checks',
  'steps',
  'rechecks',
  'photos',
  'money',
] as const satisfies readonly StoreName[];
const demoStores: readonly StoreName[] = ['jobs', 'readings', ...ofAJob];

/** The demo out of its file, with every record found right. */
export type DemoFile = { readonly writtenAt: number; readonly records: readonly DemoRecord[] };

type DemoRecord = { readonly store: BackupStore; readonly record: KeptStamped };

/** Reads the demo’s file through the door of every file. Nothing of it is kept yet. */
export async function readDemo(text: BackupText): Promise<BackupResult<DemoFile>> {
  const records: DemoRecord[] = [];
  let writtenAt = 0;
  const passed = await throughTheDoor(text, {
    onFirst: (header) => ({ writtenAt } = originIn(header)),
    onRecord: async (value, { line }) => {
      const found = recordOfLine(value);
      if (!found || !demoStores.includes(found.store)) return refuse({ code: 'unknown-line', line });
      const { store, checked } = found;
      const record = { store, number: records.length + 1, line };
      if (!checked.ok) return refuse({ code: 'wrong-field', record, field: checked.field });
      records.push({ store, record: checked.value });
      return worked(undefined);
    },
  });
  return passed.ok ? worked({ writtenAt, records }) : passed;
}

/** Puts the demo in, or puts it back as it was at first, as if its file had been written now. */
export async function addDemo(store: Store, { writtenAt, records }: DemoFile): Promise<StoreResult<void>> {
  return act(store, { stores: demoStores }, (a) => {
    for (const { store: name, record } of records) {
      const now = Object.entries(record).map(([field, value]) => [field, later(value, a.at - writtenAt)]);
      // The act's stamp is later than that of an earlier removal, so the demo stands again also after a merge.
      a.putKept(name, { ...Object.fromEntries(now), id: record.id, stamps: { '*': a.stamp } });
    }
  });
}

/** The same with every time in it so much later; no other number of a record is as large as one. */
function later(value: unknown, byMs: number): unknown {
  if (typeof value === 'number') return value >= EARLIEST_MS ? value + byMs : value;
  if (Array.isArray(value)) return value.map((inner) => later(inner, byMs));
  if (!isPlainObject(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([field, inner]) => [field, later(inner, byMs)]));
}

/** Takes the demo out with all that was added to it since. Undo brings it back. */
export async function removeDemo(store: Store): Promise<StoreResult<void>> {
  return act(store, { stores: demoStores }, async (a) => {
    for (const jobId of demoJobIds) {
      // oxlint-disable-next-line no-await-in-loop
      await removeJobWhole(a, jobId);
    }
    a.undoable('Removed the demo');
  });
}

export async function hasDemo(store: Store): Promise<boolean> {
  const jobs: (Kept | undefined)[] = await read(store, ['jobs'], (tx) =>
    Promise.all(demoJobIds.map((id) => tx.objectStore('jobs').get(id))),
  );
  return jobs.some((job) => job !== undefined && !isGone(job));
}

async function removeJobWhole(a: Act, jobId: Id): Promise<void> {
  const readings: Kept[] = await a.tx
    .objectStore('readings')
    .index('jobId+at')
    .getAll(IDBKeyRange.bound([jobId], [jobId, []]));
  const under = await Promise.all(
    ofAJob.map(async (name): Promise<Kept[]> => a.tx.objectStore(name).index('jobId').getAll(jobId)),
  );
  const job = await a.kept('jobs', jobId);
  const removals = [
    ...ofAJob.flatMap((name, index) => removeAll(a, name, under[index] ?? [])),
    ...removeAll(a, 'readings', readings),
    ...removeAll(a, 'jobs', job ? [job] : []),
  ];
  await Promise.all(removals);
}

function removeAll(a: Act, store: StoreName, records: readonly Kept[]): Promise<void>[] {
  return records.filter((record) => !isGone(record)).map((record) => a.remove(store, record.id));
}
