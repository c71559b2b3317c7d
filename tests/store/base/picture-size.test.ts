import { describe, expect, test } from 'vitest';
import {
  canBeMadeSmall,
  canBeShown,
  isAsSaid,
  isPreview,
  pointsOfPicture,
} from '../../../src/store/base/picture-size.ts';
import { gif, jpeg, png, webpExtended, webpLossless, webpLossy } from '../pictures-for-test.ts';

describe.each([
  ['PNG', png],
  ['JPEG', jpeg],
  ['GIF', gif],
  ['WebP with more in it', webpExtended],
  ['WebP that loses', webpLossy],
  ['WebP that loses nothing', webpLossless],
] as const)('%s', (_form, made) => {
  test.each([
    [100, 100],
    [12_000, 12_000],
    [1, 16_383],
    [640, 480],
  ])('says %i by %i itself', (width, height) => {
    expect(pointsOfPicture(made(width, height))).toEqual({ width, height });
  });
  test('says nothing where it breaks off before its size', () => {
    expect(pointsOfPicture(made(640, 480).slice(0, 9))).toBeUndefined();
  });
});

test('a progressive JPEG says it behind another mark, and one that hides its frame says nothing', () => {
  expect(pointsOfPicture(jpeg(640, 480, 0xc2))).toEqual({ width: 640, height: 480 });
  const hidden = new Uint8Array(jpeg(640, 480));
  hidden[8] = 0; // a byte that is no mark: a decoder looks on, and finds whatever it finds
  expect(pointsOfPicture(hidden.buffer)).toBeUndefined();
  expect(canBeShown(hidden.buffer)).toBe(false);
});

test('bytes of no picture, or of none across, say nothing and are not drawn', () => {
  const text = new TextEncoder().encode(
    '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>',
  ).buffer;
  for (const bytes of [new ArrayBuffer(0), text, png(0, 100), jpeg(100, 0)]) {
    expect(pointsOfPicture(bytes)).toBeUndefined();
    expect(canBeShown(bytes)).toBe(false);
  }
});

test('a phone is handed nothing that unfolds to more than it can hold', () => {
  expect(canBeShown(png(5000, 5000))).toBe(true); // 25 million points, 100 MB
  expect(canBeShown(png(5000, 5001))).toBe(false);
  expect(isPreview(png(512, 512))).toBe(true);
  expect(isPreview(png(513, 10))).toBe(false);
  expect(isPreview(png(12_000, 12_000))).toBe(false);
  expect(canBeMadeSmall(jpeg(12_000, 9000))).toBe(true); // 108 million points
  expect(canBeMadeSmall(png(12_000, 12_000))).toBe(false);
});

test('a GIF is as large as its first frame, for which a browser makes room', () => {
  // GIF89a: screen of 100 by 100 with two colours, a comment (18, 19, 24), then the image descriptor (20).
  const colours = [0x80, 0, 0, 0, 0, 0, 255, 255, 255];
  const comment = [0x21, 0xfe, 2, 65, 66, 0];
  const frame = [0x2c, 0, 0, 0, 0, 0xe0, 0x2e, 0xe0, 0x2e, 0]; // 0x2ee0 is 12000
  const screen = [...new Uint8Array(gif(100, 100)).slice(0, 10)];
  const whole = (...rest: readonly number[]) => Uint8Array.from([...screen, ...colours, ...rest]).buffer;
  expect(pointsOfPicture(whole(...comment, ...frame))).toEqual({ width: 12_000, height: 12_000 });
  expect(isPreview(whole(...comment, ...frame))).toBe(false);
  expect(canBeShown(whole(...frame))).toBe(false);
  expect(pointsOfPicture(whole(...comment, 0x3b))).toEqual({ width: 100, height: 100 });
  expect(pointsOfPicture(whole(0x21, 0xfe, 200))).toEqual({ width: 100, height: 100 });
});

test('lying or standing is the same picture, another size is not', () => {
  expect(isAsSaid({ width: 16, height: 24 }, { width: 24, height: 16 })).toBe(true);
  expect(isAsSaid({ width: 24, height: 16 }, { width: 24, height: 17 })).toBe(false);
  expect(isAsSaid({ width: 9000, height: 9000 }, { width: 9000, height: 9000 })).toBe(false);
});
