import { followingSettings } from '../../src/store/base/following-settings.ts';
import type { StoreName } from '../../src/store/base/stores.ts';
import { backupLines } from '../../src/store/file/backup.ts';
import { derivedFields, type Kept } from '../../src/store/base/kept.ts';
import type { Store } from '../../src/store/opening/open-store.ts';
import { isPlainObject } from '../../src/store/base/paths.ts';
import { putTogether } from '../../src/store/kept/put-together.ts';

// A file over this would fill the memory that is being measured: of it only the number of records is looked at.
const MOST_COMPARED = 3_000_000;

type Before = { readonly before: ReadonlyMap<string, readonly Kept[]>; readonly isTwin: boolean };

/**
 * What of a file that was put in isn't in a backup written after it, in words; nothing when all of it is. A phone that
 * had the same records before has its own stand beside them, so there only that they are there.
 */
export async function differenceFrom(
  file: Blob,
  store: Store,
  { before, isTwin }: Before,
): Promise<string | undefined> {
  if (file.size > MOST_COMPARED) return undefined;
  const kept = new Map<string, Kept>();
  for await (const line of backupLines(store)) {
    const found = recordIn(line);
    if (found) kept.set(found.key, found.record);
  }
  const had = new Set([...before].flatMap(([name, records]) => records.map(({ id }) => `${name}/${id}`)));
  const lines = (await file.text()).split('\n');
  for (const line of lines) {
    const wanted = recordIn(line);
    // What this phone has set stays set.
    if (!wanted || (had.has(wanted.key) && wanted.key.startsWith('settings/'))) continue;
    const here = kept.get(wanted.key);
    // Bytes without a photo are nobody's: one that was removed, or whose record no Slipfit could read, has none in a backup.
    if (!here && wanted.key.startsWith('photoBytes/') && !hasPhoto(kept, wanted.key)) continue;
    if (!here) return `${wanted.key} did not arrive`;
    // Spoiled words say something else than what was done or seen: that is to be done again.
    if (!isTwin && contentOf(here) !== contentOf(putTogether(wanted.store, wanted.record)))
      return `${wanted.key} arrived as ${contentOf(here).slice(0, 120)}`;
  }
  return undefined;
}

function hasPhoto(kept: ReadonlyMap<string, Kept>, key: string): boolean {
  const photo = kept.get(key.replace('photoBytes', 'photos'));
  return photo !== undefined && photo['deleted'] === undefined;
}

type Found = { readonly store: StoreName; readonly key: string; readonly record: Kept };

function recordIn(line: string): Found | undefined {
  if (!line.startsWith('{')) return undefined;
  const { store, record }: { store?: StoreName; record?: Kept } = JSON.parse(line);
  return store === undefined || record === undefined || followingSettings.has(record.id)
    ? undefined
    : { store, key: `${store}/${record.id}`, record };
}

/** The fields by name, those that Slipfit works out itself left out; stamps may be written in a shorter way. */
function contentOf(record: Kept): string {
  const fields = Object.entries(record).filter(([name]) => name !== 'stamps' && !derivedFields.has(name));
  return JSON.stringify(
    sorted({ ...Object.fromEntries(fields), ...removal(record) }),
    (name, value: unknown) =>
      (name === 'bytes' || name === 'preview') && typeof value === 'string' ? btoa(atob(value)) : value,
  );
}

/** A removal that the trial stamps from after tomorrow is one all the same: only when it was is not believed. */
function removal({ deleted }: Kept): { readonly deleted?: unknown } {
  return typeof deleted === 'string' && deleted.endsWith('-0000-other') ? { deleted: 'removed' } : {};
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (!isPlainObject(value)) return value;
  const names = Object.keys(value).toSorted();
  return Object.fromEntries(names.map((name) => [name, sorted(value[name])]));
}
