import { sayUnreadable } from '../../store/base/say-store.ts';
import { useLive } from '../common/store-context.ts';
import './unreadable-line.css';

/**
 * What of a job is in none of its lists, as this version can't read it; only while there is any. It changes by what a file
 * brings, and is looked for once the screen stands and nothing else is to be done.
 */
export function UnreadableLine({ jobId }: { jobId: string }) {
  const count = useLive(`unreadable/${jobId}`, ['staging'], async (store) => {
    await idle();
    const { unreadableOfJob } = await import('../../store/kept/unreadable.ts');
    return unreadableOfJob(store, jobId);
  });
  return count ? <p class="unreadable-line">{sayUnreadable(count, 'this job')}</p> : null;
}

// Chosen, not published: by then the screen stands, also where the browser doesn't say when it has nothing to do.
const STANDS_MS = 300;

async function idle(): Promise<void> {
  await new Promise<void>((done) => {
    if ('requestIdleCallback' in window) requestIdleCallback(() => done(), { timeout: 3 * STANDS_MS });
    else setTimeout(done, STANDS_MS);
  });
}
