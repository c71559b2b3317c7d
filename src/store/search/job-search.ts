import { act, type Act } from '../opening/act.ts';
import type { Kept } from '../base/kept.ts';
import { isPlainObject } from '../base/paths.ts';
import type { StoreName } from '../base/stores.ts';
import type { Store } from '../opening/open-store.ts';
import { read } from '../opening/read.ts';
import { jobWords, WORDS_FORM, wordStores, type JobWords, type OfAJob } from './job-words.ts';
import { createWordIndex, type WordIndex } from './word-index.ts';

/** What a search looks through: those stores, and the words that were worked out of them. */
export const searchedStores: readonly StoreName[] = ['jobs', ...wordStores];

/** The jobs as far as they were gone through; `left` of them still are to be. */
export type JobSearch = { readonly index: WordIndex; readonly left: number; readonly all: number };

// Chosen, not published: a key pressed meanwhile waits for no more than so many.
const WORDS_AT_ONCE = 100;
const JOBS_AT_ONCE = 2;
const TOLD_EVERY = 10;

/**
 * The words of all jobs, read in piece by piece; those that are missing are worked out from the records and kept, the job
 * last worked on first. Each step can be searched already. Ends early where nobody wants it any more.
 */
export async function* readJobSearch(store: Store, isWanted: () => boolean): AsyncGenerator<JobSearch> {
  const ids = await listedJobs(store);
  const index = createWordIndex();
  const missing = new Set(ids);
  const state = () => ({ index, left: missing.size, all: ids.length });
  let after = '';
  for (;;) {
    // One piece after the other, with room for a key in between.
    // oxlint-disable-next-line no-await-in-loop
    const kept = await wordsBehind(store, after);
    if (!isWanted()) return;
    for (const words of kept.filter(isJobWords)) if (missing.delete(words.id)) index.put(words);
    after = kept.at(-1)?.id ?? '';
    if (kept.length < WORDS_AT_ONCE) break;
  }
  yield state();
  const toDo = [...missing];
  for (let at = 0; at < toDo.length; at += JOBS_AT_ONCE) {
    const some = toDo.slice(at, at + JOBS_AT_ONCE);
    // oxlint-disable-next-line no-await-in-loop
    const made = await makeWords(store, some);
    if (!isWanted()) return;
    for (const words of made) index.put(words);
    for (const id of some) missing.delete(id);
    if (at % (JOBS_AT_ONCE * TOLD_EVERY) === 0 || missing.size === 0) yield state();
  }
}

/** Jobs that aren't removed, the one last worked on first. */
async function listedJobs(store: Store): Promise<readonly string[]> {
  const keys = await read(store, ['jobs'], (tx) => tx.objectStore('jobs').index('listedAt').getAllKeys());
  return keys.map(String).toReversed();
}

async function wordsBehind(store: Store, id: string): Promise<readonly Kept[]> {
  return read(store, ['words'], (tx) =>
    tx.objectStore('words').getAll(IDBKeyRange.lowerBound(id, true), WORDS_AT_ONCE),
  );
}

function isJobWords(record: unknown): record is JobWords {
  return isPlainObject(record) && record['form'] === WORDS_FORM && Array.isArray(record['lines']);
}

/**
 * Reads some jobs and keeps their words, in one transaction: what is changed after that drops them again. Where they can't
 * be kept, on a full disk, they serve this search alone.
 */
async function makeWords(store: Store, ids: readonly string[]): Promise<readonly JobWords[]> {
  const kept = await act(
    store,
    { stores: [...searchedStores, 'words'], stamped: false, durability: 'relaxed' },
    async (a) => {
      const made = await wordsOf(a.tx, ids);
      for (const words of made) a.putKept('words', { ...words });
      return made;
    },
  );
  return kept.ok ? kept.value : read(store, searchedStores, (tx) => wordsOf(tx, ids));
}

type Looking = {
  objectStore(name: string): {
    get(id: string): Promise<Kept | undefined>;
    index(name: string): { getAll(key: IDBValidKey | IDBKeyRange): Promise<Kept[]> };
  };
};

async function wordsOf(tx: Looking | Act['tx'], ids: readonly string[]): Promise<readonly JobWords[]> {
  const found = ids.map(async (id) => {
    const job: Kept | undefined = await tx.objectStore('jobs').get(id);
    return job ? [jobWords(job, await ofAJob(tx, id))] : [];
  });
  return (await Promise.all(found)).flat();
}

async function ofAJob(tx: Looking | Act['tx'], jobId: string): Promise<OfAJob> {
  const all = wordStores.map(async (name) => {
    const store = tx.objectStore(name);
    const records: Kept[] =
      name === 'readings'
        ? await store.index('jobId+at').getAll(IDBKeyRange.bound([jobId], [jobId, []]))
        : await store.index('jobId').getAll(jobId);
    return [name, records] as const;
  });
  return new Map(await Promise.all(all));
}
