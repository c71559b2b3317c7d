import { undoableStores } from '../base/stores.ts';
import { withStamps } from '../opening/act-changes.ts';
import { act, type Act } from '../opening/act.ts';
import type { Conflict } from './conflict-schema.ts';
import { readConflict } from './conflict-schema.ts';
import { isGone, type Kept } from '../base/kept.ts';
import { touchJob } from '../kept/jobs.ts';
import type { Store } from '../opening/open-store.ts';
import { fieldsFromPaths, isPlainObject, mapsOf, valuesByPath } from '../base/paths.ts';
import type { Id } from '../base/records.ts';
import { openAgain, putTogether } from '../kept/put-together.ts';
import { checkRecord } from '../kept/any-record.ts';
import type { StoreResult } from '../base/store-refusal.ts';

export type Settling = {
  readonly id: Id;
  /** Keep what stands, or take what the merge left out. */
  readonly take: 'now' | 'lost';
  /** What the undo button will say. */
  readonly label: string;
};

/**
 * Says which of two values it is. The field is written anew either way, so that every phone takes it from here, and the
 * record says that it was settled, so that no phone asks again.
 */
export async function settleConflict(store: Store, { id, take, label }: Settling): Promise<StoreResult<Id>> {
  return act(store, { stores: [...undoableStores, 'conflicts'] }, async (a) => {
    const conflict =
      readConflict(await a.kept('conflicts', id)) ?? a.refuse({ code: 'gone', store: 'conflicts' });
    const { of, jobId } = conflict;
    if (jobId !== undefined) await touchJob(a, jobId);
    const record = await a.kept(of.store, of.id);
    if (!record || isGone(record)) return a.refuse({ code: 'gone', store: of.store });
    const chosen = settled(a, record, { conflict, take });
    // A step that was done with the other phone's torque, say, was not done with this one.
    const opened = openAgain(of.store, { before: record, after: chosen, stamp: a.stamp });
    const after = putTogether(of.store, opened);
    const checked = checkRecord(of.store, after);
    if (!checked.ok) return a.refuse({ code: 'cannot-keep', store: of.store, field: checked.field });
    a.changeKept(of.store, record, after);
    a.undoable(label, jobId);
    return of.id;
  });
}

function settled(
  a: Act,
  record: Kept,
  { conflict, take }: { readonly conflict: Conflict; readonly take: Settling['take'] },
): Kept {
  const values = valuesByPath(record);
  const fields = [...conflict.fields, ...conflict.along];
  for (const { path, value } of take === 'lost' ? fields : []) {
    if (value === undefined) values.delete(path);
    else values.set(path, value);
  }
  const paths = fields.map(({ path }) => path);
  const known = isPlainObject(record['settled']) ? record['settled'][conflict.lostStamp] : undefined;
  const before: readonly unknown[] = Array.isArray(known) ? known : [];
  values.set(`settled.${conflict.lostStamp}`, [...new Set([...before, ...paths])]);
  const { broughtBack } = record;
  const own = { id: record.id, stamps: record['stamps'], ...(broughtBack === true && { broughtBack }) };
  return withStamps({ ...fieldsFromPaths(values, mapsOf(record)), ...own }, paths, a.stamp);
}
