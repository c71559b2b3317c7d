import { afterEach, expect, test } from 'vitest';
import { changeJob, createJob, getJob, removeJob } from '../../../src/store/kept/jobs.ts';
import {
  addRecheck,
  changeRecheck,
  markRechecked,
  openRechecks,
  rechecksOf,
  removeRecheck,
  setOdometer,
} from '../../../src/store/kept/rechecks.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { closeAll, openForTest, worked } from '../open-for-test.ts';

afterEach(closeAll);

async function withJob() {
  const store = await openForTest();
  return { store, job: worked(await createJob(store, { name: 'Outfit', systems: [] })) };
}

test('a re-check by distance counts from the odometer as it was last typed in', async () => {
  const { store, job } = await withJob();
  worked(await setOdometer(store, job.id, { reading: 41_250, unit: 'km' }));
  const torque = worked(await addRecheck(store, { jobId: job.id, what: 'Axle nut', afterDistance: 100 }));
  expect(torque.fromOdometer).toBe(41_250);
  const hose = worked(await addRecheck(store, { jobId: job.id, what: 'Hose', afterDays: 30 }));
  expect(hose).not.toHaveProperty('fromOdometer');
  expect(hose.from).toBeGreaterThan(1_700_000_000_000);
});

test('the first odometer reading starts the re-checks that waited for it, and one undo takes both back', async () => {
  const { store, job } = await withJob();
  worked(await addRecheck(store, { jobId: job.id, what: 'Axle nut', afterDistance: 100, unit: 'km' }));
  worked(await setOdometer(store, job.id, { reading: 41_250, unit: 'km' }));
  expect(await rechecksOf(store, job.id)).toMatchObject([{ fromOdometer: 41_250 }]);
  const newest = await latestUndo(store, job.id);
  expect(worked(await undoLast(store, newest?.id ?? ''))).toBe('Read the odometer: 41250 km');
  expect((await getJob(store, job.id))?.odometer).toBeUndefined();
  expect((await rechecksOf(store, job.id))[0]).not.toHaveProperty('fromOdometer');
});

test('a closed job’s re-checks still come due; done, removed and removed jobs’ ones don’t', async () => {
  const { store, job } = await withJob();
  const [nut, hose, bolt] = ['Axle nut', 'Hose', 'Bolt'].map((what) => ({
    jobId: job.id,
    what,
    afterDays: 7,
  }));
  if (!nut || !hose || !bolt) throw new Error('three were asked for');
  const done = worked(await addRecheck(store, nut));
  const removed = worked(await addRecheck(store, hose));
  worked(await addRecheck(store, bolt));
  worked(await markRechecked(store, done.id, { by: 'R. Tiller' }));
  worked(await removeRecheck(store, removed.id));
  worked(await changeJob(store, job.id, { state: 'closed' }));
  const open = await openRechecks(store);
  expect(open.map((one) => [one.recheck.what, one.job.name])).toEqual([['Bolt', 'Outfit']]);
  expect(await store.db.countFromIndex('rechecks', 'openAt')).toBe(1);
  expect(await rechecksOf(store, job.id)).toHaveLength(2);
  worked(await removeJob(store, job.id));
  expect(await openRechecks(store)).toEqual([]);
});

test('the odometer read at a re-check is the job’s last one, and one undo takes both back', async () => {
  const { store, job } = await withJob();
  worked(await setOdometer(store, job.id, { reading: 41_250, unit: 'km' }));
  const recheck = worked(await addRecheck(store, { jobId: job.id, what: 'Axle nut', afterDistance: 100 }));
  worked(await markRechecked(store, recheck.id, { by: 'R. Tiller', odometer: 41_390 }));
  expect((await getJob(store, job.id))?.odometer).toMatchObject({ reading: 41_390, unit: 'km' });
  const newest = await latestUndo(store, job.id);
  expect(worked(await undoLast(store, newest?.id ?? ''))).toBe('Re-checked: Axle nut');
  expect((await getJob(store, job.id))?.odometer?.reading).toBe(41_250);
  expect(await openRechecks(store)).toHaveLength(1);
});

test('a re-check that asks for something else than what was done comes due again', async () => {
  const { store, job } = await withJob();
  const recheck = worked(
    await addRecheck(store, { jobId: job.id, what: 'Axle nut', afterDistance: 50, unit: 'mi' }),
  );
  const { done } = worked(await markRechecked(store, recheck.id, { by: 'R. Tiller' }));
  expect(worked(await changeRecheck(store, recheck.id, { afterDistance: 50 })).done).toEqual(done);
  const changed = worked(await changeRecheck(store, recheck.id, { afterDistance: 500 }));
  expect(changed.wasDone).toEqual(done);
  expect(await openRechecks(store)).toHaveLength(1);
  const newest = await latestUndo(store, job.id);
  worked(await undoLast(store, newest?.id ?? ''));
  expect(await rechecksOf(store, job.id)).toMatchObject([{ afterDistance: 50, done }]);
});

test('a re-check marked by mistake is open again', async () => {
  const { store, job } = await withJob();
  const recheck = worked(await addRecheck(store, { jobId: job.id, what: 'Axle nut', afterDays: 7 }));
  worked(await markRechecked(store, recheck.id, { by: 'R. Tiller' }));
  expect(await openRechecks(store)).toEqual([]);
  worked(await changeRecheck(store, recheck.id, { done: undefined }));
  expect(await openRechecks(store)).toHaveLength(1);
});
