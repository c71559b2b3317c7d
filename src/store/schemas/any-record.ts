import './jitless.ts';
import * as z from 'zod/mini';
import type { BackupStore } from '../backup-format.ts';
import type { Kept, KeptStamped } from '../kept.ts';
import { isPlainObject } from '../paths.ts';
import { recheckKind, stepKind } from './assembly.ts';
import { checkKind } from './check.ts';
import { parseKept, stamped, type RecordKind } from './common.ts';
import { cutRecordKind } from './cut.ts';
import { drawerCountKind, drawerPieceKind } from './drawer.ts';
import { featureRecordKind, readingKind } from './feature.ts';
import { jobKind, partKind } from './job.ts';
import { moneyKind } from './money.ts';
import { photoBytesKind, photoKind } from './photo.ts';
import { isSettingKey, readSetting } from './setting.ts';
import { sheetKind } from './sheet.ts';
import { toolKind } from './tool.ts';
import { worksheetKind } from './worksheet.ts';

const anySettingKind: RecordKind<{ readonly id: string; readonly value: unknown }> = {
  store: 'settings',
  schema: z.looseObject({ ...stamped, value: z.unknown() }),
};

export type CheckedRecord =
  | { readonly ok: true; readonly value: KeptStamped }
  | { readonly ok: false; readonly field: string };

/** A record of any store that goes into a backup, as it is kept, once its schema has passed it. */
export function checkRecord(store: BackupStore, record: unknown): CheckedRecord {
  const fault = faultOf(store, record);
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

function faultOf(store: BackupStore, record: unknown): string | undefined {
  switch (store) {
    case 'jobs':
      return fault(jobKind, record);
    case 'parts':
      return fault(partKind, record);
    case 'features':
      return fault(featureRecordKind, record);
    case 'readings':
      return fault(readingKind, record);
    case 'worksheets':
      return fault(worksheetKind, record);
    case 'cuts':
      return fault(cutRecordKind, record);
    case 'checks':
      return fault(checkKind, record);
    case 'steps':
      return fault(stepKind, record);
    case 'rechecks':
      return fault(recheckKind, record);
    case 'photos':
      return fault(photoKind, record);
    case 'photoBytes':
      return fault(photoBytesKind, record);
    case 'money':
      return fault(moneyKind, record);
    case 'sheets':
      return fault(sheetKind, record);
    case 'drawer':
      return fault(drawerPieceKind, record);
    case 'drawerCounts':
      return fault(drawerCountKind, record);
    case 'tools':
      return fault(toolKind, record);
    case 'settings':
      return fault(anySettingKind, record) ?? settingFault(record);
    default:
      return store satisfies never;
  }
}

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
