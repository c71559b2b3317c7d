import { changePhoto, photoBytes, removePhoto } from '../../store/kept/photos.ts';
import type { Photo } from '../../store/base/records.ts';
import { goInstead, hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { useLive, useStore } from '../common/store-context.ts';
import { KeptField } from '../common/kept-field.tsx';
import { photosAddress, type PhotosOf } from './photo-address.ts';
import { Picture } from './picture.tsx';
import { photoSays, usePhotos } from './use-photos.ts';
import { wholeTimeWords } from '../common/day-words.ts';
import { Trouble, useTold } from '../common/told.tsx';
import './one-photo.css';

type OnePhotoProps = { readonly subject: PhotosOf; readonly name: string; readonly photoId: string };

/** One photo large, with its note. */
export function OnePhoto({ subject, name, photoId }: OnePhotoProps) {
  const photos = usePhotos(subject);
  if (!photos) return <Page title=" ">{null}</Page>;
  const photo = photos.find(({ id }) => id === photoId);
  if (!photo) return <NotHere what="photo" />;
  return <LargePhoto subject={subject} name={name} photo={photo} says={photoSays(photo, photos)} />;
}

function LargePhoto({
  subject,
  name,
  photo,
  says,
}: Omit<OnePhotoProps, 'photoId'> & { photo: Photo; says: string }) {
  const store = useStore();
  const { trouble, told } = useTold();
  const found = useLive(`photo-bytes/${photo.id}`, ['photoBytes'], async (from) => ({
    bytes: await photoBytes(from, photo.id),
  }));
  const all = photosAddress(subject);
  const write = (note: string) => told(changePhoto(store, photo.id, { note }));
  const remove = () => told(removePhoto(store, photo.id), () => goInstead(all));
  const lost = found !== undefined && found.bytes === undefined;
  return (
    <Page
      title="Photo"
      subtitle={`${name} · ${wholeTimeWords(photo.at)}`}
      back={{ href: hrefOf(all), to: 'the photos' }}
    >
      <div class="one-photo">
        {/* The small picture stands in until the large one is read: the frame keeps its size. */}
        <Picture
          class="one-photo-picture"
          bytes={found?.bytes ?? photo.preview}
          mime={photo.mime}
          size={photo}
          says={says}
        />
      </div>
      {lost && (
        <p class="one-photo-lost">
          Only the small picture is on this phone. The large one is on the phone that took it, and in its
          backup.
        </p>
      )}
      <KeptField label="Note" long hint="What is to be seen" kept={photo.note} onWords={write} />
      <Trouble>{trouble}</Trouble>
      <div class="one-photo-remove">
        <Button onPress={() => remove()}>Remove this photo</Button>
      </div>
    </Page>
  );
}
