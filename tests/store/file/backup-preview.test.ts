import { afterEach, expect, test } from 'vitest';
import { applyPreviewed } from '../../../src/store/file/backup-restore.ts';
import { leavePreviewed, previewBackup, waitingPreview } from '../../../src/store/file/backup-preview.ts';
import { sweepStaged } from '../../../src/store/file/backup-staged.ts';
import { createFeature, removeFeature } from '../../../src/store/kept/features.ts';
import { listJobs } from '../../../src/store/kept/job-list.ts';
import { changeJob, createJob, getJob, removeJob } from '../../../src/store/kept/jobs.ts';
import { closeStore, type Store } from '../../../src/store/opening/open-store.ts';
import { readingsOf } from '../../../src/store/kept/readings.ts';
import { putSetting } from '../../../src/store/kept/settings.ts';
import { closeAll, freshName, openForTest, refused, worked } from '../open-for-test.ts';
import { fixture, writeFixture } from '../open-fixture.ts';
import { backupOf, everythingIn, log, twoPhonesWithABore } from '../two-phones-for-test.ts';

afterEach(closeAll);

/** Everything but the file that waits. */
const countsIn = async (store: Store) =>
  Promise.all(['readings', 'photos', 'photoBytes', 'undo', 'brought'].map((name) => store.db.count(name)));

test('the preview says job by job what a file would change, and changes nothing', async () => {
  const { owner, helper, job, bore } = await twoPhonesWithABore();
  worked(await log(helper, bore.id, job.id, '.4487'));
  worked(await log(helper, bore.id, job.id, '.4489'));
  worked(await changeJob(helper, job.id, { what: 'left-hand hub', customerNote: 'new pin' }));
  const other = worked(await createJob(helper, { name: 'Cart', systems: [] }));
  worked(await createFeature(helper, { jobId: other.id, kind: 'pin', name: 'bolt' }));
  const before = await everythingIn(owner);
  const preview = worked(await previewBackup(owner, await backupOf(helper)));
  expect(preview.jobs.map(({ id: _id, ...told }) => told)).toEqual(
    expect.arrayContaining([
      // What it is and the note: two fields. The bore is the one record that is the same.
      {
        name: 'Outfit',
        isHere: true,
        staysRemoved: false,
        fields: 2,
        readings: 2,
        others: 0,
        removed: 0,
        apart: 0,
        same: 1,
      },
      {
        name: 'Cart',
        isHere: false,
        staysRemoved: false,
        fields: 0,
        readings: 0,
        others: 1,
        removed: 0,
        apart: 0,
        same: 0,
      },
    ]),
  );
  expect(preview.total).toEqual({ added: 2 + 2, changed: 1, same: 1 });
  expect(await everythingIn(owner)).toBe(before);
  expect((await listJobs(owner, { limit: 9 })).jobs).toHaveLength(1);
});

test('what was previewed is put in later, after the app was closed in between', async () => {
  const { helper, job, bore } = await twoPhonesWithABore();
  worked(await log(helper, bore.id, job.id, '.4487'));
  const name = freshName();
  const first = await openForTest({ name });
  worked(await previewBackup(first, await backupOf(helper)));
  closeStore(first);
  const again = await openForTest({ name });
  await sweepStaged(again); // as at every start
  const waiting = await waitingPreview(again);
  expect(waiting && worked(waiting).jobs.map((one) => [one.name, one.readings])).toEqual([['Outfit', 1]]);
  expect(worked(await applyPreviewed(again))).toEqual({ added: 3, changed: 0, same: 0, canUndo: true });
  expect(await readingsOf(again, bore.id)).toHaveLength(1);
  expect(await again.db.count('staging')).toBe(0);
  expect(refused(await applyPreviewed(again))).toEqual({ code: 'no-file' });
});

test('a file that is left unused leaves nothing behind, its photos’ bytes neither', async () => {
  const name = freshName();
  await writeFixture(name, fixture(2));
  const text = await backupOf(await openForTest({ name }));
  const phone = await openForTest();
  const before = await countsIn(phone);
  worked(await previewBackup(phone, text));
  expect(await phone.db.count('photoBytes')).toBe(1);
  worked(await leavePreviewed(phone));
  expect(await countsIn(phone)).toEqual(before);
  expect(await phone.db.count('staging')).toBe(0);
  expect(await waitingPreview(phone)).toBeUndefined();
});

test('another file takes the place of the one that waits', async () => {
  const phone = await openForTest();
  const [one, two] = [await openForTest(), await openForTest()];
  worked(await createJob(one, { name: 'Outfit', systems: [] }));
  worked(await createJob(two, { name: 'Cart', systems: [] }));
  worked(await previewBackup(phone, await backupOf(one)));
  worked(await previewBackup(phone, await backupOf(two)));
  worked(await applyPreviewed(phone));
  expect((await listJobs(phone, { limit: 9 })).jobs.map(({ name }) => name)).toEqual(['Cart']);
});

test('a job that was removed here after the file was written is told as staying removed', async () => {
  const phone = await openForTest();
  const job = worked(await createJob(phone, { name: 'Outfit', systems: [] }));
  const text = await backupOf(phone);
  worked(await removeJob(phone, job.id));
  const preview = worked(await previewBackup(phone, text));
  expect(preview.jobs).toMatchObject([{ name: 'Outfit', isHere: false, staysRemoved: true, others: 0 }]);
  expect(preview.total).toEqual({ added: 0, changed: 0, same: 1 });
});

test('two files can’t be read at once', async () => {
  const { owner, helper } = await twoPhonesWithABore();
  const text = await backupOf(helper);
  const [first, second] = await Promise.all([previewBackup(owner, text), previewBackup(owner, text)]);
  worked(first);
  expect(refused(second)).toEqual({ code: 'file-in-use' });
});

test('a file half read is swept away at the next start, one that waits is kept for a week', async () => {
  const name = freshName();
  await writeFixture(name, fixture(2));
  const text = await backupOf(await openForTest({ name }));
  const phone = await openForTest();
  worked(await previewBackup(phone, text));
  const file = await phone.db.get('staging', 'file');
  await sweepStaged(phone);
  expect(await phone.db.get('staging', 'file')).toEqual(file);
  await phone.db.put('staging', { ...file, state: 'reading' }); // as a killed phone leaves it
  await sweepStaged(phone);
  expect(await phone.db.count('staging')).toBe(0);
  expect(await phone.db.count('photoBytes')).toBe(0);
  worked(await previewBackup(phone, text));
  const ready = await phone.db.get('staging', 'file');
  await phone.db.put('staging', { ...ready, readAt: ready.readAt - 8 * 24 * 3_600_000 });
  await sweepStaged(phone);
  expect(await phone.db.count('staging')).toBe(0);
});

test('what was removed on the other phone is told as going, and settings as kept', async () => {
  const { owner, helper, job, bore } = await twoPhonesWithABore();
  worked(await putSetting(owner, 'shownUnit', 'mm'));
  worked(await putSetting(helper, 'shownUnit', 'in'));
  worked(await putSetting(helper, 'fitter', 'R. Tiller'));
  worked(await removeFeature(helper, bore.id));
  const preview = worked(await previewBackup(owner, await backupOf(helper)));
  expect(preview.jobs).toMatchObject([{ id: job.id, removed: 1, readings: 0, isHere: true }]);
  expect(preview.settings).toEqual({ added: 1, kept: 1, names: ['fitter'] });
  expect(preview.file.from.fitter).toBe('R. Tiller');
  expect(preview.file.from.phone).not.toBe(undefined);
});

test('a reading that came with other figures since the preview still stops the file', async () => {
  const { owner, helper, job, bore } = await twoPhonesWithABore();
  const reading = worked(await log(helper, bore.id, job.id, '.4487'));
  worked(await previewBackup(owner, await backupOf(helper)));
  const kept = await helper.db.get('readings', reading.id);
  await owner.db.put('readings', { ...kept, typed: '.4999', exact: '12.69746' });
  expect(refused(await applyPreviewed(owner))).toMatchObject({ code: 'reading-differs' });
  expect((await getJob(owner, job.id))?.name).toBe('Outfit');
  expect(await owner.db.count('staging')).toBe(0);
});
