import { sayUnreadable } from '../../store/say-store.ts';
import { useLive } from '../common/store-context.ts';
import './unreadable-line.css';

/**
 * What of a job is in none of its lists, as this version can't read it; only while there is any. It changes by what a file
 * brings, and is looked for behind the first drawing.
 */
export function UnreadableLine({ jobId }: { jobId: string }) {
  const count = useLive(`unreadable/${jobId}`, ['staging'], async (store) => {
    const { unreadableOfJob } = await import('../../store/unreadable.ts');
    return unreadableOfJob(store, jobId);
  });
  return count ? <p class="unreadable-line">{sayUnreadable(count, 'this job')}</p> : null;
}
