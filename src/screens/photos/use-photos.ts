import { useState } from 'preact/hooks';
import { addPhoto, photosOf } from '../../store/kept/photos.ts';
import type { Photo } from '../../store/base/records.ts';
import { sayStore } from '../../store/base/say-store.ts';
import { announce } from '../common/announce.ts';
import { useLive, useStore } from '../common/store-context.ts';
import type { PhotosOf } from './photo-address.ts';
import type { ShrunkPhoto } from './shrink-photo.ts';

/** The photos of one thing, the newest last. */
export function usePhotos({ owner }: PhotosOf): readonly Photo[] | undefined {
  return useLive(`photos/${owner.store}/${owner.id}`, ['photos'], (store) => photosOf(store, owner));
}

/** Keeps pictures as photos of one thing. One that can't be kept says why, here and in the answer, and leaves nothing half written. */
export function useKeepPhoto({ owner, jobId }: PhotosOf) {
  const store = useStore();
  const [trouble, say] = useState('');
  const keep = async (picture: ShrunkPhoto): Promise<string> => {
    const kept = await addPhoto(store, {
      owner,
      ...(jobId !== undefined && { jobId }),
      ...picture,
      note: '',
    });
    const sentence = kept.ok ? '' : sayStore(kept.refusal);
    say(sentence);
    if (kept.ok) announce('Photo kept.');
    return sentence;
  };
  return { trouble, say, keep };
}

/** What is on a photo: its note, else which of how many it is. */
export function photoSays(photo: Photo, photos: readonly Photo[]): string {
  if (photo.note !== '') return photo.note;
  return `Photo ${photos.findIndex(({ id }) => id === photo.id) + 1} of ${photos.length}`;
}
