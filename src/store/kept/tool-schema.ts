import '../base/jitless.ts';
import * as z from 'zod/mini';
import type { ToolRecord } from '../base/records.ts';
import {
  featureKind,
  id,
  lengthFromZero,
  line,
  note,
  stamped,
  time,
  type RecordKind,
} from '../base/schema-common.ts';

const inForce = {
  id,
  name: line,
  kind: z.enum([
    'caliper',
    'micrometer',
    'bore-gauge',
    'three-point',
    'telescoping-gauge',
    'depth-gauge',
    'indicator',
    'feeler',
    'plug-gauge',
    'rule',
  ]),
  mpe: lengthFromZero,
  resolution: lengthFromZero,
  resolutionInMpe: z.boolean(),
  repeatability: lengthFromZero,
  jawWidth: z.exactOptional(lengthFromZero),
  least: z.exactOptional(lengthFromZero),
  most: z.exactOptional(lengthFromZero),
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
