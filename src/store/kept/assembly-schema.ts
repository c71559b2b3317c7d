import '../base/jitless.ts';
import * as z from 'zod/mini';
import type { AssemblyStep, Recheck } from '../base/records.ts';
import {
  basisSchema,
  decimalText,
  id,
  line,
  note,
  stamped,
  time,
  wholeNumber,
  type RecordKind,
} from '../base/schema-common.ts';

const doneFields = {
  at: time,
  by: line,
  as: z.exactOptional(line),
  basis: z.exactOptional(basisSchema),
  apart: z.exactOptional(z.literal(true)),
};
const done = z.exactOptional(z.looseObject(doneFields));
const rechecked = z.exactOptional(z.looseObject({ ...doneFields, odometer: z.exactOptional(wholeNumber) }));

export const stepSchema = z.looseObject({
  ...stamped,
  jobId: id,
  order: z.int().check(z.minimum(0), z.maximum(1_000_000)),
  text: note,
  orientation: z.exactOptional(note),
  grease: z.exactOptional(line),
  locker: z.exactOptional(line),
  cureHours: z.exactOptional(decimalText),
  torque: z.exactOptional(
    z.looseObject({ typed: line, unit: z.enum(['Nm', 'lbf-ft', 'lbf-in']), source: note }),
  ),
  cotterPin: z.exactOptional(z.boolean()),
  worksheetId: z.exactOptional(id),
  workedOut: z.exactOptional(z.looseObject({ worksheetId: id, offer: line, basis: basisSchema })),
  partIds: z.array(id).check(z.maxLength(1000)),
  done,
  wasDone: done,
  createdAt: time,
});

export const recheckSchema = z.looseObject({
  ...stamped,
  jobId: id,
  what: note,
  afterDays: z.exactOptional(wholeNumber),
  afterDistance: z.exactOptional(wholeNumber),
  from: time,
  fromOdometer: z.exactOptional(wholeNumber),
  unit: z.exactOptional(z.enum(['mi', 'km'])),
  done: rechecked,
  wasDone: rechecked,
  createdAt: time,
});

export const stepKind: RecordKind<AssemblyStep> = { store: 'steps', schema: stepSchema };
export const recheckKind: RecordKind<Recheck> = { store: 'rechecks', schema: recheckSchema };
