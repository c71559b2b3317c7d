import './jitless.ts';
import * as z from 'zod/mini';
import type { Feature, ReadingRecord } from '../records.ts';
import {
  basisSchema,
  direction,
  entry,
  entrySchema,
  featureKind,
  id,
  line,
  place,
  stamped,
  struckOutSchema,
  time,
  type RecordKind,
  readWarmthSchema,
} from './common.ts';
import { toolInForceSchema } from './tool.ts';

export const featureSchema = z.looseObject({
  ...stamped,
  jobId: id,
  partId: z.exactOptional(id),
  kind: featureKind,
  name: line,
  material: z.exactOptional(line),
  createdAt: time,
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
});

export const featureRecordKind: RecordKind<Feature> = { store: 'features', schema: featureSchema };
export const readingKind: RecordKind<ReadingRecord> = { store: 'readings', schema: readingSchema };
