import type { Entry } from '../../engine/length/entry.ts';
import { asTyped } from '../../engine/length/show.ts';
import type { ToolInForce } from '../../engine/reading/measuring-tool.ts';
import type { Direction, Place } from '../../engine/reading/reading.ts';
import { act, type Act } from '../opening/act.ts';
import { basisNowOfCheck, basisStores } from './basis-now.ts';
import { touchJob } from './jobs.ts';
import { newId } from '../base/new-id.ts';
import { partsReadIn } from './parts-as-read.ts';
import type { Store } from '../opening/open-store.ts';
import { readByIndex } from '../opening/read.ts';
import type { Id, ReadingRecord } from '../base/records.ts';
import { featureRecordKind, readingKind } from './feature-schema.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/** A feature's readings in order of time, struck-out ones among them: their line stays readable. */
export async function readingsOf(store: Store, featureId: Id): Promise<ReadingRecord[]> {
  return readByIndex(store, readingKind, { index: 'featureId+at', key: everyTimeOf(featureId) });
}

/** Every reading of a job in order of time. */
export async function readingsOfJob(store: Store, jobId: Id): Promise<ReadingRecord[]> {
  return readByIndex(store, readingKind, { index: 'jobId+at', key: everyTimeOf(jobId) });
}

/** Which of its feature's readings that count this one is, the first being 1; nothing where that can't be read now. */
export async function numberOf(store: Store, { featureId, id }: ReadingRecord): Promise<number | undefined> {
  try {
    const counted = (await readingsOf(store, featureId)).filter(({ struckOut }) => !struckOut);
    const index = counted.findIndex((reading) => reading.id === id);
    return index < 0 ? undefined : index + 1;
  } catch {
    return undefined;
  }
}

// In an index of [id, time] the empty array sorts behind every time.
function everyTimeOf(id: Id): IDBKeyRange {
  return IDBKeyRange.bound([id], [id, []]);
}

export type NewReading = {
  readonly featureId: Id;
  readonly jobId: Id;
  readonly entry: Entry;
  readonly tool: ToolInForce;
  /** Of a leaf or plug that goes: the next one tried, which doesn't. */
  readonly stops?: Entry;
  readonly place?: Place;
  readonly direction?: Direction;
  readonly zeroChecked: boolean;
  readonly warmth?: NonNullable<ReadingRecord['warmth']>;
  /** The draft this reading was typed in; it goes in the same transaction. */
  readonly draftKey?: string;
};

/**
 * Logs a reading: it is on the disk when this comes back ok, and only then may the screen say "logged". A kept reading
 * is never changed; a wrong one is struck out and read again. So there is no undo for it either.
 */
export async function logReading(store: Store, reading: NewReading): Promise<StoreResult<ReadingRecord>> {
  const id = newId();
  const { entry, tool, draftKey, ...rest } = reading;
  return act(store, { stores: ['jobs', 'features', 'drafts', ...basisStores] }, async (a) => {
    const { jobId, checkId } = await a.get(featureRecordKind, reading.featureId);
    await touchJob(a, jobId);
    if (draftKey !== undefined) a.drop('drafts', draftKey);
    const { exact, typed, unit } = entry;
    const at = await timeBehindLast(a, reading.featureId);
    const basis = await basisNowOfCheck(a, checkId);
    const readOf = await partsReadIn(a, jobId, reading.featureId);
    const kept = { ...rest, jobId, id, exact, typed, unit, tool: inForce(tool), at };
    return a.make(readingKind, { ...kept, ...(basis && { basis }), ...(readOf && { readOf }) });
  });
}

/** Behind the feature's last one, also when the phone's clock was set back in between: the last is the one read last. */
async function timeBehindLast(a: Act, featureId: Id): Promise<number> {
  const index = a.tx.objectStore('readings').index('featureId+at');
  const last = await index.openKeyCursor(everyTimeOf(featureId), 'prev');
  const at: unknown = Array.isArray(last?.key) ? last.key[1] : undefined;
  return typeof at === 'number' ? Math.max(a.at, at + 1) : a.at;
}

/** Strikes a reading out, with the reason beside it. It stays for ever, and no longer counts. */
export async function strikeOut(store: Store, id: Id, why: string): Promise<StoreResult<ReadingRecord>> {
  return act(store, { stores: ['jobs', 'readings'] }, async (a) => {
    const before = await a.get(readingKind, id);
    await touchJob(a, before.jobId);
    const struck = await a.change(readingKind, id, (reading) =>
      reading.struckOut ? reading : { ...reading, struckOut: { why, at: a.at } },
    );
    a.undoable(`Struck out ${asTyped(before)}`, before.jobId);
    return struck;
  });
}

/** Strikes out several readings at once, as one act: one undo brings them all back. */
export async function strikeOutAll(
  store: Store,
  ids: readonly Id[],
  why: string,
): Promise<StoreResult<undefined>> {
  return act(store, { stores: ['jobs', 'readings'] }, async (a) => {
    for (const id of ids) {
      const before = await a.get(readingKind, id);
      await touchJob(a, before.jobId);
      await a.change(readingKind, id, (reading) =>
        reading.struckOut ? reading : { ...reading, struckOut: { why, at: a.at } },
      );
      if (id === ids.at(-1))
        a.undoable(
          ids.length === 1 ? `Struck out ${asTyped(before)}` : `Struck out ${ids.length} readings`,
          before.jobId,
        );
    }
    return undefined;
  });
}

/** Only what a reading keeps of its tool, should the whole tool be handed in. */
export function inForce(tool: ToolInForce): ToolInForce {
  const { id, name, kind, mpe, resolution, resolutionInMpe, repeatability, jawWidth, least, most } = tool;
  return {
    id,
    name,
    kind,
    mpe,
    resolution,
    resolutionInMpe,
    repeatability,
    ...(jawWidth && { jawWidth }),
    ...(least && { least }),
    ...(most && { most }),
  };
}
