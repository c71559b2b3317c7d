import { lengthOf } from '../engine/length/length.ts';
import { act, type Act } from './act.ts';
import { demoAt, demoJobIds, type DemoReading } from './demo-jobs.ts';
import { isGone, type Kept, type StoreName } from './kept.ts';
import type { Store } from './open-store.ts';
import { read } from './read.ts';
import type { Id, ReadingRecord, Stamped } from './records.ts';
import { recheckKind, stepKind } from './schemas/assembly.ts';
import { checkKind } from './schemas/check.ts';
import { toKept, type RecordKind } from './schemas/common.ts';
import { cutRecordKind } from './schemas/cut.ts';
import { featureRecordKind, readingKind } from './schemas/feature.ts';
import { jobKind, partKind } from './schemas/job.ts';
import { moneyKind } from './schemas/money.ts';
import { worksheetKind } from './schemas/worksheet.ts';
import type { StoreResult } from './store-refusal.ts';

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
const SECONDS_BETWEEN_READINGS_MS = 20_000;

/** Puts the demo in, or puts it back as it was at first. */
export async function addDemo(store: Store): Promise<StoreResult<void>> {
  return act(store, { stores: demoStores }, (a) => {
    const demo = demoAt(a.at);
    for (const job of demo.jobs) put(a, jobKind, job);
    for (const part of demo.parts) put(a, partKind, part);
    for (const feature of demo.features) put(a, featureRecordKind, feature);
    const earliest = a.at - demo.readings.length * SECONDS_BETWEEN_READINGS_MS;
    for (const [index, reading] of demo.readings.entries())
      put(a, readingKind, readingAt(reading, earliest + index * SECONDS_BETWEEN_READINGS_MS));
    for (const worksheet of demo.worksheets) put(a, worksheetKind, worksheet);
    for (const cut of demo.cuts ?? []) put(a, cutRecordKind, cut);
    for (const check of demo.checks ?? []) put(a, checkKind, check);
    for (const step of demo.steps ?? []) put(a, stepKind, step);
    for (const recheck of demo.rechecks ?? []) put(a, recheckKind, recheck);
    for (const line of demo.money ?? []) put(a, moneyKind, line);
  });
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

// The act's stamp is later than that of an earlier removal, so the demo stands again also after a merge.
function put<T extends { readonly id: Id }>(a: Act, kind: RecordKind<T>, record: T): void {
  const kept = toKept<T>(kind, { ...record, stamps: { '*': a.stamp } } satisfies T & Stamped);
  if (kept.ok) a.putKept(kind.store, kept.value);
  else a.refuse({ code: 'cannot-keep', store: kind.store, field: kept.field });
}

function readingAt({ feature, struckOutWhy, ...reading }: DemoReading, at: number): ReadingRecord {
  return {
    ...reading,
    exact: lengthOf(`${reading.typed} ${reading.unit}`),
    featureId: feature.id,
    jobId: feature.jobId,
    zeroChecked: true,
    at,
    ...(struckOutWhy === undefined ? {} : { struckOut: { why: struckOutWhy, at: at + 1000 } }),
  };
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
