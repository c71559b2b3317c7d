import { hrefOf } from '../address.ts';
import { LinkButton } from '../common/button.tsx';
import { EmptyLine } from '../common/empty-line.tsx';
import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { useLive } from '../common/store-context.ts';
import { Trouble } from '../common/told.tsx';
import { CameraView } from './camera-view.tsx';
import { ChoosePictures } from './choose-pictures.tsx';
import { OnePhoto } from './one-photo.tsx';
import { ownerNamed, photosAddress, placeOf, type PhotosOf } from './photo-address.ts';
import { nameOfOwner } from './photo-owner-name.ts';
import { Picture } from './picture.tsx';
import { photoSays, useKeepPhoto, usePhotos } from './use-photos.ts';
import './photos-screen.css';

type PhotosScreenProps = {
  readonly jobId?: string;
  readonly ownerStore: string;
  readonly ownerId: string;
  /** `camera`, one photo's id, or nothing for all of them. */
  readonly field?: string;
};

/** The photos of one thing; the camera for it and each photo large lie behind. */
export function PhotosScreen({ jobId, ownerStore, ownerId, field }: PhotosScreenProps) {
  const owner = ownerNamed(ownerStore, ownerId);
  const subject = owner && { owner, ...(jobId !== undefined && { jobId }) };
  const found = useLive(
    `photo-owner/${ownerStore}/${ownerId}`,
    ['jobs', 'parts', 'features', 'worksheets', 'cuts', 'checks', 'steps', 'drawer'],
    async (store) => ({ name: subject && (await nameOfOwner(store, subject)) }),
  );
  if (!found) return <Page title=" ">{null}</Page>;
  if (!subject || found.name === undefined) return <NotHere what="part of the job" />;
  if (field === undefined) return <AllPhotos subject={subject} name={found.name} />;
  if (field === 'camera') return <CameraView subject={subject} name={found.name} />;
  return <OnePhoto key={field} subject={subject} name={found.name} photoId={field} />;
}

function AllPhotos({ subject, name }: { subject: PhotosOf; name: string }) {
  const photos = usePhotos(subject);
  const { trouble, say, keep } = useKeepPhoto(subject);
  return (
    <Page
      title="Photos"
      subtitle={name}
      back={{ href: hrefOf(placeOf(subject)), to: name }}
      foot={
        <>
          <ChoosePictures onPicture={keep} onTrouble={say} />
          <LinkButton kind="main" href={hrefOf(photosAddress(subject, 'camera'))}>
            Camera
          </LinkButton>
        </>
      }
    >
      <Trouble>{trouble}</Trouble>
      {photos?.length === 0 && (
        <EmptyLine>
          Photos of the set-up go here: how it stood before it came apart, where the indicator sat. They stay
          on this phone.
        </EmptyLine>
      )}
      <ul class="photos-all">
        {photos?.toReversed().map((photo) => (
          <li key={photo.id}>
            <a class="photos-one" href={hrefOf(photosAddress(subject, photo.id))}>
              <Picture
                class="photos-picture"
                bytes={photo.preview}
                mime={photo.mime}
                says={photo.note === '' ? photoSays(photo, photos) : ''}
              />
              {photo.note !== '' && <span class="photos-note">{photo.note}</span>}
            </a>
          </li>
        ))}
      </ul>
    </Page>
  );
}
