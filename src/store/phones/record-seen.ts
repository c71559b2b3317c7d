import { deviceOf, isSoundStamp, seedDevice, type Stamp } from '../base/clock.ts';
import type { Kept, KeptStamped } from '../base/kept.ts';
import { isPlainObject } from '../base/paths.ts';
import type { BackupStore } from '../base/stores.ts';
import { EVERYTHING, type Seen } from './seen.ts';

/**
 * What one copy of a record has met: of each phone the latest of its stamps that went into it, also where the value was
 * overwritten since. Record by record this holds after any break, where what a phone has seen of everything holds only
 * once all of it has come.
 */
export type RecordSeen = ReadonlyMap<string, Stamp>;

/** The note of it beside a record that was changed since it was made. */
export type SeenRow = {
  readonly id: string;
  readonly stamps: readonly Stamp[];
  /** As it was before the file came whose undo this is; missing where no file changed it. */
  readonly before?: { readonly undoId: string; readonly stamps: readonly Stamp[] };
};

export function seenRowId(store: BackupStore, id: string): string {
  return `seen/${store}/${id}`;
}

/** What the stamps of a record say by themselves that it has met. */
export function metBy({ stamps }: KeptStamped): RecordSeen {
  return latestOf(Object.values(stamps));
}

export function latestOf(stamps: Iterable<Stamp>): RecordSeen {
  const latest = new Map<string, Stamp>();
  for (const stamp of stamps) {
    const device = deviceOf(stamp);
    if (device !== seedDevice && stamp > (latest.get(device) ?? '')) latest.set(device, stamp);
  }
  return latest;
}

export function metByBoth(a: RecordSeen, b: RecordSeen): RecordSeen {
  return latestOf([...a.values(), ...b.values()]);
}

/** Whether a copy that has met this has met that stamp. */
export function hasMet(met: RecordSeen, stamp: Stamp): boolean {
  const device = deviceOf(stamp);
  return device === seedDevice || (met.get(device) ?? '') >= stamp;
}

/** Whether a copy has met everything that stands in this record. */
export function hasMetAllOf(met: RecordSeen, { stamps }: KeptStamped): boolean {
  return Object.values(stamps).every((stamp) => hasMet(met, stamp));
}

/** The note read back; what is none says nothing. */
export function seenInRow(row: unknown): RecordSeen {
  return latestOf(stampsIn(isPlainObject(row) ? row['stamps'] : undefined));
}

// Chosen, not published: far more phones than a shop has.
const MOST_STAMPS = 200;

/** A list of stamps from outside; nothing when it isn't one. */
export function stampsIn(list: unknown): readonly Stamp[] {
  return Array.isArray(list) && list.length <= MOST_STAMPS ? list.filter(isSoundStamp) : [];
}

export function rowOf(store: BackupStore, id: string, met: RecordSeen): SeenRow {
  return { id: seenRowId(store, id), stamps: [...met.values()] };
}

/** As what one record has met stands beside what a phone has seen of everything. */
export function asSeen(met: RecordSeen): Seen {
  return new Map([[EVERYTHING, met]]);
}

/** What of everything that a phone has seen is about this unit. */
export function seenOfOne(seen: Seen, unit: string): RecordSeen {
  return latestOf([...(seen.get(EVERYTHING)?.values() ?? []), ...(seen.get(unit)?.values() ?? [])]);
}

/** Whether nothing was changed in a record since it was made. */
export function isAsMade(record: Kept & { readonly stamps: KeptStamped['stamps'] }): boolean {
  return Object.values(record.stamps).every((stamp) => stamp === record.stamps['*']);
}
