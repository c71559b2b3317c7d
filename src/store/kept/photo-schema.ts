import '../base/jitless.ts';
import * as z from 'zod/mini';
import { isBytes } from '../base/paths.ts';
import type { Photo, PhotoBytes } from '../base/records.ts';
import { id, note, stamped, time, type RecordKind } from '../base/schema-common.ts';

const MOST_BYTES = 8_000_000;
const MOST_BYTES_OF_A_PREVIEW = 200_000;

const bytesUpTo = (most: number) =>
  z.custom<ArrayBuffer>((value) => isBytes(value) && value.byteLength > 0 && value.byteLength <= most);

const pixels = z.int().check(z.minimum(1), z.maximum(20_000));

export const photoSchema = z.looseObject({
  ...stamped,
  jobId: z.exactOptional(id),
  owner: z.looseObject({
    store: z.enum(['jobs', 'parts', 'features', 'worksheets', 'cuts', 'checks', 'steps', 'drawer']),
    id,
  }),
  note,
  // Pictures made of points only: a drawing format could carry a script.
  mime: z.string().check(z.regex(/^image\/(?:jpeg|png|webp)$/)),
  width: pixels,
  height: pixels,
  preview: bytesUpTo(MOST_BYTES_OF_A_PREVIEW),
  at: time,
});

export const photoBytesSchema = z.looseObject({ ...stamped, bytes: bytesUpTo(MOST_BYTES) });

export const photoKind: RecordKind<Photo> = { store: 'photos', schema: photoSchema };
export const photoBytesKind: RecordKind<PhotoBytes> = { store: 'photoBytes', schema: photoBytesSchema };
