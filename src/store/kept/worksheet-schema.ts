import '../base/jitless.ts';
import * as z from 'zod/mini';
import type { Worksheet } from '../base/records.ts';
import {
  entry,
  entryName,
  id,
  inputsAsText,
  line,
  note,
  readWarmthSchema,
  stamped,
  time,
  type RecordKind,
} from '../base/schema-common.ts';
import { toolInForceSchema } from './tool-schema.ts';

export const typedSizeSchema = z.looseObject({
  from: z.literal('typed'),
  ...entry,
  tool: z.exactOptional(toolInForceSchema),
  toolAssumed: z.exactOptional(z.literal(true)),
  warmth: z.exactOptional(readWarmthSchema),
  at: z.exactOptional(time),
  readOf: z.exactOptional(inputsAsText),
});

export const sizeInputSchema = z.discriminatedUnion('from', [
  z.looseObject({ from: z.literal('feature'), featureId: id }),
  typedSizeSchema,
]);

const stackPartSchema = z.looseObject({
  name: line,
  order: z.number(),
  size: z.exactOptional(sizeInputSchema),
  count: z.int().check(z.minimum(0), z.maximum(1000)),
  adjustable: z.boolean(),
  leastLength: z.exactOptional(sizeInputSchema),
});

/** What a worksheet's answer is worked out from, beside the readings. */
const inputs = {
  sizes: z.record(entryName, sizeInputSchema),
  choices: z.record(entryName, note),
  parts: z.record(entryName, stackPartSchema),
};

export const worksheetInputsSchema: z.ZodMiniType<Pick<Worksheet, keyof typeof inputs>> = z.object(inputs);

export const worksheetSchema = z.looseObject({
  ...stamped,
  jobId: id,
  kind: line,
  title: line,
  ...inputs,
  partsChanged: z.exactOptional(z.looseObject({ at: time, why: note, otherwiseAt: z.exactOptional(time) })),
  createdAt: time,
  touchedAt: time,
});

export const worksheetKind: RecordKind<Worksheet> = { store: 'worksheets', schema: worksheetSchema };
