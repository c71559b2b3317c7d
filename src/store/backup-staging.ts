import { refuse, worked } from '../engine/length/refusal.ts';
import { act } from './act.ts';
import {
  backupFormat,
  backupStores,
  startChecksum,
  type BackupStore,
  type Checksum,
} from './backup-format.ts';
import { withBytes } from './backup-bytes-read.ts';
import { eachLine, type BackupText } from './backup-lines.ts';
import { namedRecord } from './backup-names.ts';
import { figureFault, type OddCounts } from './backup-figures.ts';
import { stageBytes } from './backup-photo-bytes.ts';
import { jobOf, type IdsInFile } from './backup-references.ts';
import type { BackupRefusal, BackupResult } from './backup-refusal.ts';
import {
  bundleId,
  originIn,
  type Bundle,
  type FileOrigin,
  type StagedFile,
  type StagedRecord,
} from './backup-staged.ts';
import { stampOfUnreadable, startAside, unreadableIn, type Aside } from './backup-unreadable.ts';
import { believedFor, broughtDown, type Believed } from './brought-down.ts';
import { latestBelieved } from './clock.ts';
import { latestStamp } from './merge.ts';
import type { Store } from './open-store.ts';
import { isBytes, isPlainObject } from './paths.ts';
import { plainJson } from './plain-json.ts';
import { derivedFields, type KeptStamped } from './kept.ts';
import { isAsSaid, isPreview, pointsOfPicture, type PointsOfPicture } from './picture-size.ts';
import { read } from './read.ts';
import { checkRecord, hasSoundStamps } from './schemas/any-record.ts';
import { EVERYTHING, listsOf, noteStamps, seenIn, type Seen } from './seen.ts';
import type { StoreResult } from './store-refusal.ts';

export type OnShare = (share: number) => void;

/** A file whose lines are right, aside on the disk; whether all it belongs to is in it is looked at next. */
export type ReadAside = { readonly file: StagedFile; readonly ids: IdsInFile };

type Reading = {
  readonly store: Store;
  readonly ids: Record<BackupStore, Map<string, string | undefined>>;
  readonly found: Record<BackupStore, number>;
  checksum: Checksum;
  /** Records on their way to the disk. */
  readonly bundles: Map<BackupStore, { readonly entries: StagedRecord[]; length: number }>;
  /** The same for those that can't be read. */
  readonly aside: Aside;
  counts?: Readonly<Record<string, unknown>>;
  from: FileOrigin;
  latest: string;
  /** What the first line says its phone had seen, and the latest stamp of each phone among the records. */
  seen: Seen | undefined;
  readonly stamps: Map<string, string>;
  /** Up to when a time is believed. */
  believed: Believed;
  readonly odd: OddCounts;
  /** Of each photo how large it says that it is, or its bytes, whichever came first. */
  readonly pictures: Map<string, { readonly said?: PointsOfPicture; readonly has?: PointsOfPicture }>;
  ended: boolean;
  /** Characters that went to the disk, photos' bytes apart. */
  length: number;
};

// Chosen, not published: ten times what a thousand jobs without their photos come to.
const MOST_MEGABYTES_ASIDE = 400;
// Chosen, not published: five times ten years' readings. Their ids are all that stays in memory.
const MOST_RECORDS = 500_000;
// Chosen, not published: a worksheet of a hundred parts comes to a tenth of it.
const LONGEST_RECORD = 1_000_000;
const mayBeLong = /^\{"(?:store|unreadable)":"(?:photoBytes|sheets)",/;
// Chosen, not published: few enough to be light in memory, enough to make few trips to the disk.
const RECORDS_IN_A_BUNDLE = 250;
const CHARACTERS_IN_A_BUNDLE = 300_000;

/** Reads a file and checks it line by line: form, checksum, each record, duplicates. What is right goes to the disk, aside. */
export async function stageBackup(
  store: Store,
  text: BackupText,
  onShare: OnShare,
): Promise<BackupResult<ReadAside>> {
  const reading: Reading = {
    store,
    ids: eachStore(() => new Map()),
    found: eachStore(() => 0),
    checksum: startChecksum(),
    bundles: new Map(),
    aside: startAside(store),
    from: { writtenAt: 0 },
    latest: '',
    seen: undefined,
    stamps: new Map(),
    believed: believedFor(await latestHere(store), 0),
    odd: { ahead: 0, dates: 0, rounded: 0 },
    pictures: new Map(),
    ended: false,
    length: 0,
  };
  const begun = await putFile(reading);
  if (!begun.ok) return begun;
  const lines = await eachLine(text, (line, number) => readLine(reading, line, number), onShare);
  if (!lines.ok) return lines;
  if (!reading.counts) return refuse({ code: 'not-a-backup' });
  if (!reading.ended) return refuse({ code: 'cut-off', lines: lines.value });
  const fault = countFault(reading);
  if (fault) return refuse(fault);
  const flushed = await flushAll(reading);
  if (!flushed.ok) return flushed;
  const file = await putFile(reading);
  return file.ok ? worked({ file: file.value, ids: reading.ids }) : file;
}

async function latestHere(store: Store): Promise<number> {
  const clock: unknown = await read(store, ['device'], (tx) => tx.objectStore('device').get('clock'));
  return latestBelieved(store.now(), isPlainObject(clock) ? clock['last'] : undefined);
}

/** Notes that every line and everything it belongs to was found right. */
export async function markReady(store: Store, file: StagedFile): Promise<StoreResult<StagedFile>> {
  const ready: StagedFile = { ...file, state: 'ready' };
  return act(store, { stores: ['staging'], stamped: false }, (a) => {
    a.putKept('staging', ready);
    return ready;
  });
}

async function putFile({
  store,
  found,
  latest,
  from,
  seen,
  stamps,
  odd,
}: Reading): Promise<StoreResult<StagedFile>> {
  const records = Object.values(found).reduce((sum, count) => sum + count, 0);
  return act(store, { stores: ['staging'], stamped: false }, (a) => {
    const known = listsOf(seen ?? new Map([[EVERYTHING, stamps]]));
    const file: StagedFile = {
      id: 'file',
      state: 'reading',
      readAt: a.at,
      records,
      latest,
      from,
      seen: known,
      odd: { ...odd },
    };
    a.putKept('staging', file);
    return file;
  });
}

async function readLine(reading: Reading, line: string, number: number): Promise<BackupResult<void>> {
  if (reading.ended)
    return line.trim() === ''
      ? worked(undefined)
      : refuse({ code: 'something-behind-the-end', line: number });
  // Before it is taken apart: a line of ten million little things would fill the memory of a phone.
  if (number > 1 && line.length > LONGEST_RECORD && !mayBeLong.test(line))
    return refuse({ code: 'line-too-long', line: number });
  const parsed = plainJson(line, number);
  // A first line that doesn't even name the format is some other file's.
  if (number === 1 && !line.includes(backupFormat.name)) return refuse({ code: 'not-a-backup' });
  if (!parsed.ok) return parsed;
  if (number === 1) return readHeader(reading, line, parsed.value);
  if ('checksum' in parsed.value) return readEnd(reading, parsed.value, number);
  await reading.checksum.add(line);
  const { store } = parsed.value;
  if (number > MOST_RECORDS) return refuse({ code: 'too-many', most: MOST_RECORDS });
  if (store !== 'photoBytes') reading.length += line.length;
  if (reading.length > MOST_MEGABYTES_ASIDE * 1_000_000)
    return refuse({ code: 'too-big', mostMegabytes: MOST_MEGABYTES_ASIDE });
  return readRecord(reading, parsed.value, { line: number, length: line.length });
}

async function readHeader(
  reading: Reading,
  line: string,
  header: Readonly<Record<string, unknown>>,
): Promise<BackupResult<void>> {
  const { format, version, counts } = header;
  if (format !== backupFormat.name || !Number.isInteger(version) || typeof version !== 'number')
    return refuse({ code: 'not-a-backup' });
  if (version > backupFormat.version) return refuse({ code: 'newer-backup', version });
  if (version < backupFormat.oldestRead || !isPlainObject(counts)) return refuse({ code: 'not-a-backup' });
  reading.counts = counts;
  reading.from = originIn(header);
  reading.believed = believedFor(reading.believed.latestMs, reading.from.writtenAt);
  reading.seen = seenIn(header['seen']);
  reading.checksum = startChecksum({ version });
  await reading.checksum.add(line);
  return worked(undefined);
}

async function readEnd(
  reading: Reading,
  end: Readonly<Record<string, unknown>>,
  number: number,
): Promise<BackupResult<void>> {
  reading.ended = true;
  const checksum = await reading.checksum.end();
  const right = end['checksum'] === checksum && end['lines'] === number - 1;
  return right ? worked(undefined) : refuse({ code: 'checksum-differs' });
}

// No backup of ours has them: what follows from other fields is worked out here.
function withoutDerived(record: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  return Object.fromEntries(Object.entries(record).filter(([field]) => !derivedFields.has(field)));
}

async function readRecord(
  reading: Reading,
  value: Readonly<Record<string, unknown>>,
  { line, length }: { readonly line: number; readonly length: number },
): Promise<BackupResult<void>> {
  const store = backupStores.find((name) => name === (value['store'] ?? value['unreadable']));
  if (!store || !isPlainObject(value['record'])) return refuse({ code: 'unknown-line', line });
  const record = withBytes(store, withoutDerived(value['record']));
  const number = (reading.found[store] += 1);
  const named = async () => {
    await flushAll(reading);
    return namedRecord(reading.store, { store, record, number, line });
  };
  const checked = checkRecord(store, record);
  // One that can be read by now is a record like any other.
  if (value['store'] === undefined && !checked.ok) return putAside(reading, store, { record, length });
  const dotted = Object.keys(record).find((field) => field.includes('.'));
  if (dotted !== undefined) return refuse({ code: 'forbidden-name', line, name: dotted });
  if (!checked.ok) return refuse({ code: 'wrong-field', record: await named(), field: checked.field });
  if (reading.ids[store].has(checked.value.id)) return refuse({ code: 'twice', record: await named() });
  const fault =
    figureFault(store, checked.value, { latestMs: reading.believed.latestMs, odd: reading.odd }) ??
    pictureFault(reading, store, checked.value);
  if (fault) return refuse({ ...fault, record: await named() });
  const sound = soundIn(reading, checked.value);
  reading.ids[store].set(sound.id, jobOf(store, sound));
  noteLatest(reading, latestStamp(sound));
  noteStamps(reading.stamps, sound);
  const staged = { record: sound, number, line };
  return store === 'photoBytes'
    ? stageBytes(reading.store, staged)
    : bundled(reading, store, { staged, length });
}

function soundIn(reading: Reading, record: KeptStamped): KeptStamped {
  const down = broughtDown(record, reading.believed);
  reading.odd.ahead += down.count;
  return down.record;
}

/** What says one size and has another, or would fill the phone's memory once it is drawn. */
function pictureFault(
  { pictures }: Reading,
  store: BackupStore,
  { id, width, height, preview, bytes }: KeptStamped,
): { readonly code: 'picture-differs' } | undefined {
  if (store !== 'photos' && store !== 'photoBytes') return undefined;
  const known = pictures.get(id);
  const said =
    typeof width === 'number' && typeof height === 'number' && store === 'photos'
      ? { width, height }
      : known?.said;
  const has = store === 'photoBytes' && isBytes(bytes) ? pointsOfPicture(bytes) : known?.has;
  pictures.set(id, { ...(said && { said }), ...(has && { has }) });
  const isFaulty =
    (store === 'photos' && isBytes(preview) && !isPreview(preview)) || !isAsSaid(has, said ?? has ?? NO_SIZE);
  return isFaulty ? { code: 'picture-differs' } : undefined;
}

const NO_SIZE: PointsOfPicture = { width: 0, height: 0 };

async function putAside(
  reading: Reading,
  store: BackupStore,
  { record, length }: { readonly record: Readonly<Record<string, unknown>>; readonly length: number },
): Promise<BackupResult<void>> {
  const found = unreadableIn(store, record);
  if (!found) return worked(undefined);
  const { record: kept } = found;
  const unreadable = hasSoundStamps(kept) ? { store, record: soundIn(reading, kept) } : found;
  reading.ids[store].set(kept.id, jobOf(store, kept));
  noteLatest(reading, stampOfUnreadable(unreadable));
  return reading.aside.add(unreadable, length);
}

function noteLatest(reading: Reading, stamp: string): void {
  if (stamp > reading.latest) reading.latest = stamp;
}

async function bundled(
  reading: Reading,
  store: BackupStore,
  { staged, length }: { readonly staged: StagedRecord; readonly length: number },
): Promise<StoreResult<void>> {
  const bundle = reading.bundles.get(store) ?? { entries: [], length: 0 };
  reading.bundles.set(store, bundle);
  bundle.entries.push(staged);
  bundle.length += length;
  const isFull = bundle.entries.length >= RECORDS_IN_A_BUNDLE || bundle.length >= CHARACTERS_IN_A_BUNDLE;
  return isFull ? flush(reading, store) : worked(undefined);
}

async function flush(reading: Reading, store: BackupStore): Promise<StoreResult<void>> {
  const entries = reading.bundles.get(store)?.entries ?? [];
  reading.bundles.delete(store);
  const [first] = entries;
  if (!first) return worked(undefined);
  const kept: Bundle = { id: bundleId(store, first.number), entries };
  return act(reading.store, { stores: ['staging'], durability: 'relaxed', stamped: false }, async (a) => {
    await a.tx.objectStore('staging').put(kept);
  });
}

async function flushAll(reading: Reading): Promise<StoreResult<void>> {
  for (const store of reading.bundles.keys()) {
    // oxlint-disable-next-line no-await-in-loop
    const flushed = await flush(reading, store);
    if (!flushed.ok) return flushed;
  }
  return reading.aside.flush();
}

function countFault({ counts, found }: Reading): BackupRefusal | undefined {
  for (const store of backupStores) {
    const said = counts?.[store] ?? 0;
    if (said !== found[store])
      return { code: 'counts-differ', store, said: typeof said === 'number' ? said : 0, found: found[store] };
  }
  return undefined;
}

function eachStore<T>(make: () => T): Record<BackupStore, T> {
  return {
    jobs: make(),
    parts: make(),
    features: make(),
    readings: make(),
    worksheets: make(),
    cuts: make(),
    checks: make(),
    steps: make(),
    rechecks: make(),
    photos: make(),
    photoBytes: make(),
    money: make(),
    sheets: make(),
    drawer: make(),
    drawerCounts: make(),
    tools: make(),
    settings: make(),
  };
}
