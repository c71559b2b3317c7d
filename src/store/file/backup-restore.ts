import { backupStores, type BackupStore } from '../base/stores.ts';
import { refuse } from '../../engine/length/refusal.ts';
import { act, type Act } from '../opening/act.ts';
import { quiet } from '../opening/act-parts.ts';
import { bringBack } from './backup-bring-back.ts';
import { startNoting, type Noting } from './backup-brought.ts';
import { comparePairs } from './backup-compare.ts';
import { mergedWith, type Outcome } from './backup-merged.ts';
import { startMeeting, type Meeting } from './conflicts-keep.ts';
import { dropStrayBytes } from './backup-photo-bytes.ts';
import type { BackupResult } from './backup-refusal.ts';
import {
  alone,
  dropStaged,
  nextBundle,
  stagedFile,
  type StagedFile,
  type StagedRecord,
} from './backup-staged.ts';
import type { OnShare } from './backup-door.ts';
import { eachUnreadable } from './backup-unreadable.ts';
import { isGone, type Kept, type KeptStamped } from '../base/kept.ts';
import { canonicalText } from '../base/paths.ts';
import type { Store } from '../opening/open-store.ts';

/** How many records a file brought that weren't here, changed, and found the same. */
export type Restored = {
  readonly added: number;
  readonly changed: number;
  readonly same: number;
  /** Whether it can be taken out again as one. */
  readonly canUndo: boolean;
};

/**
 * Puts the waiting file in beside what is here, in one transaction: records unite, field by field the later one stays.
 * When it is refused the file goes on waiting, unless it can't ever be put in. `shown` is the file that the fitter was shown:
 * where another one waits by now, nothing goes in.
 */
export async function applyPreviewed(
  store: Store,
  onShare: OnShare = () => undefined,
  shown?: StagedFile,
): Promise<BackupResult<Restored>> {
  return alone(store, async () => {
    const file = await stagedFile(store);
    // Another window, or a page elsewhere that shared one to the app, may have read another file since.
    if (file?.state !== 'ready') return refuse({ code: 'no-file' });
    if (shown && canonicalText(file) !== canonicalText(shown)) return refuse({ code: 'another-file' });
    // What is here may have come from another file since the preview.
    const fits = await comparePairs(store, { file }, {});
    if (fits.ok) return applyInOne(store, file, onShare);
    if (fits.refusal.code === 'reading-differs' || fits.refusal.code === 'sheet-differs')
      await dropStaged(store);
    return fits;
  });
}

async function applyInOne(store: Store, file: StagedFile, onShare: OnShare): Promise<BackupResult<Restored>> {
  return act(store, { stores: [...backupStores, 'staging', 'brought', 'conflicts', 'home'] }, async (a) => {
    const putting: Putting = {
      a,
      meeting: await startMeeting(a, file),
      noting: startNoting(a),
      ids: { jobs: new Set(), features: new Set(), checks: new Set(), cuts: new Set() },
      known: new Set(),
      addedBytes: new Set(),
      count: { added: 0, changed: 0, same: 0 },
    };
    // Before the others: a picture's bytes look for their photo.
    await putUnreadable(putting);
    let done = 0;
    for (const name of backupStores) {
      // oxlint-disable-next-line no-await-in-loop
      putting.known = new Set((await a.tx.objectStore(name).getAllKeys()).map(String));
      // oxlint-disable-next-line no-await-in-loop
      let bundle = await nextBundle(a.tx, name);
      while (bundle) {
        // Bundle by bundle, so that what is waiting for the database stays small.
        // oxlint-disable-next-line no-await-in-loop
        await putBundle(putting, name, bundle.entries);
        done += bundle.entries.length;
        onShare(done / file.records);
        // oxlint-disable-next-line no-await-in-loop
        bundle = await nextBundle(a.tx, name, bundle);
      }
    }
    await endPutting(putting, file);
    const canUndo = await putting.noting.end(
      file.latest > a.stamp ? file.latest : a.stamp,
      putting.meeting.seenBefore,
    );
    return { ...putting.count, canUndo };
  });
}

async function putUnreadable({ a, noting, count }: Putting): Promise<void> {
  await eachUnreadable(a.tx, async ({ store, record }) => {
    const isHere = (await a.kept(store, record.id)) !== undefined;
    count[isHere ? 'same' : 'added'] += 1;
    if (isHere) return;
    a.putKept(store, record);
    await noting.note(store, undefined, record);
  });
}

type Putting = {
  readonly a: Act;
  readonly noting: Noting;
  readonly meeting: Meeting;
  readonly ids: Record<'jobs' | 'features' | 'checks' | 'cuts', Set<string>>;
  /** Ids that are here, of the store whose turn it is: on an empty phone nothing has to be looked up. */
  known: ReadonlySet<string>;
  readonly addedBytes: Set<string>;
  readonly count: Record<Outcome, number>;
};

async function putBundle(
  putting: Putting,
  store: BackupStore,
  entries: readonly StagedRecord[],
): Promise<void> {
  const { a, noting, known, count } = putting;
  if (store === 'photoBytes') return noteBytes(putting, entries);
  const here = await Promise.all(
    entries.map(async ({ record: { id } }) => (known.has(id) ? a.kept(store, id) : undefined)),
  );
  const puts: KeptStamped[] = [];
  for (const [index, entry] of entries.entries()) {
    const { record } = entry;
    const before: Kept | undefined = here[index];
    const { outcome, merged } = mergedWith(store, before, record);
    noteIds(putting, store, record);
    // oxlint-disable-next-line no-await-in-loop
    await putting.meeting.meet(store, before, entry);
    count[outcome] += 1;
    if (outcome === 'same') continue;
    puts.push(merged);
    // It only waits when a bundle of notes is full.
    // oxlint-disable-next-line no-await-in-loop
    await noting.note(store, before, merged);
  }
  return a.putMany(store, puts);
}

/** They are in their place since the file was read: another window may have taken them for stray ones meanwhile, and nothing is restored without its photos. */
async function noteBytes(
  { a, noting, known, addedBytes, count }: Putting,
  entries: readonly StagedRecord[],
): Promise<void> {
  for (const { record, added } of entries) {
    if (!known.has(record.id)) a.refuse({ code: 'write-failed' });
    if (added) addedBytes.add(record.id);
    // Bytes for a photo that was removed here go again in the end: they are nothing that came.
    // oxlint-disable-next-line no-await-in-loop
    const photo = added ? await a.kept('photos', record.id) : undefined;
    const isNew = photo !== undefined && !isGone(photo);
    count[isNew ? 'added' : 'same'] += 1;
    // oxlint-disable-next-line no-await-in-loop
    if (isNew) await noting.note('photoBytes', undefined, record);
  }
}

function noteIds({ ids }: Putting, store: BackupStore, record: KeptStamped): void {
  if (store === 'jobs' || store === 'features' || store === 'checks' || store === 'cuts')
    ids[store].add(record.id);
  if (store !== 'readings') return;
  const { featureId, jobId } = record;
  if (typeof featureId === 'string') ids.features.add(featureId);
  if (typeof jobId === 'string') ids.jobs.add(jobId);
}

async function endPutting({ a, noting, meeting, ids, addedBytes }: Putting, file: StagedFile): Promise<void> {
  const changed: Promise<void>[] = [];
  await bringBack(a, ids, (store, before, after) => {
    changed.push(quiet(noting.note(store, before, after)));
    a.putKept(store, after);
  });
  await Promise.all(changed);
  await meeting.end(noting);
  await dropStrayBytes(a, addedBytes);
  a.observe(file.latest);
  await a.tx.objectStore('staging').clear();
  a.drop('staging', 'file');
}
