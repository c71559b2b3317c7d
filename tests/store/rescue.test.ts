import { afterEach, expect, test } from 'vitest';
import { backupLines, restoreBackup } from '../../src/store/backup.ts';
import { closeStore, openStore, openStoreAsItIs } from '../../src/store/open-store.ts';
import { allSteps } from '../../src/store/steps/all-steps.ts';
import { fixtures, readDatabase, writeFixture } from './open-fixture.ts';
import { closeAll, freshName, openForTest, refused, worked } from './open-for-test.ts';

afterEach(closeAll);

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
    const asItIs = worked(await openStoreAsItIs({ name }));
    let text = '';
    for await (const line of backupLines(asItIs)) text += line;
    expect(asItIs.db.version).toBe(old.version);
    closeStore(asItIs);
    const other = await openForTest();
    worked(await restoreBackup(other, text));
    const now = await readDatabase(other.db);
    const unreadable = text.split('\n').filter((line) => line.startsWith('{"unreadable"'));
    for (const kept of ['jobs', 'readings', 'worksheets', 'cuts', 'sheets']) {
      const ids = now.stores[kept]?.records.map(({ id }) => id) ?? [];
      for (const { id } of old.stores[kept]?.records ?? [])
        expect(ids.includes(id) || unreadable.some((line) => line.includes(id))).toBe(true);
    }
    // The fixtures hold one reading and one cut that no Slipfit can read.
    expect(unreadable.length).toBeLessThanOrEqual(2);
  },
);

test('records of a newer Slipfit can be saved by an older one, which leaves them as they are', async () => {
  const name = freshName();
  const newer = await openForTest({ name, steps: [...allSteps, (db) => void db.createObjectStore('later')] });
  closeStore(newer);
  expect(refused(await openStore({ name }))).toEqual({ code: 'newer-database' });
  const asItIs = worked(await openStoreAsItIs({ name }));
  const lines: string[] = [];
  for await (const line of backupLines(asItIs)) lines.push(line);
  expect(lines.length).toBeGreaterThan(1);
  expect([...asItIs.db.objectStoreNames]).toContain('later');
  closeStore(asItIs);
});

test('where there are no records none are made up', async () => {
  const name = freshName();
  expect(refused(await openStoreAsItIs({ name })).code).toBe('opening-failed');
  expect((await indexedDB.databases()).map((one) => one.name)).not.toContain(name);
});
