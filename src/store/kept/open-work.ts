import type { Store } from '../opening/open-store.ts';
import { read } from '../opening/read.ts';

/** Whether two phones' values of anything were kept apart: asked before the code that lists them is fetched. */
export async function hasConflicts(store: Store): Promise<boolean> {
  return (await read(store, ['conflicts'], (tx) => tx.objectStore('conflicts').count())) > 0;
}

/**
 * Whether there is anything left to cut, or to look at again, in any job: asked before the code that lists it is fetched,
 * which an empty phone needs none of.
 */
export async function hasOpenWork(store: Store, of: 'cuts' | 'rechecks'): Promise<boolean> {
  return (await read(store, [of], (tx) => tx.objectStore(of).index('openAt').count())) > 0;
}

/** Whether there is any act to take back: asked before the code for that is fetched. */
export async function hasActs(store: Store): Promise<boolean> {
  return (await read(store, ['undo'], (tx) => tx.objectStore('undo').count())) > 0;
}
