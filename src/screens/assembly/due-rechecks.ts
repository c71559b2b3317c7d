import { sayRecheckDue } from '../../engine/job/say-recheck.ts';
import type { Store } from '../../store/opening/open-store.ts';
import { openRechecks } from '../../store/kept/rechecks.ts';
import type { Id } from '../../store/base/records.ts';
import { dueNow, isDue } from './recheck-data.ts';

export type DueRecheck = {
  readonly id: Id;
  readonly jobId: Id;
  readonly what: string;
  readonly when: string;
};

/** The re-checks of all jobs that are due, in words for the top of the job list. */
export async function dueRechecks(store: Store, now: number): Promise<readonly DueRecheck[]> {
  const open = await openRechecks(store);
  return open.flatMap(({ recheck, job }) => {
    const due = dueNow(recheck, job, now);
    return isDue(due)
      ? [{ id: recheck.id, jobId: job.id, what: `${job.name}: ${recheck.what}`, when: sayRecheckDue(due) }]
      : [];
  });
}
