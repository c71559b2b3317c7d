/** What a phone's camera writes: a JPEG lying on its side, with its orientation and the place it was taken at in EXIF. */

const PLACE = 'GPS 12.3456 N 65.4321 E';

export function jpegOfAPhone(plain: Uint8Array): { readonly file: Buffer; readonly place: string } {
  const orientation = [0x12, 0x01, 3, 0, 1, 0, 0, 0, 6, 0, 0, 0]; // tag 0x0112, one short: 6, turn a quarter clockwise
  const description = [0x0e, 0x01, 2, 0, PLACE.length + 1, 0, 0, 0, 38, 0, 0, 0]; // tag 0x010e, text at byte 38
  // Little end first, directory at byte 8; two entries in it, and no directory after it.
  const head = [0x49, 0x49, 42, 0, 8, 0, 0, 0, 2, 0];
  const last = [0, 0, 0, 0];
  const text = Buffer.from(`${PLACE}\0`, 'latin1');
  const tiff = [...head, ...description, ...orientation, ...last, ...text];
  const exif = [...Buffer.from('Exif\0\0', 'latin1'), ...tiff];
  const length = exif.length + 2;
  const segment = [0xff, 0xe1, length >> 8, length & 0xff, ...exif];
  // Behind the two bytes every JPEG starts with.
  return { file: Buffer.from([...plain.slice(0, 2), ...segment, ...plain.slice(2)]), place: PLACE };
}
