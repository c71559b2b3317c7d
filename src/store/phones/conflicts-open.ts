import { deviceOf, type Stamp } from '../base/clock.ts';
import { saysTheSame, type LostField } from './conflicts-find.ts';
import { isGone, type Kept, type KeptStamped } from '../base/kept.ts';
import { stampAt } from '../base/merge.ts';
import type { Store } from '../opening/open-store.ts';
import { isPlainObject, valuesByPath } from '../base/paths.ts';
import { read, type Reads } from '../opening/read.ts';
import { checkRecord } from '../kept/any-record.ts';
import { readConflict, type Conflict } from './conflict-schema.ts';

/** One field with its two values; one that isn't there was left empty, or taken out. */
export type BothValues = { readonly path: string; readonly now?: unknown; readonly lost?: unknown };

export type Whose = { readonly phone: 'this' | 'other'; readonly fitter?: string; readonly stamp: Stamp };

/** Two phones' values of the same thing, and whose they are. `now` is what stands, `lost` what the merge left out. */
export type OpenConflict = {
  readonly conflict: Conflict;
  readonly record: KeptStamped;
  readonly fields: readonly BothValues[];
  readonly now: Whose;
  readonly lost: Whose;
};

/** The conflicts that nobody has settled yet, the oldest first. */
export async function openConflicts(store: Store): Promise<OpenConflict[]> {
  const kept = await read(store, ['conflicts', 'device'], async (tx) => ({
    all: (await tx.objectStore('conflicts').getAll()) as unknown[],
    clock: (await tx.objectStore('device').get('clock')) as unknown,
  }));
  const conflicts = kept.all.flatMap((one) => readConflict(one) ?? []);
  if (conflicts.length === 0) return [];
  const own = isPlainObject(kept.clock) ? String(kept.clock['deviceId']) : '';
  const stores = [...new Set(conflicts.map(({ of }) => of.store))];
  const records = await read(store, stores, (tx) => Promise.all(conflicts.map((one) => recordOf(tx, one))));
  return conflicts
    .flatMap((conflict, index) => openOf(conflict, { conflicts, record: records[index], own }) ?? [])
    .toSorted((a, b) => a.conflict.foundAt - b.conflict.foundAt || (a.conflict.id < b.conflict.id ? -1 : 1));
}

async function recordOf(tx: Reads, { of }: Conflict): Promise<Kept | undefined> {
  return tx.objectStore(of.store).get(of.id);
}

type Among = {
  readonly conflicts: readonly Conflict[];
  readonly record: Kept | undefined;
  readonly own: string;
};

function openOf(conflict: Conflict, { conflicts, record, own }: Among): OpenConflict | undefined {
  if (!record || isGone(record)) return undefined;
  const settled = settledPaths(record, conflict.lostStamp);
  const checked = checkRecord(conflict.of.store, record);
  if (!checked.ok) return undefined;
  const values = valuesByPath(record);
  const fields = conflict.fields
    .filter((field) => !settled.has(field.path))
    .filter((field) => !isOverwritten(conflict, field, { conflicts, record: checked.value }))
    .map(({ path, value }): BothValues => ({ path, now: values.get(path), lost: value }))
    .filter(({ now, lost }) => !saysTheSame(now, lost));
  const [first] = fields;
  if (!first) return undefined;
  const whose = (stamp: Stamp): Whose => whoseOf(stamp, conflict, own);
  const nowStamp = stampAt(checked.value, first.path);
  return {
    conflict,
    record: checked.value,
    fields,
    now: whose(nowStamp),
    lost: whose(conflict.lostStamp),
  };
}

function whoseOf(stamp: Stamp, { from }: Conflict, own: string): Whose {
  const device = deviceOf(stamp);
  if (device === own) return { phone: 'this', stamp };
  const isTheirs = device === from.phone && from.fitter !== undefined;
  return { phone: 'other', stamp, ...(isTheirs && { fitter: from.fitter }) };
}

/**
 * Whoever wrote the value that was left out has written the field anew since: that one counts for him now. What an undo
 * put back as the merge had left it is nothing new.
 */
function isOverwritten(
  { of, lostStamp }: Conflict,
  { path, won }: LostField,
  { conflicts, record }: { readonly conflicts: readonly Conflict[]; readonly record: KeptStamped },
): boolean {
  const isLater = (stamp: Stamp) => deviceOf(stamp) === deviceOf(lostStamp) && stamp > lostStamp;
  const isLostAnew = conflicts.some(
    (one) =>
      one.of.store === of.store &&
      one.of.id === of.id &&
      isLater(one.lostStamp) &&
      one.fields.some((field) => field.path === path),
  );
  const isAsItWon = saysTheSame(valuesByPath(record).get(path), won);
  return isLostAnew || (isLater(stampAt(record, path)) && !isAsItWon);
}

/** Whether the record says that this was settled, here or on another phone. */
export function settledIn(
  record: Kept,
  { lostStamp, fields }: Pick<Conflict, 'lostStamp' | 'fields'>,
): boolean {
  const settled = settledPaths(record, lostStamp);
  return fields.every(({ path }) => settled.has(path));
}

/** What of one losing write was settled. Another phone may find more of it later: only that is asked then. */
function settledPaths(record: Kept, lostStamp: Stamp): ReadonlySet<unknown> {
  const settled = isPlainObject(record['settled']) ? record['settled'][lostStamp] : undefined;
  return new Set(Array.isArray(settled) ? settled : []);
}
