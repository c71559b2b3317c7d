import { indexesOf, storeNames } from '../../../src/store/base/stores.ts';
import { afterEach, describe, expect, test } from 'vitest';
import { openDatabaseAsItIs } from '../../../src/store/opening/open-database.ts';
import { openStore } from '../../../src/store/opening/open-store.ts';
import { rescuePieces } from '../../../src/store/file/rescue.ts';
import { sayStore } from '../../../src/store/base/say-store.ts';
import { fillWithEveryKind } from '../../trials/every-kind.ts';
import { readDatabase, writeFixture, type Fixture } from '../open-fixture.ts';
import { closeAll, freshName, openForTest, refused, worked } from '../open-for-test.ts';

/** A browser that damaged its own database: the version is today's, a store or an index isn't there. */

afterEach(closeAll);

const indexes = storeNames.flatMap((store) => indexesOf(store).map((index) => ({ store, index })));

async function aShop(): Promise<Fixture> {
  const store = await openForTest();
  await fillWithEveryKind(store, new Uint8Array([1, 2, 3]).buffer);
  return readDatabase(store.db);
}

/** The refusal, and what a rescue saves all the same: records, by line. */
async function opened(damaged: Fixture) {
  const name = freshName();
  await writeFixture(name, damaged);
  const refusal = refused(await openStore({ name }));
  const db = worked(await openDatabaseAsItIs(name));
  const pieces: Blob[] = [];
  for await (const piece of rescuePieces(db, 0)) pieces.push(piece);
  expect(await readDatabase(db)).toEqual(await asWritten(damaged));
  db.close();
  return { refusal, saved: await new Blob(pieces).text() };
}

async function asWritten(damaged: Fixture): Promise<Fixture> {
  const name = freshName();
  await writeFixture(name, damaged);
  const db = worked(await openDatabaseAsItIs(name));
  const kept = await readDatabase(db);
  db.close();
  return kept;
}

test('the list of stores and indexes is what the steps have made', async () => {
  const { stores } = await readDatabase((await openForTest()).db);
  expect(Object.keys(stores).toSorted()).toEqual([...storeNames].toSorted());
  const made = Object.entries(stores).flatMap(([store, { indexes: those }]) =>
    those.map(({ name }) => `${store}/${name}`),
  );
  expect(indexes.map(({ store, index }) => `${store}/${index}`).toSorted()).toEqual(made.toSorted());
});

describe('a database', () => {
  test.each(storeNames)(
    'without its store %s is named so, left alone, and the rest is saved',
    async (lost) => {
      const { version, stores } = await aShop();
      const rest = Object.fromEntries(Object.entries(stores).filter(([name]) => name !== lost));
      const { refusal, saved } = await opened({ version, stores: rest });
      expect(refusal).toEqual({ code: 'store-lost', store: lost });
      expect(sayStore(refusal)).toContain('Save a backup');
      expect(saved).toContain(lost === 'readings' ? '"unreadable":"jobs"' : '"typed"');
    },
  );

  test.each(indexes)(
    'without the index $index of $store the same, and nothing is missing from the file',
    async ({ store, index }) => {
      const { version, stores } = await aShop();
      const whole = await opened({ version, stores: { ...stores, later: empty } }).catch(() => undefined);
      expect(whole).toBeUndefined(); // a store more than today's is no damage
      const one = stores[store] ?? empty;
      const less = { ...one, indexes: one.indexes.filter(({ name }) => name !== index) };
      const { refusal, saved } = await opened({ version, stores: { ...stores, [store]: less } });
      expect(refusal).toEqual({ code: 'store-lost', store });
      const lines = saved.split('\n').filter((line) => line.startsWith(`{"unreadable":"${store}"`));
      expect(lines.length).toBe(['undo', 'conflicts'].includes(store) ? 0 : one.records.length);
    },
  );
});

const empty = { keyPath: 'id', indexes: [], records: [] };
