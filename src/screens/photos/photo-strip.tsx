import { hrefOf } from '../address.ts';
import { LinkButton } from '../common/button.tsx';
import { photosAddress, type PhotosOf } from './photo-address.ts';
import { Picture } from './picture.tsx';
import { photoSays, usePhotos } from './use-photos.ts';
import './photo-strip.css';

// Chosen, not published: one line on the narrowest phone, with the button behind it.
const IN_ONE_LINE = 3;

/** The last photos of something, and the way to one more: for the screen of whatever can be photographed. */
export function PhotoStrip(subject: PhotosOf) {
  const photos = usePhotos(subject) ?? [];
  // The way to the others takes the place of one.
  const shown = photos.length > IN_ONE_LINE ? IN_ONE_LINE - 1 : photos.length;
  const hidden = photos.length - shown;
  return (
    <section class="photo-strip not-printed" aria-label="Photos">
      {photos.slice(hidden).map((photo) => (
        <a key={photo.id} class="photo-strip-one" href={hrefOf(photosAddress(subject, photo.id))}>
          <Picture
            class="photo-strip-picture"
            bytes={photo.preview}
            mime={photo.mime}
            says={photoSays(photo, photos)}
          />
        </a>
      ))}
      {hidden > 0 && (
        <LinkButton href={hrefOf(photosAddress(subject))} label={`+${hidden}: all ${photos.length} photos`}>
          +{hidden}
        </LinkButton>
      )}
      <LinkButton href={hrefOf(photosAddress(subject, 'camera'))} label="Photo: take or choose one">
        <svg viewBox="0 0 32 26" width="32" height="26" aria-hidden="true">
          <path
            d="M2 7h7l3-4h8l3 4h7v17H2z M16 10a5.5 5.5 0 1 0 .01 0z"
            fill="none"
            stroke="currentColor"
            stroke-width="2.2"
            stroke-linejoin="round"
          />
        </svg>
        <span class="photo-strip-word">Photo</span>
      </LinkButton>
    </section>
  );
}
