import { signedStores } from '../../store/base/stores.ts';
import { sayFinding, saySignOff } from '../../engine/job/say-sign-off.ts';
import { timeToKeep } from '../../store/base/clock.ts';
import type { Id } from '../../store/base/records.ts';
import { useLive } from '../common/store-context.ts';

/** What stands in the way of signing a job again, in one sentence; nothing while nothing does, or it isn't wanted. */
export function useStanding(jobId: Id, wanted: boolean): string | undefined {
  return useLive(`standing/${jobId}/${wanted}`, signedStores, async (store) => {
    if (!wanted) return undefined;
    const { loadSignOff } = await import('./sign-off-data.ts');
    const found = await loadSignOff(store, jobId, timeToKeep());
    const [first, another] = found?.answer.blockers ?? [];
    if (!found || !first) return undefined;
    return another ? saySignOff(found.answer) : `${sayFinding(first).what}.`;
  });
}
