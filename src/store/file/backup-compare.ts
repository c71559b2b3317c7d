import { backupStores, type BackupStore } from '../base/stores.ts';
import { refuse, worked } from '../../engine/length/refusal.ts';
import { namedRecord } from './backup-names.ts';
import { jobOf, missingFor, strangerFor, type IdsInFile } from './backup-references.ts';
import type { BackupRefusal, BackupResult } from './backup-refusal.ts';
import { stagedBundles, type StagedFile, type StagedRecord } from './backup-staged.ts';
import type { OnShare } from './backup-door.ts';
import type { Kept } from '../base/kept.ts';
import type { Store } from '../opening/open-store.ts';
import { canonicalText } from '../base/paths.ts';
import { read } from '../opening/read.ts';
import { checkRecord } from '../kept/any-record.ts';

/** A record of the file beside the one that is here. */
export type Pair = {
  readonly store: BackupStore;
  readonly other: StagedRecord;
  readonly here: Kept | undefined;
};

/**
 * Goes through a file that was read aside, record by record beside what is here. It refuses what belongs to nothing
 * (where the ids are handed in), and a reading or signed sheet that is here already with other figures.
 */
export async function comparePairs(
  store: Store,
  { file, ids }: { readonly file: StagedFile; readonly ids?: IdsInFile | undefined },
  {
    onPair = () => undefined,
    onShare = () => undefined,
  }: { onPair?: (pair: Pair) => Promise<void> | void; onShare?: OnShare },
): Promise<BackupResult<void>> {
  let done = 0;
  for (const name of backupStores) {
    // oxlint-disable-next-line no-await-in-loop
    const known = await keysHere(store, name);
    // Bundle after bundle, so that only one is in memory.
    // oxlint-disable-next-line no-await-in-loop
    for await (const entries of stagedBundles(store, name)) {
      const here = await recordsHere({ store, name, known }, entries);
      for (const [index, other] of entries.entries()) {
        const pair = { store: name, other, here: here[index] };
        const fault = await faultOf(store, pair, { ids, isPart: file.from.part === true });
        if (fault) return refuse(fault);
        await onPair(pair);
      }
      done += entries.length;
      onShare(file.records === 0 ? 1 : done / file.records);
    }
  }
  return worked(undefined);
}

type Known = { readonly store: Store; readonly name: BackupStore; readonly known: ReadonlySet<string> };

/** On an empty phone nothing has to be looked up: that halves the time. */
async function keysHere(store: Store, name: BackupStore): Promise<ReadonlySet<string>> {
  return new Set((await read(store, [name], (tx) => tx.objectStore(name).getAllKeys())).map(String));
}

// A photo's bytes never change, and there is no need to see them.
async function recordsHere(
  { store, name, known }: Known,
  entries: readonly StagedRecord[],
): Promise<readonly (Kept | undefined)[]> {
  if (name === 'photoBytes') return entries.map(({ record, added }) => (added ? undefined : record));
  if (!entries.some(({ record }) => known.has(record.id))) return entries.map(() => undefined);
  return read(store, [name], (tx) =>
    Promise.all(
      entries.map(async ({ record: { id } }): Promise<Kept | undefined> =>
        known.has(id) ? tx.objectStore(name).get(id) : undefined,
      ),
    ),
  );
}

async function faultOf(
  file: Store,
  { store, other, here }: Pair,
  { ids, isPart }: { readonly ids: IdsInFile | undefined; readonly isPart: boolean },
): Promise<BackupRefusal | undefined> {
  const missing = ids && !isPart && missingFor(ids, store, other.record);
  if (missing)
    return { code: 'belongs-to-nothing', record: await namedRecord(file, { store, ...other }), missing };
  const stranger = ids && strangerFor(ids, store, other.record);
  if (stranger)
    return {
      code: 'belongs-to-another-job',
      record: await namedRecord(file, { store, ...other }),
      of: stranger,
    };
  if (store === 'readings' && readingDiffers(here, other.record))
    return { code: 'reading-differs', record: await namedRecord(file, { store, ...other }) };
  if (store === 'sheets' && sheetDiffers(here, other.record))
    return { code: 'sheet-differs', record: await namedRecord(file, { store, ...other }) };
  // A size would be worked out from another job's readings from then on. Sheets and readings are looked at whole.
  if (here && jobOf(store, here) !== jobOf(store, other.record) && checkRecord(store, here).ok)
    return { code: 'is-of-another-job', record: await namedRecord(file, { store, ...other }) };
  return undefined;
}

const fixedOfAReading = [
  'featureId',
  'jobId',
  'typed',
  'unit',
  'exact',
  'tool',
  'stops',
  'place',
  'direction',
  'zeroChecked',
  'warmth',
  'at',
  'basis',
  'readOf',
];

// A logged reading and a signed sheet never change. Two with the same id that say different things mean that a file was
// tampered with.
export function readingDiffers(here: Kept | undefined, other: Kept): boolean {
  // The demo's readings have the same ids on every phone, and the day on which it was put in there.
  if (!here || here.id.startsWith('demo-') || !checkRecord('readings', here).ok) return false;
  return fixedOfAReading.some((field) => canonicalText(here[field]) !== canonicalText(other[field]));
}

export function sheetDiffers(here: Kept | undefined, other: Kept): boolean {
  if (!here || !checkRecord('sheets', here).ok) return false;
  return canonicalText({ ...here, stamps: '' }) !== canonicalText({ ...other, stamps: '' });
}
