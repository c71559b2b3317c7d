import { afterEach, expect, test, vi } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { backupLines, backupPieces, restoreBackup } from '../../../src/store/file/backup.ts';
import { getDraft, putDraft } from '../../../src/store/kept/drafts.ts';
import { createFeature } from '../../../src/store/kept/features.ts';
import { listJobs } from '../../../src/store/kept/job-list.ts';
import { createJob, getJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { logReading, readingsOf } from '../../../src/store/kept/readings.ts';
import { sayStore } from '../../../src/store/base/say-store.ts';
import { changeTool, removeTool } from '../../../src/store/kept/tools.ts';
import { latestUndo } from '../../../src/store/undo/undo.ts';
import { fillDisk } from '../fill-disk.ts';
import { fixture, writeFixture } from '../open-fixture.ts';
import { closeAll, freshName, openForTest, refused, worked } from '../open-for-test.ts';

afterEach(() => {
  vi.restoreAllMocks();
  closeAll();
});

async function boreIn(store: Store) {
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const bore = worked(await createFeature(store, { jobId: job.id, kind: 'bore', name: 'bore' }));
  return { job, bore };
}

function aReading({ job, bore }: Awaited<ReturnType<typeof boreIn>>) {
  const [tool] = usualTools;
  if (!tool) throw new Error('no tools');
  const entry = worked(readEntry('.4487', { unit: 'in' }));
  return { featureId: bore.id, jobId: job.id, entry, tool, zeroChecked: true, draftKey: '#/bore' };
}

test('a reading that meets a full disk is refused, its draft stays, and nothing of it is half-kept', async () => {
  const store = await openForTest();
  const made = await boreIn(store);
  worked(await putDraft(store, '#/bore', { typed: '.4487', unit: 'in' }));
  const before = await getJob(store, made.job.id);
  fillDisk('readings');
  const result = await logReading(store, aReading(made));
  vi.restoreAllMocks();
  expect(refused(result)).toEqual({ code: 'full-disk' });
  expect(await readingsOf(store, made.bore.id)).toEqual([]);
  expect(await getDraft(store, '#/bore')).toEqual({ typed: '.4487', unit: 'in' });
  expect(await getJob(store, made.job.id)).toEqual(before);
  expect((await latestUndo(store, made.job.id))?.label).toBe('Made bore');
});

test('after room was made the same press logs the reading', async () => {
  const store = await openForTest();
  const made = await boreIn(store);
  fillDisk('readings');
  refused(await logReading(store, aReading(made)));
  vi.restoreAllMocks();
  worked(await logReading(store, aReading(made)));
  expect(await readingsOf(store, made.bore.id)).toHaveLength(1);
});

test('a usual tool that a full phone never took in can’t be changed for want of room, not because it was removed', async () => {
  const store = await openForTest();
  const id = usualTools[0]?.id ?? '';
  fillDisk('tools');
  expect(refused(await changeTool(store, id, { lastChecked: 1 }))).toEqual({ code: 'full-disk' });
  expect(refused(await removeTool(store, id))).toEqual({ code: 'full-disk' });
  vi.restoreAllMocks();
  expect(worked(await changeTool(store, id, { lastChecked: 1 }))).toMatchObject({ id, lastChecked: 1 });
});

test('on a full disk a backup can still be written', async () => {
  const store = await openForTest();
  await boreIn(store);
  fillDisk('jobs');
  expect(refused(await createJob(store, { name: 'more', systems: [] }))).toEqual({ code: 'full-disk' });
  const lines: string[] = [];
  for await (const line of backupLines(store)) lines.push(line);
  expect(lines.length).toBeGreaterThan(2);
});

test.each(['staging', 'photoBytes', 'readings', 'brought'])(
  'a file that meets a full disk at its %s is refused, and nothing of it is half put in',
  async (where) => {
    const name = freshName();
    await writeFixture(name, fixture(2));
    const pieces: Blob[] = [];
    for await (const piece of backupPieces(await openForTest({ name }))) pieces.push(piece);
    const phone = await openForTest();
    fillDisk(where);
    const result = await restoreBackup(phone, new Blob(pieces));
    vi.restoreAllMocks();
    expect(refused(result).code).toBe('full-disk');
    for (const store of ['jobs', 'readings', 'photos', 'sheets', 'undo', 'brought'])
      expect(await phone.db.count(store)).toBe(0);
    worked(await restoreBackup(phone, new Blob(pieces))); // after room was made
    expect(await phone.db.count('readings')).toBeGreaterThan(0);
  },
);

test('a failing disk is no full disk: it is refused with words of its own', async () => {
  const store = await openForTest();
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
    throw new DOMException('Internal error', 'DataError');
  });
  const result = await createJob(store, { name: 'Outfit', systems: [] });
  vi.restoreAllMocks();
  expect(refused(result)).toEqual({ code: 'write-failed' });
  expect((await listJobs(store, { limit: 5 })).jobs).toEqual([]);
});

test('what the screen reports as done is written the strict way, a draft the light way', async () => {
  const store = await openForTest();
  const asked: unknown[] = [];
  // Called with its own `this` below.
  // oxlint-disable-next-line typescript/unbound-method
  const transaction = IDBDatabase.prototype.transaction;
  vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (
    this: IDBDatabase,
    names: string | Iterable<string>,
    mode?: IDBTransactionMode,
    options?: IDBTransactionOptions,
  ) {
    if (mode === 'readwrite') asked.push(options?.durability);
    return transaction.call(this, names, mode, options);
  });
  const made = await boreIn(store);
  worked(await logReading(store, aReading(made)));
  worked(await putDraft(store, '#/bore', { typed: '.4', unit: 'in' }));
  vi.restoreAllMocks();
  expect(asked).toEqual(['strict', 'strict', 'strict', 'relaxed']);
});

test.each(['full-disk', 'write-failed', 'connection-lost', 'held-by-another-tab', 'opening-hung'] as const)(
  'the sentence for %s says what became of what was kept before',
  (code) => {
    expect(sayStore({ code })).toMatch(/Nothing was lost|still there/);
  },
);
