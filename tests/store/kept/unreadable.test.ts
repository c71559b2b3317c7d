import { backupStores } from '../../../src/store/base/stores.ts';
import { afterEach, expect, test } from 'vitest';
import { addDemo } from '../add-demo.ts';
import { addPiece } from '../../../src/store/kept/drawer.ts';
import type { Kept } from '../../../src/store/base/kept.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { sayUnreadable } from '../../../src/store/base/say-store.ts';
import { measuringTools } from '../../../src/store/kept/tools.ts';
import { unlistedReadings, unreadableOfJob, unreadableOfShop } from '../../../src/store/kept/unreadable.ts';
import { closeAll, openForTest, worked } from '../open-for-test.ts';

afterEach(closeAll);

const JOB = 'demo-outfit-7';

async function spoilFirst(
  store: Store,
  name: (typeof backupStores)[number],
  wanted: object,
): Promise<boolean> {
  const kept: Kept[] = await store.db.getAll(name);
  const one = kept.find((record) =>
    Object.entries(wanted).every(([field, value]) => record[field] === value),
  );
  if (one) await store.db.put(name, { ...one, stamps: 'none' });
  return one !== undefined;
}

test('every kind of record that can’t be read is counted in its own job, and in no other', async () => {
  const store = await openForTest();
  worked(await addDemo(store));
  expect(await unreadableOfJob(store, JOB)).toBe(0);
  let spoilt = 0;
  for (const name of backupStores) if (await spoilFirst(store, name, { jobId: JOB })) spoilt += 1;
  expect(spoilt).toBeGreaterThan(6);
  expect(await unreadableOfJob(store, JOB)).toBe(spoilt);
  const jobs: Kept[] = await store.db.getAll('jobs');
  for (const { id } of jobs.filter((job) => job.id !== JOB)) expect(await unreadableOfJob(store, id)).toBe(0);
  await spoilFirst(store, 'jobs', { id: JOB });
  expect(await unreadableOfJob(store, JOB)).toBe(spoilt + 1);
});

test.each([null, undefined, { hour: 9 }])(
  'a reading whose time is %o is counted in its job, and in no other',
  async (at) => {
    const store = await openForTest();
    worked(await addDemo(store));
    const readings: Kept[] = await store.db.getAll('readings');
    const one = readings.find(({ jobId }) => jobId === JOB);
    const { at: _at, ...rest }: Kept = one ?? { id: 'none' };
    await store.db.put('readings', at === undefined ? rest : { ...rest, at });
    expect(await unlistedReadings(store, JOB)).toBe(1);
    const jobs: Kept[] = await store.db.getAll('jobs');
    for (const { id } of jobs.filter((job) => job.id !== JOB))
      expect(await unlistedReadings(store, id)).toBe(0);
  },
);

test('one that was removed is nothing that anybody misses', async () => {
  const store = await openForTest();
  worked(await addDemo(store));
  await spoilFirst(store, 'features', { jobId: JOB });
  const spoilt: Kept[] = (await store.db.getAll('features')).filter(({ stamps }: Kept) => stamps === 'none');
  for (const one of spoilt) await store.db.put('features', { ...one, deleted: 'yes' });
  expect(await unreadableOfJob(store, JOB)).toBe(0);
});

test('a piece, a count or a tool that can’t be read belongs to the shop', async () => {
  const store = await openForTest();
  worked(await addPiece(store, { kind: 'shim', name: 'shim', material: 'brass' }, 3));
  await measuringTools(store);
  expect(await unreadableOfShop(store)).toBe(0);
  for (const name of ['drawer', 'drawerCounts', 'tools'] as const) await spoilFirst(store, name, {});
  expect(await unreadableOfShop(store)).toBe(3);
});

test('it is said that nothing of them is lost', () => {
  expect(sayUnreadable(1, 'this job')).toBe(
    'One record of this job can’t be read by this version. It is kept as it is and goes into every backup.',
  );
  expect(sayUnreadable(3, 'this job')).toMatch(/^3 records of this job .* They are kept/);
});
