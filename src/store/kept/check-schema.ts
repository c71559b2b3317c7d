import '../base/jitless.ts';
import * as z from 'zod/mini';
import type { Check } from '../base/records.ts';
import {
  basisSchema,
  entryName,
  entrySchema,
  id,
  line,
  note,
  stamped,
  time,
  type RecordKind,
} from '../base/schema-common.ts';

const takeSchema = z.looseObject({
  at: time,
  featureId: z.exactOptional(id),
  seen: z.exactOptional(z.enum(['holds', 'fails'])),
  seenNote: z.exactOptional(note),
  seenAs: z.exactOptional(line),
  basis: z.exactOptional(basisSchema),
  after: z.exactOptional(id),
});

export const checkSchema = z.looseObject({
  ...stamped,
  jobId: id,
  worksheetId: z.exactOptional(id),
  sizeName: z.exactOptional(line),
  name: line,
  by: z.enum(['bore', 'pin', 'length', 'depth', 'gap', 'runout', 'by-eye']),
  lower: z.exactOptional(entrySchema),
  upper: z.exactOptional(entrySchema),
  limitsFrom: note,
  how: note,
  takes: z.record(entryName, takeSchema),
  basis: z.exactOptional(basisSchema),
  createdAt: time,
  broughtBack: z.exactOptional(z.literal(true)),
});

export const checkKind: RecordKind<Check> = { store: 'checks', schema: checkSchema };
