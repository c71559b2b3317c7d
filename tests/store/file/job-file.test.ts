import { backupStores } from '../../../src/store/base/stores.ts';
import { afterEach, expect, test } from 'vitest';
import { backupPieces, restoreBackup } from '../../../src/store/file/backup.ts';
import { previewBackup } from '../../../src/store/file/backup-preview.ts';
import { createCuts, cutsOf } from '../../../src/store/kept/cuts.ts';
import { makeAgain } from '../../../src/store/kept/make-cut-again.ts';
import { addPiece } from '../../../src/store/kept/drawer.ts';
import { listJobs } from '../../../src/store/kept/job-list.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Kept } from '../../../src/store/base/kept.ts';
import { checkRecord } from '../../../src/store/kept/any-record.ts';
import { putSetting } from '../../../src/store/kept/settings.ts';
import { broughtUndo } from '../../../src/store/file/undo-brought.ts';
import { undoLast } from '../../../src/store/undo/undo.ts';
import { facing } from '../cut-for-test.ts';
import { fixture, writeFixture } from '../open-fixture.ts';
import { closeAll, freshName, openForTest, worked } from '../open-for-test.ts';
import { backupOf, carry } from '../two-phones-for-test.ts';

afterEach(closeAll);

/** The stored shop of the second release, with something of every kind, and more that is none of its first job's. */
async function shop() {
  const name = freshName();
  await writeFixture(name, fixture(2));
  const store = await openForTest({ name });
  const [job] = (await listJobs(store, { limit: 1 })).jobs;
  worked(await createJob(store, { name: 'Somebody else’s', systems: [] }));
  worked(await addPiece(store, { kind: 'shim', name: 'shim', material: 'brass' }, 3));
  worked(await putSetting(store, 'shownUnit', 'mm'));
  return { store, jobId: job?.id ?? '' };
}

async function jobFile({ store, jobId }: Awaited<ReturnType<typeof shop>>): Promise<Blob> {
  const pieces: Blob[] = [];
  for await (const piece of backupPieces(store, jobId)) pieces.push(piece);
  return new Blob(pieces);
}

test('a job handed over comes whole to another phone, and nothing else of the shop with it', async () => {
  const given = await shop();
  const phone = await openForTest();
  worked(await restoreBackup(phone, await jobFile(given)));
  for (const name of backupStores) {
    const here: Kept[] = await phone.db.getAll(name);
    const photos: Kept[] = await given.store.db.getAll('photos');
    const ofTheJob = new Set(photos.filter(({ jobId }) => jobId === given.jobId).map(({ id }) => id));
    const strays = here.filter(({ id, jobId }) => id !== given.jobId && jobId !== given.jobId);
    expect(strays.filter(({ id }) => !ofTheJob.has(id))).toEqual([]);
    const all: Kept[] = await given.store.db.getAll(name);
    const wanted = all.filter((record) => record['jobId'] === given.jobId && checkRecord(name, record).ok);
    expect(wanted.filter(({ id }) => !here.some((record) => record.id === id))).toEqual([]);
  }
  expect(await phone.db.count('jobs')).toBe(1);
  expect(await phone.db.count('photoBytes')).toBe(1); // two were taken, one was removed
  for (const name of ['readings', 'checks', 'steps', 'rechecks', 'money', 'sheets'] as const)
    expect(await phone.db.count(name)).toBeGreaterThan(0);
  for (const name of ['drawer', 'drawerCounts', 'tools', 'settings'] as const)
    expect(await phone.db.count(name)).toBe(0);
});

test('the preview of a job file says that it is one job, and whose', async () => {
  const given = await shop();
  worked(await putSetting(given.store, 'fitter', 'R. Tiller'));
  const preview = worked(await previewBackup(await openForTest(), await jobFile(given)));
  expect(preview.file.from).toMatchObject({ fitter: 'R. Tiller', job: given.jobId });
  expect(preview.jobs.map(({ name, isHere }) => [name, isHere])).toEqual([['Outfit 3', false]]);
});

test('a job with a cut that was made again from another job’s comes to another phone without that job', async () => {
  const store = await openForTest();
  const first = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const next = worked(await createJob(store, { name: 'Cart', systems: [] }));
  const [cut] = worked(await createCuts(store, [facing(first.id)]));
  worked(await makeAgain(store, [cut?.id ?? ''], next.id));
  const phone = await openForTest();
  worked(await restoreBackup(phone, await jobFile({ store, jobId: next.id })));
  expect(await cutsOf(phone, next.id)).toMatchObject([{ part: 'Spacer', copyOf: cut?.id }]);
  worked(await restoreBackup(await openForTest(), await backupOf(phone)));
});

test('a cut made again from a job that a file brought outlives the undo of that file, and so do the backups', async () => {
  const given = await openForTest();
  const theirs = worked(await createJob(given, { name: 'Outfit', systems: [] }));
  const [cut] = worked(await createCuts(given, [facing(theirs.id)]));
  const phone = await openForTest();
  const own = worked(await createJob(phone, { name: 'Cart', systems: [] }));
  await carry(given, phone);
  worked(await makeAgain(phone, [cut?.id ?? ''], own.id));
  worked(await undoLast(phone, (await broughtUndo(phone)) ?? ''));
  expect((await listJobs(phone, { limit: 5 })).jobs.map(({ name }) => name)).toEqual(['Cart']);
  const fresh = await openForTest();
  worked(await restoreBackup(fresh, await backupOf(phone)));
  expect(await cutsOf(fresh, own.id)).toHaveLength(1);
});
