import { act } from '../opening/act.ts';
import { withChanges, type Changes } from '../base/changes.ts';
import { touchJob } from './jobs.ts';
import { mustHaveBeen } from './must-have-been.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import { read, readAsMade } from '../opening/read.ts';
import type { Id, Photo, PhotoBytes, PhotoOwner, Stamped } from '../base/records.ts';
import { parseKept, toKept } from '../base/schema-common.ts';
import { photoBytesKind, photoKind } from './photo-schema.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/** The photos of one record, the oldest first. */
export async function photosOf(store: Store, owner: PhotoOwner): Promise<Photo[]> {
  return readAsMade(store, photoKind, { index: 'owner', key: [owner.store, owner.id] });
}

/** Every photo of a job, whatever of it they show. */
export async function photosOfJob(store: Store, jobId: Id): Promise<Photo[]> {
  return readAsMade(store, photoKind, { index: 'jobId', key: jobId });
}

/** The picture itself; nothing when its bytes aren't on this phone. */
export async function photoBytes(store: Store, id: Id): Promise<ArrayBuffer | undefined> {
  const kept: unknown = await read(store, ['photoBytes'], (tx) => tx.objectStore('photoBytes').get(id));
  const parsed = parseKept(photoBytesKind, kept);
  return parsed.ok ? parsed.value.bytes : undefined;
}

export type NewPhoto = Omit<Photo, 'id' | 'at'> & Pick<PhotoBytes, 'bytes'>;

/** Keeps a photo: its description with the preview in one record, its bytes in another, in one transaction. */
export async function addPhoto(store: Store, photo: NewPhoto): Promise<StoreResult<Photo>> {
  const id = newId();
  const { bytes, ...described } = photo;
  return act(store, { stores: ['jobs', 'photos', 'photoBytes', photo.owner.store] }, async (a) => {
    await mustHaveBeen(a, photo.owner.store, photo.owner.id);
    if (photo.jobId !== undefined) await touchJob(a, photo.jobId);
    const made = a.make(photoKind, { ...described, id, at: a.at });
    // Past the undo log: undoing takes the photo away, and its bytes have nothing to show without it.
    const kept = toKept(photoBytesKind, { id, bytes, stamps: { '*': a.stamp } } satisfies PhotoBytes &
      Stamped);
    if (!kept.ok) return a.refuse({ code: 'cannot-keep', store: 'photoBytes', field: kept.field });
    a.putKept('photoBytes', kept.value);
    a.undoable('Kept a photo', photo.jobId);
    return made;
  });
}

export type PhotoChanges = Changes<Photo, 'note'>;

export async function changePhoto(
  store: Store,
  id: Id,
  changes: PhotoChanges,
  draftKey?: string,
): Promise<StoreResult<Photo>> {
  return act(store, { stores: ['jobs', 'photos', 'drafts'] }, async (a) => {
    const { jobId } = await a.get(photoKind, id);
    if (jobId !== undefined) await touchJob(a, jobId);
    if (draftKey !== undefined) a.drop('drafts', draftKey);
    const after = await a.change(photoKind, id, (photo) => withChanges(photo, changes));
    a.undoable('Changed the note of a photo', jobId);
    return after;
  });
}

/**
 * Removes a photo. Its bytes stay, out of sight and out of every backup, so that undo brings it back; they go when the
 * job is closed, as undo does.
 */
export async function removePhoto(store: Store, id: Id): Promise<StoreResult<void>> {
  return act(store, { stores: ['jobs', 'photos'] }, async (a) => {
    const { jobId } = await a.get(photoKind, id);
    if (jobId !== undefined) await touchJob(a, jobId);
    await a.remove('photos', id);
    a.undoable('Removed a photo', jobId);
  });
}
