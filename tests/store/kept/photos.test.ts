import { afterEach, expect, test, vi } from 'vitest';
import { backupLines, backupPieces, restoreBackup } from '../../../src/store/file/backup.ts';
import { previewBackup } from '../../../src/store/file/backup-preview.ts';
import { createFeature } from '../../../src/store/kept/features.ts';
import { changeJob, createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import {
  addPhoto,
  changePhoto,
  photoBytes,
  photosOf,
  photosOfJob,
  removePhoto,
  type NewPhoto,
} from '../../../src/store/kept/photos.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { fillDisk } from '../fill-disk.ts';
import { closeAll, openForTest, refused, worked } from '../open-for-test.ts';

afterEach(closeAll);

function bytesOf(length: number, start = 0): ArrayBuffer {
  return Uint8Array.from({ length }, (_one, index) => (start + index) % 256).buffer;
}

function photoOf(jobId: string, more: Partial<NewPhoto> = {}): NewPhoto {
  return {
    owner: { store: 'jobs', id: jobId },
    jobId,
    note: '',
    mime: 'image/jpeg',
    width: 1600,
    height: 1200,
    preview: bytesOf(40),
    // Longer than one call takes arguments, with every byte there is.
    bytes: bytesOf(100_000),
    ...more,
  };
}

async function withPhoto(store: Store, more: Partial<NewPhoto> = {}) {
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  return { job, photo: worked(await addPhoto(store, photoOf(job.id, more))) };
}

async function textOf(store: Store): Promise<string> {
  const lines: string[] = [];
  for await (const line of backupLines(store)) lines.push(line);
  return lines.join('');
}

async function undoNewest(store: Store) {
  const newest = await latestUndo(store);
  return newest && worked(await undoLast(store, newest.id));
}

test('a photo comes back byte for byte, and a list of photos doesn’t read the bytes', async () => {
  const store = await openForTest();
  const { job, photo } = await withPhoto(store);
  expect(await photoBytes(store, photo.id)).toEqual(bytesOf(100_000));
  const [listed] = await photosOf(store, { store: 'jobs', id: job.id });
  expect(listed?.preview).toEqual(bytesOf(40));
  expect(listed).not.toHaveProperty('bytes');
  expect(await photosOf(store, { store: 'parts', id: job.id })).toEqual([]);
  expect(await photosOfJob(store, job.id)).toHaveLength(1);
});

test('a removed photo is out of sight, and undo brings it back with its bytes', async () => {
  const store = await openForTest();
  const { job, photo } = await withPhoto(store);
  worked(await removePhoto(store, photo.id));
  expect(await photosOfJob(store, job.id)).toEqual([]);
  expect(await undoNewest(store)).toBe('Removed a photo');
  expect(await photosOfJob(store, job.id)).toHaveLength(1);
  expect(await photoBytes(store, photo.id)).toEqual(bytesOf(100_000));
});

test('a removed photo’s bytes go when its job is closed and nothing can bring it back', async () => {
  const store = await openForTest();
  const { job, photo } = await withPhoto(store);
  const kept = worked(await addPhoto(store, photoOf(job.id)));
  worked(await removePhoto(store, photo.id));
  worked(await changeJob(store, job.id, { state: 'closed' }));
  expect(await store.db.getAllKeys('photoBytes')).toEqual([kept.id]);
});

test('taking a photo and changing its note can be undone', async () => {
  const store = await openForTest();
  const { job, photo } = await withPhoto(store);
  worked(await changePhoto(store, photo.id, { note: 'on the mandrel' }));
  expect(await undoNewest(store)).toBe('Changed the note of a photo');
  expect((await photosOfJob(store, job.id))[0]?.note).toBe('');
  expect(await undoNewest(store)).toBe('Kept a photo');
  expect(await photosOfJob(store, job.id)).toEqual([]);
});

test.each([
  { what: 'over 8 MB', more: { bytes: new ArrayBuffer(8_000_001) }, field: 'bytes' },
  { what: 'empty', more: { bytes: new ArrayBuffer(0) }, field: 'bytes' },
  { what: 'with a preview over 200 kB', more: { preview: new ArrayBuffer(200_001) }, field: 'preview' },
  { what: 'that could carry a script', more: { mime: 'image/svg+xml' }, field: 'mime' },
])('a photo $what is not kept, nor half of it', async ({ more, field }) => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  expect(refused(await addPhoto(store, photoOf(job.id, more)))).toMatchObject({ code: 'cannot-keep', field });
  expect(await store.db.count('photos')).toBe(0);
  expect(await store.db.count('photoBytes')).toBe(0);
});

test('a full disk keeps neither the photo nor its bytes', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  fillDisk('photoBytes');
  const result = await addPhoto(store, photoOf(job.id));
  vi.restoreAllMocks();
  expect(refused(result)).toEqual({ code: 'full-disk' });
  expect(await store.db.count('photos')).toBe(0);
});

test('a backup carries photos to an empty phone byte for byte, also as a file in pieces', async () => {
  const store = await openForTest();
  const { job, photo } = await withPhoto(store);
  worked(await addPhoto(store, photoOf(job.id, { bytes: bytesOf(1_200_000, 7) }))); // over one piece
  const pieces: Blob[] = [];
  for await (const piece of backupPieces(store)) pieces.push(piece);
  expect(pieces.length).toBeGreaterThan(1);
  for (const file of [new Blob(pieces), await textOf(store)]) {
    const fresh = await openForTest();
    expect(worked(await restoreBackup(fresh, file))).toEqual({
      added: 5,
      changed: 0,
      same: 0,
      canUndo: true,
    });
    expect(await fresh.db.getAll('photos')).toEqual(await store.db.getAll('photos'));
    expect(await fresh.db.getAll('photoBytes')).toEqual(await store.db.getAll('photoBytes'));
    expect(worked(await restoreBackup(fresh, file))).toEqual({
      added: 0,
      changed: 0,
      same: 5,
      canUndo: false,
    });
    expect(await photoBytes(fresh, photo.id)).toEqual(bytesOf(100_000));
  }
});

test('a removed photo’s bytes are in no backup, and a photo removed here gets none from another’s', async () => {
  const store = await openForTest();
  const { job, photo } = await withPhoto(store);
  const before = await textOf(store);
  worked(await removePhoto(store, photo.id));
  expect(await textOf(store)).not.toContain('"store":"photoBytes"');
  worked(await changeJob(store, job.id, { state: 'closed' }));
  worked(await restoreBackup(store, before));
  expect(await photosOfJob(store, job.id)).toEqual([]);
  expect(await store.db.count('photoBytes')).toBe(0);
});

test('bytes that came for a photo removed here count as nothing brought, and take no undo away', async () => {
  const store = await openForTest();
  const other = await openForTest();
  const { job, photo } = await withPhoto(store);
  const before = await textOf(store);
  worked(await removePhoto(store, photo.id));
  worked(await changeJob(store, job.id, { state: 'closed' }));
  await withPhoto(other);
  worked(await restoreBackup(store, await textOf(other)));
  const brought = await latestUndo(store);
  const again = worked(await restoreBackup(store, before));
  expect(again).toMatchObject({ added: 0, changed: 0, canUndo: false });
  expect(await latestUndo(store)).toEqual(brought);
});

test('a refused backup leaves none of its photos’ bytes behind, and none of this phone’s are touched', async () => {
  const store = await openForTest();
  const { job, photo } = await withPhoto(store);
  worked(await addPhoto(store, photoOf(job.id)));
  const lines = (await textOf(store)).split('\n');
  const cutOff = lines.slice(0, -2).join('\n');
  await store.db.delete('photoBytes', photo.id);
  expect(refused(await restoreBackup(store, cutOff)).code).toBe('cut-off');
  expect(await store.db.count('photoBytes')).toBe(1);
});

test('bytes that a killed restore left behind go with the next one', async () => {
  const store = await openForTest();
  await withPhoto(store);
  const text = await textOf(store);
  const stray = { id: 'stray', stamps: { '*': '001700000000000-0000-phone' }, bytes: bytesOf(10) };
  await store.db.put('photoBytes', stray);
  worked(await restoreBackup(store, text));
  expect(await store.db.getAllKeys('photoBytes')).not.toContain('stray');
  expect(await store.db.count('photoBytes')).toBe(1);
});

test('a photo removed while the backup is being written does the backup no harm', async () => {
  const store = await openForTest();
  const { job, photo } = await withPhoto(store);
  const lines: string[] = [];
  for await (const line of backupLines(store)) {
    if (lines.length === 1) {
      worked(await removePhoto(store, photo.id));
      worked(await changeJob(store, job.id, { state: 'closed' }));
    }
    lines.push(line);
  }
  const fresh = await openForTest();
  worked(await restoreBackup(fresh, lines.join('')));
  expect(await photosOfJob(fresh, job.id)).toHaveLength(1);
  expect(await photoBytes(fresh, photo.id)).toBeUndefined();
});

test('an older file that still has the bytes of a photo removed here is said to bring nothing', async () => {
  const store = await openForTest();
  const { job, photo } = await withPhoto(store);
  const older = await textOf(store);
  worked(await removePhoto(store, photo.id));
  worked(await changeJob(store, job.id, { state: 'closed' }));
  expect(await photoBytes(store, photo.id)).toBeUndefined();
  const preview = worked(await previewBackup(store, older));
  expect(preview.total).toMatchObject({ added: 0, changed: 0 });
});

test('a photo is of the job that its owner is of, whatever the address said, and the backup with it is read back', async () => {
  const store = await openForTest();
  const mine = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const other = worked(await createJob(store, { name: 'Trailer', systems: [] }));
  const feature = worked(await createFeature(store, { jobId: mine.id, kind: 'bore', name: 'bore' }));
  const owner = { store: 'features', id: feature.id } as const;
  expect(worked(await addPhoto(store, photoOf(other.id, { owner }))).jobId).toBe(mine.id);
  const owned = { store: 'jobs', id: mine.id } as const;
  expect(worked(await addPhoto(store, photoOf(other.id, { owner: owned }))).jobId).toBe(mine.id);
  const fresh = await openForTest();
  // Two jobs, a feature, two photos, and the bytes of each.
  expect(worked(await restoreBackup(fresh, await textOf(store)))).toMatchObject({ added: 7 });
});
