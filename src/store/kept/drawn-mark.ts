import { signedStores } from '../base/stores.ts';
import type { Store } from '../opening/open-store.ts';
import { canonicalText } from '../base/paths.ts';
import { read } from '../opening/read.ts';
import type { Id, SettingKey } from '../base/records.ts';
import { keptOfJob, type Readable } from './signed-since.ts';

const ofTheJob = [...signedStores, 'photos', 'money'] as const;
const ofTheShop = ['drawer', 'drawerCounts', 'tools'] as const;
/** Of the settings only those that change what stands on a sheet; where the fitter was last is none. */
const settingsOnIt = [
  'shownUnit',
  'decimalMark',
  'dial',
  'currency',
  'shopName',
] as const satisfies readonly SettingKey[];

/** The stores that a job's sheet is drawn from. */
export const drawnStores = [...ofTheJob, ...ofTheShop, 'settings'] as const;

/**
 * All that a job's sheet is drawn from, as one short text: it differs as soon as anything of it was written anew. Taken
 * before the sheet is read and once more in the act that signs it, so that nobody signs what another tab has changed.
 */
export async function drawnMark(store: Store, jobId: Id): Promise<string> {
  return read(store, drawnStores, (tx) => drawnMarkIn(tx, jobId));
}

export async function drawnMarkIn(tx: Readable, jobId: Id): Promise<string> {
  const records = await Promise.all([
    ...ofTheJob.map((name) => keptOfJob(tx, name, jobId)),
    ...ofTheShop.map((name) => tx.objectStore(name).getAll()),
    ...settingsOnIt.map((key) => tx.objectStore('settings').get(key)),
  ]);
  return canonicalText(new TextEncoder().encode(canonicalText(records)).buffer);
}
