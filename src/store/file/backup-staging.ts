import { refuse, worked } from '../../engine/length/refusal.ts';
import { act } from '../opening/act.ts';
import { countFault, throughTheDoor, type OnShare } from './backup-door.ts';
import type { BackupText } from './backup-lines.ts';
import type { IdsInFile } from './backup-references.ts';
import type { BackupResult } from './backup-refusal.ts';
import { originIn, type StagedFile } from './backup-staged.ts';
import { startAside } from './backup-unreadable.ts';
import { believedFor } from '../phones/brought-down.ts';
import { latestBelieved } from '../base/clock.ts';
import type { Store } from '../opening/open-store.ts';
import { isPlainObject } from '../base/paths.ts';
import { read } from '../opening/read.ts';
import { EVERYTHING, listsOf, seenIn } from '../phones/seen.ts';
import type { StoreResult } from '../base/store-refusal.ts';
import { type Reading, eachStore } from './backup-reading.ts';
import { flushAll } from './backup-bundles.ts';
import { readRecord } from './backup-read-record.ts';

/** A file whose lines are right, aside on the disk; whether all it belongs to is in it is looked at next. */
export type ReadAside = { readonly file: StagedFile; readonly ids: IdsInFile };

// Chosen, not published: ten times what a thousand jobs without their photos come to.
const MOST_MEGABYTES_ASIDE = 400;

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
    bundles: new Map(),
    aside: startAside(store),
    from: { writtenAt: 0 },
    latest: '',
    seen: undefined,
    stamps: new Map(),
    believed: believedFor(await latestHere(store), 0),
    odd: { ahead: 0, dates: 0, rounded: 0 },
    pictures: new Map(),
    length: 0,
  };
  const begun = await putFile(reading);
  if (!begun.ok) return begun;
  const counts = await throughTheDoor(
    text,
    {
      onFirst: (header) => readHeader(reading, header),
      onRecord: (value, at) => readLine(reading, value, at),
    },
    onShare,
  );
  if (!counts.ok) return counts;
  const fault = countFault(counts.value, reading.found);
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

async function readLine(
  reading: Reading,
  value: Readonly<Record<string, unknown>>,
  at: { readonly line: number; readonly length: number },
): Promise<BackupResult<void>> {
  if (value['store'] !== 'photoBytes') reading.length += at.length;
  if (reading.length > MOST_MEGABYTES_ASIDE * 1_000_000)
    return refuse({ code: 'too-big', mostMegabytes: MOST_MEGABYTES_ASIDE });
  return readRecord(reading, value, at);
}

function readHeader(reading: Reading, header: Readonly<Record<string, unknown>>): void {
  reading.from = originIn(header);
  reading.believed = believedFor(reading.believed.latestMs, reading.from.writtenAt);
  reading.seen = seenIn(header['seen']);
}
