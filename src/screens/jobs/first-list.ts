import { listJobs, type JobPage } from '../../store/kept/job-list.ts';
import type { Store } from '../../store/opening/open-store.ts';

// More than the tallest phone shows.
export const AT_ONCE = 12;

let first: JobPage | undefined;

/** Read beside the settings, so that the first drawing has it. What goes wrong the screen says, which reads it again. */
export async function readFirstList(store: Store): Promise<void> {
  first = await listJobs(store, { limit: AT_ONCE }).catch(() => undefined);
}

/** Once: later it would be of before. */
export function takeFirstList(): JobPage | undefined {
  const taken = first;
  first = undefined;
  return taken;
}
