import { storeNames, type StoreName } from '../base/stores.ts';
import { isPlainObject } from '../base/paths.ts';
import type { Store } from './open-store.ts';

export type Touched = { readonly store: StoreName; readonly id: string };
export type OnChange = (touched: readonly Touched[]) => void;

type Watcher = { readonly stores: ReadonlySet<StoreName>; readonly onChange: OnChange };

export type Channel = {
  readonly watchers: Set<Watcher>;
  readonly announce: OnChange;
  readonly close: () => void;
};

/** Calls back after every commit, in this tab or another, that touched one of the stores. Returns its undo. */
export function watch(store: Store, stores: readonly StoreName[], onChange: OnChange): () => void {
  const watcher: Watcher = { stores: new Set(stores), onChange };
  store.channel.watchers.add(watcher);
  return () => {
    store.channel.watchers.delete(watcher);
  };
}

/** Ids only go over the channel, never contents: the other tab reads again, so it can't show what was never committed. */
export function openChannel(name: string): Channel {
  const watchers = new Set<Watcher>();
  const tell: OnChange = (touched) => {
    for (const { stores, onChange } of watchers) {
      const theirs = touched.filter((one) => stores.has(one.store));
      if (theirs.length > 0) onChange(theirs);
    }
  };
  const channel =
    typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel(`slipfit/${name}`);
  channel?.addEventListener('message', ({ data }: MessageEvent<unknown>) => tell(touchedFrom(data)));
  return {
    watchers,
    announce(touched) {
      if (touched.length === 0) return;
      // A broadcast channel has no target origin: it never leaves this one.
      // oxlint-disable-next-line unicorn/require-post-message-target-origin
      channel?.postMessage(touched);
      tell(touched);
    },
    close: () => channel?.close(),
  };
}

const knownStores: ReadonlySet<unknown> = new Set(storeNames);

// A tab of another version may send anything; what isn't understood is left out.
function touchedFrom(data: unknown): Touched[] {
  return Array.isArray(data) ? data.filter(isTouched) : [];
}

function isTouched(value: unknown): value is Touched {
  return isPlainObject(value) && knownStores.has(value['store']) && typeof value['id'] === 'string';
}
