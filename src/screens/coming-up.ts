import type { IDBPObjectStore } from 'idb';
import type { Store } from '../store/open-store.ts';

/**
 * Whether a place came up, noted where it outlives a page that hangs or dies: before it is drawn there is a mark, and once
 * it has stood for a while, or the page is left in the usual way, there is none. A page that hangs does neither.
 * `localStorage` is written at once and reaches the disk only seconds later (Chromium: about five), so that it outlives a
 * tab and not a browser that the phone ends for its memory; the database outlives both.
 */

const KEY = 'slipfit coming up';
// Chosen, not published: longer than the slowest place takes on a slow phone, shorter than a fitter stays at one.
const STANDS_AFTER_MS = 5000;
const MOST_TRIES = 2;
// Chosen, not published: a start isn't kept waiting by a disk that is busy.
const LONGEST_LOOK_MS = 500;

/** The mark's second place. */
export type KeptMark = {
  /** As it was found at the start. */
  readonly found: string;
  readonly keep: (text: string) => void;
  readonly clear: () => void;
};

type Drafts = IDBPObjectStore<unknown, string[], 'drafts', 'readwrite'>;
type Mark = { readonly place: string; readonly tries: number };

const NOWHERE: KeptMark = { found: '', keep: () => undefined, clear: () => undefined };

/** The mark among what is half typed: on this phone only, in no backup, and no act of the fitter's. */
export async function keptMark(store: Store): Promise<KeptMark> {
  const late = new Promise<undefined>((done) => setTimeout(done, LONGEST_LOOK_MS));
  const look = store.db.get('drafts', KEY).catch(() => undefined);
  const found: unknown = await Promise.race([look, late]);
  return {
    found: typeof found === 'object' && found !== null && 'typed' in found ? String(found.typed) : '',
    keep: (typed) => writeAtOnce(store, (drafts) => drafts.put({ id: KEY, typed, unit: 'mm' })),
    clear: () => writeAtOnce(store, (drafts) => drafts.delete(KEY)),
  };
}

/** False for a place that did not come up twice: the start doesn't go back to it. Else it is marked as coming up. */
export function mayComeUp(place: string, kept: KeptMark = NOWHERE): boolean {
  const marks = [readMark(), markIn(kept.found)].filter((mark) => mark?.place === place);
  const tries = Math.max(0, ...marks.map((mark) => mark?.tries ?? 0));
  if (tries >= MOST_TRIES) {
    clearMark(kept);
    return false;
  }
  writeMark({ place, tries: tries + 1 }, kept);
  return true;
}

/** From the start on: what stands is marked no longer, and each place that is gone to is marked as coming up. */
export function watchComingUp(placeNow: () => string, kept: KeptMark = NOWHERE): void {
  const clear = () => clearMark(kept);
  let timer = setTimeout(clear, STANDS_AFTER_MS);
  addEventListener('hashchange', () => {
    clearTimeout(timer);
    writeMark({ place: placeNow(), tries: 1 }, kept);
    timer = setTimeout(clear, STANDS_AFTER_MS);
  });
  addEventListener('pagehide', clear);
  document.addEventListener('visibilitychange', () => document.hidden && clear());
}

function readMark(): Mark | undefined {
  try {
    return markIn(localStorage.getItem(KEY) ?? '');
  } catch {
    // A browser that keeps nothing here may still have it in the database.
    return undefined;
  }
}

function markIn(text: string): Mark | undefined {
  const [tries = '', ...place] = text.split(' ');
  return /^\d$/.test(tries) ? { tries: Number(tries), place: place.join(' ') } : undefined;
}

function writeMark({ place, tries }: Mark, kept: KeptMark): void {
  const text = `${tries} ${place}`;
  kept.keep(text);
  try {
    localStorage.setItem(KEY, text);
  } catch {
    // As above, or it is full: then the start goes where it always went.
  }
}

function clearMark(kept: KeptMark): void {
  kept.clear();
  try {
    localStorage.removeItem(KEY);
  } catch {
    // As above.
  }
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
