import { backupStores } from '../../../src/store/base/stores.ts';
import { afterEach, expect, test, vi } from 'vitest';
import type { IDBPDatabase } from 'idb';
import { backupLines, restoreBackup } from '../../../src/store/file/backup.ts';
import { isGone, type Kept } from '../../../src/store/base/kept.ts';
import { openDatabaseAsItIs } from '../../../src/store/opening/open-database.ts';
import { closeStore, openStore } from '../../../src/store/opening/open-store.ts';
import { photosOfJob, removePhoto } from '../../../src/store/kept/photos.ts';
import { rescuePieces } from '../../../src/store/file/rescue.ts';
import { putSetting } from '../../../src/store/kept/settings.ts';
import { allSteps } from '../../../src/store/opening/steps/all-steps.ts';
import { fillWithEveryKind } from '../../trials/every-kind.ts';
import { fixtures, readDatabase, writeFixture } from '../open-fixture.ts';
import { closeAll, freshName, openForTest, refused, worked } from '../open-for-test.ts';

afterEach(() => {
  closeAll();
  vi.unstubAllGlobals();
});

const WHEN = 1_700_000_000_000;

async function rescued(db: IDBPDatabase): Promise<string> {
  const pieces: Blob[] = [];
  for await (const piece of rescuePieces(db, WHEN)) pieces.push(piece);
  return new Blob(pieces).text();
}

/** Out of the database with that name in the form it has; it is left as it was. */
async function rescuedAsItIs(name: string): Promise<{ text: string; version: number }> {
  const db = worked(await openDatabaseAsItIs(name));
  const text = await rescued(db);
  db.close();
  return { text, version: db.version };
}

async function everyKind() {
  const name = freshName();
  const store = await openForTest({ name });
  await fillWithEveryKind(store, new Uint8Array(20_000).map((_byte, at) => at * 7).buffer);
  worked(await putSetting(store, 'lastPlace', '#/charts/drills'));
  const [photo] = await photosOfJob(store, 'demo-outfit-7');
  worked(await removePhoto(store, photo?.id ?? ''));
  return { name, store };
}

/** What a phone has of all that a backup holds, without what each phone works out itself. */
async function recordsOf(db: IDBPDatabase): Promise<Record<string, readonly Kept[]>> {
  const pairs = backupStores.map(async (name) => {
    const all: Kept[] = await db.getAll(name);
    return [name, all.filter(({ id }) => id !== 'lastPlace')] as const;
  });
  return Object.fromEntries(await Promise.all(pairs));
}

test('what is rescued and put in on another phone is what a usual backup would have brought, pictures too', async () => {
  const { name, store } = await everyKind();
  const usual = await openForTest();
  let text = '';
  for await (const line of backupLines(store)) text += line;
  worked(await restoreBackup(usual, text));
  const { text: found } = await rescuedAsItIs(name);
  expect(found).not.toContain('#/charts/drills');
  const other = await openForTest();
  worked(await restoreBackup(other, found));
  const brought = await recordsOf(other.db);
  expect(brought).toEqual(await recordsOf(usual.db));
  for (const kept of backupStores) expect(brought[kept]?.length).toBeGreaterThan(0);
  // The one photo that was removed leaves its note and no picture.
  expect(brought['photos']?.filter(isGone)).toHaveLength(1);
  expect(brought['photoBytes']).toHaveLength(1);
});

test('it needs nothing of the browser that a page over plain http lacks, and is read in again there', async () => {
  const { name } = await everyKind();
  const { subtle: _subtle, ...rest } = { getRandomValues: crypto.getRandomValues.bind(crypto), subtle: 0 };
  vi.stubGlobal('crypto', rest);
  expect(Reflect.get(globalThis.crypto, 'subtle')).toBeUndefined();
  const { text } = await rescuedAsItIs(name);
  const other = await openForTest();
  const { added } = worked(await restoreBackup(other, new Blob([text])));
  expect(added).toBeGreaterThan(50);
});

test('its sum is the one that a browser with its own SHA-256 finds', async () => {
  const { name, store } = await everyKind();
  const { text } = await rescuedAsItIs(name);
  expect(worked(await restoreBackup(store, text))).toMatchObject({ added: 0, changed: 0 });
  const damaged = text.replace('"Boat-trailer hub', '"Boat-trailer hut');
  expect(damaged).not.toBe(text);
  expect(refused(await restoreBackup(store, damaged)).code).toBe('checksum-differs');
});

test('a store that the browser lost leaves the others to be saved', async () => {
  const { store } = await everyKind();
  for (const lost of backupStores) {
    const rest = await withoutStore(store.db, lost);
    const text = await rescued(rest);
    rest.close();
    const lines = text.trimEnd().split('\n');
    const inStore = lines.filter((line) => line.startsWith(`{"unreadable":"${lost}"`));
    expect(inStore).toEqual([]);
    const others = backupStores.filter((name) => name !== lost && name !== 'photoBytes');
    for (const name of others)
      expect(lines.some((line) => line.startsWith(`{"unreadable":"${name}"`))).toBe(true);
    expect(JSON.parse(lines.at(-1) ?? '')).toMatchObject({ lines: lines.length - 1 });
  }
});

async function withoutStore(from: IDBPDatabase, lost: string): Promise<IDBPDatabase> {
  const name = freshName();
  const { version, stores } = await readDatabase(from);
  const rest = Object.fromEntries(Object.entries(stores).filter(([store]) => store !== lost));
  await writeFixture(name, { version, stores: rest });
  return worked(await openDatabaseAsItIs(name));
}

test.each(fixtures())(
  'records that a failing update left in the form of version $version can be saved, and put in on another phone',
  async (old) => {
    const name = freshName();
    await writeFixture(name, old);
    const failing = () => {
      throw new Error('this step fails');
    };
    expect(refused(await openStore({ name, steps: [...allSteps, failing] }))).toEqual({
      code: 'upgrade-failed',
      step: allSteps.length + 1,
    });
    const { text, version } = await rescuedAsItIs(name);
    expect(version).toBe(old.version);
    const other = await openForTest();
    worked(await restoreBackup(other, text));
    const now = await readDatabase(other.db);
    for (const kept of ['jobs', 'readings', 'worksheets', 'cuts', 'sheets']) {
      const ids = now.stores[kept]?.records.map(({ id }) => id) ?? [];
      for (const { id } of old.stores[kept]?.records ?? []) expect(ids).toContain(id);
    }
  },
);

test('records of a newer Slipfit can be saved by an older one, which leaves them as they are', async () => {
  const name = freshName();
  const newer = await openForTest({ name, steps: [...allSteps, (db) => void db.createObjectStore('later')] });
  await putSetting(newer, 'fitter', 'Jo B.');
  closeStore(newer);
  expect(refused(await openStore({ name }))).toEqual({ code: 'newer-database' });
  const { text, version } = await rescuedAsItIs(name);
  expect(text).toContain('Jo B.');
  expect(version).toBe(allSteps.length + 1);
});

test('where there are no records none are made up', async () => {
  const name = freshName();
  expect(refused(await openDatabaseAsItIs(name)).code).toBe('nothing-kept');
  expect((await indexedDB.databases()).map((one) => one.name)).not.toContain(name);
});
