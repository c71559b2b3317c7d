import { act } from '../opening/act.ts';
import { withChanges } from '../base/changes.ts';
import { touchJob } from './jobs.ts';
import type { Store } from '../opening/open-store.ts';
import type { Id, Job, Reason } from '../base/records.ts';
import { jobKind } from './job-schema.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/**
 * Writes down why one thing that stops the signing may stand, or takes that back. Undoable until the job is signed: what
 * was signed under stands on the sheet.
 */
export async function writeReason(
  store: Store,
  jobId: Id,
  key: string,
  reason: Omit<Reason, 'at'> | undefined,
  draftKey?: string,
): Promise<StoreResult<Job>> {
  return act(store, { stores: ['jobs', 'drafts'] }, async (a) => {
    if (draftKey !== undefined) a.drop('drafts', draftKey);
    await a.change(jobKind, jobId, (job) => {
      const { [key]: _before, ...others } = job.reasons ?? {};
      const reasons = reason ? { ...others, [key]: { ...reason, at: a.at } } : others;
      const left = Object.keys(reasons).length > 0 ? reasons : undefined;
      return withChanges<typeof job, 'reasons'>(job, { reasons: left });
    });
    a.undoable(reason ? 'Wrote a reason' : 'Took a reason back', jobId);
    return touchJob(a, jobId);
  });
}
