import { signedStores, type SignedStore } from '../base/stores.ts';
import type { Stamp } from '../base/clock.ts';
import { derivedFields, isGone, isStamped, type Kept } from '../base/kept.ts';
import type { Store } from '../opening/open-store.ts';
import { canonicalText, isPlainObject } from '../base/paths.ts';
import { shownWords } from '../base/plain-words.ts';
import { read } from '../opening/read.ts';
import type { Id } from '../base/records.ts';

/** A digest of each of them as it stood when it was signed, and under `logged` how many readings there were. */
export type Stood = Readonly<Record<string, string>>;

/** Something that stands otherwise than it was signed; a name only where it is known which one of its kind it is. */
export type ChangedThing = { readonly store: SignedStore; readonly name?: string; readonly removed?: true };

export type Readable = {
  objectStore(name: string): {
    get(key: string): Promise<Kept | undefined>;
    getAll(): Promise<Kept[]>;
    index(name: string): {
      getAll(key: IDBValidKey | IDBKeyRange): Promise<Kept[]>;
      count(range: IDBKeyRange): Promise<number>;
    };
  };
};

/** How a job stands now, as part of the act that signs it. */
export async function standingNow(tx: Readable, jobId: Id): Promise<Stood> {
  const digests = signedStores.map(async (store) => [
    store,
    digestOf(store, await keptOfJob(tx, store, jobId)),
  ]);
  // All at once: one that fails alone, on a full phone, must not leave the others to fail unheard.
  const [stood, logged] = await Promise.all([Promise.all(digests), loggedIn(tx, jobId)]);
  return { ...Object.fromEntries(stood), logged: String(logged) };
}

/**
 * What of a job stands otherwise than in its last signed sheet; nothing while it was never signed. It compares what is
 * with what was, so that a change that was undone is none. A sheet that an earlier Slipfit signed has nothing to compare
 * with: there whatever was written since counts, also when it was undone.
 */
export async function changedSinceSigning(store: Store, jobId: Id): Promise<readonly ChangedThing[]> {
  return read(store, signedStores, async (tx) => {
    const signed = signedOf(await tx.objectStore('jobs').get(jobId));
    if (!signed) return [];
    const all = await Promise.all(
      signedStores.map(async (name) => ({ name, records: await keptOfJob(tx, name, jobId) })),
    );
    const owners = new Map(
      all.flatMap(({ records }) => records.map((record) => [record.id, record] as const)),
    );
    return unique(
      all
        .filter(({ name, records }) => differs(signed, name, records))
        .flatMap(({ name, records }) => {
          const later = records.filter((record) => isLater(signed, name, record));
          // What another phone logged before it was signed, and brought since, has no later stamp.
          return later.length === 0
            ? [{ store: name }]
            : later.map((record) => thingOf(name, record, (id) => owners.get(id)));
        }),
    );
  });
}

/**
 * Which of these jobs stand otherwise than they were signed, for a list of them. Readings are only counted, by their
 * index: one that was struck out since is not seen here, but in its job.
 */
export async function jobsChangedSinceSigning(store: Store, jobIds: readonly Id[]): Promise<ReadonlySet<Id>> {
  return read(store, signedStores, async (tx) => {
    const changed = jobIds.map(async (jobId) => ((await isChanged(tx, jobId)) ? [jobId] : []));
    return new Set((await Promise.all(changed)).flat());
  });
}

async function isChanged(tx: Readable, jobId: Id): Promise<boolean> {
  const signed = signedOf(await tx.objectStore('jobs').get(jobId));
  if (!signed) return false;
  const { stood, at } = signed;
  const logged = stood ? await loggedIn(tx, jobId) : await loggedIn(tx, jobId, at);
  if (String(logged) !== (stood?.['logged'] ?? '0')) return true;
  const others = signedStores.filter((name) => name !== 'readings');
  const found = others.map(async (name) => differs(signed, name, await keptOfJob(tx, name, jobId)));
  return (await Promise.all(found)).includes(true);
}

type Signed = { readonly at: number; readonly stamp: Stamp; readonly stood: Stood | undefined };

function signedOf(job: Kept | undefined): Signed | undefined {
  const signedOff = job?.['signedOff'];
  if (!job || isGone(job) || !isStamped(job) || !isPlainObject(signedOff)) return undefined;
  const { at, stood } = signedOff;
  return {
    at: Number(at),
    stamp: job.stamps['signedOff'] ?? job.stamps['*'],
    stood: isPlainObject(stood)
      ? Object.fromEntries(Object.entries(stood).map(([name, one]) => [name, String(one)]))
      : undefined,
  };
}

/** What a store holds of a job, removed records too. */
export async function keptOfJob(
  tx: Readable,
  store: SignedStore | 'money' | 'photos',
  jobId: Id,
): Promise<readonly Kept[]> {
  const from = tx.objectStore(store);
  if (store === 'jobs') return [(await from.get(jobId)) ?? []].flat();
  if (store === 'readings') return from.index('jobId+at').getAll(IDBKeyRange.bound([jobId], [jobId, []]));
  return from.index('jobId').getAll(jobId);
}

/** How many readings a job has, removed ones too: all of them, or those that were logged behind a time. */
async function loggedIn(tx: Readable, jobId: Id, after = -1): Promise<number> {
  const range = IDBKeyRange.bound([jobId, after], [jobId, []], true);
  return tx.objectStore('readings').index('jobId+at').count(range);
}

function differs({ stood, ...signed }: Signed, store: SignedStore, records: readonly Kept[]): boolean {
  return stood
    ? digestOf(store, records) !== stood[store]
    : records.some((record) => isLater({ stood, ...signed }, store, record));
}

function digestOf(store: SignedStore, records: readonly Kept[]): string {
  const there = records.filter((record) => !isGone(record));
  // Steps count by the order they stand in, not by its numbers: those are given anew at every move.
  const inOrder =
    store === 'steps' ? there.toSorted((a, b) => Number(a['order']) - Number(b['order'])) : there;
  const text = canonicalText(
    inOrder.map((record) =>
      Object.fromEntries(Object.entries(record).filter(([field]) => isSigned(store, field))),
    ),
  );
  return canonicalText(new TextEncoder().encode(text).buffer);
}

const OF_A_JOB: ReadonlySet<string> = new Set([
  'name',
  'what',
  'customerNote',
  'customer',
  'machine',
  'systems',
  'touchesNone',
  'reasons',
]);
const NEVER: ReadonlySet<string> = new Set([
  'stamps',
  'deleted',
  'createdAt',
  'touchedAt',
  'settled',
  'order',
  ...derivedFields,
]);
// A re-check that is done on the road, and where it counts from, is what comes after the signing.
const AFTER_SIGNING: ReadonlySet<string> = new Set(['from', 'fromOdometer', 'done', 'wasDone']);

function isSigned(store: SignedStore, field: string): boolean {
  if (store === 'jobs') return OF_A_JOB.has(field);
  return !NEVER.has(field) && !(store === 'rechecks' && AFTER_SIGNING.has(field));
}

/** Whether it was made, changed or removed after the signing, in something that was signed. */
function isLater({ stamp }: Signed, store: SignedStore, record: Kept): boolean {
  if (!isStamped(record)) return false;
  const { '*': made, ...others } = record.stamps;
  if (made > stamp) return !isGone(record);
  return Object.entries(others).some(
    ([path, one]) =>
      one > stamp && (path === 'deleted' || path === 'order' || isSigned(store, path.replace(/\..*/s, ''))),
  );
}

const NAMED_BY: Readonly<Record<SignedStore, string>> = {
  jobs: 'name',
  parts: 'name',
  features: 'name',
  readings: 'typed',
  worksheets: 'title',
  cuts: 'name',
  checks: 'name',
  steps: 'text',
  rechecks: 'what',
};

/** A reading is named by what was measured, and what was measured for a check by the check. */
function thingOf(store: SignedStore, record: Kept, find: (id: Id) => Kept | undefined): ChangedThing {
  const ownerId =
    store === 'readings' ? record['featureId'] : store === 'features' ? record['checkId'] : undefined;
  const owner = typeof ownerId === 'string' ? find(ownerId) : undefined;
  if (owner) return thingOf(store === 'readings' ? 'features' : 'checks', owner, find);
  const name = shownWords(String(record[NAMED_BY[store]]));
  return { store, name, ...(isGone(record) && { removed: true }) };
}

function unique(things: readonly ChangedThing[]): readonly ChangedThing[] {
  return [...new Map(things.map((thing) => [canonicalText(thing), thing])).values()];
}
