import type { BackupStore } from '../base/stores.ts';
import type { Act } from '../opening/act.ts';
import type { Noting } from './backup-brought.ts';
import type { StagedFile } from './backup-staged.ts';
import { differingFields } from '../phones/conflicts-find.ts';
import type { Kept, KeptStamped } from '../base/kept.ts';
import { newId } from '../base/new-id.ts';
import { readConflict, type Conflict } from '../phones/conflict-schema.ts';
import {
  listsOf,
  seenBelieved,
  seenByBoth,
  seenIn,
  seenOfUnit,
  seenUpTo,
  type Seen,
  type SeenLists,
} from '../phones/seen.ts';
import { keptSeen, seenByRecords } from '../phones/seen-here.ts';
import { settledIn } from '../phones/conflicts-open.ts';

/** A file's records met one by one with those that are here. */
export type Meeting = {
  /** What was seen before, for the day the file is taken out again. */
  readonly seenBefore: SeenLists;
  readonly meet: (store: BackupStore, here: Kept | undefined, other: KeptStamped) => void;
  /** Keeps what was found, and that this phone now has seen what the file's had. */
  readonly end: (noting: Noting) => Promise<void>;
};

/** Looks, while a file is put in, for fields that both phones wrote without having seen the other's. */
export async function startMeeting(a: Act, file: StagedFile): Promise<Meeting> {
  const own = seenUpTo(a.stamp);
  const before = (await keptSeen(a.tx)) ?? (await seenByRecords(a.tx));
  const seenHere = seenByBoth(before, own);
  const seenThere = seenBelieved(file.seen, { last: a.stamp, nowMs: a.at });
  const found: Conflict[] = [];
  const { phone, fitter, job } = file.from;
  const from = { ...(phone !== undefined && { phone }), ...(fitter !== undefined && { fitter }) };
  return {
    seenBefore: listsOf(before),
    meet(store, here, other) {
      const differing = differingFields({ store, here, other, seenHere, seenThere });
      if (!here || differing.length === 0) return;
      const jobId = store === 'jobs' ? here.id : here['jobId'];
      const of = { store, id: here.id };
      const about = { of, foundAt: a.at, from, ...(typeof jobId === 'string' && { jobId }) };
      found.push(...differing.map((one) => ({ ...one, ...about, id: newId() })));
    },
    async end(noting) {
      await dropSettled(a);
      await Promise.all(found.map((conflict) => noting.note('conflicts', undefined, conflict)));
      await a.putMany('conflicts', found);
      const brought = job === undefined ? seenThere : seenOfUnit(seenThere, `jobs/${job}`);
      await putSeen(a, seenByBoth(seenHere, brought));
    },
  };
}

/** After what a file brought was taken out again: of what stays, all is seen as it was, of the rest what was seen before. */
export async function forgetSeen(a: Act, seenBefore: unknown, staying: Iterable<string>): Promise<void> {
  const before = seenIn(seenBefore);
  const now = await keptSeen(a.tx);
  if (!before || !now) return;
  const kept = [...staying].reduce((seen, unit) => seenByBoth(seen, seenOfUnit(now, unit)), before);
  await putSeen(a, kept);
}

async function putSeen(a: Act, seen: Seen): Promise<void> {
  await a.tx.objectStore('device').put({ id: 'seen', lists: listsOf(seen) });
}

/** Those that were settled stay only for an undo, which is seldom wanted after another file. */
async function dropSettled(a: Act): Promise<void> {
  const kept: unknown[] = await a.tx.objectStore('conflicts').getAll();
  for (const one of kept) {
    const conflict = readConflict(one);
    if (!conflict) continue;
    // oxlint-disable-next-line no-await-in-loop
    const record = await a.kept(conflict.of.store, conflict.of.id);
    if (!record || settledIn(record, conflict)) a.drop('conflicts', conflict.id);
  }
}
