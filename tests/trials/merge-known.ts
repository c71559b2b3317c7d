import { backupStores } from '../../src/store/base/stores.ts';
import { isGone, derivedFields, type Kept } from '../../src/store/base/kept.ts';
import type { Store } from '../../src/store/opening/open-store.ts';
import { isPlainObject } from '../../src/store/base/paths.ts';

/**
 * A second way to tell what two phones wrote apart from each other: the set of all single writes that a phone has ever
 * met. The app keeps one stamp for each phone instead, and must come to the same.
 */
export type Writes = ReadonlySet<string>;

export type Held = ReadonlyMap<string, Kept>;

/** Everything a phone holds, by `store/id`, as it stands in the database. */
export async function heldBy(phone: Store): Promise<Held> {
  const stores = backupStores.filter((name) => name !== 'settings' && name !== 'photoBytes');
  const all = await Promise.all(stores.map((name): Promise<Kept[]> => phone.db.getAll(name)));
  return new Map(
    stores.flatMap((name, index) => (all[index] ?? []).map((one) => [`${name}/${one.id}`, one])),
  );
}

/** The writes that stand in these records: which field, and when. */
export function writesIn(held: Held, only: (record: Kept) => boolean = () => true): Writes {
  const writes = new Set<string>();
  for (const [key, record] of held)
    if (only(record))
      for (const path of pathsOf(record)) writes.add(`${key} ${path} ${stampOf(record, path)}`);
  return writes;
}

export type Apart = {
  readonly key: string;
  readonly path: string;
  readonly stamps: readonly [string, string];
};

const followsFromOthers: ReadonlySet<string> = new Set([
  'touchedAt',
  // Written by the app itself with the part or size that was changed, which is asked about.
  'partsChanged',
  'createdAt',
  'order',
  'deleted',
  'basis',
  'limitsFrom',
  'wasDone',
]);

/** Fields that say different things in the two, written on two phones of which neither had met the other's write. */
export function writtenApart(here: { held: Held; met: Writes }, there: { held: Held; met: Writes }): Apart[] {
  const apart: Apart[] = [];
  for (const [key, ours] of here.held) {
    const theirs = there.held.get(key);
    if (!theirs) continue;
    for (const path of new Set([...pathsOf(ours), ...pathsOf(theirs)])) {
      const stamps = [stampOf(ours, path), stampOf(theirs, path)] as const;
      if (
        followsFromOthers.has(path) ||
        path.startsWith('settled.') ||
        isTheSame(valueAt(ours, path), valueAt(theirs, path))
      )
        continue;
      const wasMet =
        there.met.has(`${key} ${path} ${stamps[0]}`) || here.met.has(`${key} ${path} ${stamps[1]}`);
      if (!wasMet && stamps.every((stamp) => stamp !== stampOf(ours, '*'))) apart.push({ key, path, stamps });
    }
  }
  return apart;
}

const maps = ['sizes', 'choices', 'parts', 'passes', 'takes', 'settled', 'reasons'];

function pathsOf(record: Kept): string[] {
  const stamps = Object.keys(Object(record['stamps'])).filter((path) => path !== '*');
  const fields = Object.keys(record).filter(
    (field) => !derivedFields.has(field) && !['id', 'stamps', ...maps].includes(field),
  );
  const entries = maps.flatMap((field) => Object.keys(Object(record[field])).map((key) => `${field}.${key}`));
  return [...new Set([...stamps, ...fields, ...entries])];
}

function stampOf(record: Kept, path: string): string {
  const stamps = Object(record['stamps']);
  return String(stamps[path] ?? stamps['*']);
}

function valueAt(record: Kept, path: string): unknown {
  const [field = '', key] = path.split(/\.(.*)/s);
  const value = record[field];
  return key === undefined || !maps.includes(field) ? value : isPlainObject(value) ? value[key] : undefined;
}

function isTheSame(a: unknown, b: unknown): boolean {
  if (plain(a) === plain(b)) return true;
  const struck = [a, b].map((one) =>
    isPlainObject(one) ? ('why' in one ? one : one['struckOut']) : undefined,
  );
  if (!struck.every(isPlainObject)) return false;
  return (
    isPlainObject(a) &&
    isPlainObject(b) &&
    ('why' in a || plain({ ...a, struckOut: 0 }) === plain({ ...b, struckOut: 0 }))
  );
}

function plain(value: unknown): string {
  return (
    JSON.stringify(value, (_key, inner: unknown) =>
      isPlainObject(inner)
        ? Object.fromEntries(Object.entries(inner).toSorted(([a], [b]) => (a < b ? -1 : 1)))
        : inner,
    ) ?? ''
  );
}

/** What a phone holds as one text; the same on two phones that hold the same. Whether it is shown counts too. */
export function asText(held: Held): string {
  const records = [...held]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, record]) => {
      const own = Object.entries(record).filter(([field]) => !derivedFields.has(field) && field !== 'stamps');
      const stamps = pathsOf(record)
        .toSorted()
        .map((path) => [path, stampOf(record, path)]);
      return [key, plain(Object.fromEntries(own)), stamps, isGone(record)];
    });
  return JSON.stringify(records);
}
