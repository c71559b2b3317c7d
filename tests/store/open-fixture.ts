import { readdirSync, readFileSync } from 'node:fs';
import 'fake-indexeddb/auto';
import { openDB, type IDBPDatabase } from 'idb';

export type FixtureStore = {
  readonly keyPath: string | string[] | null;
  readonly indexes: readonly { readonly name: string; readonly keyPath: string | string[] }[];
  readonly records: readonly { readonly id: string; readonly [field: string]: unknown }[];
};

export type Fixture = {
  readonly version: number;
  readonly stores: Readonly<Record<string, FixtureStore>>;
};

const folder = new URL('../fixtures/', import.meta.url);

/** The stored databases of every version, by version. */
export function fixtures(): Fixture[] {
  return readdirSync(folder)
    .filter((name) => /^database-\d+\.json$/.test(name))
    .map((name) => fixtureFrom(readFileSync(new URL(name, folder), 'utf8')))
    .sort((a, b) => a.version - b.version);
}

/** The text of a fixture, one value a line. JSON has no bytes: they stand as `{"base64":"…"}`. */
export function fixtureText(kept: Fixture): string {
  const withBase64 = (_key: string, value: unknown) =>
    value instanceof ArrayBuffer ? { base64: Buffer.from(value).toString('base64') } : value;
  return `${JSON.stringify(kept, withBase64, 1)}\n`;
}

function fixtureFrom(text: string): Fixture {
  return JSON.parse(text, (_key, value: unknown) =>
    typeof value === 'object' && value !== null && 'base64' in value && typeof value.base64 === 'string'
      ? new Uint8Array(Buffer.from(value.base64, 'base64')).buffer
      : value,
  );
}

export function fixture(version: number): Fixture {
  const found = fixtures().find((one) => one.version === version);
  if (!found) throw new Error(`no fixture of version ${version}`);
  return found;
}

/** Builds a database exactly as an old version left it, without any code of today's, and closes it again. */
export async function writeFixture(name: string, { version, stores }: Fixture): Promise<void> {
  const db = await openDB(name, version, {
    upgrade(database) {
      for (const [storeName, { keyPath, indexes }] of Object.entries(stores)) {
        const store = database.createObjectStore(storeName, { keyPath });
        for (const index of indexes) store.createIndex(index.name, index.keyPath);
      }
    },
  });
  const names = Object.keys(stores);
  const tx = db.transaction(names, 'readwrite');
  const puts = Object.entries(stores).flatMap(([storeName, { records }]) =>
    records.map((record) => tx.objectStore(storeName).put(record)),
  );
  await Promise.all([...puts, tx.done]);
  db.close();
}

/** Everything a database holds, in the form of a fixture. */
export async function readDatabase(db: IDBPDatabase): Promise<Fixture> {
  const names = [...db.objectStoreNames];
  const tx = db.transaction(names);
  const entries = await Promise.all(
    names.map(async (name) => {
      const store = tx.objectStore(name);
      const indexes = [...store.indexNames].map((index) => ({
        name: index,
        keyPath: store.index(index).keyPath,
      }));
      return [name, { keyPath: store.keyPath, indexes, records: await store.getAll() }] as const;
    }),
  );
  return { version: db.version, stores: Object.fromEntries(entries) };
}
