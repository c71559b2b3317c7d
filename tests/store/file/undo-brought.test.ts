import { afterEach, expect, test } from 'vitest';
import { restoreBackup } from '../../../src/store/file/backup.ts';
import { createFeature, featuresOf } from '../../../src/store/kept/features.ts';
import { listJobs } from '../../../src/store/kept/job-list.ts';
import { changeJob, createJob, getJob } from '../../../src/store/kept/jobs.ts';
import { closeStore, type Store } from '../../../src/store/opening/open-store.ts';
import { photoBytes, photosOfJob } from '../../../src/store/kept/photos.ts';
import { readingsOf, strikeOut } from '../../../src/store/kept/readings.ts';
import { broughtUndo } from '../../../src/store/file/undo-brought.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { fixture, writeFixture } from '../open-fixture.ts';
import { closeAll, freshName, openForTest, refused, worked } from '../open-for-test.ts';
import { backupOf, carry, everythingIn, log, twoPhonesWithABore } from '../two-phones-for-test.ts';

afterEach(closeAll);

async function undoNewest(store: Store) {
  const newest = await latestUndo(store);
  return worked(await undoLast(store, newest?.id ?? ''));
}

test('what a file brought is one undo, also after the app was closed', async () => {
  const { helper, job, bore } = await twoPhonesWithABore();
  for (const typed of ['.4487', '.4489', '.4491']) worked(await log(helper, bore.id, job.id, typed));
  worked(await changeJob(helper, job.id, { what: 'left-hand hub' }));
  const name = freshName();
  const phone = await openForTest({ name });
  worked(await createJob(phone, { name: 'Cart', systems: [] }));
  const before = await everythingIn(phone);
  await carry(helper, phone);
  closeStore(phone);
  const again = await openForTest({ name });
  expect((await latestUndo(again))?.label).toBe('What the file brought');
  expect(await undoNewest(again)).toBe('What the file brought');
  expect(await everythingIn(again)).toBe(before);
  expect(await again.db.count('brought')).toBe(0);
});

test('a record that the file changed is as it was, and the same file can be put in again', async () => {
  const { owner, helper, job, bore } = await twoPhonesWithABore();
  worked(await changeJob(helper, job.id, { what: 'left-hand hub' }));
  worked(await log(helper, bore.id, job.id, '.4487'));
  const before = await everythingIn(owner);
  await carry(helper, owner);
  expect((await getJob(owner, job.id))?.what).toBe('left-hand hub');
  await undoNewest(owner);
  expect(await everythingIn(owner)).toBe(before);
  await carry(helper, owner);
  expect((await getJob(owner, job.id))?.what).toBe('left-hand hub');
  expect(await readingsOf(owner, bore.id)).toHaveLength(1);
});

test('a job that was worked on since stays whole and is named, the others go', async () => {
  const helper = await openForTest();
  const outfit = worked(await createJob(helper, { name: 'Outfit', systems: [] }));
  const bore = worked(await createFeature(helper, { jobId: outfit.id, kind: 'bore', name: 'left bore' }));
  worked(await log(helper, bore.id, outfit.id, '.4487'));
  worked(await createJob(helper, { name: 'Cart', systems: [] }));
  const phone = await openForTest();
  await carry(helper, phone);
  worked(await log(phone, bore.id, outfit.id, '.4489'));
  expect(worked(await undoLast(phone, (await broughtUndo(phone)) ?? ''))).toBe(
    'What the file brought, except “Outfit”: worked on since',
  );
  expect((await listJobs(phone, { limit: 9 })).jobs.map(({ name }) => name)).toEqual(['Outfit']);
  expect(await featuresOf(phone, outfit.id)).toHaveLength(1);
  expect(await readingsOf(phone, bore.id)).toHaveLength(2);
});

test('a brought reading that was struck out since keeps its job here', async () => {
  const { owner, helper, job, bore } = await twoPhonesWithABore();
  const reading = worked(await log(helper, bore.id, job.id, '.4487'));
  await carry(helper, owner);
  const undoId = (await latestUndo(owner))?.id ?? '';
  worked(await strikeOut(owner, reading.id, 'chip under the anvil'));
  expect(worked(await undoLast(owner, undoId))).toContain('except “Outfit”');
  expect((await readingsOf(owner, bore.id))[0]?.struckOut?.why).toBe('chip under the anvil');
});

test('a phone whose clock is hours ahead brings nothing that looks worked on since', async () => {
  const ahead = await openForTest({ now: () => 1_700_090_000_000 });
  worked(await createJob(ahead, { name: 'Outfit', systems: [] }));
  const phone = await openForTest();
  await carry(ahead, phone);
  expect(await undoNewest(phone)).toBe('What the file brought');
  expect((await listJobs(phone, { limit: 9 })).jobs).toEqual([]);
});

test('photos go with what the file brought, their bytes too', async () => {
  const name = freshName();
  await writeFixture(name, fixture(2));
  const shop = await openForTest({ name });
  const phone = await openForTest();
  await carry(shop, phone);
  const [job] = (await listJobs(phone, { limit: 1 })).jobs;
  const [photo] = await photosOfJob(phone, job?.id ?? '');
  expect(await photoBytes(phone, photo?.id ?? '')).toBeDefined();
  await undoNewest(phone);
  expect(await phone.db.count('photoBytes')).toBe(0);
  expect(await phone.db.count('photos')).toBe(0);
});

test('a job that a reading from elsewhere brought back is removed again', async () => {
  const { owner, helper, job, bore } = await twoPhonesWithABore();
  worked(await log(helper, bore.id, job.id, '.4487'));
  const { removeFeature } = await import('../../../src/store/kept/features.ts');
  worked(await removeFeature(owner, bore.id));
  await carry(helper, owner);
  expect(await featuresOf(owner, job.id)).toHaveLength(1);
  expect(await undoNewest(owner)).toBe('What the file brought');
  expect(await featuresOf(owner, job.id)).toEqual([]);
});

test('only the last file can be taken out again, and one that brings nothing takes no undo away', async () => {
  const { owner, helper, job, bore } = await twoPhonesWithABore();
  const first = (await latestUndo(helper))?.id ?? '';
  worked(await log(owner, bore.id, job.id, '.4487'));
  await carry(owner, helper);
  const second = (await latestUndo(helper))?.id;
  expect(second).not.toBe(first);
  expect(refused(await undoLast(helper, first))).toEqual({ code: 'nothing-to-undo' });
  await carry(owner, helper);
  expect((await latestUndo(helper))?.id).toBe(second);
});

test('a phone that gave its file on and took it out again gets it back by the other’s file', async () => {
  const { owner, helper, job, bore } = await twoPhonesWithABore();
  worked(await log(helper, bore.id, job.id, '.4487'));
  await carry(helper, owner);
  const third = await openForTest();
  await carry(owner, third);
  await undoNewest(owner);
  expect(await readingsOf(owner, bore.id)).toEqual([]);
  worked(await restoreBackup(owner, await backupOf(third)));
  expect(await readingsOf(owner, bore.id)).toHaveLength(1);
});
