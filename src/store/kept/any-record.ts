import type { BackupStore } from '../base/stores.ts';
import '../base/jitless.ts';
import * as z from 'zod/mini';
import type { Kept, KeptStamped } from '../base/kept.ts';
import { isPlainObject } from '../base/paths.ts';
import { recheckKind, stepKind } from './assembly-schema.ts';
import { checkKind } from './check-schema.ts';
import { parseKept, stamped, type RecordKind } from '../base/schema-common.ts';
import { cutRecordKind } from './cut-schema.ts';
import { drawerCountKind, drawerPieceKind } from './drawer-schema.ts';
import { featureRecordKind, readingKind } from './feature-schema.ts';
import { jobKind, partKind } from './job-schema.ts';
import { moneyKind } from './money-schema.ts';
import { photoBytesKind, photoKind } from './photo-schema.ts';
import { isSettingKey, readSetting } from './setting-schema.ts';
import { sheetKind } from './sheet-schema.ts';
import { toolKind } from './tool-schema.ts';
import { worksheetKind } from './worksheet-schema.ts';

const anySettingKind: RecordKind<{ readonly id: string; readonly value: unknown }> = {
  store: 'settings',
  schema: z.looseObject({ ...stamped, value: z.unknown() }),
};

export type CheckedRecord =
  | { readonly ok: true; readonly value: KeptStamped }
  | { readonly ok: false; readonly field: string };

/** A record of any store that goes into a backup, as it is kept, once its schema has passed it. */
export function checkRecord(store: BackupStore, record: unknown): CheckedRecord {
  const fault = kinds[store](record);
  if (fault !== undefined) return { ok: false, field: fault };
  // The schema has just checked the id and the stamps; the rest is kept as it came, unknown fields too.
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion
  return { ok: true, value: record as KeptStamped };
}

const soundStamps = z.looseObject({ id: z.string(), stamps: stamped.stamps });

/** Whether the stamps of a record are ones that a phone gave, whatever else is in it. */
export function hasSoundStamps(record: Kept): record is KeptStamped {
  return soundStamps.safeParse(record).success;
}

/** The schema of each store that goes into a backup; one that has none doesn't compile. */
const kinds: { readonly [Name in BackupStore]: (record: unknown) => string | undefined } = {
  jobs: (record) => fault(jobKind, record),
  parts: (record) => fault(partKind, record),
  features: (record) => fault(featureRecordKind, record),
  readings: (record) => fault(readingKind, record),
  worksheets: (record) => fault(worksheetKind, record),
  cuts: (record) => fault(cutRecordKind, record),
  checks: (record) => fault(checkKind, record),
  steps: (record) => fault(stepKind, record),
  rechecks: (record) => fault(recheckKind, record),
  photos: (record) => fault(photoKind, record),
  photoBytes: (record) => fault(photoBytesKind, record),
  money: (record) => fault(moneyKind, record),
  sheets: (record) => fault(sheetKind, record),
  drawer: (record) => fault(drawerPieceKind, record),
  drawerCounts: (record) => fault(drawerCountKind, record),
  tools: (record) => fault(toolKind, record),
  settings: (record) => fault(anySettingKind, record) ?? settingFault(record),
};

function fault<T extends { readonly id: string }>(kind: RecordKind<T>, record: unknown): string | undefined {
  const parsed = parseKept(kind, record);
  return parsed.ok ? undefined : parsed.field;
}

// A setting of a newer Slipfit is kept; one that is known here must hold what it should.
function settingFault(record: unknown): string | undefined {
  const { id } = isPlainObject(record) ? record : {};
  const known = typeof id === 'string' && isSettingKey(id);
  return known && readSetting(id, record) === undefined ? 'value' : undefined;
}
