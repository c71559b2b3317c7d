import type { Store } from '../../store/opening/open-store.ts';
import type { StoreRefusal } from '../../store/base/store-refusal.ts';
import type { HalfTyped } from './pad-text.ts';

/** What the app has to know of what is half typed, also before any field is drawn; `use-draft.ts` has the fields. */

type Unwritten = { readonly store: Store; readonly half: HalfTyped; readonly why: StoreRefusal };

export const writing = new Set<Promise<unknown>>();
/** What stands in this window only, as its last write failed: by the field's key. */
export const unwritten = new Map<string, Unwritten>();

type OnUnwritten = (why: StoreRefusal | undefined) => void;
let onUnwritten: OnUnwritten = () => undefined;

/** Calls back when what is half typed could not be written down, and with nothing when that is over: the app says so above every screen. */
export function watchUnwritten(say: OnUnwritten): void {
  onUnwritten = say;
}

export function tellUnwritten(why: StoreRefusal | undefined): void {
  onUnwritten(why);
}

/** Waits until every half-typed size is written, before the page gives way to a new version; rejects when one can't be. */
export async function draftsWritten(): Promise<void> {
  await Promise.allSettled(writing);
  if (unwritten.size > 0) throw new Error('something half typed is not written down');
}
