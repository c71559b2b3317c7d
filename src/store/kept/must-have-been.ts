import type { StoreName } from '../base/stores.ts';
import type { Act } from '../opening/act.ts';
import type { Id } from '../base/records.ts';

/**
 * Ends the act when a record names one that never was: that would make a backup which can't be read back. One that was
 * removed is still there for those that name it.
 */
export async function mustHaveBeen(a: Act, store: StoreName, id: Id | undefined): Promise<void> {
  if (id !== undefined && (await a.kept(store, id)) === undefined) a.refuse({ code: 'gone', store });
}
