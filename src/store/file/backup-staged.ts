import type { BackupStore } from '../base/stores.ts';
import { refuse } from '../../engine/length/refusal.ts';
import { act } from '../opening/act.ts';
import type { OddCounts } from './backup-figures.ts';
import type { BackupResult } from './backup-refusal.ts';
import type { KeptStamped } from '../base/kept.ts';
import type { Store } from '../opening/open-store.ts';
import { isPlainObject } from '../base/paths.ts';
import { shownWords } from '../base/plain-words.ts';
import { read, type Reads } from '../opening/read.ts';
import type { RecordSeen } from '../phones/record-seen.ts';
import type { SeenLists } from '../phones/seen.ts';

/** A record of the file: the how manyth of its kind, on which line; of a photo's bytes whether they came with this file. */
export type StagedRecord = {
  readonly record: KeptStamped;
  readonly number: number;
  readonly line: number;
  readonly added?: true;
  /** What this copy has met, where its line says so: beyond what its phone had seen of everything. */
  readonly seen?: RecordSeen;
};

/** The file that was read aside: `reading` until every line of it was checked. */
export type StagedFile = {
  readonly id: 'file';
  readonly state: 'reading' | 'ready';
  readonly readAt: number;
  readonly records: number;
  /** The latest stamp in it. */
  readonly latest: string;
  readonly from: FileOrigin;
  /** What its phone had seen: as its first line says, or as far as its records tell. */
  readonly seen?: SeenLists;
  /** What the fitter is asked about before it is put in; missing where an earlier Slipfit read it. */
  readonly odd?: Readonly<OddCounts>;
};

/** What the first line says of where a file comes from. */
export type FileOrigin = {
  readonly writtenAt: number;
  /** The phone's own mark; files of before have none. */
  readonly phone?: string;
  /** Who uses that phone, as he signs. */
  readonly fitter?: string;
  /** The one job that the file hands over. */
  readonly job?: string;
  /** Written on a paired phone, where part of what is at home may still be to come: what a record belongs to may be missing. */
  readonly part?: true;
};

const LONGEST_NAME = 100;

/** It is only told to the fitter: what isn't as it should be is left out. */
export function originIn(header: Readonly<Record<string, unknown>>): FileOrigin {
  const { writtenAt } = header;
  const short = (name: 'phone' | 'fitter' | 'job') => {
    const text = header[name];
    return typeof text === 'string' && text !== '' ? { [name]: shownWords(text.slice(0, LONGEST_NAME)) } : {};
  };
  const at = typeof writtenAt === 'number' && Math.abs(writtenAt) < 8e15 ? writtenAt : 0;
  return {
    writtenAt: at,
    ...short('phone'),
    ...short('fitter'),
    ...short('job'),
    ...(header['part'] === true && { part: true }),
  };
}

/** The records are kept in bundles: a hundred thousand of them one by one would take minutes. */
export type Bundle = { readonly id: string; readonly entries: readonly StagedRecord[] };

export function bundleId(store: BackupStore, firstNumber: number): string {
  return `rows/${store}/${String(firstNumber).padStart(9, '0')}`;
}

/** The bundle behind this one; the first without one. */
export async function nextBundle(
  tx: { objectStore(name: string): { getAll(range: IDBKeyRange, count: number): Promise<unknown[]> } },
  store: BackupStore,
  after?: Bundle,
): Promise<Bundle | undefined> {
  const from = after?.id ?? `rows/${store}/`;
  const range = IDBKeyRange.bound(from, `rows/${store}/:`, after !== undefined);
  const [found] = await tx.objectStore('staging').getAll(range, 1);
  return isBundle(found) ? found : undefined;
}

/** Bundle by bundle, each in a transaction of its own: whoever logs a reading meanwhile needn't wait. */
export async function* stagedBundles(
  store: Store,
  name: BackupStore,
): AsyncGenerator<readonly StagedRecord[]> {
  let bundle: Bundle | undefined;
  for (;;) {
    const before = bundle;
    // oxlint-disable-next-line no-await-in-loop
    bundle = await read(store, ['staging'], (tx: Reads) => nextBundle(tx, name, before));
    if (!bundle) return;
    yield bundle.entries;
  }
}

/** The file that waits to be put in, if one does. */
export async function stagedFile(store: Store): Promise<StagedFile | undefined> {
  const found: unknown = await read(store, ['staging'], (tx) => tx.objectStore('staging').get('file'));
  return isStagedFile(found) ? found : undefined;
}

/** Takes out what was read aside, and the photos' bytes that came with it. */
export async function dropStaged(store: Store): Promise<void> {
  await act(store, { stores: ['staging', 'photoBytes'], stamped: false }, async (a) => {
    let bundle = await nextBundle(a.tx, 'photoBytes');
    while (bundle) {
      for (const { record, added } of bundle.entries) if (added) a.drop('photoBytes', record.id);
      // oxlint-disable-next-line no-await-in-loop
      bundle = await nextBundle(a.tx, 'photoBytes', bundle);
    }
    await a.tx.objectStore('staging').clear();
    a.drop('staging', 'file');
  });
}

// Chosen, not published: nobody comes back to a file after a week.
const KEPT_FOR_MS = 7 * 24 * 3_600_000;

/**
 * At the start: what a killed phone left of a file half read is taken out, and a file that nobody came back to. Nothing
 * is done while another window reads one.
 */
export async function sweepStaged(store: Store): Promise<void> {
  await alone(store, async () => {
    const file = await stagedFile(store);
    const isWanted = file?.state === 'ready' && store.now() - file.readAt < KEPT_FOR_MS;
    if (!isWanted) await dropStaged(store);
    return { ok: true, value: undefined };
  });
}

const busy = new Set<string>();

/** One file at a time, in all windows; where the browser knows no locks, in this window. */
export async function alone<T>(store: Store, work: () => Promise<BackupResult<T>>): Promise<BackupResult<T>> {
  const name = `slipfit-file/${store.name}`;
  const inUse = refuse({ code: 'file-in-use' } as const);
  if (busy.has(name)) return inUse;
  busy.add(name);
  try {
    const locks = typeof navigator === 'undefined' ? undefined : locksOf(navigator);
    if (!locks) return await work();
    return await locks.request(name, { ifAvailable: true }, async (lock) => (lock ? work() : inUse));
  } finally {
    busy.delete(name);
  }
}

// The types promise locks; older browsers and pages without https have none.
function locksOf(browser: { readonly locks?: LockManager }): LockManager | undefined {
  return browser.locks;
}

function isBundle(value: unknown): value is Bundle {
  return isPlainObject(value) && Array.isArray(value['entries']) && typeof value['id'] === 'string';
}

function isStagedFile(value: unknown): value is StagedFile {
  return isPlainObject(value) && value['id'] === 'file' && isPlainObject(value['from']);
}
