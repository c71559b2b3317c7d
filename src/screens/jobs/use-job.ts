import { getJob } from '../../store/kept/jobs.ts';
import { useLive } from '../common/store-context.ts';

/** The job a screen belongs to. `missing` once it is known not to be there. */
export function useJob(jobId: string) {
  const found = useLive(`job/${jobId}`, ['jobs'], async (store) => ({ job: await getJob(store, jobId) }));
  return { job: found?.job, missing: found !== undefined && found.job === undefined };
}
