import { storeNames } from '../../../src/store/base/stores.ts';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { addDemo } from '../add-demo.ts';
import { isGone, type Kept } from '../../../src/store/base/kept.ts';
import { closeStore, type Store } from '../../../src/store/opening/open-store.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { acts, withoutUndo } from '../every-act.ts';
import { closeAll, freshName, openForTest, worked } from '../open-for-test.ts';

afterEach(closeAll);

test('every write the store offers is taken back by one undo, or says why not', () => {
  const folder = join(import.meta.dirname, '../../../src/store');
  const writes = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .flatMap((file) => writesIn(readFileSync(join(folder, file), 'utf8')));
  expect(writes.length).toBeGreaterThan(50);
  const known = [...Object.keys(acts), ...Object.keys(withoutUndo)];
  expect(writes.filter((name) => !known.includes(name))).toEqual([]);
});

test.each(Object.keys(acts))(
  '%s: after the app was closed and opened again, one undo puts all back as it was',
  async (name) => {
    const database = freshName();
    const store = await openForTest({ name: database });
    worked(await addDemo(store));
    const finger = await acts[name]?.(store);
    const before = await shown(store);
    const done = await finger?.();
    expect(done).toMatchObject({ ok: true });
    expect(await shown(store)).not.toEqual(before);
    closeStore(store);

    const again = await openForTest({ name: database });
    const newest = await latestUndo(again);
    worked(await undoLast(again, newest?.id ?? ''));
    expect(await shown(again)).toEqual(before);
  },
);

/** The exported functions whose answer says whether something was kept. */
function writesIn(source: string): string[] {
  return source
    .split(/^export async function /m)
    .slice(1)
    .filter((text) => /^(?:Store|Backup)Result</.test(text.split('): Promise<')[1] ?? ''))
    .map((text) => /^\w+/.exec(text)?.[0] ?? '');
}

const asideStores: ReadonlySet<string> = new Set(['undo', 'device', 'drafts', 'staging', 'brought', 'words']);

/** All that is there to be seen, without the stamps and dates that an undo gives anew. */
async function shown(store: Store) {
  const names = storeNames.filter((name) => !asideStores.has(name));
  const all = await Promise.all(
    names.map(async (name): Promise<[string, Kept[]]> => [name, await store.db.getAll(name)]),
  );
  const photos = new Set(
    all.find(([name]) => name === 'photos')?.[1].flatMap((one) => (isGone(one) ? [] : one.id)),
  );
  // A removed photo's bytes stay for undo until its job is closed; nothing shows them without their photo.
  const isShown = (name: string, record: Kept) =>
    name === 'photoBytes' ? photos.has(record.id) : !isGone(record);
  return Object.fromEntries(
    all.map(([name, records]) => [
      name,
      records.filter((record) => isShown(name, record)).map(withoutStamps),
    ]),
  );
}

function withoutStamps({ stamps: _stamps, touchedAt: _touched, listedAt: _listed, ...record }: Kept) {
  return record;
}
