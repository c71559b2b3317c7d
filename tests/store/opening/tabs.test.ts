import { deleteDB, openDB } from 'idb';
import { afterEach, expect, test, vi } from 'vitest';
import { getDraft, putDraft } from '../../../src/store/kept/drafts.ts';
import { listJobs } from '../../../src/store/kept/job-list.ts';
import { createJob, getJob } from '../../../src/store/kept/jobs.ts';
import { openStore } from '../../../src/store/opening/open-store.ts';
import { StoreUnreadable } from '../../../src/store/opening/read.ts';
import { allSteps } from '../../../src/store/opening/steps/all-steps.ts';
import { watch, type Touched } from '../../../src/store/opening/watch.ts';
import { fixture, writeFixture } from '../open-fixture.ts';
import { closeAll, freshName, openForTest, refused, worked } from '../open-for-test.ts';

afterEach(closeAll);

test('a tab that holds the old database is told, writes its draft, and lets the newer version in', async () => {
  const name = freshName();
  const old = await openForTest({
    name,
    onClosing: () => void putDraft(old, '#/bore', { typed: '0.44', unit: 'in' }),
  });
  const newer = worked(await openStore({ name, steps: [...allSteps, () => undefined] }));
  expect(newer.db.version).toBe(allSteps.length + 1);
  expect(await getDraft(newer, '#/bore')).toEqual({ typed: '0.44', unit: 'in' });
  expect(refused(await createJob(old, { name: 'too late', systems: [] }))).toEqual({
    code: 'closed-by-newer-version',
  });
  await expect(listJobs(old, { limit: 1 })).rejects.toBeInstanceOf(StoreUnreadable);
  newer.db.close();
});

test('an old tab that won’t let go is named after the wait, and asking again goes on waiting', async () => {
  const name = freshName();
  await writeFixture(name, fixture(1));
  const stubborn = await openDB(name, 1); // no answer to a newer version
  const steps = [...allSteps, () => undefined];
  const first = await openStore({ name, steps, timeoutMs: 30 });
  expect(refused(first)).toEqual({ code: 'held-by-another-tab' });
  const again = openStore({ name, steps, timeoutMs: 2000 });
  stubborn.close();
  const store = worked(await again);
  expect(store.db.version).toBe(allSteps.length + 1);
  store.db.close();
});

test('a tab that won’t let go is named long before a browser that hangs would be', async () => {
  const name = freshName();
  await writeFixture(name, fixture(1));
  const stubborn = await openDB(name, 1);
  const steps = [...allSteps, () => undefined];
  // The wait for a browser that never answers is longer than this test may last.
  expect(refused(await openStore({ name, steps, timeoutMs: 600_000 }))).toEqual({
    code: 'held-by-another-tab',
  });
  stubborn.close();
  worked(await openStore({ name, steps })).db.close();
});

test('a browser that throws at the very word for its databases keeps nothing, and that is said', async () => {
  vi.stubGlobal('indexedDB', undefined);
  Object.defineProperty(globalThis, 'indexedDB', {
    configurable: true,
    get: () => {
      throw new DOMException('denied', 'SecurityError');
    },
  });
  const result = await openStore({ name: freshName() });
  vi.unstubAllGlobals();
  expect(refused(result)).toEqual({ code: 'no-storage' });
});

test('a line that drops while a newer version takes over leads to the sentence about the newer one', async () => {
  const name = freshName();
  const old = await openForTest({ name });
  old.db.close();
  const newer = worked(await openStore({ name, steps: [...allSteps, () => undefined] }));
  expect(refused(await createJob(old, { name: 'too late', systems: [] }))).toEqual({
    code: 'closed-by-newer-version',
  });
  newer.db.close();
});

test('a browser that never answers is named instead of waited for', async () => {
  const open = vi.spyOn(indexedDB, 'open').mockImplementation(() => new IDBOpenDBRequest());
  const result = await openStore({ name: freshName(), timeoutMs: 20 });
  open.mockRestore();
  expect(refused(result)).toEqual({ code: 'opening-hung' });
});

test('without a database in the browser the store says so', async () => {
  vi.stubGlobal('indexedDB', undefined);
  const result = await openStore({ name: freshName() });
  vi.unstubAllGlobals();
  expect(refused(result)).toEqual({ code: 'no-storage' });
});

test('a job made in one tab is told to the other by its id, and to this one too', async () => {
  const name = freshName();
  const here = await openForTest({ name });
  const there = await openForTest({ name });
  const heardHere: Touched[] = [];
  watch(here, ['jobs'], (touched) => heardHere.push(...touched));
  const heardThere = new Promise<readonly Touched[]>((resolve) => {
    watch(there, ['jobs'], resolve);
  });
  const job = worked(await createJob(here, { name: 'Outfit', systems: [] }));
  expect(heardHere).toEqual([{ store: 'jobs', id: job.id }]);
  expect(await heardThere).toEqual([{ store: 'jobs', id: job.id }]);
});

test('a watcher that was taken back, or watches another store, hears nothing', async () => {
  const store = await openForTest();
  const heard = vi.fn<(touched: readonly Touched[]) => void>();
  const stop = watch(store, ['jobs'], heard);
  watch(store, ['drawer'], heard);
  stop();
  worked(await createJob(store, { name: 'Outfit', systems: [] }));
  expect(heard).not.toHaveBeenCalled();
});

test('what another tab sends that is no list of ids is left out', async () => {
  const name = freshName();
  const store = await openForTest({ name });
  const heard: Touched[] = [];
  const told = new Promise<void>((resolve) => {
    watch(store, ['jobs'], (touched) => {
      heard.push(...touched);
      resolve();
    });
  });
  const stranger = new BroadcastChannel(`slipfit/${name}`);
  // A broadcast channel has no target origin.
  // oxlint-disable-next-line unicorn/require-post-message-target-origin
  stranger.postMessage('hello');
  const mixed = [{ store: 'jobs' }, null, { store: 'passwords', id: 'x' }, { store: 'jobs', id: 'a' }];
  // oxlint-disable-next-line unicorn/require-post-message-target-origin
  stranger.postMessage(mixed);
  await told;
  stranger.close();
  expect(heard).toEqual([{ store: 'jobs', id: 'a' }]);
});

test('a browser that threw everything away is found out, not taken for an empty shop', async () => {
  const name = freshName();
  const store = await openForTest({ name });
  worked(await createJob(store, { name: 'Outfit', systems: [] }));
  store.db.close();
  await deleteDB(name);
  await expect(listJobs(store, { limit: 5 })).rejects.toMatchObject({ refusal: { code: 'thrown-away' } });
  expect(refused(await createJob(store, { name: 'Trailer', systems: [] }))).toEqual({ code: 'thrown-away' });
});

test('a connection the browser dropped is opened again for the next read and the next write', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  store.db.close(); // what the browser does to a page in the background
  expect((await getJob(store, job.id))?.name).toBe('Outfit');
  store.db.close();
  worked(await createJob(store, { name: 'Trailer', systems: [] }));
  expect((await listJobs(store, { limit: 5 })).jobs).toHaveLength(2);
});
