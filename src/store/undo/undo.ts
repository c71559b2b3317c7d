import { type StoreName, undoableStores } from '../base/stores.ts';
import { worked } from '../../engine/length/refusal.ts';
import { withStamps } from '../opening/act-changes.ts';
import { act, type Act } from '../opening/act.ts';
import { isGone, isStamped, type Kept } from '../base/kept.ts';
import type { Store } from '../opening/open-store.ts';
import { canonicalText, fieldsFromPaths, isPlainObject, mapsOf, valuesByPath } from '../base/paths.ts';
import { read } from '../opening/read.ts';
import type * as PutTogether from '../kept/put-together.ts';
import type { Id, UndoChange, UndoRecord } from '../base/records.ts';
import { readUndo } from './undo-schema.ts';
import type { StoreResult } from '../base/store-refusal.ts';
import { isWorkedOnByOthers, type Readable } from './undo-others.ts';

export type Undoable = Pick<UndoRecord, 'id' | 'at' | 'label' | 'brought'> & {
  /** Something else was done or logged in its job after it. */
  readonly workedSince?: true;
};

type Getter = {
  readonly tx: Readable;
  readonly one: (store: StoreName, id: Id) => Promise<Kept | undefined>;
  /** What can't be undone and stands under what an act made: readings, cuts with passes, signed sheets. */
  readonly loggedUnder: (change: UndoChange) => Promise<readonly Kept[]>;
};

/**
 * The newest act that can be taken back: of this job, or of anything. It survives a reload, as it was kept together
 * with the act. An act is passed over when what it changed has been changed again since, on another phone say, or when a
 * reading or a pass was logged, a sheet signed, or another phone worked, in what it made.
 */
export async function latestUndo(store: Store, jobId?: Id): Promise<Undoable | undefined> {
  return lookBack(store, jobId, async (record, tx) =>
    (await stillStands(record, getterIn(tx)))
      ? { ...undoableOf(record), ...((await isWorkedSince(record, tx)) && { workedSince: true }) }
      : undefined,
  );
}

/** The newest act of a job that isn't offered because another phone's work would go with it, in the words of its undo. */
export async function undoHeldByOthers(store: Store, jobId: Id): Promise<string | undefined> {
  return lookBack(store, jobId, async (record, tx) =>
    (await isHeldByOthers(record, tx)) ? record.label : undefined,
  );
}

// Chosen, not published: further back nobody remembers what an undo would undo.
const MOST_LOOKED_AT = 20;

/** The first answer that an act gives, the newest asked first. */
async function lookBack<T>(
  store: Store,
  jobId: Id | undefined,
  ask: (record: UndoRecord, tx: Readable) => Promise<T | undefined>,
): Promise<T | undefined> {
  return read(store, [...undoableStores, 'sheets', 'undo'], async (tx) => {
    const log = tx.objectStore('undo');
    let cursor =
      jobId === undefined
        ? await log.openCursor(null, 'prev')
        : await log.index('jobId+id').openCursor(IDBKeyRange.bound([jobId], [jobId, []]), 'prev');
    for (let looked = 0; cursor && looked < MOST_LOOKED_AT; looked += 1) {
      const record = readUndo(cursor.value);
      // A cursor goes one by one.
      // oxlint-disable-next-line no-await-in-loop
      const answer = record && (await ask(record, tx));
      if (answer !== undefined) return answer;
      // oxlint-disable-next-line no-await-in-loop
      cursor = await cursor.continue();
    }
    return undefined;
  });
}

function undoableOf({ id, at, label, brought }: UndoRecord): Undoable {
  return brought ? { id, at, label, brought } : { id, at, label };
}

async function isWorkedSince({ at, jobId }: UndoRecord, tx: Readable): Promise<boolean> {
  const job = jobId === undefined ? undefined : await tx.objectStore('jobs').get(jobId);
  return job !== undefined && !isGone(job) && Number(job['touchedAt']) > at;
}

/** Takes an act back, in one transaction, and says which. The record goes: the one before it is next. */
export async function undoLast(store: Store, undoId: Id): Promise<StoreResult<string>> {
  // The code for it comes when it is wanted, and before the act: a transaction waits for no file.
  const together = await import('../kept/put-together.ts');
  const undone = await act(store, { stores: [...undoableStores, 'sheets'] }, async (a) => {
    const record = readUndo(await a.kept('undo', undoId)) ?? a.refuse({ code: 'nothing-to-undo' });
    if (record.brought) return undefined;
    const { label } = record;
    if (await isHeldByOthers(record, a.tx)) return a.refuse({ code: 'others-since', label });
    if (!(await stillStands(record, getterIn(a.tx)))) return a.refuse({ code: 'changed-since', label });
    await Promise.all(record.changes.map((change) => takeBack(a, change, together)));
    a.drop('undo', undoId);
    return label;
  });
  if (!undone.ok) return undone;
  if (undone.value !== undefined) return worked(undone.value);
  // What a file brought is another way of undoing, seldom wanted.
  const { undoBrought } = await import('../file/undo-brought.ts');
  return undoBrought(store, undoId);
}

async function takeBack(
  a: Act,
  change: UndoChange,
  { openAgain, putTogether }: typeof PutTogether,
): Promise<void> {
  const kept = await a.kept(change.store, change.id);
  if (!kept) return;
  // A setting that was never set has its usual value again; no other phone has to hear of that.
  if (change.made && change.store === 'settings') return a.drop('settings', change.id);
  const values = valuesByPath(kept);
  if (change.made) values.set('deleted', a.stamp);
  for (const path of pathsOf(change)) {
    // What was put back is removed again: now, so that it holds against the putting back on another phone.
    if (path in change.before) values.set(path, path === 'deleted' ? a.stamp : change.before[path]);
    else values.delete(path);
  }
  const paths = change.made ? ['deleted'] : pathsOf(change);
  const { broughtBack } = kept;
  const own = {
    id: kept.id,
    stamps: kept['stamps'],
    ...(broughtBack === true && !change.made ? { broughtBack } : {}),
  };
  const back: Kept = { ...fieldsFromPaths(values, mapsOf(kept)), ...own };
  const { stamp } = a;
  const opened = openAgain(change.store, { before: kept, after: withStamps(back, paths, stamp), stamp });
  a.putKept(change.store, putTogether(change.store, opened));
}

function pathsOf(change: UndoChange): string[] {
  return [...new Set([...Object.keys(change.before), ...Object.keys(change.after)])];
}

/**
 * Whether every field still is as the act left it, and nothing that was made holds a reading, a pass, a signed sheet or
 * another phone's work by now.
 */
async function stillStands(record: UndoRecord, get: Getter): Promise<boolean> {
  const standing = await Promise.all(record.changes.map((change) => changeStands(change, get, record.id)));
  return standing.every(Boolean) && !(await isHeldByOthers(record, get.tx));
}

async function isHeldByOthers({ id, changes }: UndoRecord, tx: Readable): Promise<boolean> {
  const made = changes.filter((change) => change.made);
  const held = await Promise.all(made.map((change) => isWorkedOnByOthers(tx, change, id)));
  return held.some(Boolean);
}

async function changeStands(change: UndoChange, get: Getter, act: Id): Promise<boolean> {
  const kept = await get.one(change.store, change.id);
  if (!kept || isSignedUnder(change, kept, act)) return false;
  if (change.made) return !isGone(kept) && (await get.loggedUnder(change)).every(isGone);
  const values = valuesByPath(kept);
  return pathsOf(change).every((path) =>
    path === 'deleted'
      ? values.has(path) === path in change.after
      : canonicalText(values.get(path)) === canonicalText(change.after[path]),
  );
}

/** A reason that was signed under stands: another is written, or it is taken back, but the act is not undone. */
function isSignedUnder(change: UndoChange, kept: Kept, act: Id): boolean {
  if (!isStamped(kept) || !pathsOf(change).some((path) => path.startsWith('reasons.'))) return false;
  return (kept.stamps['signedOff'] ?? '') > act;
}

function getterIn(tx: Readable): Getter {
  const readings = (index: string, id: Id) =>
    tx
      .objectStore('readings')
      .index(index)
      .getAll(IDBKeyRange.bound([id], [id, []]));
  const ofJob = (store: StoreName, id: Id) => tx.objectStore(store).index('jobId').getAll(id);
  return {
    tx,
    one: (store, id) => tx.objectStore(store).get(id),
    loggedUnder: async ({ store, id }) => {
      if (store === 'features') return readings('featureId+at', id);
      if (store === 'cuts') return [(await tx.objectStore('cuts').get(id)) ?? []].flat().filter(hasPasses);
      if (store !== 'jobs') return [];
      const cuts = (await ofJob('cuts', id)).filter(hasPasses);
      return [...(await readings('jobId+at', id)), ...cuts, ...(await ofJob('sheets', id))];
    },
  };
}

function hasPasses({ passes }: Kept): boolean {
  return isPlainObject(passes) && Object.keys(passes).length > 0;
}
