import type { Kept } from '../base/kept.ts';
import type { Store } from '../opening/open-store.ts';
import { read, readable } from '../opening/read.ts';
import type { Job } from '../base/records.ts';
import { jobKind } from './job-schema.ts';

export type JobPage = { readonly jobs: readonly Job[]; readonly more: boolean; readonly unreadable: number };

/**
 * The job list, last touched first, a page at a time: `before` is the `touchedAt` of the last job of the page before.
 * Jobs touched in the same millisecond stay on one page, so a page may be a little longer than `limit`.
 */
export async function listJobs(
  store: Store,
  { limit, before }: { readonly limit: number; readonly before?: number },
): Promise<JobPage> {
  const { kept, more } = await read(store, ['jobs'], async (tx) => {
    const range = before === undefined ? null : IDBKeyRange.upperBound(before, true);
    const page: Kept[] = [];
    let cursor = await tx.objectStore('jobs').index('listedAt').openCursor(range, 'prev');
    while (cursor && (page.length < limit || cursor.key === page.at(-1)?.['listedAt'])) {
      page.push(cursor.value);
      // A cursor goes one by one.
      // oxlint-disable-next-line no-await-in-loop
      cursor = await cursor.continue();
    }
    return { kept: page, more: cursor !== null };
  });
  const jobs = readable(store, jobKind, kept);
  return { jobs, more, unreadable: kept.length - jobs.length };
}

/** Whether there is any job that isn't removed. */
export async function hasAnyJob(store: Store): Promise<boolean> {
  const first: unknown = await read(store, ['jobs'], (tx) =>
    tx.objectStore('jobs').index('listedAt').getKey(IDBKeyRange.lowerBound(0)),
  );
  return first !== undefined;
}
