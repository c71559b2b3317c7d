import type { StoreName } from '../../../src/store/base/stores.ts';
import { afterEach, expect, test } from 'vitest';
import { restoreBackup } from '../../../src/store/file/backup.ts';
import { applyPreviewed } from '../../../src/store/file/backup-restore.ts';
import { previewBackup } from '../../../src/store/file/backup-preview.ts';
import { featuresOf } from '../../../src/store/kept/features.ts';
import { changeJob } from '../../../src/store/kept/jobs.ts';
import type { Kept } from '../../../src/store/base/kept.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { addPhoto, photoBytes } from '../../../src/store/kept/photos.ts';
import { readingsOf } from '../../../src/store/kept/readings.ts';
import { broughtUndo } from '../../../src/store/file/undo-brought.ts';
import { undoLast } from '../../../src/store/undo/undo.ts';
import { closeAll, openForTest, refused, worked } from '../open-for-test.ts';
import { linesOf, sealed } from '../sealed-backup.ts';
import { backupOf, carry, everythingIn, log, twoPhonesWithABore } from '../two-phones-for-test.ts';

afterEach(closeAll);

/** As a later Slipfit may have written it: what it says is not for this one. */
async function spoil(store: Store, name: StoreName, id: string): Promise<Kept> {
  const kept: Kept = { ...(await store.db.get(name, id)), kind: { of: 'a later Slipfit' }, mime: 5 };
  await store.db.put(name, kept);
  return kept;
}

async function boreThatCannotBeRead() {
  const { owner, helper, job, bore } = await twoPhonesWithABore();
  worked(await log(owner, bore.id, job.id, '.4487'));
  return { phone: owner, other: helper, job, bore, spoilt: await spoil(owner, 'features', bore.id) };
}

test('a feature that can’t be read comes to the next phone as it is, with its readings, and to the one after that', async () => {
  const { phone, bore, spoilt } = await boreThatCannotBeRead();
  const second = await openForTest();
  await carry(phone, second);
  expect(await second.db.get('features', bore.id)).toEqual(spoilt);
  const third = await openForTest();
  worked(await restoreBackup(third, await backupOf(second)));
  expect(await third.db.get('features', bore.id)).toEqual(spoilt);
  expect(await readingsOf(third, bore.id)).toHaveLength(1);
});

test('a photo whose description can’t be read keeps its preview and its picture', async () => {
  const { phone, job } = await boreThatCannotBeRead();
  const bytes = new Uint8Array([1, 2, 3]).buffer;
  const owner = { store: 'jobs', id: job.id } as const;
  const about = { jobId: job.id, owner, note: '', mime: 'image/png', width: 1, height: 1, preview: bytes };
  const { id } = worked(await addPhoto(phone, { ...about, bytes }));
  const spoilt = await spoil(phone, 'photos', id);
  const second = await openForTest();
  await carry(phone, second);
  await carry(phone, second);
  expect(await second.db.get('photos', id)).toEqual(spoilt);
  expect(await photoBytes(second, id)).toEqual(bytes);
  worked(await undoLast(second, (await broughtUndo(second)) ?? ''));
  expect(await second.db.count('photos')).toBe(0);
  expect(await second.db.count('photoBytes')).toBe(0);
});

test('what is here stays, whether it can be read or not, and a copy that can be read mends it', async () => {
  const { phone, other, job, bore, spoilt } = await boreThatCannotBeRead();
  await carry(phone, other);
  expect((await featuresOf(other, job.id)).map(({ name }) => name)).toEqual(['left bore']);
  const before = await backupOf(other);
  const odd = { ...spoilt, name: 'otherwise' };
  await other.db.put('features', odd);
  await carry(phone, other);
  expect(await other.db.get('features', bore.id)).toEqual(odd);
  worked(await restoreBackup(other, before));
  expect((await featuresOf(other, job.id)).map(({ name }) => name)).toEqual(['left bore']);
});

test('before a file is put in it is said that some of it can’t be read, and undoing it takes that out again', async () => {
  const { phone, job } = await boreThatCannotBeRead();
  await spoil(phone, 'jobs', job.id);
  await phone.db.put('jobs', { ...(await phone.db.get('jobs', job.id)), name: 7 });
  const second = await openForTest();
  const before = await everythingIn(second);
  const preview = worked(await previewBackup(second, await backupOf(phone)));
  expect(preview).toMatchObject({ unreadable: 2, total: { added: 3, same: 0 } });
  expect(preview.jobs).toMatchObject([{ name: '', isHere: false, readings: 1 }]);
  expect(worked(await applyPreviewed(second))).toMatchObject({ added: 3, same: 0, canUndo: true });
  const again = worked(await previewBackup(second, await backupOf(phone)));
  expect(again).toMatchObject({ unreadable: 0, total: { added: 0, same: 3 }, jobs: [{ isHere: true }] });
  worked(await undoLast(second, (await broughtUndo(second)) ?? ''));
  expect(await everythingIn(second)).toBe(before);
});

test('one that was changed on a phone whose clock is hours ahead doesn’t look worked on since', async () => {
  const ahead = await openForTest({ now: () => 1_700_090_000_000 });
  const { phone, job } = await boreThatCannotBeRead();
  await carry(phone, ahead);
  worked(await changeJob(ahead, job.id, { what: 'hub' }));
  const newest: Kept | undefined = await ahead.db.get('jobs', job.id);
  await ahead.db.put('jobs', { ...newest, id: job.id, name: 7 });
  const second = await openForTest();
  await carry(ahead, second);
  expect(worked(await undoLast(second, (await broughtUndo(second)) ?? ''))).toBe('What the file brought');
  expect(await second.db.count('jobs')).toBe(0);
});

test('one that can be read by now is looked at like any other', async () => {
  const { phone, bore, job } = await boreThatCannotBeRead();
  const lines = await linesOf(phone);
  const line = lines.find(({ unreadable }) => unreadable === 'features');
  Object.assign(Object(line?.['record']), { kind: 'bore' });
  const second = await openForTest();
  worked(await restoreBackup(second, await sealed(lines)));
  expect((await featuresOf(second, job.id)).map(({ id }) => id)).toEqual([bore.id]);
  Object.assign(Object(line?.['record']), { jobId: 'nowhere' });
  const third = await openForTest();
  expect(refused(await restoreBackup(third, await sealed(lines))).code).toBe('belongs-to-nothing');
});
