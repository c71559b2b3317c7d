import '../base/jitless.ts';
import * as z from 'zod/mini';
import type { Job, Part } from '../base/records.ts';
import {
  entryName,
  id,
  line,
  note,
  stamped,
  time,
  wholeNumber,
  type RecordKind,
} from '../base/schema-common.ts';

const reasonSchema = z.looseObject({ why: note, as: line, at: time, by: z.exactOptional(line) });

export const jobSchema = z.looseObject({
  ...stamped,
  name: line,
  what: note,
  systems: z.array(z.enum(['brake', 'steering', 'axle', 'wheel', 'engine'])).check(z.maxLength(10)),
  touchesNone: z.exactOptional(z.boolean()),
  state: z.enum(['open', 'closed']),
  customerNote: note,
  customer: z.exactOptional(line),
  machine: z.exactOptional(line),
  demo: z.boolean(),
  createdAt: time,
  touchedAt: time,
  odometer: z.exactOptional(z.looseObject({ reading: wholeNumber, unit: z.enum(['mi', 'km']), at: time })),
  warmth: z.exactOptional(z.looseObject({ degrees: line, unit: z.enum(['C', 'F']), at: time })),
  signedOff: z.exactOptional(
    z.looseObject({ at: time, by: line, sheetId: id, stood: z.exactOptional(z.record(entryName, line)) }),
  ),
  reasons: z.exactOptional(z.record(entryName, reasonSchema)),
  got: z.exactOptional(z.record(entryName, z.literal(true))),
  toGet: z.exactOptional(z.record(entryName, line)),
  broughtBack: z.exactOptional(z.literal(true)),
});

export const partSchema = z.looseObject({
  ...stamped,
  jobId: id,
  name: line,
  origin: z.enum(['kit', 'donor', 'made', 'bought', 'mock-up']),
  swapped: z.exactOptional(z.looseObject({ at: time, by: line })),
});

export const jobKind: RecordKind<Job> = { store: 'jobs', schema: jobSchema };
export const partKind: RecordKind<Part> = { store: 'parts', schema: partSchema };
