import { lengthOf } from '../../engine/length/length.ts';
import { stampAtTime, type Stamp } from '../base/clock.ts';
import type { Id, ReadingRecord, Stamped } from '../base/records.ts';
import { toKept, type RecordKind } from '../base/schema-common.ts';
import { backupStores } from '../base/stores.ts';
import { backupFormat } from '../file/backup-format.ts';
import { withChecksum } from '../file/backup-sealed.ts';
import { recheckKind, stepKind } from '../kept/assembly-schema.ts';
import { checkKind } from '../kept/check-schema.ts';
import { cutRecordKind } from '../kept/cut-schema.ts';
import { featureRecordKind, readingKind } from '../kept/feature-schema.ts';
import { jobKind, partKind } from '../kept/job-schema.ts';
import { moneyKind } from '../kept/money-schema.ts';
import { worksheetKind } from '../kept/worksheet-schema.ts';
import { demoAt, type DemoReading } from './demo-jobs.ts';

// No phone of anybody's.
const DEMO_STAMP: Stamp = '000000000000000-0000-demo';
const SECONDS_BETWEEN_READINGS_MS = 20_000;

/** The demo as a backup file written at a time. The build writes it beside the app; the phone moves its times to its own. */
export function demoLines(writtenAt: number): AsyncGenerator<string> {
  const records = recordsAt(writtenAt);
  const counts = Object.fromEntries(
    backupStores.map((name) => [name, records.filter(({ store }) => store === name).length]),
  );
  const first = { format: backupFormat.name, version: backupFormat.version, writtenAt, counts };
  return withChecksum([first, ...records].map((line) => JSON.stringify(line)));
}

/** The whole file, for whoever builds one. */
export async function demoText(writtenAt: number): Promise<string> {
  const lines: string[] = [];
  for await (const line of demoLines(writtenAt)) lines.push(line);
  return lines.join('');
}

type DemoRecord = { readonly store: string; readonly record: unknown };

function recordsAt(writtenAt: number): readonly DemoRecord[] {
  const demo = demoAt(writtenAt);
  const stamp = stampAtTime(DEMO_STAMP, writtenAt);
  const lines = <T extends { readonly id: Id }>(kind: RecordKind<T>, records: readonly T[]) =>
    records.map((record) => lineOf(kind, { ...record, stamps: { '*': stamp } } satisfies T & Stamped));
  const earliest = writtenAt - demo.readings.length * SECONDS_BETWEEN_READINGS_MS;
  const readings = demo.readings.map((reading, index) =>
    readingAt(reading, earliest + index * SECONDS_BETWEEN_READINGS_MS),
  );
  return [
    ...lines(jobKind, demo.jobs),
    ...lines(partKind, demo.parts),
    ...lines(featureRecordKind, demo.features),
    ...lines(readingKind, readings),
    ...lines(worksheetKind, demo.worksheets),
    ...lines(cutRecordKind, demo.cuts ?? []),
    ...lines(checkKind, demo.checks ?? []),
    ...lines(stepKind, demo.steps ?? []),
    ...lines(recheckKind, demo.rechecks ?? []),
    ...lines(moneyKind, demo.money ?? []),
  ];
}

function lineOf<T extends { readonly id: Id }>(kind: RecordKind<T>, record: T & Stamped): DemoRecord {
  const kept = toKept<T>(kind, record);
  if (!kept.ok)
    throw new Error(`the demo’s ${kind.store} ${record.id} does not hold what it should: ${kept.field}`);
  return { store: kind.store, record: kept.value };
}

function readingAt({ feature, struckOutWhy, ...reading }: DemoReading, at: number): ReadingRecord {
  return {
    ...reading,
    exact: lengthOf(`${reading.typed} ${reading.unit}`),
    featureId: feature.id,
    jobId: feature.jobId,
    zeroChecked: true,
    at,
    ...(struckOutWhy === undefined ? {} : { struckOut: { why: struckOutWhy, at: at + 1000 } }),
  };
}
