import { useState } from 'preact/hooks';
import { hrefOf } from '../address.ts';
import { Button } from '../common/button.tsx';
import { Page } from '../common/page.tsx';
import { Trouble } from '../common/told.tsx';
import { ChoosePictures } from './choose-pictures.tsx';
import { photosAddress, type PhotosOf } from './photo-address.ts';
import { Picture } from './picture.tsx';
import { shrinkPhoto } from './shrink-photo.ts';
import { sayCamera, useCamera } from './use-camera.ts';
import { photoSays, useKeepPhoto, usePhotos } from './use-photos.ts';
import './camera-view.css';

/** The camera, in the page: what it sees, the key that takes it, and what was taken last. */
export function CameraView({ subject, name }: { subject: PhotosOf; name: string }) {
  const { video, state, again } = useCamera();
  const photos = usePhotos(subject) ?? [];
  const { trouble, say, keep } = useKeepPhoto(subject);
  const [busy, setBusy] = useState(false);
  const last = photos.at(-1);
  const take = async () => {
    const seen = video.current;
    if (!seen || busy) return;
    setBusy(true);
    const picture = await shrinkPhoto(seen, { width: seen.videoWidth, height: seen.videoHeight });
    if (picture) await keep(picture);
    else say('The camera gave no picture. Press once more.');
    setBusy(false);
  };
  const cannot = sayCamera(state);
  return (
    <div class="camera">
      <Page
        title="Take a photo"
        subtitle={name}
        back={{ href: hrefOf(photosAddress(subject)), to: 'the photos' }}
        foot={
          <>
            <ChoosePictures main={cannot !== ''} onPicture={keep} onTrouble={say} />
            {cannot === '' && (
              <Button kind="main" disabled={state !== 'on' || busy} onPress={() => take()}>
                {busy ? 'Keeping…' : 'Take it'}
              </Button>
            )}
            {cannot !== '' && state !== 'no-way' && <Button onPress={again}>Try again</Button>}
          </>
        }
      >
        <div class="camera-sight" data-on={state === 'on'}>
          {/* A picture without a sound needs no captions. It plays in its place, not over the whole screen. */}
          <video ref={video} class="camera-video" muted playsInline aria-label="What the camera sees" />
          {state === 'starting' && <p class="camera-line">The camera is starting…</p>}
          {cannot !== '' && (
            <p class="camera-line" role="alert">
              {cannot}
            </p>
          )}
          {last && (
            <a class="camera-last" href={hrefOf(photosAddress(subject, last.id))}>
              <Picture
                class="camera-last-picture"
                bytes={last.preview}
                mime={last.mime}
                says={`Taken last: ${photoSays(last, photos)}`}
              />
            </a>
          )}
        </div>
        <Trouble>{trouble}</Trouble>
      </Page>
    </div>
  );
}
