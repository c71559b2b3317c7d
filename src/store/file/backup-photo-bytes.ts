import { act, type Act } from '../opening/act.ts';
import { bundleId, type Bundle, type StagedRecord } from './backup-staged.ts';
import { isGone } from '../base/kept.ts';
import type { Store } from '../opening/open-store.ts';
import { checkRecord } from '../kept/any-record.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/**
 * Keeps a photo's bytes while its file is read. A thousand of them don't fit into a phone's memory, so each goes to its
 * place at once, where nothing shows it without its photo; with it a note of the file, so that it is taken out again when
 * the file is refused or the phone dies. Bytes that are here stay: a photo's bytes never change.
 */
export async function stageBytes(store: Store, staged: StagedRecord): Promise<StoreResult<void>> {
  const { record, number, line } = staged;
  return act(store, { stores: ['photoBytes', 'staging'], stamped: false }, async (a) => {
    const kept = await a.kept('photoBytes', record.id);
    if (!kept || !checkRecord('photoBytes', kept).ok) a.putKept('photoBytes', record);
    const { id, stamps } = record;
    const entry = { record: { id, stamps }, number, line };
    const bundle: Bundle = {
      id: bundleId('photoBytes', number),
      entries: [kept ? entry : { ...entry, added: true }],
    };
    await a.tx.objectStore('staging').put(bundle);
  });
}

/** Takes out bytes that no photo needs: those of no photo at all, and those that came for one that was removed here. */
export async function dropStrayBytes(a: Act, added: ReadonlySet<string>): Promise<void> {
  const [bytes, photos]: [IDBValidKey[], IDBValidKey[]] = await Promise.all([
    a.tx.objectStore('photoBytes').getAllKeys(),
    a.tx.objectStore('photos').getAllKeys(),
  ]);
  const known = new Set(photos);
  for (const id of bytes.map(String)) {
    // oxlint-disable-next-line no-await-in-loop
    const photo = added.has(id) ? await a.kept('photos', id) : undefined;
    if (!known.has(id) || (photo && isGone(photo))) a.drop('photoBytes', id);
  }
}
