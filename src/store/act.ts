import type { IDBPTransaction } from 'idb';
import { refuse, worked } from '../engine/length/refusal.ts';
import { canBeNow, isDeviceId, isSoundStamp, nextStamp, seedStamp, stampMs, type Stamp } from './clock.ts';
import { isGone, withListField, type Kept, type StoreName } from './kept.ts';
import { newId } from './new-id.ts';
import { refuseClosed, type Store } from './open-store.ts';
import { canonicalText, isPlainObject, valuesByPath } from './paths.ts';
import type { Id, Stamped, UndoChange } from './records.ts';
import { parseKept, toKept, type RecordKind } from './schemas/common.ts';
import { refusalOf, type StoreRefusal, type StoreResult } from './store-refusal.ts';
import type { Touched } from './watch.ts';

type Writing = IDBPTransaction<unknown, string[], 'readwrite'>;

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

// Leaving a transaction from any depth is what an exception is for; it is caught in `tryAct` and never leaves this file.
class Refused extends Error {
  readonly refusal: StoreRefusal;
  constructor(refusal: StoreRefusal) {
    super(refusal.code);
    this.refusal = refusal;
  }
}

// The same way out: no stamp can be given behind one that can't be read.
class ClockDamaged extends Error {}

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
    const names = stamped ? [...new Set([...plan.stores, 'undo', 'device'])] : [...plan.stores];
    tx = store.db.transaction(names, 'readwrite', { durability: plan.durability ?? 'strict' });
    const touched: Touched[] = [];
    writes.push(quiet(tx.done));
    const value = await work(
      await actIn({ store, tx, writes, touched, stamped, counted: plan.counted ?? true }),
    );
    if (plan.oneWrite === true) tx.commit();
    await Promise.all(writes);
    store.channel.announce(touched);
    return worked(value);
  } catch (error) {
    const refusal = await refusalAfter(tx, error);
    return error instanceof ClockDamaged ? 'clock-damaged' : refuse(refusal);
  }
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

type ActParts = {
  readonly store: Store;
  readonly tx: Writing;
  readonly writes: Promise<unknown>[];
  readonly touched: Touched[];
  readonly stamped: boolean;
  readonly counted: boolean;
};

async function actIn({ store, tx, writes, touched, stamped, counted }: ActParts): Promise<Act> {
  const nowMs = store.now();
  const stamp = stamped ? await takeStamp({ tx, writes, nowMs, counted }) : seedStamp;
  // A phone that has lost its date goes on behind what it logged last: the order is right, and the app says the rest.
  const at = canBeNow(nowMs) || !stamped ? nowMs : stampMs(stamp);
  const changes: UndoChange[] = [];
  const stop = (refusal: StoreRefusal): never => {
    throw new Refused(refusal);
  };
  const putKept = (name: StoreName, record: Kept): void => {
    writes.push(quiet(tx.objectStore(name).put(withListField(name, record))));
    touched.push({ store: name, id: record.id });
  };
  const kept = (name: StoreName, id: Id): Promise<Kept | undefined> => tx.objectStore(name).get(id);
  const live = async (name: StoreName, id: Id): Promise<Kept> => {
    const record = await kept(name, id);
    return !record || isGone(record) ? stop({ code: 'gone', store: name }) : record;
  };
  /** Stamps each path that differs, puts the record, and remembers it for undo. */
  const putChanged = (name: StoreName, before: Kept | undefined, after: Kept): void => {
    const change = differences(name, before, after);
    const paths = new Set([...Object.keys(change.before), ...Object.keys(change.after)]);
    if (before && paths.size === 0) return;
    changes.push(withoutTouch(change));
    putKept(name, before ? withStamps(after, paths, stamp) : after);
  };
  const encoded = <T extends { readonly id: Id }>(kind: RecordKind<T>, record: T & Stamped): Kept => {
    const out = toKept(kind, record);
    return out.ok ? out.value : stop({ code: 'cannot-keep', store: kind.store, field: out.field });
  };
  const parsed = <T extends { readonly id: Id }>(kind: RecordKind<T>, record: Kept): T & Stamped => {
    const out = parseKept(kind, record);
    return out.ok ? out.value : stop({ code: 'record-unreadable', store: kind.store });
  };
  return {
    at,
    stamp,
    tx,
    kept,
    get: async (kind, id) => parsed(kind, await live(kind.store, id)),
    make(kind, record) {
      const made = { ...record, stamps: { '*': stamp } };
      putChanged(kind.store, undefined, encoded(kind, made));
      return made;
    },
    async change(kind, id, changed) {
      const before = await live(kind.store, id);
      const after = changed(parsed(kind, before));
      putChanged(kind.store, before, encoded(kind, after));
      return after;
    },
    changeKept: putChanged,
    async remove(name, id) {
      const before = await live(name, id);
      const { broughtBack: _again, ...rest } = before;
      putChanged(name, before, { ...rest, id, deleted: stamp });
    },
    putKept,
    async putMany(name, records) {
      await Promise.all(records.map((record) => tx.objectStore(name).put(withListField(name, record))));
      touched.push(...records.map(({ id }) => ({ store: name, id })));
    },
    drop(name, id) {
      writes.push(quiet(tx.objectStore(name).delete(id)));
      touched.push({ store: name, id });
    },
    undoable(label, jobId) {
      const undone = changes
        .splice(0)
        .filter((change) => change.made || hasPaths(change.before) || hasPaths(change.after));
      if (undone.length === 0) return;
      const record = { id: stamp, at, label, changes: undone };
      putKept('undo', jobId === undefined ? record : { ...record, jobId });
    },
    observe(seen) {
      if (seen > stamp) writes.push(quiet(keepLastStamp(tx, seen)));
    },
    refuse: stop,
  };
}

type StampParts = {
  readonly tx: Writing;
  readonly writes: Promise<unknown>[];
  readonly nowMs: number;
  readonly counted: boolean;
};

// The last stamp lives in the database and is read and written in the same transaction, so that two tabs of one
// phone can't give the same stamp twice and a clock that was set back doesn't run the stamps back.
async function takeStamp({ tx, writes, nowMs, counted }: StampParts): Promise<Stamp> {
  const device: unknown = await tx.objectStore('device').get('clock');
  if (device === undefined ? await wasUsed(tx) : !isSoundClock(device)) throw new ClockDamaged();
  const known = isPlainObject(device) ? device : {};
  const deviceId = isDeviceId(known['deviceId']) ? known['deviceId'] : newId().slice(0, 8);
  const last = isSoundStamp(known['last']) ? known['last'] : undefined;
  const stamp = nextStamp({ last, nowMs, deviceId });
  const count = counted ? countedOn(known, nowMs) : {};
  writes.push(
    quiet(tx.objectStore('device').put({ ...known, ...count, id: 'clock', deviceId, last: stamp })),
  );
  return stamp;
}

/** Both are written from the first act on; what a file brought could once carry the last stamp off to the end of all time. */
function isSoundClock(device: unknown): boolean {
  return isPlainObject(device) && isDeviceId(device['deviceId']) && isSoundStamp(device['last']);
}

/** Where nothing was ever done there is nothing to be behind. */
async function wasUsed(tx: Writing): Promise<boolean> {
  const [acts, notes] = await Promise.all([tx.objectStore('undo').count(), tx.objectStore('device').count()]);
  return acts + notes > 0;
}

// How much was changed since the last backup. It goes with the stamp, which is written anyway.
function countedOn({ acts, since }: Readonly<Record<string, unknown>>, nowMs: number) {
  return {
    acts: (typeof acts === 'number' ? acts : 0) + 1,
    since: typeof since === 'number' ? since : nowMs,
  };
}

async function keepLastStamp(tx: Writing, last: Stamp): Promise<void> {
  const clock: Kept | undefined = await tx.objectStore('device').get('clock');
  await tx.objectStore('device').put({ ...clock, id: 'clock', last });
}

function differences(store: StoreName, before: Kept | undefined, after: Kept): UndoChange {
  if (!before) return { store, id: after.id, made: true, before: {}, after: {} };
  const old = valuesByPath(before);
  const fresh = valuesByPath(after);
  const differing = (values: Map<string, unknown>) =>
    Object.fromEntries(
      [...values].filter(([path]) => canonicalText(old.get(path)) !== canonicalText(fresh.get(path))),
    );
  return { store, id: after.id, made: false, before: differing(old), after: differing(fresh) };
}

// When a job or worksheet was last touched is no act of the fitter's, so undo leaves it alone.
function withoutTouch({ before, after, ...change }: UndoChange): UndoChange {
  const { touchedAt: _before, ...restBefore } = before;
  const { touchedAt: _after, ...restAfter } = after;
  return { ...change, before: restBefore, after: restAfter };
}

function hasPaths(values: Readonly<Record<string, unknown>>): boolean {
  return Object.keys(values).length > 0;
}

/** The record with these paths stamped anew. */
export function withStamps(record: Kept, paths: Iterable<string>, stamp: Stamp): Kept {
  const stamps = isPlainObject(record['stamps']) ? record['stamps'] : {};
  return {
    ...record,
    id: record.id,
    stamps: { ...stamps, ...Object.fromEntries([...paths].map((path) => [path, stamp])) },
  };
}

/** Marks a promise as looked after: it is awaited with the others later, and an abort must not count as unhandled before that. */
function quiet<T>(promise: Promise<T>): Promise<T> {
  promise.catch(() => undefined);
  return promise;
}
