import type { BackupStore } from '../base/stores.ts';
import type { Act } from '../opening/act.ts';
import type { Noting } from './backup-brought.ts';
import type { StagedFile, StagedRecord } from './backup-staged.ts';
import { differingFields } from '../phones/conflicts-find.ts';
import type { Kept } from '../base/kept.ts';
import { isPlainObject } from '../base/paths.ts';
import { unitOf } from '../base/unit-of.ts';
import { readConflict, type Conflict } from '../phones/conflict-schema.ts';
import { questionId } from '../phones/question-id.ts';
import { isSameQuestion, questionsAsOne } from '../phones/questions-as-one.ts';
import { asSeen, metByBoth, seenOfOne } from '../phones/record-seen.ts';
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
import { startSeenRows } from './seen-rows.ts';

/** A file's records met one by one with those that are here. */
export type Meeting = {
  /** What was seen before, for the day the file is taken out again. */
  readonly seenBefore: SeenLists;
  readonly meet: (store: BackupStore, here: Kept | undefined, other: StagedRecord) => Promise<void>;
  /** Keeps what was found, and that this phone now has seen what the file's had. */
  readonly end: (noting: Noting) => Promise<void>;
};

/** Looks, while a file is put in, for fields that both phones wrote without having seen the other's. */
export async function startMeeting(a: Act, file: StagedFile): Promise<Meeting> {
  const own = seenUpTo(a.stamp);
  const before = (await keptSeen(a.tx)) ?? (await seenByRecords(a.tx));
  const seenHere = seenByBoth(before, own);
  const seenThere = seenBelieved(file.seen, { last: a.stamp, nowMs: a.at });
  const isPaired = await pairedIn(a);
  const rows = await startSeenRows(a, isPaired);
  const found: Conflict[] = [];
  const { phone, fitter, job } = file.from;
  const from = { ...(phone !== undefined && { phone }), ...(fitter !== undefined && { fitter }) };
  return {
    seenBefore: listsOf(before),
    async meet(store, here, other) {
      const known = await rows.known(store, other.record.id);
      const unit = unitOf(store, here ?? other.record);
      const differing = differingFields({
        store,
        here,
        other: other.record,
        seenHere: known ? asSeen(metByBoth(known, seenOfOne(seenHere, unit))) : seenHere,
        seenThere: other.seen ? asSeen(metByBoth(other.seen, seenOfOne(seenThere, unit))) : seenThere,
      });
      await rows.raise(store, { here, other, known });
      if (!here || differing.length === 0) return;
      const jobId = store === 'jobs' ? here.id : here['jobId'];
      const of = { store, id: here.id };
      const about = { of, foundAt: a.at, from, ...(typeof jobId === 'string' && { jobId }) };
      found.push(...differing.map((one) => ({ ...one, ...about, id: questionId(of, one) })));
    },
    async end(noting) {
      // On a paired phone they are at home too, and another phone may undo its answer.
      if (!isPaired) await dropSettled(a);
      for (const conflict of found)
        // oxlint-disable-next-line no-await-in-loop
        await keepQuestion(a, noting, conflict);
      const brought = job === undefined ? seenThere : seenOfUnit(seenThere, `jobs/${job}`);
      await putSeen(a, seenByBoth(seenHere, brought));
    },
  };
}

async function pairedIn(a: Act): Promise<boolean> {
  const clock: unknown = await a.tx.objectStore('device').get('clock');
  return isPlainObject(clock) && clock['home'] === true;
}

async function keepQuestion(a: Act, noting: Noting, conflict: Conflict): Promise<void> {
  const kept = await a.kept('conflicts', conflict.id);
  const known = readConflict(kept);
  const together = known ? questionsAsOne(known, conflict) : conflict;
  if (known && isSameQuestion(known, together)) return;
  await noting.note('conflicts', kept, together);
  a.putKept('conflicts', together);
}

/** After what a file brought was taken out again: of what stays, all is seen as it was, of the rest what was seen before. */
export async function forgetSeen(a: Act, seenBefore: unknown, staying: Iterable<string>): Promise<void> {
  const before = seenIn(seenBefore);
  const now = await keptSeen(a.tx);
  if (!before || !now) return;
  const kept = [...staying].reduce((seen, unit) => seenByBoth(seen, seenOfUnit(now, unit)), before);
  await putSeen(a, kept);
}

/** Writes down what this phone has seen of everything. */
export async function putSeen(a: Act, seen: Seen): Promise<void> {
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
