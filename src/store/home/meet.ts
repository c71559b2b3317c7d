import { isSoundStamp, type Stamp } from '../base/clock.ts';
import { isStamped, type Kept, type KeptStamped } from '../base/kept.ts';
import { latestStamp } from '../base/merge.ts';
import { newId } from '../base/new-id.ts';
import { isPlainObject } from '../base/paths.ts';
import { backupStores, type BackupStore } from '../base/stores.ts';
import { unitOf } from '../base/unit-of.ts';
import { bringBack } from '../file/backup-bring-back.ts';
import { forgetBrought } from '../file/backup-brought.ts';
import { readingDiffers, sheetDiffers } from '../file/backup-compare.ts';
import { mergedWith } from '../file/backup-merged.ts';
import { act, type Act } from '../opening/act.ts';
import { readConflict, type Conflict } from '../phones/conflict-schema.ts';
import { differingFields } from '../phones/conflicts-find.ts';
import { questionId } from '../phones/question-id.ts';
import { isSameQuestion, questionsAsOne } from '../phones/questions-as-one.ts';
import {
  asSeen,
  hasMetAllOf,
  isAsMade,
  metBy,
  metByBoth,
  rowOf,
  seenInRow,
  seenOfOne,
  seenRowId,
  type RecordSeen,
} from '../phones/record-seen.ts';
import { keptSeen } from '../phones/seen-here.ts';
import type { Seen } from '../phones/seen.ts';
import type { StoreResult } from '../base/store-refusal.ts';
import type { Opened } from './doc-form.ts';
import type { Home } from './home-context.ts';
import type { OutboxRow } from './home-rows.ts';

/** A document of home's that was opened, with where it stood; `others` where home holds more than one leaf of it. */
export type Coming = {
  readonly docId: string;
  readonly rev: string;
  readonly opened: Opened;
  readonly others?: true;
};

export type Met =
  /** `lacking`: outbox ids of what home's copy has not met all of. */
  | { readonly code: 'met'; readonly lacking: ReadonlySet<string>; readonly closed: readonly Coming[] }
  /** Home has a write of this phone's that it does not know: it was put back to an older state of itself. */
  | { readonly code: 'unknown-own-write' };

const met = [...backupStores, 'conflicts', 'brought', 'home', 'outbox', 'device', 'undo', 'words'] as const;

/**
 * Records from home meet those that are here, in one transaction, by the same rules as a file's: field by field the later
 * stays, what was written apart is asked, what was removed while something was logged in it comes back. Where home's copy
 * lacks anything of ours, that is to be sent.
 */
export async function meetAll(home: Home, coming: readonly Coming[]): Promise<StoreResult<Met>> {
  if (coming.length === 0) return { ok: true, value: { code: 'met', lacking: new Set(), closed: [] } };
  let isUnknown = false;
  const done = await act(
    home.store,
    { stores: met, durability: 'relaxed', stamped: false },
    async (a): Promise<Met> => {
      const meeting = await startMeeting(a, home);
      for (const one of coming) {
        // One after the other: two of them may be leaves of one document.
        // oxlint-disable-next-line no-await-in-loop
        if (!(await meetOne(meeting, one))) {
          isUnknown = true;
          return a.refuse({ code: 'nothing-to-undo' });
        }
      }
      await endMeeting(meeting);
      return { code: 'met', lacking: meeting.lacking, closed: meeting.closed };
    },
  );
  return !done.ok && isUnknown ? { ok: true, value: { code: 'unknown-own-write' } } : done;
}

type Meeting = {
  readonly a: Act;
  readonly home: Home;
  readonly clock: Readonly<Record<string, unknown>>;
  readonly own: string;
  readonly seenHere: Seen;
  readonly lacking: Set<string>;
  readonly closed: Coming[];
  readonly ids: Record<'jobs' | 'features' | 'checks' | 'cuts', Set<string>>;
  latest: Stamp;
  /** Jobs whose words for the search are dropped already. */
  readonly found: Set<string>;
};

async function startMeeting(a: Act, home: Home): Promise<Meeting> {
  // Home will hold what the last file brought: taking it out here alone would not take it out.
  await forgetBrought(a);
  const clock: unknown = await a.tx.objectStore('device').get('clock');
  const known = isPlainObject(clock) ? clock : {};
  return {
    a,
    home,
    clock: known,
    own: String(known['deviceId']),
    seenHere: (await keptSeen(a.tx)) ?? new Map(),
    lacking: new Set(),
    closed: [],
    ids: { jobs: new Set(), features: new Set(), checks: new Set(), cuts: new Set() },
    latest: '',
    found: new Set(),
  };
}

/** False where home knows a write of this phone's own that is not here. */
async function meetOne(meeting: Meeting, coming: Coming): Promise<boolean> {
  const { opened } = coming;
  if (opened.of === 'question') {
    await meetQuestion(meeting, opened.question, coming.others === true);
    return true;
  }
  return meetRecord(meeting, coming, opened);
}

async function meetRecord(
  meeting: Meeting,
  coming: Coming,
  { store, record, met: metThere }: Opened & { readonly of: 'record' },
): Promise<boolean> {
  const { a, own } = meeting;
  const [here, row] = await Promise.all([
    a.kept(store, record.id),
    a.kept('home', seenRowId(store, record.id)),
  ]);
  const stood = here && isStamped(here) ? metBy(here) : new Map<string, Stamp>();
  const before = metByBoth(stood, seenInRow(row));
  if ((metThere.get(own) ?? '') > (before.get(own) ?? '')) return false;
  if (isOtherThing(store, here, record)) {
    meeting.closed.push(coming);
    return true;
  }
  const all = metByBoth(before, metThere);
  const unit = unitOf(store, here ?? record);
  const seenHere = asSeen(metByBoth(before, seenOfOne(meeting.seenHere, unit)));
  const found = differingFields({ store, here, other: record, seenHere, seenThere: asSeen(metThere) });
  const { outcome, merged } = mergedWith(store, here, record);
  if (outcome !== 'same') {
    a.putKept(store, merged);
    dropWords(meeting, store, merged);
  }
  noteMet(meeting, { store, merged, all, row });
  for (const one of here ? found : []) {
    // oxlint-disable-next-line no-await-in-loop
    await keepQuestion(meeting, questionOf(meeting, { store, here: here ?? record, one, there: record }));
  }
  meeting.home.onMet?.({
    docId: coming.docId,
    rev: coming.rev,
    store,
    id: record.id,
    here,
    there: record,
    metThere,
  });
  if (coming.others === true || !hasMetAllOf(metThere, merged))
    await toSend(meeting, `${store}/${record.id}`);
  noteIds(meeting, store, merged);
  const latest = latestStamp(record);
  if (latest > meeting.latest) meeting.latest = latest;
  return true;
}

/** What never changes and stands here with other figures: whichever is right, home's is not taken for it. */
function isOtherThing(store: BackupStore, here: Kept | undefined, there: KeptStamped): boolean {
  return (
    (store === 'readings' && readingDiffers(here, there)) || (store === 'sheets' && sheetDiffers(here, there))
  );
}

type Noted = {
  readonly store: BackupStore;
  readonly merged: KeptStamped;
  readonly all: RecordSeen;
  readonly row: Kept | undefined;
};

/** A copy that is as it was made says by itself what it has met. */
function noteMet({ a }: Meeting, { store, merged, all, row }: Noted): void {
  const own = metBy(merged);
  const isPlain = isAsMade(merged) && [...all].every(([device, stamp]) => own.get(device) === stamp);
  if (isPlain && row === undefined) return;
  a.putKept('home', rowOf(store, merged.id, all));
}

function questionOf(
  { a, home }: Meeting,
  {
    store,
    here,
    one,
    there,
  }: {
    readonly store: BackupStore;
    readonly here: Kept;
    readonly one: ReturnType<typeof differingFields>[number];
    readonly there: KeptStamped;
  },
): Conflict {
  const jobId = store === 'jobs' ? here.id : here['jobId'];
  const of = { store, id: here.id };
  const isTheirs = Object.values(there.stamps).includes(one.lostStamp);
  const from = home.whoIs(isTheirs ? one.lostStamp : one.wonStamp);
  return {
    ...one,
    id: questionId(of, one),
    of,
    foundAt: a.at,
    from,
    ...(typeof jobId === 'string' && { jobId }),
  };
}

async function keepQuestion(meeting: Meeting, question: Conflict): Promise<void> {
  const known = readConflict(await meeting.a.kept('conflicts', question.id));
  const together = known ? questionsAsOne(known, question) : question;
  if (known && isSameQuestion(known, together)) return;
  meeting.a.putKept('conflicts', together);
  await toSend(meeting, `conflicts/${question.id}`);
}

async function meetQuestion(meeting: Meeting, there: Conflict, hasOthers: boolean): Promise<void> {
  const { a } = meeting;
  const here = readConflict(await a.kept('conflicts', there.id));
  const together = here ? questionsAsOne(here, there) : there;
  if (!here || !isSameQuestion(here, together)) a.putKept('conflicts', together);
  if (hasOthers || !isSameQuestion(there, together)) await toSend(meeting, `conflicts/${there.id}`);
}

/** Noted to be sent; a note that an act made since stays as it is. */
async function toSend({ a, lacking }: Meeting, id: string): Promise<void> {
  lacking.add(id);
  const noted = await a.kept('outbox', id);
  if (noted === undefined) a.putKept('outbox', { id, mark: newId() } satisfies OutboxRow);
}

/** The words that a job is found by are made anew from what came. */
function dropWords({ a, found }: Meeting, store: BackupStore, record: Kept): void {
  const jobId = store === 'jobs' ? record.id : record['jobId'];
  if (typeof jobId !== 'string' || found.has(jobId)) return;
  found.add(jobId);
  a.drop('words', jobId);
}

function noteIds({ ids }: Meeting, store: BackupStore, record: KeptStamped): void {
  if (store === 'jobs' || store === 'features' || store === 'checks' || store === 'cuts')
    ids[store].add(record.id);
  const { jobId, featureId, checkId } = record;
  // A job comes back by what was logged in it, a check by its feature: whichever comes last looks at the other.
  if ((store === 'readings' || store === 'cuts') && typeof jobId === 'string') ids.jobs.add(jobId);
  if (store === 'readings' && typeof featureId === 'string') ids.features.add(featureId);
  if (store === 'features' && typeof checkId === 'string') ids.checks.add(checkId);
}

async function endMeeting(meeting: Meeting): Promise<void> {
  const { a, ids, clock, latest } = meeting;
  // The features of readings that came belong to checks that did not.
  for (const id of ids.features) {
    // oxlint-disable-next-line no-await-in-loop
    const checkId = (await a.kept('features', id))?.['checkId'];
    if (typeof checkId === 'string') ids.checks.add(checkId);
  }
  const lacking: string[] = [];
  await bringBack(a, ids, (store, before, after) => {
    a.putKept(store, after);
    dropWords(meeting, store, after);
    if (before['stamps'] !== after['stamps']) lacking.push(`${store}/${after.id}`);
  });
  // oxlint-disable-next-line no-await-in-loop
  for (const id of lacking) await toSend(meeting, id);
  const last = clock['last'];
  if (isSoundStamp(latest) && (!isSoundStamp(last) || latest > last))
    await a.tx.objectStore('device').put({ ...clock, id: 'clock', last: latest });
}
