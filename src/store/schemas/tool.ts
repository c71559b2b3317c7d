import './jitless.ts';
import * as z from 'zod/mini';
import type { ToolRecord } from '../records.ts';
import { featureKind, id, length, line, note, stamped, time, type RecordKind } from './common.ts';

const inForce = {
  id,
  name: line,
  kind: z.enum([
    'caliper',
    'micrometer',
    'bore-gauge',
    'telescoping-gauge',
    'depth-gauge',
    'indicator',
    'feeler',
    'plug-gauge',
    'rule',
  ]),
  mpe: length,
  resolution: length,
  resolutionInMpe: z.boolean(),
  repeatability: length,
  jawWidth: z.exactOptional(length),
  least: z.exactOptional(length),
  most: z.exactOptional(length),
};

/** The tool as it was when the reading was taken. */
export const toolInForceSchema = z.looseObject(inForce);

const measuringToolSchema = z.looseObject({
  ...inForce,
  measures: z.array(featureKind),
  source: note,
});

export const toolSchema = z.looseObject({
  ...stamped,
  tool: measuringToolSchema,
  lastChecked: z.exactOptional(time),
});

export const toolKind: RecordKind<ToolRecord> = { store: 'tools', schema: toolSchema };
