import { afterEach, expect, test } from 'vitest';
import { restoreBackup } from '../../../src/store/file/backup.ts';
import { addDemo } from '../add-demo.ts';
import { addPiece, countPiece, drawerPieces } from '../../../src/store/kept/drawer.ts';
import { changeFeature, featuresOf, removeFeature } from '../../../src/store/kept/features.ts';
import { listJobs } from '../../../src/store/kept/job-list.ts';
import { changeJob, createJob, getJob, removeJob } from '../../../src/store/kept/jobs.ts';
import { readingsOf } from '../../../src/store/kept/readings.ts';
import { getSetting, putSetting } from '../../../src/store/kept/settings.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { backupOf, carry, exchange, log, twoPhonesWithABore } from '../two-phones-for-test.ts';
import { closeAll, openForTest, tickingClock, worked } from '../open-for-test.ts';

afterEach(closeAll);

test('readings logged on two phones are all there on both', async () => {
  const { owner, helper, job, bore } = await twoPhonesWithABore();
  worked(await log(owner, bore.id, job.id, '.4487'));
  worked(await log(helper, bore.id, job.id, '.4490'));
  await exchange(owner, helper);
  for (const phone of [owner, helper]) {
    const typed = (await readingsOf(phone, bore.id)).map((reading) => reading.typed);
    expect(typed.toSorted()).toEqual(['.4487', '.4490']);
  }
});

test('restoring the same backup twice adds nothing the second time', async () => {
  const { owner, helper, job, bore } = await twoPhonesWithABore();
  worked(await log(owner, bore.id, job.id, '.4487'));
  const text = await backupOf(owner);
  expect(worked(await restoreBackup(helper, text))).toMatchObject({ added: 1, changed: 1 }); // the reading; the job it touched
  expect(worked(await restoreBackup(helper, text))).toMatchObject({ added: 0, changed: 0 });
});

test('a feature removed on one phone comes back, marked, when the other logged a reading in it', async () => {
  const { owner, helper, job, bore } = await twoPhonesWithABore();
  worked(await removeFeature(owner, bore.id));
  worked(await log(helper, bore.id, job.id, '.4490'));
  await exchange(owner, helper);
  for (const phone of [owner, helper]) {
    expect(await featuresOf(phone, job.id)).toMatchObject([{ name: 'left bore', broughtBack: true }]);
    expect(await readingsOf(phone, bore.id)).toHaveLength(1);
  }
});

test('a feature that came back can be removed for good', async () => {
  const { owner, helper, job, bore } = await twoPhonesWithABore();
  worked(await removeFeature(owner, bore.id));
  worked(await log(helper, bore.id, job.id, '.4490'));
  await exchange(owner, helper);
  worked(await removeFeature(owner, bore.id));
  await exchange(owner, helper);
  expect(await featuresOf(helper, job.id)).toEqual([]);
});

test('a renamed feature that came back stays in the list, and so it does when that is undone', async () => {
  const { owner, helper, job, bore } = await twoPhonesWithABore();
  worked(await removeFeature(owner, bore.id));
  worked(await log(helper, bore.id, job.id, '.4490'));
  await exchange(owner, helper);
  worked(await changeFeature(owner, bore.id, { name: 'right bore' }));
  const newest = await latestUndo(owner, job.id);
  worked(await undoLast(owner, newest?.id ?? ''));
  expect(await featuresOf(owner, job.id)).toMatchObject([{ name: 'left bore', broughtBack: true }]);
});

test('a job removed on one phone stays removed on the other, with what was in it', async () => {
  const { owner, helper, job } = await twoPhonesWithABore();
  worked(await removeJob(owner, job.id));
  await exchange(owner, helper);
  expect(await getJob(helper, job.id)).toBeUndefined();
  expect((await listJobs(helper, { limit: 5 })).jobs).toEqual([]);
});

test('two phones’ counts of one piece add up', async () => {
  const { owner, helper } = await twoPhonesWithABore();
  const piece = worked(await addPiece(owner, { kind: 'shim', name: 'shim', material: 'brass' }, 10));
  await exchange(owner, helper);
  worked(await countPiece(owner, piece.id, -2, 'left side'));
  worked(await countPiece(helper, piece.id, -3, 'right side'));
  await exchange(owner, helper);
  expect((await drawerPieces(owner)).map(({ count }) => count)).toEqual([5]); // 10 − 2 − 3
  expect((await drawerPieces(helper)).map(({ count }) => count)).toEqual([5]);
});

test('a change made after a restore wins over what was restored, also where the other clock is a day ahead', async () => {
  const owner = await openForTest();
  const ahead = await openForTest({ now: tickingClock(1_700_080_000_000) }); // 22 hours
  const job = worked(await createJob(ahead, { name: 'theirs', systems: [] }));
  await carry(ahead, owner);
  worked(await changeJob(owner, job.id, { name: 'mine' }));
  await exchange(owner, ahead);
  expect((await getJob(ahead, job.id))?.name).toBe('mine');
  expect((await getJob(owner, job.id))?.name).toBe('mine');
});

test('settings come with a backup to a new phone, and leave those of a phone in use alone', async () => {
  const owner = await openForTest();
  const helper = await openForTest();
  worked(await putSetting(owner, 'shownUnit', 'mm'));
  worked(await putSetting(owner, 'padSize', 'glove'));
  worked(await putSetting(owner, 'lastPlace', '#/jobs/1'));
  worked(await putSetting(helper, 'shownUnit', 'in'));
  await carry(owner, helper);
  expect(await getSetting(helper, 'shownUnit')).toBe('in');
  expect(await getSetting(helper, 'padSize')).toBe('glove');
  expect(await getSetting(helper, 'lastPlace')).toBeUndefined();
});

test('the demo put in on two phones on two days merges', async () => {
  const owner = await openForTest();
  const helper = await openForTest({ now: tickingClock(1_700_500_000_000) });
  worked(await addDemo(owner));
  worked(await addDemo(helper));
  await exchange(owner, helper);
  expect((await listJobs(owner, { limit: 9 })).jobs).toHaveLength(2);
});
