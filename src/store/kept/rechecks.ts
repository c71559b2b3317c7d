import { odometerIn } from '../../engine/job/recheck-due.ts';
import { act, type Act } from '../opening/act.ts';
import { withChanges, type Changes } from '../base/changes.ts';
import { doneAs, isToDoAgain } from './done-again.ts';
import type { Kept } from '../base/kept.ts';
import { touchJob } from './jobs.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import { read, readable, readAsMade } from '../opening/read.ts';
import type { Id, Job, Odometer, Recheck } from '../base/records.ts';
import { recheckKind } from './assembly-schema.ts';
import { jobKind } from './job-schema.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/** A job's re-checks, done ones too, in the order in which they were set. */
export async function rechecksOf(store: Store, jobId: Id): Promise<Recheck[]> {
  return readAsMade(store, recheckKind, { index: 'jobId', key: jobId });
}

export type OpenRecheck = { readonly recheck: Recheck; readonly job: Job };

/** Every re-check still to be done, in closed jobs too: the work is handed over by then, and the re-check comes after it. */
export async function openRechecks(store: Store): Promise<OpenRecheck[]> {
  const kept = await read(store, ['rechecks', 'jobs'], async (tx) => {
    const rechecks: Kept[] = await tx.objectStore('rechecks').index('openAt').getAll();
    const ids = new Set(rechecks.map(({ jobId }) => String(jobId)));
    const jobs: (Kept | undefined)[] = await Promise.all(
      [...ids].map((id) => tx.objectStore('jobs').get(id)),
    );
    return { rechecks, jobs: jobs.filter((job) => job !== undefined) };
  });
  const jobs = new Map(readable(store, jobKind, kept.jobs).map((job) => [job.id, job]));
  return readable(store, recheckKind, kept.rechecks).flatMap((recheck) => {
    const job = jobs.get(recheck.jobId);
    return job ? [{ recheck, job }] : [];
  });
}

export type NewRecheck = Pick<Recheck, 'jobId' | 'what'> &
  Partial<Pick<Recheck, 'afterDays' | 'afterDistance' | 'from' | 'fromOdometer' | 'unit'>>;

/** Sets a re-check, counted from now and from the job's last odometer reading unless it says otherwise. */
export async function addRecheck(store: Store, recheck: NewRecheck): Promise<StoreResult<Recheck>> {
  const id = newId();
  return act(store, { stores: ['jobs', 'rechecks'] }, async (a) => {
    const job = await touchJob(a, recheck.jobId);
    const fromOdometer = recheck.fromOdometer ?? job.odometer?.reading;
    const made = a.make(recheckKind, {
      from: a.at,
      ...recheck,
      ...(recheck.afterDistance !== undefined && fromOdometer !== undefined && { fromOdometer }),
      id,
      createdAt: a.at,
    });
    a.undoable(`Set the re-check ${shortened(recheck.what)}`, recheck.jobId);
    return made;
  });
}

export type RecheckChanges = Changes<
  Recheck,
  'what' | 'afterDays' | 'afterDistance' | 'from' | 'fromOdometer' | 'unit' | 'done'
>;

/** Changes a re-check; `done: undefined` says that it is still to be done. So it is when it asks for something else now. */
export async function changeRecheck(
  store: Store,
  id: Id,
  changes: RecheckChanges,
  draftKey?: string,
): Promise<StoreResult<Recheck>> {
  return act(store, { stores: ['jobs', 'rechecks', 'drafts'] }, async (a) => {
    const before = await a.get(recheckKind, id);
    await touchJob(a, before.jobId);
    if (draftKey !== undefined) a.drop('drafts', draftKey);
    const after = await a.change(recheckKind, id, (recheck) => {
      const changed = withChanges(recheck, changes);
      if (!isToDoAgain('rechecks', recheck, changed)) return changed;
      return withChanges<typeof recheck, 'done' | 'wasDone'>(changed, {
        done: undefined,
        wasDone: recheck.done,
      });
    });
    a.undoable(`Changed the re-check ${shortened(before.what)}`, before.jobId);
    return after;
  });
}

/** Marks a re-check as done. The odometer's reading then is also the job's last one, where the job has its unit. */
export async function markRechecked(
  store: Store,
  id: Id,
  { by, odometer }: { readonly by: string; readonly odometer?: number },
): Promise<StoreResult<Recheck>> {
  return act(store, { stores: ['jobs', 'rechecks'] }, async (a) => {
    const before = await a.get(recheckKind, id);
    await touchJob(a, before.jobId);
    const as = doneAs('rechecks', before);
    const done = { at: a.at, by, as, ...(odometer !== undefined && { odometer }) };
    const after = await a.change(recheckKind, id, (recheck) =>
      withChanges<typeof recheck, 'done' | 'wasDone'>(recheck, { done, wasDone: undefined }),
    );
    if (odometer !== undefined)
      await a.change(jobKind, before.jobId, (job) =>
        job.odometer ? { ...job, odometer: { ...job.odometer, reading: odometer, at: a.at } } : job,
      );
    a.undoable(`Re-checked: ${shortened(before.what)}`, before.jobId);
    return after;
  });
}

export async function removeRecheck(store: Store, id: Id): Promise<StoreResult<void>> {
  return act(store, { stores: ['jobs', 'rechecks'] }, async (a) => {
    const recheck = await a.get(recheckKind, id);
    await touchJob(a, recheck.jobId);
    await a.remove('rechecks', id);
    a.undoable(`Removed the re-check ${shortened(recheck.what)}`, recheck.jobId);
  });
}

/** Keeps what the odometer of a job's vehicle reads now. From it those re-checks count that had no reading to count from. */
export async function setOdometer(
  store: Store,
  jobId: Id,
  { reading, unit }: Omit<Odometer, 'at'>,
  draftKey?: string,
): Promise<StoreResult<Job>> {
  return act(store, { stores: ['jobs', 'rechecks', 'drafts'] }, async (a) => {
    await touchJob(a, jobId);
    if (draftKey !== undefined) a.drop('drafts', draftKey);
    const job = await a.change(jobKind, jobId, (before) => ({
      ...before,
      odometer: { reading, unit, at: a.at },
    }));
    for (const recheck of withoutStart(await rechecksIn(store, a, jobId)))
      // oxlint-disable-next-line no-await-in-loop
      await a.change(recheckKind, recheck.id, (before) => ({ ...before, ...startAt(before, job) }));
    a.undoable(`Read the odometer: ${reading} ${unit}`, jobId);
    return job;
  });
}

/** As part of the act of signing: the job's open re-checks count from here on, not from when they were set. */
export async function countFromSigning(store: Store, a: Act, job: Job): Promise<void> {
  for (const { id, done } of await rechecksIn(store, a, job.id))
    if (!done)
      // oxlint-disable-next-line no-await-in-loop
      await a.change(recheckKind, id, (recheck) => ({ ...recheck, from: a.at, ...startAt(recheck, job) }));
}

/** The re-checks that wait for a distance and have no odometer reading to count from yet. */
export function withoutStart(rechecks: readonly Recheck[]): readonly Recheck[] {
  return rechecks.filter(
    (one) => !one.done && one.afterDistance !== undefined && one.fromOdometer === undefined,
  );
}

function startAt(recheck: Recheck, { odometer }: Pick<Job, 'odometer'>): Pick<Recheck, 'fromOdometer'> {
  if (!odometer || recheck.afterDistance === undefined) return {};
  return { fromOdometer: odometerIn(odometer, recheck.unit ?? odometer.unit) };
}

async function rechecksIn(store: Store, a: Act, jobId: Id): Promise<Recheck[]> {
  const kept: Kept[] = await a.tx.objectStore('rechecks').index('jobId').getAll(jobId);
  return readable(store, recheckKind, kept);
}

function shortened(text: string): string {
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}
