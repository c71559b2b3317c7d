import '../base/jitless.ts';
import * as z from 'zod/mini';
import type { Cut } from '../base/records.ts';
import {
  basisSchema,
  entryName,
  entrySchema,
  id,
  line,
  note,
  readWarmthSchema,
  stamped,
  struckOutSchema,
  time,
  type RecordKind,
} from '../base/schema-common.ts';
import { toolInForceSchema } from './tool-schema.ts';

const passSchema = z.looseObject({
  at: time,
  measured: entrySchema,
  tool: z.exactOptional(toolInForceSchema),
  toolAssumed: z.exactOptional(z.literal(true)),
  asked: z.exactOptional(entrySchema),
  warmth: z.exactOptional(readWarmthSchema),
  struckOut: z.exactOptional(struckOutSchema),
});

const placeSchema = z.looseObject({ x: entrySchema, y: entrySchema });

export const cutSchema = z.looseObject({
  ...stamped,
  jobId: id,
  worksheetId: z.exactOptional(id),
  partId: z.exactOptional(id),
  name: line,
  part: line,
  operation: z.enum(['turn', 'bore', 'face', 'drill', 'ream', 'tap', 'ring', 'thread']),
  of: z.enum(['outside', 'length', 'bore', 'recess-depth', 'slot-depth', 'slot-width', 'tap-drill']),
  blank: z.exactOptional(entrySchema),
  target: entrySchema,
  lower: entrySchema,
  upper: entrySchema,
  limitsFrom: note,
  assumed: z.exactOptional(note),
  material: z.exactOptional(line),
  cuttingTool: z.enum(['hss', 'carbide']),
  machine: z.enum(['lathe', 'mill', 'drill-press', 'bench']),
  drill: z.exactOptional(line),
  thread: z.exactOptional(line),
  setOver: z.exactOptional(entrySchema),
  setOverWithin: z.exactOptional(entrySchema),
  stands: z.exactOptional(placeSchema),
  zeroShift: z.exactOptional(placeSchema),
  made: z.exactOptional(z.looseObject({ at: time })),
  compoundDegrees: z.exactOptional(z.string().check(z.regex(/^\d{1,2}\.\d{1,5}$/))),
  threading: z.exactOptional(
    z.looseObject({
      wire: entrySchema,
      pitch: entrySchema,
      infeed: z.enum(['straight', 'flank']),
      hand: z.enum(['right', 'left']),
    }),
  ),
  largestTake: z.exactOptional(entrySchema),
  finishTake: z.exactOptional(entrySchema),
  state: z.enum(['to-cut', 'cutting', 'to-size', 'over', 'scrapped', 'made-again']),
  passes: z.record(entryName, passSchema),
  basis: z.exactOptional(basisSchema),
  copyOf: z.exactOptional(id),
  workedOutIn: z.exactOptional(z.looseObject({ jobId: id, worksheetId: id })),
  createdAt: time,
  touchedAt: time,
  broughtBack: z.exactOptional(z.literal(true)),
});

export const cutRecordKind: RecordKind<Cut> = { store: 'cuts', schema: cutSchema };
