/** A photo as it is kept: one JPEG small enough for thousands on a phone, and a small picture of it for lists. */
export type ShrunkPhoto = {
  readonly mime: 'image/jpeg';
  readonly bytes: ArrayBuffer;
  readonly preview: ArrayBuffer;
  readonly width: number;
  readonly height: number;
};

export type PictureSize = { readonly width: number; readonly height: number };

const LONGEST_SIDE = 1600;
const PREVIEW_SIDE = 240;
const MOST_BYTES = 400_000;
// Chosen, not published: from hardly seen to plainly seen. After the last one the picture itself gets smaller.
const QUALITIES = [0.82, 0.72, 0.6, 0.45];

/**
 * A picture drawn anew at its size for keeping. What else the file held is left behind by that: place, time and maker
 * of the camera in its EXIF never come into the app, so a sheet or a backup can't give away where the shop is.
 */
export async function shrinkPhoto(
  picture: CanvasImageSource,
  size: PictureSize,
): Promise<ShrunkPhoto | undefined> {
  if (size.width < 1 || size.height < 1) return undefined;
  const kept = await smallEnough(picture, fitWithin(size, LONGEST_SIDE));
  const preview = await jpegOf(picture, fitWithin(size, PREVIEW_SIDE), 0.7);
  return kept && preview && { mime: 'image/jpeg', ...kept, preview };
}

/** The size with its longer side no longer than this; a smaller picture stays as it is. */
export function fitWithin({ width, height }: PictureSize, longest: number): PictureSize {
  const scale = Math.min(1, longest / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}

async function smallEnough(
  picture: CanvasImageSource,
  size: PictureSize,
): Promise<(PictureSize & { readonly bytes: ArrayBuffer }) | undefined> {
  for (const quality of QUALITIES) {
    // One picture at a time: a phone has no memory for four.
    // oxlint-disable-next-line no-await-in-loop
    const bytes = await jpegOf(picture, size, quality);
    if (!bytes) return undefined;
    if (bytes.byteLength <= MOST_BYTES) return { ...size, bytes };
  }
  return smallEnough(picture, fitWithin(size, Math.max(size.width, size.height) * 0.75));
}

async function jpegOf(
  picture: CanvasImageSource,
  { width, height }: PictureSize,
  quality: number,
): Promise<ArrayBuffer | undefined> {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext('2d');
  if (!context) return undefined;
  // A picture that lets light through would come out black in a JPEG.
  context.fillStyle = '#fff';
  context.fillRect(0, 0, width, height);
  context.drawImage(picture, 0, 0, width, height);
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', quality));
  // WebKit counts a canvas against the page until it is collected: given back at once.
  canvas.width = 0;
  return blob?.arrayBuffer();
}
