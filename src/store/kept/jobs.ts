import { act, type Act } from '../opening/act.ts';
import { isGone, type Kept } from '../base/kept.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import { readOne } from '../opening/read.ts';
import type { Id, Job, System } from '../base/records.ts';
import { jobKind } from './job-schema.ts';
import type { StoreResult } from '../base/store-refusal.ts';

export async function getJob(store: Store, id: Id): Promise<Job | undefined> {
  return readOne(store, jobKind, id);
}

export type NewJob = {
  readonly name: string;
  readonly what?: string;
  /** An empty list says that it touches none of them. */
  readonly systems: readonly System[];
  readonly demo?: boolean;
};

export async function createJob(store: Store, job: NewJob): Promise<StoreResult<Job>> {
  const id = newId();
  return act(store, { stores: ['jobs'] }, (a) => {
    const made = a.make(jobKind, {
      what: '',
      demo: false,
      ...job,
      ...(job.systems.length === 0 && { touchesNone: true }),
      id,
      state: 'open',
      customerNote: '',
      createdAt: a.at,
      touchedAt: a.at,
    });
    a.undoable(`Made the job ${job.name}`, id);
    return made;
  });
}

export type JobChanges = Partial<
  Pick<
    Job,
    'name' | 'what' | 'customer' | 'machine' | 'systems' | 'touchesNone' | 'warmth' | 'state' | 'customerNote'
  >
>;

/** Changes, or what they are by how the job stands now: a press just before this one may have changed it. */
export async function changeJob(
  store: Store,
  id: Id,
  change: JobChanges | ((job: Job) => JobChanges),
): Promise<StoreResult<Job>> {
  return act(store, { stores: ['jobs', 'photos', 'photoBytes'] }, async (a) => {
    const before = await a.get(jobKind, id);
    const changes = typeof change === 'function' ? change(before) : change;
    await a.change(jobKind, id, (job) => ({ ...job, ...changes }));
    const closes = changes.state === 'closed' && before.state === 'open';
    if (closes) await Promise.all([forgetUndo(a, id), forgetRemovedPhotos(a, id)]);
    a.undoable(closes ? `Closed ${before.name}` : `Changed ${before.name}`, id);
    return touchJob(a, id);
  });
}

/** Removes the job from the list. What belongs to it stays, so that undo brings all of it back. */
export async function removeJob(store: Store, id: Id): Promise<StoreResult<void>> {
  return act(store, { stores: ['jobs'] }, async (a) => {
    const job = await a.get(jobKind, id);
    await a.remove('jobs', id);
    a.undoable(`Removed ${job.name}`, id);
  });
}

/** Moves a job to the top of the list, as part of an act on something of it. Refuses when the job is gone. */
export async function touchJob(a: Act, id: Id): Promise<Job> {
  return a.change(jobKind, id, (job) => ({ ...job, touchedAt: Math.max(a.at, job.touchedAt) }));
}

// What was done before a job was closed can't be undone any more; closing it can.
async function forgetUndo(a: Act, jobId: Id): Promise<void> {
  const range = IDBKeyRange.bound([jobId], [jobId, []]);
  const keys = await a.tx.objectStore('undo').index('jobId+id').getAllKeys(range);
  for (const key of keys) if (typeof key === 'string') a.drop('undo', key);
}

// With undo gone nothing can bring a removed photo back, so its bytes needn't fill the phone any longer.
async function forgetRemovedPhotos(a: Act, jobId: Id): Promise<void> {
  const photos: Kept[] = await a.tx.objectStore('photos').index('jobId').getAll(jobId);
  for (const photo of photos) if (isGone(photo)) a.drop('photoBytes', photo.id);
}
