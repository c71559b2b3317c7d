import type { IDBPObjectStore } from 'idb';
import type { Store } from './open-store.ts';

// Chosen, not published: a start isn't kept waiting by a disk that is busy.
const LONGEST_LOOK_MS = 500;

/** A mark in the database that outlives a browser ended in the same moment. */
export type KeptMark = {
  /** As it was found at the start, empty where there was none; nothing where the database did not say in time. */
  readonly found: string | undefined;
  readonly keep: (text: string) => void;
  readonly clear: () => void;
};

type Drafts = IDBPObjectStore<unknown, string[], 'drafts', 'readwrite'>;

/** The mark among what is half typed: on this phone only, in no backup, and no act of the fitter's. */
export async function keptMark(store: Store, key: string): Promise<KeptMark> {
  const late = new Promise<undefined>((done) => setTimeout(done, LONGEST_LOOK_MS));
  const look = store.db.get('drafts', key).then(
    (found: unknown) =>
      typeof found === 'object' && found !== null && 'typed' in found ? String(found.typed) : '',
    () => undefined,
  );
  const found = await Promise.race([look, late]);
  return {
    found,
    keep: (typed) => writeAtOnce(store, (drafts) => drafts.put({ id: key, typed, unit: 'mm' })),
    clear: () => writeAtOnce(store, (drafts) => drafts.delete(key)),
  };
}

/** Handed over and ended before anything is awaited: what is drawn next may never give the page its turn again. */
function writeAtOnce(store: Store, write: (drafts: Drafts) => Promise<unknown>): void {
  try {
    const tx = store.db.transaction(['drafts'], 'readwrite', { durability: 'relaxed' });
    write(tx.objectStore('drafts')).catch(() => undefined);
    tx.done.catch(() => undefined);
    tx.commit();
  } catch {
    // A connection that is lost is somebody else's to say.
  }
}
