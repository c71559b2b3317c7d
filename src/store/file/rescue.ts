import { backupStores, type BackupStore } from '../base/stores.ts';
import type { IDBPDatabase, IDBPTransaction } from 'idb';
import { withBase64 } from './backup-bytes.ts';
import { followingSettings } from '../base/following-settings.ts';
import { backupFormat, startChecksum } from './backup-format.ts';
import { derivedFields, isGone, type Kept } from '../base/kept.ts';

type Whole = IDBPTransaction<unknown, string[]>;

// Chosen, not published: a photo comes to 8 MB, a sheet to 12.
const READ_AT_ONCE: Partial<Record<BackupStore, number>> = { photoBytes: 1, sheets: 4 };
const SHORT_ONES_AT_ONCE = 500;
const CHARACTERS_IN_A_PIECE = 1_000_000;

/**
 * A backup out of a database in whatever form it stands, with nothing but what the first load has: no schema looks at the
 * records, so each goes in as one that was not read (`unreadable`), and who puts the file in looks at it. All of it is read
 * in one transaction; a store that isn't there has nothing in the file, and where there is none at all it throws. It comes
 * in pieces, so that the browser can put them aside.
 */
export async function* rescuePieces(db: IDBPDatabase, writtenAt: number): AsyncGenerator<Blob> {
  const present = backupStores.filter((name) => db.objectStoreNames.contains(name));
  const tx = db.transaction(present, 'readonly');
  // A transaction ends by itself once nothing is asked of it, so the sum must not be waited for.
  const checksum = startChecksum({ byItself: true });
  let [lines, length, count]: [string[], number, number] = [[], 0, 0];
  const add = async (value: unknown) => {
    const line = textOf(value);
    count += 1;
    length += line.length;
    lines.push(`${line}\n`);
    await checksum.add(line);
  };
  const ids = new Map<BackupStore, readonly string[]>();
  for (const name of present) ids.set(name, await idsIn(tx, name));
  const counts = Object.fromEntries(backupStores.map((name) => [name, ids.get(name)?.length ?? 0]));
  await add({ format: backupFormat.name, version: backupFormat.version, writtenAt, counts });
  for (const [name, all] of ids) {
    const atOnce = READ_AT_ONCE[name] ?? SHORT_ONES_AT_ONCE;
    for (let at = 0; at < all.length; at += atOnce) {
      const page = all.slice(at, at + atOnce);
      const records = await Promise.all(page.map((id) => tx.objectStore(name).get(id)));
      for (const [index, kept] of records.entries()) await add(lineOf(name, kept ?? { id: page[index] }));
      if (length < CHARACTERS_IN_A_PIECE) continue;
      yield new Blob(lines);
      [lines, length] = [[], 0];
    }
  }
  yield new Blob([...lines, `${JSON.stringify({ lines: count, checksum: await checksum.end() })}\n`]);
}

/** What goes into a file: not where this phone was last, and no bytes of a photo that was removed. */
async function idsIn(tx: Whole, name: BackupStore): Promise<readonly string[]> {
  const ids = (await tx.objectStore(name).getAllKeys()).map(String);
  if (name === 'settings') return ids.filter((id) => !followingSettings.has(id));
  if (name !== 'photoBytes' || !tx.objectStoreNames.contains('photos')) return ids;
  const photos: Kept[] = await tx.objectStore('photos').getAll();
  const shown = new Set(photos.filter((photo) => !isGone(photo)).map(({ id }) => id));
  return ids.filter((id) => shown.has(id));
}

function lineOf(store: BackupStore, kept: Kept): unknown {
  const own = Object.entries(kept).filter(([field]) => !derivedFields.has(field));
  return { unreadable: store, record: withBase64(store, Object.fromEntries(own)) };
}

/** Something in a damaged record can't be written as text at all, a ring of references for one: its place is kept. */
function textOf(value: unknown): string {
  try {
    return JSON.stringify(value);
  } catch {
    return JSON.stringify(value, (key, inner: unknown) => (key === 'record' ? idOnly(inner) : inner));
  }
}

function idOnly(record: unknown): unknown {
  return typeof record === 'object' && record !== null && 'id' in record ? { id: record.id } : {};
}
