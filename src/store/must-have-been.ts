import type { Act } from './act.ts';
import type { StoreName } from './kept.ts';
import type { Id } from './records.ts';

/**
 * Ends the act when a record names one that never was: that would make a backup which can't be read back. One that was
 * removed is still there for those that name it.
 */
export async function mustHaveBeen(a: Act, store: StoreName, id: Id | undefined): Promise<void> {
  if (id !== undefined && (await a.kept(store, id)) === undefined) a.refuse({ code: 'gone', store });
}
