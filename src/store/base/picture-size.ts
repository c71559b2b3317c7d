/** How large a picture says in its own bytes that it is. Points across and down. */
export type PointsOfPicture = { readonly width: number; readonly height: number };

/**
 * The size in a picture's first bytes, without decoding it: seventeen kilobytes can unfold to half a gigabyte.
 *
 * Units:   points; PNG, JPEG, WebP and GIF.
 * Refuses: anything else, and what breaks off before its size: nothing comes back.
 * Source:  PNG (ISO/IEC 15948) 11.2.2; JPEG (ITU-T T.81) B.2.2; WebP container (RFC 9649) 2.5 to 2.7; GIF89a 18.
 */
export function pointsOfPicture(bytes: ArrayBuffer): PointsOfPicture | undefined {
  const view = new DataView(bytes);
  try {
    const size = ofPng(view) ?? ofGif(view) ?? ofWebp(view) ?? ofJpeg(view);
    return size && size.width > 0 && size.height > 0 ? size : undefined;
  } catch {
    // Broken off: a DataView throws behind its end.
    return undefined;
  }
}

// Chosen, not published: a picture that Slipfit made small is 1,600 points long, and a phone decodes this in a moment.
const MOST_POINTS = 25_000_000;
// Chosen, not published: twice what Slipfit's own previews are long.
const LONGEST_PREVIEW = 512;
// Chosen, not published: a camera of 108 million points, the largest that a phone's browser reads at all.
const MOST_POINTS_CHOSEN = 110_000_000;

/** Whether a phone can show it: known in form, and not too large. */
export function canBeShown(bytes: ArrayBuffer): boolean {
  const size = pointsOfPicture(bytes);
  return size !== undefined && size.width * size.height <= MOST_POINTS;
}

/** Whether what was chosen on the phone may be decoded to be made small; one whose form isn't known is left to the browser. */
export function canBeMadeSmall(start: ArrayBuffer): boolean {
  const size = pointsOfPicture(start);
  return size === undefined || size.width * size.height <= MOST_POINTS_CHOSEN;
}

/** Whether a small picture is one. One in a form that isn't known is never shown, so it hurts nobody. */
export function isPreview(bytes: ArrayBuffer): boolean {
  const size = pointsOfPicture(bytes);
  return size === undefined || Math.max(size.width, size.height) <= LONGEST_PREVIEW;
}

/** Whether a picture is as large as its record says, lying or standing, and can be shown. */
export function isAsSaid(bytes: PointsOfPicture | undefined, said: PointsOfPicture): boolean {
  if (!bytes) return true;
  if (bytes.width * bytes.height > MOST_POINTS) return false;
  const same = bytes.width === said.width && bytes.height === said.height;
  return same || (bytes.width === said.height && bytes.height === said.width);
}

function text(view: DataView, at: number, length: number): string {
  return Array.from({ length }, (_none, index) => String.fromCodePoint(view.getUint8(at + index))).join('');
}

function starts(view: DataView, word: string, at = 0): boolean {
  return view.byteLength >= at + word.length && text(view, at, word.length) === word;
}

function ofPng(view: DataView): PointsOfPicture | undefined {
  if (!starts(view, '\u0089PNG\r\n\u001a\n') || !starts(view, 'IHDR', 12)) return undefined;
  return { width: view.getUint32(16), height: view.getUint32(20) };
}

function ofGif(view: DataView): PointsOfPicture | undefined {
  if (!starts(view, 'GIF87a') && !starts(view, 'GIF89a')) return undefined;
  const screen = { width: view.getUint16(6, true), height: view.getUint16(8, true) };
  const frame = firstFrameOfGif(view);
  return { width: Math.max(screen.width, frame.width), height: Math.max(screen.height, frame.height) };
}

/** A browser makes room for the first frame, however small the screen says that it is (GIF89a 20, 23, 24). */
function firstFrameOfGif(view: DataView): PointsOfPicture {
  if (view.byteLength < 13) return { width: 0, height: 0 };
  const colours = view.getUint8(10);
  let at = 13 + (colours >= 0x80 ? 3 * 2 ** ((colours % 8) + 1) : 0);
  const byteAt = (place: number) => (place < view.byteLength ? view.getUint8(place) : 0);
  while (byteAt(at) === 0x21) {
    at += 2;
    while (byteAt(at) > 0) at += 1 + byteAt(at);
    at += 1;
  }
  // Broken off before it: nothing can be drawn of it either.
  if (byteAt(at) !== 0x2c || at + 9 > view.byteLength) return { width: 0, height: 0 };
  return {
    width: view.getUint16(at + 1, true) + view.getUint16(at + 5, true),
    height: view.getUint16(at + 3, true) + view.getUint16(at + 7, true),
  };
}

function ofWebp(view: DataView): PointsOfPicture | undefined {
  if (!starts(view, 'RIFF') || !starts(view, 'WEBP', 8)) return undefined;
  const three = (at: number) => 1 + view.getUint16(at, true) + view.getUint8(at + 2) * 0x1_00_00;
  if (starts(view, 'VP8X', 12)) return { width: three(24), height: three(27) };
  if (starts(view, 'VP8 ', 12))
    return { width: view.getUint16(26, true) % 0x40_00, height: view.getUint16(28, true) % 0x40_00 };
  if (!starts(view, 'VP8L', 12) || view.getUint8(20) !== 0x2f) return undefined;
  const bits = view.getUint32(21, true);
  return { width: (bits % 0x40_00) + 1, height: (Math.floor(bits / 0x40_00) % 0x40_00) + 1 };
}

// Start of a frame, whichever way it is packed: C0 to CF but for C4, C8 and CC.
const notFrames: ReadonlySet<number> = new Set([0xc4, 0xc8, 0xcc]);

function ofJpeg(view: DataView): PointsOfPicture | undefined {
  if (!starts(view, '\u00ff\u00d8')) return undefined;
  let at = 2;
  for (;;) {
    // Anything between two segments is no JPEG of ours, and a decoder might find another size in it.
    if (view.getUint8(at) !== 0xff) return undefined;
    while (view.getUint8(at + 1) === 0xff) at += 1;
    const marker = view.getUint8(at + 1);
    if (marker >= 0xc0 && marker <= 0xcf && !notFrames.has(marker))
      return { width: view.getUint16(at + 7), height: view.getUint16(at + 5) };
    // Scans, ends and marks without a length come behind the frame.
    if (marker < 0xc0 || (marker >= 0xd0 && marker <= 0xda)) return undefined;
    at += 2 + view.getUint16(at + 2);
  }
}
