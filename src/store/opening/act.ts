import { goesHome, type StoreName } from '../base/stores.ts';
import { refuse, worked } from '../../engine/length/refusal.ts';
import type { Stamp } from '../base/clock.ts';
import type { Kept } from '../base/kept.ts';
import { actIn } from './act-in.ts';
import { ClockDamaged, quiet, Refused, type ActParts, type Writing } from './act-parts.ts';
import { refuseClosed, type Store } from './open-store.ts';
import type { Id, Stamped } from '../base/records.ts';
import type { RecordKind } from '../base/schema-common.ts';
import { refusalOf, type StoreRefusal, type StoreResult } from '../base/store-refusal.ts';
import type { Touched } from './watch.ts';

export type ActPlan = {
  readonly stores: readonly StoreName[];
  /** Strict, unless losing the write to a pulled battery would lose nothing but a convenience. */
  readonly durability?: 'strict' | 'relaxed';
  /** Drafts have no stamps: they stay on this phone, and need not wait for the one clock. */
  readonly stamped?: boolean;
  /** It is a single write that waits for nothing. The database is told at once that no other follows, and has it a trip earlier. */
  readonly oneWrite?: boolean;
  /** Whether it counts as a change since the last backup. Where the fitter was last doesn't. */
  readonly counted?: boolean;
};

/** What a piece of work inside one transaction may do. Each of its writes is stamped with the act's one stamp. */
export type Act = {
  readonly at: number;
  readonly stamp: Stamp;
  readonly tx: Writing;
  /** The record as kept, removed ones too. */
  kept(store: StoreName, id: Id): Promise<Kept | undefined>;
  /** The record as its type; ends the act with a refusal when it is gone or doesn't parse. */
  get<T extends { readonly id: Id }>(kind: RecordKind<T>, id: Id): Promise<T & Stamped>;
  make<T extends { readonly id: Id }>(kind: RecordKind<T>, record: NoInfer<T>): T & Stamped;
  change<T extends { readonly id: Id }>(
    kind: RecordKind<T>,
    id: Id,
    changed: (record: T & Stamped) => T & Stamped,
  ): Promise<T & Stamped>;
  /** The same for a record of any kind, as kept: what differs is stamped, and remembered for undo. New without a `before`. */
  changeKept(store: StoreName, before: Kept | undefined, after: Kept): void;
  remove(store: StoreName, id: Id): Promise<void>;
  /** Puts a record as it is: for merges, drafts and undo, which have stamps of their own or none. */
  putKept(store: StoreName, record: Kept): void;
  /** The same for many at once: they are waited for here, so that thousands don't pile up in memory. */
  putMany(store: StoreName, records: readonly Kept[]): Promise<void>;
  /** Takes a record out for good. Only for what is no part of a backup: drafts, the undo log, a removed photo's bytes. */
  drop(store: StoreName, id: Id): void;
  /** Puts what this act has changed so far into the undo log, under the words the undo button will say. */
  undoable(label: string, jobId?: Id): void;
  /** Every stamp from now on comes behind this one, which another device gave. */
  observe(stamp: Stamp): void;
  /** Ends the act: nothing of it is kept. */
  refuse(refusal: StoreRefusal): never;
};

/**
 * One act of the fitter's as one readwrite transaction: all of it is kept, or nothing and a refusal comes back.
 * It resolves only after the transaction completed: a successful `put` alone is not saved yet.
 */
export async function act<T>(
  store: Store,
  plan: ActPlan,
  work: (act: Act) => Promise<T> | T,
): Promise<StoreResult<T>> {
  const first = await actWithClock(store, plan, work);
  if (first.ok || first.refusal.code !== 'connection-lost') return first;
  return (await store.reopen()) ? actWithClock(store, plan, work) : (refuseClosed(store) ?? first);
}

/** The same; where the note of the last stamp is damaged, it is made anew first, so that logging goes on. */
async function actWithClock<T>(
  store: Store,
  plan: ActPlan,
  work: (act: Act) => Promise<T> | T,
): Promise<StoreResult<T>> {
  const first = await tryAct(store, plan, work);
  if (first !== 'clock-damaged') return first;
  const { rebuildClock } = await import('./clock-rebuild.ts');
  const rebuilt = await rebuildClock(store);
  if (!rebuilt.ok) return rebuilt;
  const again = await tryAct(store, plan, work);
  return again === 'clock-damaged' ? refuse({ code: 'write-failed' }) : again;
}

async function tryAct<T>(
  store: Store,
  plan: ActPlan,
  work: (act: Act) => Promise<T> | T,
): Promise<StoreResult<T> | 'clock-damaged'> {
  const closed = refuseClosed(store);
  if (closed) return closed;
  let tx: Writing | undefined;
  const writes: Promise<unknown>[] = [];
  try {
    const stamped = plan.stamped ?? true;
    const names = stamped
      ? [...new Set([...plan.stores, 'undo', 'device', 'words', 'outbox'])]
      : [...plan.stores];
    tx = store.db.transaction(names, 'readwrite', { durability: plan.durability ?? 'strict' });
    const touched: Touched[] = [];
    writes.push(quiet(tx.done));
    const parts: ActParts = { store, tx, writes, touched, stamped, counted: plan.counted ?? true };
    const value = await work(await actIn(parts));
    noteForHome(parts);
    if (plan.oneWrite === true) tx.commit();
    await Promise.all(writes);
    store.channel.announce(touched);
    return worked(value);
  } catch (error) {
    const refusal = await refusalAfter(tx, error);
    return error instanceof ClockDamaged ? 'clock-damaged' : refuse(refusal);
  }
}

// Chosen, not published: a file of many years' work is looked through once instead of being listed record by record.
const MOST_NOTED = 2000;

/** What this act touched is to go home: noted in its own transaction, so that nothing kept is ever left out. */
function noteForHome({ tx, writes, touched, home }: ActParts): void {
  const ids = home === undefined ? [] : touched.filter(({ store }) => goesHome(store));
  const rows = ids.length > MOST_NOTED ? ['*'] : ids.map(({ store, id }) => `${store}/${id}`);
  for (const id of rows) writes.push(quiet(tx.objectStore('outbox').put({ id, mark: home })));
}

async function refusalAfter(tx: Writing | undefined, error: unknown): Promise<StoreRefusal> {
  if (!tx) return refusalOf(error);
  try {
    tx.abort();
  } catch {
    // The database aborted it already: a full disk arrives that way.
  }
  await tx.done.catch(() => undefined);
  return error instanceof Refused ? error.refusal : refusalOf(tx.error ?? error);
}
