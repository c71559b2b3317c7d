import { act } from '../opening/act.ts';
import { withChanges } from '../base/changes.ts';
import { touchJob } from './jobs.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import type { Id, Job } from '../base/records.ts';
import { jobKind } from './job-schema.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/** Ticks a thing of a job's list as there, or takes the tick back. */
export async function setGot(
  store: Store,
  jobId: Id,
  thing: { readonly key: string; readonly what: string },
  isThere: boolean,
): Promise<StoreResult<Job>> {
  return act(store, { stores: ['jobs'] }, async (a) => {
    await a.change(jobKind, jobId, (job) => {
      const { [thing.key]: _before, ...others } = job.got ?? {};
      return withChanges<typeof job, 'got'>(job, {
        got: unlessEmpty(isThere ? { ...others, [thing.key]: true as const } : others),
      });
    });
    a.undoable(isThere ? `Got ${thing.what}` : `Not there: ${thing.what}`, jobId);
    return touchJob(a, jobId);
  });
}

/** Puts a thing of the fitter's own on the list. */
export async function addToGet(
  store: Store,
  jobId: Id,
  what: string,
  draftKey?: string,
): Promise<StoreResult<Job>> {
  const id = newId();
  return act(store, { stores: ['jobs', 'drafts'] }, async (a) => {
    if (draftKey !== undefined) a.drop('drafts', draftKey);
    await a.change(jobKind, jobId, (job) => ({ ...job, toGet: { ...job.toGet, [id]: what } }));
    a.undoable(`Put ${what} on the list`, jobId);
    return touchJob(a, jobId);
  });
}

/** Takes things of the fitter's own off the list: those that say this. */
export async function dropToGet(store: Store, jobId: Id, what: string): Promise<StoreResult<Job>> {
  return act(store, { stores: ['jobs'] }, async (a) => {
    await a.change(jobKind, jobId, (job) => {
      const left = Object.entries(job.toGet ?? {}).filter(([, one]) => one !== what);
      return withChanges<typeof job, 'toGet'>(job, { toGet: unlessEmpty(Object.fromEntries(left)) });
    });
    a.undoable(`Took ${what} off the list`, jobId);
    return touchJob(a, jobId);
  });
}

function unlessEmpty<T>(entries: Readonly<Record<string, T>>): Readonly<Record<string, T>> | undefined {
  return Object.keys(entries).length > 0 ? entries : undefined;
}
