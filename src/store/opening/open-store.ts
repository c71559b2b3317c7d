import type { StoreName } from '../base/stores.ts';
import type { IDBPDatabase } from 'idb';
import { refuse, worked } from '../../engine/length/refusal.ts';
import { openDatabase, USUAL_NAME } from './open-database.ts';
import { allSteps } from './steps/all-steps.ts';
import type { Step } from './steps/step.ts';
import type { StoreRefusal, StoreResult } from '../base/store-refusal.ts';
import { openChannel, type Channel } from './watch.ts';

export type OpenStoreOptions = {
  readonly name?: string;
  /** The phone's clock; tests hand in their own. */
  readonly now?: () => number;
  readonly timeoutMs?: number;
  /** A tab with a newer Slipfit wants the database. Write the draft now: the store closes right after this returns. */
  readonly onClosing?: () => void;
  /** Found out without anybody having asked for anything: the browser has thrown the data away. */
  readonly onThrownAway?: () => void;
  readonly steps?: readonly Step[];
};

/** The open database and what belongs to it. Made by `openStore`, given back with `closeStore`. */
export type Store = {
  readonly name: string;
  readonly now: () => number;
  readonly channel: Channel;
  /** Records met since the app was opened that don't parse, as `store/id`. They are left where they are. */
  readonly unreadable: Map<string, { readonly store: StoreName; readonly id: string }>;
  readonly reopen: () => Promise<boolean>;
  db: IDBPDatabase;
  /** Set once the store may no longer be used. */
  closed: StoreRefusal | undefined;
};

// Chosen, not published: longer than a slow phone's cold start (2 s measured at a sixth of the speed), short enough to say something.
const PATIENCE_MS = 8000;

/** Opens the database, moving it to today's version step by step. Asking again after a refusal goes on waiting. */
export async function openStore(options: OpenStoreOptions = {}): Promise<StoreResult<Store>> {
  const { name = USUAL_NAME, now = Date.now, timeoutMs = PATIENCE_MS, steps = allSteps } = options;
  let store: Store | undefined;
  const thrownAway = () => {
    if (store) store.closed = { code: 'thrown-away' };
    options.onThrownAway?.();
  };
  const open = () =>
    openDatabase({
      name,
      steps,
      timeoutMs,
      onBlocking: (wanted) => {
        if (wanted === 'deleted') return thrownAway();
        options.onClosing?.();
        if (store) store.closed = { code: 'closed-by-newer-version' };
      },
      // At the first opening that is a new phone. Later it means that the browser threw everything away meanwhile, and
      // going on with an empty database would look as if nothing had ever been kept.
      onCreated: () => {
        if (store) thrownAway();
      },
      onTerminated: () => void takeUpAgain(() => store),
    });
  const opened = await open();
  if (!opened.ok) return opened;
  let reopening: Promise<boolean> | undefined;
  const reopen = async (): Promise<boolean> => {
    if (store?.closed) return false;
    reopening ??= open().then((again) => {
      reopening = undefined;
      if (!store) return false;
      if (!again.ok) {
        if (again.refusal.code === 'newer-database') store.closed = { code: 'closed-by-newer-version' };
        return false;
      }
      store.db.close();
      store.db = again.value;
      return store.closed === undefined;
    });
    return reopening;
  };
  store = {
    name,
    now,
    channel: openChannel(name),
    unreadable: new Map(),
    reopen,
    db: opened.value,
    closed: undefined,
  };
  return worked(store);
}

// Chosen, not published. The first comes too early while the browser is still throwing the data away: measured.
const TAKE_UP_AFTER_MS = [0, 300, 1000, 3000, 10_000] as const;

/** Opened again without being asked: whether the data is still there is better known before the next size is typed. */
async function takeUpAgain(storeNow: () => Store | undefined): Promise<void> {
  for (const ms of TAKE_UP_AFTER_MS) {
    // One try after the other.
    // oxlint-disable-next-line no-await-in-loop
    await new Promise((done) => setTimeout(done, ms));
    const store = storeNow();
    // oxlint-disable-next-line no-await-in-loop
    if (!store || store.closed || (await store.reopen())) return;
  }
}

export function closeStore(store: Store): void {
  store.closed ??= { code: 'closed' };
  store.channel.close();
  store.db.close();
}

/** The records met since the app was opened that don't parse. */
export function unreadableSeen(store: Store): readonly { readonly store: StoreName; readonly id: string }[] {
  return [...store.unreadable.values()];
}

/** For `act` and `read`: the refusal of a store that may no longer be used. */
export function refuseClosed(store: Store): { ok: false; refusal: StoreRefusal } | undefined {
  return store.closed && refuse(store.closed);
}
