import '../base/jitless.ts';
import * as z from 'zod/mini';
import type { Draft, SettingKey, SettingValues } from '../base/records.ts';
import {
  direction,
  entry,
  id,
  lengthFromZero,
  lengthOverZero,
  line,
  note,
  place,
  unit,
} from '../base/schema-common.ts';

const lastUsedSchema = z.looseObject({
  toolId: id,
  jobId: z.exactOptional(id),
  unit,
  place: z.exactOptional(place),
  direction: z.exactOptional(direction),
});

const rpm = z.number().check(z.positive(), z.maximum(100_000));

// A mark of nothing would have the dial turned for ever; one below zero the wrong way.
const slide = {
  graduation: z.looseObject({ ...entry, exact: lengthOverZero }),
  marksPerTurn: z.exactOptional(z.int().check(z.minimum(2), z.maximum(2000))),
  backlash: z.exactOptional(z.looseObject({ ...entry, exact: lengthFromZero })),
};

/** What each setting holds. */
export const settingSchemas = {
  shownUnit: z.enum(['in', 'mm']),
  decimalMark: z.enum(['.', ',']),
  padSize: z.enum(['standard', 'glove']),
  light: z.enum(['shop', 'sun']),
  dial: z.looseObject({
    ...slide,
    reads: z.enum(['diameter', 'radius']),
    compound: z.exactOptional(z.looseObject(slide)),
    leadScrew: z.exactOptional(z.looseObject(slide)),
    lengthsBy: z.exactOptional(z.enum(['compound', 'lead-screw'])),
  }),
  lathe: z.looseObject({
    speedsRpm: z.array(rpm).check(z.maxLength(100)),
    mostRpm: z.exactOptional(rpm),
  }),
  mill: z.looseObject({
    reads: z.enum(['dials', 'readout']),
    x: z.looseObject(slide),
    y: z.looseObject(slide),
    edgeFinder: z.exactOptional(z.looseObject({ ...entry, exact: lengthOverZero })),
  }),
  fitter: line,
  shopName: line,
  currency: line,
  sayAloud: z.enum(['on', 'off']),
  lastPlace: note,
  lastChart: note,
  'lastUsed/bore': lastUsedSchema,
  'lastUsed/pin': lastUsedSchema,
  'lastUsed/length': lastUsedSchema,
  'lastUsed/depth': lastUsedSchema,
  'lastUsed/gap': lastUsedSchema,
  'lastUsed/runout': lastUsedSchema,
} satisfies { [Key in SettingKey]: z.ZodMiniType<SettingValues[Key]> };

const settingsByKey: { readonly [Key in SettingKey]: z.ZodMiniType<SettingValues[Key]> } = settingSchemas;

// Chosen, not published: far more than any size has.
const LONGEST_DRAFT = 500;

const keptSettingSchema = z.looseObject({ id: z.string(), value: z.unknown() });
// As it was typed, a digit of another script too: it goes back into its field, never into a sentence.
const draftSchema = z.looseObject({
  id: z.string(),
  typed: z.string().check(z.maxLength(LONGEST_DRAFT)),
  unit,
});

/** A kept setting as its value; nothing when it doesn't parse. */
export function readSetting<Key extends SettingKey>(key: Key, kept: unknown): SettingValues[Key] | undefined {
  const record = z.safeParse(keptSettingSchema, kept);
  if (!record.success) return undefined;
  const value = z.safeParse(settingsByKey[key], record.data.value);
  return value.success ? value.data : undefined;
}

/** A setting's value as it is kept; nothing when it can't be kept so. */
export function keptSetting<Key extends SettingKey>(key: Key, value: SettingValues[Key]): unknown {
  const schema: z.ZodMiniType<SettingValues[Key]> = settingsByKey[key];
  const encoded = z.safeEncode(schema, value);
  return encoded.success ? encoded.data : undefined;
}

export function readDraft(kept: unknown): Draft | undefined {
  const draft = z.safeParse(draftSchema, kept);
  return draft.success ? { typed: draft.data.typed, unit: draft.data.unit } : undefined;
}

export function isSettingKey(key: string): key is SettingKey {
  return Object.hasOwn(settingSchemas, key);
}
