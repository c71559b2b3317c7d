import type { Stamps } from './records.ts';
import { listOf, type StoreName } from './stores.ts';

/** A record as the database holds it: plain values only, lengths as decimal text in millimetres. */
export type Kept = { readonly id: string; readonly [field: string]: unknown };

/** A record that can be changed, removed and merged field by field. */
export type KeptStamped = Kept & { readonly stamps: Stamps };

export function isStamped(record: Kept): record is KeptStamped {
  const { stamps } = record;
  return typeof stamps === 'object' && stamps !== null && '*' in stamps && typeof stamps['*'] === 'string';
}

/** Fields that follow from others. They are worked out at every put, and left out of backups and merges. */
export const derivedFields: ReadonlySet<string> = new Set(['listedAt', 'openAt', 'broughtBack']);

/** Removed, and not brought back by a reading that was logged elsewhere. */
export function isGone(record: Kept): boolean {
  return record['deleted'] !== undefined && record['broughtBack'] !== true;
}

/**
 * The record with the field its list is sorted by: `listedAt` of a job, `openAt` of a cut that is still to be made and of
 * a re-check that is still to be done. What is removed or done with has none, so the index of the list doesn't hold it
 * and the list needn't step over it.
 */
export function withListField(store: StoreName, record: Kept): Kept {
  const list = listOf(store);
  if (!list) return record;
  const { [list.field]: _stale, ...rest } = record;
  const kept: Kept = { ...rest, id: record.id };
  return isGone(kept) || !list.holds(kept) ? kept : { ...kept, [list.field]: kept[list.sortedBy] };
}
