import { listed } from '../../engine/length/say-words.ts';
import { canBeMadeSmall } from '../../store/base/picture-size.ts';
import { shrinkPhoto, type ShrunkPhoto } from './shrink-photo.ts';

// Chosen, not published: no phone's camera writes more, and a page that decodes more may be closed by the phone.
const MOST_FILE_BYTES = 60_000_000;

// A JPEG's size stands behind what the camera wrote into it, a small picture of its own for one.
const START_BYTES = 1_000_000;

export type Unread = { readonly ok: false; readonly named: string; readonly sentence: string };
export type PictureResult = { readonly ok: true; readonly value: ShrunkPhoto } | Unread;

/** A picture from the phone's files, turned the right way up by the browser and made small. */
export async function readPicture(file: File): Promise<PictureResult> {
  const named = file.name === '' ? 'This file' : `“${file.name}”`;
  if (file.size > MOST_FILE_BYTES)
    return { ok: false, named, sentence: `${named} is larger than 60 MB. Choose a smaller picture.` };
  if (!canBeMadeSmall(await file.slice(0, START_BYTES).arrayBuffer()))
    return {
      ok: false,
      named,
      sentence: `${named} is too many points across for a phone. Choose a smaller picture.`,
    };
  const url = URL.createObjectURL(file);
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    const value = await shrinkPhoto(image, { width: image.naturalWidth, height: image.naturalHeight });
    return value ? { ok: true, value } : notAPicture(named);
  } catch {
    return notAPicture(named);
  } finally {
    URL.revokeObjectURL(url);
  }
}

function notAPicture(named: string): Unread {
  const sentence = `${named} is not a picture this browser can read. Choose a JPEG or PNG, or take it with the camera here.`;
  return { ok: false, named, sentence };
}

/** One sentence about all that were not read; nothing where all were. */
export function sayUnread(unread: readonly Unread[]): string {
  const [first, ...others] = unread;
  if (!first || others.length === 0) return first?.sentence ?? '';
  return `${listed(unread.map(({ named }) => named))} could not be read. Choose JPEGs or PNGs of at most 60 MB.`;
}
