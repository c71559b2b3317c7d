import type { Stamp } from '../base/clock.ts';
import type { Kept } from '../base/kept.ts';
import { canonicalText, isPlainObject, valuesByPath } from '../base/paths.ts';
import type { UndoChange } from '../base/records.ts';
import type { StoreName } from '../base/stores.ts';

/** What differs in a record before and after, path by path, as undo needs it. */
export function differences(store: StoreName, before: Kept | undefined, after: Kept): UndoChange {
  if (!before) return { store, id: after.id, made: true, before: {}, after: {} };
  const old = valuesByPath(before);
  const fresh = valuesByPath(after);
  const differing = (values: Map<string, unknown>) =>
    Object.fromEntries(
      [...values].filter(([path]) => canonicalText(old.get(path)) !== canonicalText(fresh.get(path))),
    );
  return { store, id: after.id, made: false, before: differing(old), after: differing(fresh) };
}

/** When a job or worksheet was last touched is no act of the fitter's, so undo leaves it alone. */
export function withoutTouch({ before, after, ...change }: UndoChange): UndoChange {
  const { touchedAt: _before, ...restBefore } = before;
  const { touchedAt: _after, ...restAfter } = after;
  return { ...change, before: restBefore, after: restAfter };
}

export function hasPaths(values: Readonly<Record<string, unknown>>): boolean {
  return Object.keys(values).length > 0;
}

/** The record with these paths stamped anew. */
export function withStamps(record: Kept, paths: Iterable<string>, stamp: Stamp): Kept {
  const stamps = isPlainObject(record['stamps']) ? record['stamps'] : {};
  return {
    ...record,
    id: record.id,
    stamps: { ...stamps, ...Object.fromEntries([...paths].map((path) => [path, stamp])) },
  };
}
