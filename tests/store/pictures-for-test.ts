/** First bytes of pictures that say they are so many points large; nothing behind them could be drawn. */

const bytes = (list: readonly number[]): ArrayBuffer => Uint8Array.from(list).buffer;
const letters = (word: string): number[] => Array.from(word, (letter) => letter.codePointAt(0) ?? 0);
const high = (count: number, places: number): number[] =>
  Array.from({ length: places }, (_none, at) => Math.floor(count / 256 ** (places - 1 - at)) % 256);
const low = (count: number, places: number): number[] => high(count, places).toReversed();

// PNG (ISO/IEC 15948), 11.2.2: width and height of four bytes each, the high one first, behind IHDR.
export const png = (width: number, height: number): ArrayBuffer =>
  bytes([
    0x89,
    ...letters('PNG\r\n\u001a\n'),
    0,
    0,
    0,
    13,
    ...letters('IHDR'),
    ...high(width, 4),
    ...high(height, 4),
    8,
    2,
    0,
    0,
    0,
  ]);

// JPEG (T.81), B.2.2: FF C0 (or another start of frame), length, 8 bits, lines, samples in a line.
export const jpeg = (width: number, height: number, frame = 0xc0): ArrayBuffer =>
  bytes([
    0xff,
    0xd8,
    0xff,
    0xe0,
    0,
    4,
    0,
    0,
    0xff,
    0xff,
    frame,
    0,
    11,
    8,
    ...high(height, 2),
    ...high(width, 2),
    1,
    1,
    0x11,
    0,
  ]);

// GIF89a, 18: two bytes each, the low one first.
export const gif = (width: number, height: number): ArrayBuffer =>
  bytes([...letters('GIF89a'), ...low(width, 2), ...low(height, 2), 0, 0, 0]);

// WebP (RFC 9649): 2.7 one less in three bytes; 2.5 two bytes of which fourteen bits count; 2.6 fourteen bits, one less.
const riff = (word: string, rest: readonly number[]) =>
  bytes([...letters('RIFF'), 0, 0, 0, 0, ...letters('WEBP'), ...letters(word), 0, 0, 0, 0, ...rest]);
export const webpExtended = (width: number, height: number): ArrayBuffer =>
  riff('VP8X', [0, 0, 0, 0, ...low(width - 1, 3), ...low(height - 1, 3)]);
export const webpLossy = (width: number, height: number): ArrayBuffer =>
  riff('VP8 ', [0, 0, 0, 0x9d, 0x01, 0x2a, ...low(width, 2), ...low(height, 2)]);
export const webpLossless = (width: number, height: number): ArrayBuffer =>
  riff('VP8L', [0x2f, ...low(width - 1 + (height - 1) * 0x40_00, 4)]);
