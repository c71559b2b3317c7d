import { afterEach, expect, test } from 'vitest';
import { isSafetyCritical } from '../../../src/engine/job/safety.ts';
import { listJobs } from '../../../src/store/kept/job-list.ts';
import { changeJob, createJob, getJob, removeJob } from '../../../src/store/kept/jobs.ts';
import { createFeature } from '../../../src/store/kept/features.ts';
import { unreadableSeen } from '../../../src/store/opening/open-store.ts';
import { closeAll, openForTest, refused, tickingClock, worked } from '../open-for-test.ts';

afterEach(closeAll);

test('the job touched last comes first, whatever was made last', async () => {
  const store = await openForTest();
  const first = worked(await createJob(store, { name: 'first', systems: [] }));
  worked(await createJob(store, { name: 'second', systems: [] }));
  worked(await createFeature(store, { jobId: first.id, kind: 'bore', name: 'bore' }));
  const { jobs } = await listJobs(store, { limit: 5 });
  expect(jobs.map(({ name }) => name)).toEqual(['first', 'second']);
});

test('page by page every job comes once, and the last page says that there is no more', async () => {
  const store = await openForTest();
  for (const number of [1, 2, 3, 4, 5, 6, 7]) {
    worked(await createJob(store, { name: `job ${number}`, systems: [] }));
  }
  const first = await listJobs(store, { limit: 3 });
  const second = await listJobs(store, { limit: 3, before: first.jobs.at(-1)?.touchedAt ?? 0 });
  const third = await listJobs(store, { limit: 3, before: second.jobs.at(-1)?.touchedAt ?? 0 });
  const names = [first, second, third].map(({ jobs }) => jobs.map(({ name }) => name));
  expect(names).toEqual([['job 7', 'job 6', 'job 5'], ['job 4', 'job 3', 'job 2'], ['job 1']]);
  expect([first.more, second.more, third.more]).toEqual([true, true, false]);
});

test('jobs touched in the same millisecond are not lost between two pages', async () => {
  const store = await openForTest({ now: () => 1_700_000_000_000 });
  for (const number of [1, 2, 3, 4]) {
    worked(await createJob(store, { name: `job ${number}`, systems: [] }));
  }
  const { jobs, more } = await listJobs(store, { limit: 2 });
  expect(jobs).toHaveLength(4);
  expect(more).toBe(false);
});

test('what the list is read from holds no removed job, so none is stepped over', async () => {
  const store = await openForTest();
  for (const number of [1, 2, 3, 4, 5, 6]) {
    const job = worked(await createJob(store, { name: `job ${number}`, systems: [] }));
    if (number > 2) worked(await removeJob(store, job.id));
  }
  expect(await store.db.count('jobs')).toBe(6);
  expect(await store.db.countFromIndex('jobs', 'listedAt')).toBe(2);
});

test('a removed job is gone from the list, and nothing can be added to it', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  worked(await removeJob(store, job.id));
  expect(await getJob(store, job.id)).toBeUndefined();
  expect((await listJobs(store, { limit: 5 })).jobs).toEqual([]);
  const feature = await createFeature(store, { jobId: job.id, kind: 'bore', name: 'bore' });
  expect(refused(feature)).toEqual({ code: 'gone', store: 'jobs' });
});

test('a job that can’t be read is counted, and opening another one still works', async () => {
  const store = await openForTest();
  const good = worked(await createJob(store, { name: 'good', systems: [] }));
  await store.db.put('jobs', { id: 'odd', name: 7, touchedAt: 1, listedAt: 1 });
  const page = await listJobs(store, { limit: 5 });
  expect(page).toMatchObject({ jobs: [{ id: good.id }], unreadable: 1, more: false });
  expect(unreadableSeen(store)).toEqual([{ store: 'jobs', id: 'odd' }]);
  expect(refused(await changeJob(store, 'odd', { name: 'x' }))).toEqual({
    code: 'record-unreadable',
    store: 'jobs',
  });
  expect(await store.db.get('jobs', 'odd')).toMatchObject({ name: 7 });
});

test('a name that is too long is refused by its field, and nothing of the job is kept', async () => {
  const store = await openForTest();
  const result = await createJob(store, { name: 'x'.repeat(501), systems: [] });
  expect(refused(result)).toEqual({ code: 'cannot-keep', store: 'jobs', field: 'name' });
  expect((await listJobs(store, { limit: 5 })).jobs).toEqual([]);
});

test('fields a newer Slipfit wrote outlive a change made with this one', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const kept = await store.db.get('jobs', job.id);
  await store.db.put('jobs', { ...kept, colourOfTheTank: { hue: 'green' } });
  worked(await changeJob(store, job.id, { name: 'Outfit 8' }));
  expect(await store.db.get('jobs', job.id)).toMatchObject({
    name: 'Outfit 8',
    colourOfTheTank: { hue: 'green' },
  });
});

test('a clock that was set back doesn’t run the stamps back', async () => {
  let nowMs = 1_700_000_000_000;
  const store = await openForTest({ now: () => nowMs });
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  nowMs -= 86_400_000;
  worked(await changeJob(store, job.id, { name: 'later' }));
  const { stamps } = await store.db.get('jobs', job.id);
  expect(stamps.name > stamps['*']).toBe(true);
});

test('only the field that changed gets a new stamp', async () => {
  const store = await openForTest({ now: tickingClock() });
  const job = worked(await createJob(store, { name: 'Outfit', what: 'sidecar', systems: [] }));
  worked(await changeJob(store, job.id, { name: 'Outfit 9', what: 'sidecar' }));
  const { stamps } = await store.db.get('jobs', job.id);
  expect(Object.keys(stamps).toSorted()).toEqual(['*', 'name', 'touchedAt']);
});

test.each([
  { systems: ['brake'], critical: true },
  { systems: ['engine', 'steering'], critical: true },
  { systems: ['axle'], critical: true },
  { systems: ['wheel'], critical: true },
  { systems: ['engine'], critical: false },
] as const)('a job that touches $systems is safety-critical: $critical', ({ systems, critical }) => {
  expect(isSafetyCritical({ systems })).toBe(critical);
});

test('a job made with none of the systems says so, and is not safety-critical', async () => {
  const made = worked(await createJob(await openForTest(), { name: 'Stand', systems: [] }));
  expect(made.touchesNone).toBe(true);
  expect(isSafetyCritical(made)).toBe(false);
});
