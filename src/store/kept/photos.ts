import { act, type Act } from '../opening/act.ts';
import { withChanges, type Changes } from '../base/changes.ts';
import { touchJob } from './jobs.ts';
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

/**
 * Keeps a photo: its description with the preview in one record, its bytes in another, in one transaction. It is of the job
 * that its owner is of, whatever the screen says: otherwise no backup with it could be read back.
 */
export async function addPhoto(store: Store, photo: NewPhoto): Promise<StoreResult<Photo>> {
  const id = newId();
  const { bytes, jobId: _said, ...described } = photo;
  return act(store, { stores: ['jobs', 'photos', 'photoBytes', photo.owner.store] }, async (a) => {
    const jobId = await jobOf(a, photo.owner);
    if (jobId !== undefined) await touchJob(a, jobId);
    const made = a.make(photoKind, { ...described, ...(jobId !== undefined && { jobId }), id, at: a.at });
    // Past the undo log: undoing takes the photo away, and its bytes have nothing to show without it.
    const kept = toKept(photoBytesKind, { id, bytes, stamps: { '*': a.stamp } } satisfies PhotoBytes &
      Stamped);
    if (!kept.ok) return a.refuse({ code: 'cannot-keep', store: 'photoBytes', field: kept.field });
    a.putKept('photoBytes', kept.value);
    a.undoable('Kept a photo', jobId);
    return made;
  });
}

/** The job that what is shown belongs to; none for a piece of the drawer. Ends the act where it never was. */
async function jobOf(a: Act, { store, id }: PhotoOwner): Promise<Id | undefined> {
  const owner = (await a.kept(store, id)) ?? a.refuse({ code: 'gone', store });
  const { jobId } = store === 'jobs' ? { jobId: id } : owner;
  return typeof jobId === 'string' ? jobId : undefined;
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
