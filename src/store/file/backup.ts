import { backupStores, type BackupStore } from '../base/stores.ts';
import { followingSettings } from '../base/following-settings.ts';
import { backupFormat } from './backup-format.ts';
import { withChecksum } from './backup-sealed.ts';
import { withBase64 } from './backup-bytes.ts';
import type { BackupText } from './backup-lines.ts';
import type { BackupResult } from './backup-refusal.ts';
import type { FileOrigin } from './backup-staged.ts';
import { previewBackup } from './backup-preview.ts';
import { applyPreviewed, type Restored } from './backup-restore.ts';
import { derivedFields, isGone, type Kept } from '../base/kept.ts';
import type { Store } from '../opening/open-store.ts';
import { isPlainObject } from '../base/paths.ts';
import { read, type Reads } from '../opening/read.ts';
import type { Id } from '../base/records.ts';
import { checkRecord } from '../kept/any-record.ts';
import { readSetting } from '../kept/setting-schema.ts';
import { hasMet, latestOf, seenInRow, seenOfOne, seenRowId, type RecordSeen } from '../phones/record-seen.ts';
import { seenForFile, seenIn, type SeenLists } from '../phones/seen.ts';
import { unitOf } from '../base/unit-of.ts';

/** The stores that are too big to hold whole, and how many of their records are read at once. */
const inAPage = { readings: 500, photoBytes: 1, sheets: 4 } as const satisfies Partial<
  Record<BackupStore, number>
>;
type PagedStore = keyof typeof inAPage;

type Snapshot = {
  readonly from: Omit<FileOrigin, 'writtenAt'> & { readonly seen?: SeenLists };
  readonly small: Readonly<Partial<Record<BackupStore, readonly Kept[]>>>;
  readonly ids: Readonly<Record<PagedStore, readonly string[]>>;
  /** What single copies have met beyond what this phone has seen of everything, by the id of the note. */
  readonly met: ReadonlyMap<string, RecordSeen>;
};

/**
 * The backup, line by line (each with its line feed), as `backup-format.ts` writes it down. What is small is read in one
 * transaction, together with the ids of the readings, sheets and photos' bytes; these come in pages behind it. They never
 * change what they belong to, so one that is logged while the backup is written simply isn't in it. With a job's id it is
 * that one job and nothing else, to be handed over.
 */
export async function* backupLines(store: Store, jobId?: Id): AsyncGenerator<string> {
  yield* withChecksum(unsealedLines(store, jobId));
}

async function* unsealedLines(store: Store, jobId: Id | undefined): AsyncGenerator<string> {
  const snapshot = await takeSnapshot(store, jobId);
  yield JSON.stringify(headerOf(store, snapshot));
  for (const name of backupStores) {
    for await (const kept of recordsOf(store, snapshot, name))
      yield recordLine(name, kept, metBeyond(snapshot, name, kept));
  }
}

// Chosen, not published: a megabyte or two at a time.
const CHARACTERS_IN_A_PIECE = 1_000_000;

/** The backup as pieces of a file. A browser can put those aside, where a list of all lines would fill its memory. */
export async function* backupPieces(store: Store, jobId?: Id): AsyncGenerator<Blob> {
  let lines: string[] = [];
  let length = 0;
  for await (const line of backupLines(store, jobId)) {
    lines.push(line);
    length += line.length;
    if (length < CHARACTERS_IN_A_PIECE) continue;
    yield new Blob(lines);
    lines = [];
    length = 0;
  }
  yield new Blob(lines);
}

/** Adds a file to what is here without asking: all of it, or nothing. */
export async function restoreBackup(store: Store, text: BackupText): Promise<BackupResult<Restored>> {
  const previewed = await previewBackup(store, text);
  return previewed.ok ? applyPreviewed(store) : previewed;
}

async function takeSnapshot(store: Store, jobId: Id | undefined): Promise<Snapshot> {
  // A database that could not be moved to today's form lacks the newest ones.
  const present = backupStores.filter((name) => store.db.objectStoreNames.contains(name));
  const smallStores = present.filter((name) => !isPaged(name));
  const aside = (['device', 'home'] as const).filter((name) => store.db.objectStoreNames.contains(name));
  return read(store, [...present, ...aside], async (tx) => {
    const all = Promise.all(smallStores.map((name) => recordsIn(tx, name, jobId)));
    const [readings, sheets, photoBytes, from] = await Promise.all([
      keysIn(tx, 'readings', jobId),
      present.includes('sheets') ? keysIn(tx, 'sheets', jobId) : [],
      present.includes('photoBytes') ? tx.objectStore('photoBytes').getAllKeys() : [],
      originIn(tx, jobId),
    ]);
    const kept = await all;
    const small: Partial<Record<BackupStore, readonly Kept[]>> = Object.fromEntries(
      smallStores.map((name, index) => [name, (kept[index] ?? []).filter(goesIn(name))]),
    );
    // A removed photo's bytes only wait for an undo on this phone.
    const photos = new Set(small.photos?.filter((photo) => !isGone(photo)).map(({ id }) => id));
    const bytes = photoBytes.map(String).filter((id) => photos.has(id));
    const met = aside.includes('home') ? await seenRows(tx) : new Map();
    return { small, ids: { readings, sheets, photoBytes: bytes }, from, met };
  });
}

async function recordsIn(tx: Reads, name: BackupStore, jobId: Id | undefined): Promise<Kept[]> {
  if (jobId === undefined) return tx.objectStore(name).getAll();
  if (name === 'jobs') return tx.objectStore(name).getAll(jobId);
  const isOfAJob = tx.objectStore(name).indexNames.contains('jobId');
  return isOfAJob ? tx.objectStore(name).index('jobId').getAll(jobId) : [];
}

async function keysIn(
  tx: Reads,
  name: 'readings' | 'sheets',
  jobId: Id | undefined,
): Promise<readonly string[]> {
  const keptIn = tx.objectStore(name);
  if (jobId === undefined) return (await keptIn.getAllKeys()).map(String);
  const keys =
    name === 'sheets'
      ? await keptIn.index('jobId').getAllKeys(jobId)
      : await keptIn.index('jobId+at').getAllKeys(IDBKeyRange.bound([jobId], [jobId, []]));
  return keys.map(String);
}

async function seenRows(tx: Reads): Promise<Snapshot['met']> {
  const rows: Kept[] = await tx.objectStore('home').getAll(IDBKeyRange.bound('seen/', 'seen/\uffff'));
  return new Map(rows.map((row) => [row.id, seenInRow(row)]));
}

/** What a copy has met and the first line doesn't say, on a phone that has only part of what is at home. */
function metBeyond({ from, met }: Snapshot, store: BackupStore, kept: Kept): RecordSeen | undefined {
  const own = met.get(seenRowId(store, kept.id));
  const all = own && seenOfOne(seenIn(from.seen) ?? new Map(), unitOf(store, kept));
  const beyond = all && [...own.values()].filter((stamp) => !hasMet(all, stamp));
  return beyond && beyond.length > 0 ? latestOf(beyond) : undefined;
}

/** For the first line: which phone, who uses it, and the one job where it is one. */
async function originIn(tx: Reads, jobId: Id | undefined): Promise<Snapshot['from']> {
  const [clock, seen, fitter]: unknown[] = await Promise.all([
    tx.objectStore('device').get('clock'),
    tx.objectStore('device').get('seen'),
    tx.objectStore('settings').get('fitter'),
  ]);
  const phone = isPlainObject(clock) ? clock['deviceId'] : undefined;
  const name = readSetting('fitter', fitter);
  return {
    ...(typeof phone === 'string' && { phone }),
    ...(name !== undefined && name !== '' && { fitter: name }),
    ...(jobId !== undefined && { job: jobId }),
    ...(isPlainObject(clock) && clock['home'] === true && { part: true }),
    ...seenForFile(clock, seen, jobId),
  };
}

function isPaged(store: BackupStore): store is PagedStore {
  return store in inAPage;
}

function goesIn(store: BackupStore): (record: Kept) => boolean {
  return (record) => store !== 'settings' || !followingSettings.has(record.id);
}

function headerOf(store: Store, { small, ids, from }: Snapshot): unknown {
  const counts = backupStores.map((name) => [
    name,
    isPaged(name) ? ids[name].length : (small[name]?.length ?? 0),
  ]);
  const { name: format, version } = backupFormat;
  return { format, version, writtenAt: store.now(), ...from, counts: Object.fromEntries(counts) };
}

async function* recordsOf(store: Store, { small, ids }: Snapshot, name: BackupStore): AsyncIterable<Kept> {
  if (!isPaged(name)) {
    yield* small[name] ?? [];
    return;
  }
  for (let at = 0; at < ids[name].length; at += inAPage[name]) {
    const page = ids[name].slice(at, at + inAPage[name]);
    yield* await read(store, [name], async (tx) => {
      const records: (Kept | undefined)[] = await Promise.all(page.map((id) => tx.objectStore(name).get(id)));
      // The first line has said how many there are: one that went meanwhile still has its line, which nobody restores.
      return records.map((record, index) => record ?? { id: page[index] ?? '' });
    });
  }
}

// A record that doesn't parse goes in under another name: whoever can read it will.
function recordLine(store: BackupStore, kept: Kept, met: RecordSeen | undefined): string {
  const own = Object.entries(kept).filter(([field]) => !derivedFields.has(field));
  const fields = Object.fromEntries(own);
  const record = withBase64(store, fields);
  const seen = met && { seen: [...met.values()] };
  if (checkRecord(store, fields).ok) return JSON.stringify({ store, record, ...seen });
  try {
    return JSON.stringify({ unreadable: store, record });
  } catch {
    // Something in it can't be written as text at all, a ring of references for one.
    return JSON.stringify({ unreadable: store, record: { id: kept.id } });
  }
}
