import '../base/jitless.ts';
import * as z from 'zod/mini';
import type { Feature, ReadingRecord } from '../base/records.ts';
import {
  basisSchema,
  direction,
  entry,
  entrySchema,
  featureKind,
  id,
  inputsAsText,
  line,
  place,
  stamped,
  struckOutSchema,
  time,
  type RecordKind,
  readWarmthSchema,
} from '../base/schema-common.ts';
import { toolInForceSchema } from './tool-schema.ts';

const readingElsewhereSchema = z.looseObject({
  ...entry,
  tool: toolInForceSchema,
  stops: z.exactOptional(entrySchema),
  place: z.exactOptional(place),
  direction: z.exactOptional(direction),
  zeroChecked: z.boolean(),
  warmth: z.exactOptional(readWarmthSchema),
  at: time,
});

export const featureSchema = z.looseObject({
  ...stamped,
  jobId: id,
  partId: z.exactOptional(id),
  kind: featureKind,
  name: line,
  material: z.exactOptional(line),
  createdAt: time,
  elsewhere: z.exactOptional(
    z.looseObject({
      jobId: id,
      jobName: line,
      featureId: id,
      // Without a check of its own: on the way out zod encodes what is checked twice, and a length can't be.
      readings: z.array(readingElsewhereSchema),
    }),
  ),
  checkId: z.exactOptional(id),
  broughtBack: z.exactOptional(z.literal(true)),
});

export const readingSchema = z.looseObject({
  ...stamped,
  ...entry,
  featureId: id,
  jobId: id,
  tool: toolInForceSchema,
  stops: z.exactOptional(entrySchema),
  place: z.exactOptional(place),
  direction: z.exactOptional(direction),
  zeroChecked: z.boolean(),
  warmth: z.exactOptional(readWarmthSchema),
  at: time,
  struckOut: z.exactOptional(struckOutSchema),
  basis: z.exactOptional(basisSchema),
  readOf: z.exactOptional(z.record(id, inputsAsText)),
});

export const featureRecordKind: RecordKind<Feature> = { store: 'features', schema: featureSchema };
export const readingKind: RecordKind<ReadingRecord> = { store: 'readings', schema: readingSchema };
