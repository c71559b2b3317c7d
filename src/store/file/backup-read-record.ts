import { backupStores, type BackupStore } from '../base/stores.ts';
import { refuse, worked } from '../../engine/length/refusal.ts';
import { withBytes } from './backup-bytes-read.ts';
import { namedRecord } from './backup-names.ts';
import { figureFault } from './backup-figures.ts';
import { stageBytes } from './backup-photo-bytes.ts';
import { jobOf } from './backup-references.ts';
import type { BackupResult } from './backup-refusal.ts';
import { stampOfUnreadable, unreadableIn } from './backup-unreadable.ts';
import { broughtDown } from '../phones/brought-down.ts';
import { latestStamp } from '../base/merge.ts';
import { isBytes, isPlainObject } from '../base/paths.ts';
import { derivedFields, type KeptStamped } from '../base/kept.ts';
import { isAsSaid, isPreview, pointsOfPicture, type PointsOfPicture } from '../base/picture-size.ts';
import { checkRecord, hasSoundStamps, type CheckedRecord } from '../kept/any-record.ts';
import { latestOf, stampsIn, type RecordSeen } from '../phones/record-seen.ts';
import { stampMs } from '../base/clock.ts';
import { noteStamps } from '../phones/seen.ts';
import type { Reading } from './backup-reading.ts';
import { bundled, flushAll } from './backup-bundles.ts';

// No backup of ours has them: what follows from other fields is worked out here.
function withoutDerived(record: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  return Object.fromEntries(Object.entries(record).filter(([field]) => !derivedFields.has(field)));
}

export type LineRecord = {
  readonly store: BackupStore;
  readonly record: Readonly<Record<string, unknown>>;
  readonly checked: CheckedRecord;
};

/** The record of one line with what its schema says of it; nothing where it is no line of ours. */
export function recordOfLine(value: Readonly<Record<string, unknown>>): LineRecord | undefined {
  const store = backupStores.find((name) => name === (value['store'] ?? value['unreadable']));
  if (!store || !isPlainObject(value['record'])) return undefined;
  const record = withBytes(store, withoutDerived(value['record']));
  return { store, record, checked: checkRecord(store, record) };
}

/** Checks the record of one line and puts it aside; one that nobody can read is kept as it is. */
export async function readRecord(
  reading: Reading,
  value: Readonly<Record<string, unknown>>,
  { line, length }: { readonly line: number; readonly length: number },
): Promise<BackupResult<void>> {
  const found = recordOfLine(value);
  if (!found) return refuse({ code: 'unknown-line', line });
  const { store, record, checked } = found;
  const number = (reading.found[store] += 1);
  const named = async () => {
    await flushAll(reading);
    return namedRecord(reading.store, { store, record, number, line });
  };
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
  const met = metSaid(reading, value['seen']);
  const staged = { record: sound, number, line, ...(met && { seen: met }) };
  return store === 'photoBytes'
    ? stageBytes(reading.store, staged)
    : bundled(reading, store, { staged, length });
}

/** What a line says that its copy has met, as far as it can have. */
function metSaid({ believed }: Reading, list: unknown): RecordSeen | undefined {
  const met = latestOf(stampsIn(list).filter((stamp) => stampMs(stamp) <= believed.latestMs));
  return met.size > 0 ? met : undefined;
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
