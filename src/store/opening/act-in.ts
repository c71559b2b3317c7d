import { canBeNow, seedStamp, stampMs, type Stamp } from '../base/clock.ts';
import { isGone, withListField, type Kept } from '../base/kept.ts';
import type { Id, Stamped, UndoChange } from '../base/records.ts';
import { parseKept, toKept, type RecordKind } from '../base/schema-common.ts';
import type { StoreRefusal } from '../base/store-refusal.ts';
import type { StoreName } from '../base/stores.ts';
import { differences, hasPaths, withoutTouch, withStamps } from './act-changes.ts';
import { quiet, Refused, type ActParts, type Writing } from './act-parts.ts';
import { keepLastStamp, takeStamp } from './act-stamp.ts';
import type { Act } from './act.ts';

/** What a piece of work may do in this transaction. */
export async function actIn(parts: ActParts): Promise<Act> {
  const { store, tx, writes, stamped } = parts;
  const nowMs = store.now();
  const stamp = stamped ? await takeStamp(parts, nowMs) : seedStamp;
  // A phone that has lost its date goes on behind what it logged last: the order is right, and the app says the rest.
  const at = canBeNow(nowMs) || !stamped ? nowMs : stampMs(stamp);
  const writing = writingIn(parts);
  const { kept, live } = readingIn(tx);
  const { putChanged, takeChanges } = changing(stamp, writing.putKept);
  return {
    at,
    stamp,
    tx,
    kept,
    ...writing,
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
    undoable(label, jobId) {
      const changes = takeChanges();
      if (changes.length === 0) return;
      const record = { id: stamp, at, label, changes };
      writing.putKept('undo', jobId === undefined ? record : { ...record, jobId });
    },
    observe(seen) {
      if (seen > stamp) writes.push(quiet(keepLastStamp(tx, seen)));
    },
    refuse: stop,
  };
}

function stop(refusal: StoreRefusal): never {
  throw new Refused(refusal);
}

function encoded<T extends { readonly id: Id }>(kind: RecordKind<T>, record: T & Stamped): Kept {
  const out = toKept(kind, record);
  return out.ok ? out.value : stop({ code: 'cannot-keep', store: kind.store, field: out.field });
}

function parsed<T extends { readonly id: Id }>(kind: RecordKind<T>, record: Kept): T & Stamped {
  const out = parseKept(kind, record);
  return out.ok ? out.value : stop({ code: 'record-unreadable', store: kind.store });
}

function readingIn(tx: Writing) {
  const kept = (name: StoreName, id: Id): Promise<Kept | undefined> => tx.objectStore(name).get(id);
  const live = async (name: StoreName, id: Id): Promise<Kept> => {
    const record = await kept(name, id);
    return !record || isGone(record) ? stop({ code: 'gone', store: name }) : record;
  };
  return { kept, live };
}

type Writes = Pick<Act, 'putKept' | 'putMany' | 'drop'>;

/**
 * The writes themselves; what each touched is told to the other tabs once all of it is kept. The words that its job is
 * found by are dropped with the first of them: the search never has older ones than the records.
 */
function writingIn({ tx, writes, touched, stamped }: ActParts): Writes {
  const jobs = new Set<unknown>();
  const put = (store: StoreName, record: Kept): Promise<unknown> => {
    touched.push({ store, id: record.id });
    const jobId = store === 'jobs' ? record.id : record['jobId'];
    if (stamped && typeof jobId === 'string' && !jobs.has(jobId)) {
      jobs.add(jobId);
      writes.push(quiet(tx.objectStore('words').delete(jobId)));
    }
    return quiet(tx.objectStore(store).put(withListField(store, record)));
  };
  return {
    putKept: (name, record) => void writes.push(put(name, record)),
    putMany: async (name, records) => void (await Promise.all(records.map((record) => put(name, record)))),
    drop(name, id) {
      writes.push(quiet(tx.objectStore(name).delete(id)));
      touched.push({ store: name, id });
    },
  };
}

/** Stamps each path of a record that differs, puts the record, and remembers it for undo. */
function changing(stamp: Stamp, putKept: Act['putKept']) {
  const changes: UndoChange[] = [];
  const putChanged: Act['changeKept'] = (name, before, after) => {
    const change = differences(name, before, after);
    const paths = new Set([...Object.keys(change.before), ...Object.keys(change.after)]);
    if (before && paths.size === 0) return;
    changes.push(withoutTouch(change));
    putKept(name, before ? withStamps(after, paths, stamp) : after);
  };
  /** What was changed so far and can be seen to be undone. */
  const takeChanges = () =>
    changes.splice(0).filter(({ made, before, after }) => made || hasPaths(before) || hasPaths(after));
  return { putChanged, takeChanges };
}
