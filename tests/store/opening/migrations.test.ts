import { openDB } from 'idb';
import { afterEach, expect, test } from 'vitest';
import { lengthOf, sameLength } from '../../../src/engine/length/length.ts';
import { waitingPreview } from '../../../src/store/file/backup-preview.ts';
import { applyPreviewed } from '../../../src/store/file/backup-restore.ts';
import { checksOf, takesOf } from '../../../src/store/kept/checks.ts';
import { passesOf } from '../../../src/store/kept/cut-state.ts';
import { cutsOf, openCuts } from '../../../src/store/kept/cuts.ts';
import { drawerPieces } from '../../../src/store/kept/drawer.ts';
import { getDraft } from '../../../src/store/kept/drafts.ts';
import { featuresOf } from '../../../src/store/kept/features.ts';
import { listJobs } from '../../../src/store/kept/job-list.ts';
import { moneyOf } from '../../../src/store/kept/money.ts';
import { closeStore, openStore, unreadableSeen } from '../../../src/store/opening/open-store.ts';
import { partsOf } from '../../../src/store/kept/parts.ts';
import { photoBytes, photosOfJob } from '../../../src/store/kept/photos.ts';
import { readingsOf } from '../../../src/store/kept/readings.ts';
import { openRechecks } from '../../../src/store/kept/rechecks.ts';
import { getSetting } from '../../../src/store/kept/settings.ts';
import { readJobSearch } from '../../../src/store/search/job-search.ts';
import { sheetsOf } from '../../../src/store/kept/sheets.ts';
import { stepsOf } from '../../../src/store/kept/steps.ts';
import { allSteps } from '../../../src/store/opening/steps/all-steps.ts';
import { createStoresAfterTheWorksheet } from '../../../src/store/opening/steps/create-stores-after-the-worksheet.ts';
import type { Step } from '../../../src/store/opening/steps/step.ts';
import { measuringTools } from '../../../src/store/kept/tools.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { worksheetsOf } from '../../../src/store/kept/worksheets.ts';
import { fixture, fixtures, readDatabase, writeFixture } from '../open-fixture.ts';
import { closeAll, freshName, openForTest, refused, worked } from '../open-for-test.ts';

afterEach(closeAll);

test('there is one stored database for every step of the database, numbered from 1', () => {
  expect(fixtures().map(({ version }) => version)).toEqual(allSteps.map((_step, index) => index + 1));
});

test('a new database has the same stores and indexes as the newest stored one', async () => {
  const { db } = await openForTest();
  const { stores } = await readDatabase(db);
  const shapes = (all: typeof stores) =>
    Object.entries(all)
      .map(([name, { keyPath, indexes }]) => ({ name, keyPath, indexes }))
      .toSorted((a, b) => a.name.localeCompare(b.name));
  expect(shapes(stores)).toEqual(shapes(fixture(allSteps.length).stores));
});

test.each(fixtures())('the database of version $version opens and keeps every record', async (old) => {
  const name = freshName();
  await writeFixture(name, old);
  const store = await openForTest({ name });
  const now = await readDatabase(store.db);
  expect(now.version).toBe(allSteps.length);
  for (const [storeName, { records }] of Object.entries(old.stores)) {
    const ids = new Set(now.stores[storeName]?.records.map(({ id }) => id));
    expect(records.filter(({ id }) => !ids.has(id))).toEqual([]);
  }
});

test('a shop kept by the first release reads as it was left, down to the half-typed number', async () => {
  const name = freshName();
  await writeFixture(name, fixture(1));
  const store = await openForTest({ name });
  const { jobs } = await listJobs(store, { limit: 10 });
  expect(jobs.map((job) => job.name)).toEqual(['Outfit 3']); // the Wheelbarrow was removed
  const jobId = jobs[0]?.id ?? '';
  const features = await featuresOf(store, jobId);
  expect(features.map((feature) => feature.name)).toEqual(['left bore', 'axle']);
  expect((await worksheetsOf(store, jobId)).map((one) => one.title)).toEqual([
    'Axle in the left leg',
    'Left side',
  ]);
  expect((await drawerPieces(store)).map(({ count }) => count)).toEqual([8]); // 10 put in, 2 taken
  expect((await measuringTools(store)).map((tool) => tool.id)).toContain('telescoping-gauge');
  expect(await getSetting(store, 'shownUnit')).toBe('in');
  expect(await getDraft(store, '#/jobs/1/readings.size')).toEqual({ typed: '0.44', unit: 'in' });
});

test('a reading that can’t be read is left where it is and counted, and its neighbours still come', async () => {
  const name = freshName();
  await writeFixture(name, fixture(1));
  const store = await openForTest({ name });
  const { jobs } = await listJobs(store, { limit: 1 });
  const [bore] = await featuresOf(store, jobs[0]?.id ?? '');
  const readings = await readingsOf(store, bore?.id ?? '');
  expect(readings.map(({ typed }) => typed)).toEqual(['29/64', '.4533', '.4950']);
  // 29/64 in = 0.453125 in × 25.4 = 11.509375 mm
  expect(readings[0] && sameLength(readings[0].exact, lengthOf('11.509375 mm'))).toBe(true);
  expect(unreadableSeen(store)).toEqual([{ store: 'readings', id: '0d9e3c52-77aa-4b0f-8a54-5b1d0a1f6f01' }]);
  expect(await store.db.get('readings', '0d9e3c52-77aa-4b0f-8a54-5b1d0a1f6f01')).toMatchObject({
    exact: 0.449,
  });
});

test('a shop kept by the second release reads as it was left, with its photo', async () => {
  const name = freshName();
  await writeFixture(name, fixture(2));
  const store = await openForTest({ name });
  const [job] = (await listJobs(store, { limit: 1 })).jobs;
  const jobId = job?.id ?? '';
  expect(job?.odometer).toMatchObject({ reading: 41390, unit: 'km' });
  const cuts = await cutsOf(store, jobId); // the ring was removed, one can't be read
  expect(cuts.map(({ name: cut, state }) => `${cut}: ${state}`)).toEqual([
    'Spacer, face to length: to-size',
    'Bushing, outside: made-again',
    'Hole for the insert: scrapped',
    'Bushing, outside: to-cut',
  ]);
  const passes = cuts[0] ? passesOf(cuts[0]) : [];
  expect(passes.map(([, { measured, struckOut }]) => [measured.typed, struckOut?.why])).toEqual([
    ['1.5203', undefined],
    ['1.4998', 'chip under the anvil'],
    ['1.4795', undefined],
  ]);
  expect((await openCuts(store)).map(({ cut }) => cut.id)).toEqual([cuts[3]?.id]);
  expect((await checksOf(store, jobId)).map((check) => takesOf(check).length)).toEqual([2, 1]);
  expect((await stepsOf(store, jobId)).map(({ done }) => done?.by)).toEqual(['R. Tiller', undefined]);
  expect((await openRechecks(store)).map(({ recheck }) => recheck.what)).toEqual(['Look at the hose']);
  const [photo, ...others] = await photosOfJob(store, jobId);
  expect(others).toEqual([]); // one was removed
  const bytes = (await photoBytes(store, photo?.id ?? '')) ?? new ArrayBuffer(0);
  expect([...new Uint8Array(bytes, 0, 4)]).toEqual([0x89, 0x50, 0x4e, 0x47]); // how every PNG begins (ISO/IEC 15948, 5.2)
  expect((await moneyOf(store, jobId)).map(({ amount, hours }) => amount ?? hours)).toEqual(['12.40', '2.5']);
  expect((await sheetsOf(store, jobId)).map(({ signedBy }) => signedBy)).toEqual(['R. Tiller']);
  expect((await partsOf(store, jobId)).map(({ swapped }) => swapped?.by)).toEqual([undefined, 'R. Tiller']);
  expect([...store.unreadable.values()].map(({ store: from }) => from)).toEqual(['cuts']);
});

test('a shop kept by the third release still has its waiting file, and what a file brought goes out again', async () => {
  const name = freshName();
  await writeFixture(name, fixture(3));
  const store = await openForTest({ name });
  const waiting = await waitingPreview(store);
  const coming =
    waiting && worked(waiting).jobs.filter(({ isHere, staysRemoved }) => !isHere && !staysRemoved);
  expect(coming?.map((job) => job.name)).toEqual(['Bench vice']);
  const names = async () => (await listJobs(store, { limit: 9 })).jobs.map((job) => job.name);
  expect(await names()).toContain('Hand cart');
  const undo = await latestUndo(store);
  expect(worked(await undoLast(store, undo?.id ?? ''))).toBe('What the file brought');
  expect(await names()).not.toContain('Hand cart');
  worked(await applyPreviewed(store));
  expect(await names()).toEqual(expect.arrayContaining(['Hand cart', 'Bench vice', 'Outfit 3']));
});

test('a shop kept by the fourth release is searched by what it kept, and by what was changed since', async () => {
  const name = freshName();
  await writeFixture(name, fixture(4));
  const store = await openForTest({ name });
  const steps: number[] = [];
  let names: string[] = [];
  for await (const { index, left } of readJobSearch(store, () => true)) {
    steps.push(left);
    names = index.find('weaver 29/64', 9).found.map(({ job }) => job.name);
  }
  expect(steps).toEqual([0]); // nothing had to be read again
  expect(names).toEqual(['Outfit 3']);
});

const failsAtOnce: Step = () => {
  throw new Error('the step failed');
};
const failsHalfWay: Step = async (db, transaction) => {
  db.createObjectStore('half-made');
  await transaction.objectStore('jobs').clear();
  await transaction.objectStore('readings').clear();
  throw new Error('the step failed after it had emptied a store');
};
const secondFailsHalfWay: Step = async (db, transaction) => {
  await createStoresAfterTheWorksheet(db, transaction);
  await transaction.objectStore('cuts').add({ id: 'a cut' });
  throw new Error('the step failed with its stores made');
};
const failsInTheDatabase: Step = async (_db, transaction) => {
  await transaction.objectStore('jobs').add({ id: 'twice' });
  await transaction.objectStore('jobs').add({ id: 'twice' });
};

test.each([
  { way: 'at once', step: failsAtOnce },
  { way: 'half-way, after an await', step: failsHalfWay },
  { way: 'half-way, with the stores of the second release made', step: secondFailsHalfWay },
  { way: 'inside the database', step: failsInTheDatabase },
])('a step that fails $way leaves the old data and the old version', async ({ step }) => {
  const name = freshName();
  await writeFixture(name, fixture(1));
  const result = await openStore({ name, steps: [...allSteps.slice(0, 1), step] });
  expect(refused(result)).toEqual({ code: 'upgrade-failed', step: 2 });
  const db = await openDB(name);
  expect(await readDatabase(db)).toEqual(await inDatabaseOrder(fixture(1)));
  db.close();
});

test('after a failed step the app of before still opens the data', async () => {
  const name = freshName();
  await writeFixture(name, fixture(1));
  refused(await openStore({ name, steps: [...allSteps.slice(0, 1), failsHalfWay] }));
  const store = worked(await openStore({ name, steps: allSteps.slice(0, 1) }));
  expect((await listJobs(store, { limit: 5 })).jobs).toHaveLength(1);
  closeStore(store);
});

test('a step that waits for the database moves the data and the version', async () => {
  const name = freshName();
  await writeFixture(name, fixture(1));
  const rename: Step = async (_db, transaction) => {
    const jobs = await transaction.objectStore('jobs').getAll();
    await Promise.all(jobs.map((job) => transaction.objectStore('jobs').put({ ...job, what: 'moved' })));
  };
  const store = worked(await openStore({ name, steps: [...allSteps.slice(0, 1), rename] }));
  expect(store.db.version).toBe(2);
  expect((await listJobs(store, { limit: 1 })).jobs[0]?.what).toBe('moved');
  closeStore(store);
});

test('a database of a newer Slipfit is not touched', async () => {
  const name = freshName();
  const newer = { ...fixture(1), version: allSteps.length + 1 };
  await writeFixture(name, newer);
  expect(refused(await openStore({ name }))).toEqual({ code: 'newer-database' });
  const db = await openDB(name);
  expect(await readDatabase(db)).toEqual(await inDatabaseOrder(newer));
  db.close();
});

// A database gives its stores, indexes and records back sorted; the stored one is sent through another to be alike.
async function inDatabaseOrder(old: ReturnType<typeof fixture>) {
  const name = freshName();
  await writeFixture(name, old);
  const db = await openDB(name);
  const read = await readDatabase(db);
  db.close();
  return read;
}
