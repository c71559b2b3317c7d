import { createHash } from 'node:crypto';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { startChecksum } from '../../../src/store/file/backup-format.ts';
import { backupLines, restoreBackup } from '../../../src/store/file/backup.ts';
import { demoJobIds } from '../../../src/store/demo/demo-job-ids.ts';
import { demoWorksheets } from '../../../src/store/demo/demo-worksheets.ts';
import { addDemo } from '../add-demo.ts';
import { putDraft } from '../../../src/store/kept/drafts.ts';
import { createFeature } from '../../../src/store/kept/features.ts';
import { listJobs } from '../../../src/store/kept/job-list.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { logReading, readingsOf } from '../../../src/store/kept/readings.ts';
import { measuringTools } from '../../../src/store/kept/tools.ts';
import { worksheetsOf } from '../../../src/store/kept/worksheets.ts';
import { fillDisk } from '../fill-disk.ts';
import { fixture, writeFixture } from '../open-fixture.ts';
import { closeAll, freshName, openForTest, refused, worked } from '../open-for-test.ts';

afterEach(closeAll);

async function linesOf(store: Store): Promise<string[]> {
  const lines: string[] = [];
  for await (const line of backupLines(store)) lines.push(line);
  return lines;
}

async function withDemo(): Promise<Store> {
  const store = await openForTest();
  worked(await addDemo(store));
  return store;
}

test('a backup brings everything onto an empty phone', async () => {
  const old = await withDemo();
  await measuringTools(old);
  const fresh = await openForTest();
  const restored = worked(await restoreBackup(fresh, (await linesOf(old)).join('')));
  expect(restored).toMatchObject({ changed: 0, same: 0 });
  for (const name of ['jobs', 'parts', 'features', 'readings', 'worksheets', 'tools'] as const) {
    expect(await fresh.db.getAll(name)).toEqual(await old.db.getAll(name));
  }
  expect((await listJobs(fresh, { limit: 5 })).jobs.map(({ name }) => name)).toContain('Outfit 7');
  const ofOutfit = demoWorksheets(...demoJobIds, 0).filter(({ jobId }) => jobId === 'demo-outfit-7');
  expect(await worksheetsOf(fresh, 'demo-outfit-7')).toHaveLength(ofOutfit.length);
});

test('a backup can be read as one text, as a file, and in pieces cut anywhere', async () => {
  const text = (await linesOf(await withDemo())).join('');
  async function* pieces() {
    for (let at = 0; at < text.length; at += 37) yield text.slice(at, at + 37);
  }
  for (const form of [text, new Blob([text]), pieces()]) {
    const restored = worked(await restoreBackup(await openForTest(), form));
    expect(restored.added).toBeGreaterThan(40);
  }
});

test('line ends that a mail program changed do no harm', async () => {
  const text = (await linesOf(await withDemo())).join('').replaceAll('\n', '\r\n');
  const fresh = await openForTest();
  worked(await restoreBackup(fresh, text));
  expect((await listJobs(fresh, { limit: 5 })).jobs).toHaveLength(2);
});

test('the first line names the form, its version and how many of each there are', async () => {
  const [first] = await linesOf(await withDemo());
  expect(JSON.parse(first ?? '')).toMatchObject({
    format: 'slipfit backup',
    version: 3,
    // 8 features, three readings and a struck-out one each
    counts: { jobs: 2, worksheets: demoWorksheets(...demoJobIds, 0).length, readings: 8 * 4 },
  });
});

test('half-typed numbers, undo and the phone’s own notes stay on the phone', async () => {
  const store = await withDemo();
  worked(await putDraft(store, '#/secret', { typed: '.44', unit: 'in' }));
  const text = (await linesOf(store)).join('');
  for (const word of ['#/secret', '"undo"', '"device"', '"drafts"', 'listedAt']) {
    expect(text).not.toContain(word);
  }
});

describe('the checksum is the chain of SHA-256 that the form describes', () => {
  const sumOf = async (lines: readonly string[], version: number) => {
    const checksum = startChecksum({ version });
    for (const line of lines) await checksum.add(line);
    return checksum.end();
  };
  // The same chain by Node's own SHA-256.
  const chain = (blocks: readonly (readonly string[])[]) =>
    blocks.reduce(
      (sum, block) =>
        createHash('sha256')
          .update(`${sum}\n${block.map((line) => `${line}\n`).join('')}`)
          .digest('hex'),
      '',
    );
  const short = Array.from({ length: 600 }, (_one, index) => `line ${index}`);
  const byLines = [short.slice(0, 256), short.slice(256, 512), short.slice(512)];
  // 999,999 bytes with its line feed; 1,000,000; in UTF-8 two bytes a letter.
  const [under, just, letters] = ['x'.repeat(999_998), 'x'.repeat(999_999), 'é'.repeat(499_999)];

  test.each([1, 2, 3])('over blocks of 256 lines, in version %i', async (version) => {
    expect(await sumOf(short, version)).toBe(chain(byLines));
  });

  test('a block ends with the line by which it has a million bytes, from version 3 on', async () => {
    const long = [under, 'a', just, 'b', letters, letters, 'c', 'd'];
    const byBytes = [[under, 'a'], [just], ['b', letters], [letters, 'c'], ['d']];
    expect(await sumOf(long, 3)).toBe(chain(byBytes));
    expect(await sumOf(long, 2)).toBe(chain([long]));
  });
});

test('more readings than fit on a page all come into the backup, once', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const bore = worked(await createFeature(store, { jobId: job.id, kind: 'bore', name: 'bore' }));
  const [tool] = usualTools;
  if (!tool) throw new Error('no tools');
  const entry = worked(readEntry('.4487', { unit: 'in' }));
  const reading = { featureId: bore.id, jobId: job.id, entry, tool, zeroChecked: true };
  const first = worked(await logReading(store, reading));
  const kept = await store.db.get('readings', first.id);
  const tx = store.db.transaction('readings', 'readwrite');
  const puts = Array.from({ length: 1100 }, (_one, index) => tx.store.put({ ...kept, id: `r${index}` }));
  await Promise.all([...puts, tx.done]);
  const fresh = await openForTest();
  worked(await restoreBackup(fresh, (await linesOf(store)).join('')));
  expect(await readingsOf(fresh, bore.id)).toHaveLength(1101);
});

test('a reading logged while the backup is being written is not in it, and does it no harm', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const bore = worked(await createFeature(store, { jobId: job.id, kind: 'bore', name: 'bore' }));
  const [tool] = usualTools;
  if (!tool) throw new Error('no tools');
  const entry = worked(readEntry('.4487', { unit: 'in' }));
  const reading = { featureId: bore.id, jobId: job.id, entry, tool, zeroChecked: true };
  worked(await logReading(store, reading));
  const lines: string[] = [];
  for await (const line of backupLines(store)) {
    if (lines.length === 1) worked(await logReading(store, reading));
    lines.push(line);
  }
  const fresh = await openForTest();
  worked(await restoreBackup(fresh, lines.join('')));
  expect(await readingsOf(fresh, bore.id)).toHaveLength(1);
});

test('a record that can’t be read goes into the backup, and doesn’t stop it from being restored', async () => {
  const name = freshName();
  await writeFixture(name, fixture(1));
  const store = await openForTest({ name });
  await store.db.put('features', { id: 'odd', jobId: 'nowhere', name: 7 });
  const ring: Record<string, unknown> = { id: 'ring', stamps: {} };
  ring['self'] = ring;
  await store.db.put('worksheets', ring);
  const text = (await linesOf(store)).join('');
  expect(text).toContain('"unreadable":"readings"');
  expect(text).toContain('a length as a number, and no tool');
  const fresh = await openForTest();
  worked(await restoreBackup(fresh, text));
  expect((await listJobs(fresh, { limit: 5 })).jobs.map((job) => job.name)).toEqual(['Outfit 3']);
  expect(await fresh.db.count('readings')).toBe(6); // one of them unreadable, as in the stored database
});

test('a record that went bad here is mended from the backup', async () => {
  const store = await withDemo();
  const text = (await linesOf(store)).join('');
  await store.db.put('jobs', { id: 'demo-outfit-7', name: 7 });
  expect(worked(await restoreBackup(store, text))).toMatchObject({ added: 0, changed: 1 });
  expect((await listJobs(store, { limit: 5 })).jobs.map((job) => job.name)).toContain('Outfit 7');
});

test('fields of a newer Slipfit pass through a restore and another backup', async () => {
  const store = await withDemo();
  const kept = await store.db.get('jobs', 'demo-outfit-7');
  await store.db.put('jobs', { ...kept, colourOfTheTank: { hue: 'green' } });
  const fresh = await openForTest();
  worked(await restoreBackup(fresh, (await linesOf(store)).join('')));
  expect((await linesOf(fresh)).join('')).toContain('"colourOfTheTank":{"hue":"green"}');
});

test('a restore that meets a full disk changes nothing', async () => {
  const text = (await linesOf(await withDemo())).join('');
  const fresh = await openForTest();
  fillDisk('worksheets');
  const result = await restoreBackup(fresh, text);
  vi.restoreAllMocks();
  expect(refused(result)).toEqual({ code: 'full-disk' });
  expect(await fresh.db.count('jobs')).toBe(0);
  expect(await fresh.db.count('readings')).toBe(0);
});
