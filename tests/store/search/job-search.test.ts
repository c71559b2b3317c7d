import { afterEach, describe, expect, test, vi } from 'vitest';
import { readEntry, type Entry } from '../../../src/engine/length/entry.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { createFeature } from '../../../src/store/kept/features.ts';
import { changeJob, createJob, removeJob } from '../../../src/store/kept/jobs.ts';
import { logReading, strikeOut } from '../../../src/store/kept/readings.ts';
import { createWorksheet, renameWorksheet } from '../../../src/store/kept/worksheets.ts';
import { closeStore, type Store } from '../../../src/store/opening/open-store.ts';
import { readJobSearch, type JobSearch } from '../../../src/store/search/job-search.ts';
import type { Found } from '../../../src/store/search/word-index.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { fillDisk } from '../fill-disk.ts';
import { closeAll, freshName, openForTest, worked } from '../open-for-test.ts';
import { carry } from '../two-phones-for-test.ts';

afterEach(() => {
  vi.restoreAllMocks();
  closeAll();
});

const [tool] = usualTools;

function entry(typed: string, unit: 'in' | 'mm' = 'in'): Entry {
  return worked(readEntry(typed, { unit }));
}

async function searched(store: Store): Promise<JobSearch> {
  let last: JobSearch | undefined;
  for await (const step of readJobSearch(store, () => true)) last = step;
  if (!last) throw new Error('nothing came');
  return last;
}

async function find(store: Store, text: string): Promise<readonly Found[]> {
  return (await searched(store)).index.find(text, 20).found;
}

const names = (found: readonly Found[]) => found.map(({ job }) => job.name);

async function aJob(store: Store, name: string) {
  const job = worked(await createJob(store, { name, systems: [] }));
  const bore = worked(await createFeature(store, { jobId: job.id, kind: 'bore', name: 'Left bore' }));
  const read = async (typed: string, unit: 'in' | 'mm' = 'in') => {
    const reading = { jobId: job.id, featureId: bore.id, entry: entry(typed, unit), zeroChecked: true };
    if (!tool) throw new Error('no tools');
    return worked(await logReading(store, { ...reading, tool }));
  };
  return { job, bore, read };
}

describe('a job is found', () => {
  test('by a size as it was typed, whatever comes behind what is typed so far', async () => {
    const store = await openForTest();
    const outfit = await aJob(store, 'Outfit');
    const trailer = await aJob(store, 'Trailer');
    await outfit.read('1.1135');
    await trailer.read('.4487');
    expect(names(await find(store, '1.113'))).toEqual(['Outfit']);
    const [found] = await find(store, '.448');
    expect(found?.line).toEqual({
      at: ['readings', trailer.bore.id],
      text: 'Left bore',
      figures: [['.4487 in', '11.39698']], // .4487 × 25.4
    });
  });

  test('by the same size typed otherwise: 7/16 is .4375, and 11.1125 mm', async () => {
    const store = await openForTest();
    for (const [name, typed, unit] of [
      ['As a fraction', '7/16', 'in'],
      ['As a decimal', '.4375', 'in'],
      ['In millimetres', '11.1125', 'mm'],
      ['Another', '9/16', 'in'],
    ] as const)
      // oxlint-disable-next-line no-await-in-loop
      await (await aJob(store, name)).read(typed, unit);
    const all = ['In millimetres', 'As a decimal', 'As a fraction'];
    expect(names(await find(store, '7/16'))).toEqual(all);
    expect(names(await find(store, '11,1125'))).toEqual(all);
    expect(names(await find(store, '0.4375'))).toEqual(all);
  });

  test('by a thread, a customer, a machine, and by words of which each stands somewhere else in it', async () => {
    const store = await openForTest();
    const { job } = await aJob(store, 'Outfit');
    await aJob(store, 'Trailer');
    worked(await changeJob(store, job.id, { customer: 'Ilse Möhring', machine: 'grass-track outfit' }));
    const choices = { thread: '7/16-20 UNF' };
    worked(
      await createWorksheet(store, { jobId: job.id, kind: 'thread-insert', title: 'Link bolt', choices }),
    );
    for (const words of ['mohr', 'Möhring', 'grass', '7/16-20', '7/16', 'outf ilse link'])
      // oxlint-disable-next-line no-await-in-loop
      expect([words, names(await find(store, words))]).toEqual([words, ['Outfit']]);
    expect(await find(store, 'outfit trailer')).toEqual([]);
    expect(await find(store, '   ')).toEqual([]);
  });

  test('the one last worked on first', async () => {
    const store = await openForTest();
    const first = await aJob(store, 'Hub one');
    await aJob(store, 'Hub two');
    expect(names(await find(store, 'hub'))).toEqual(['Hub two', 'Hub one']);
    await first.read('1');
    expect(names(await find(store, 'hub'))).toEqual(['Hub one', 'Hub two']);
  });

  test('by a reading that was struck out too, and the line says so', async () => {
    const store = await openForTest();
    const { read } = await aJob(store, 'Outfit');
    const wrong = await read('.9999');
    worked(await strikeOut(store, wrong.id, 'chip'));
    const [found] = await find(store, '.9999');
    expect(found?.line?.text).toBe('Left bore · struck out');
  });
});

describe('what was changed since the last search', () => {
  test('is found, and what it was before is not', async () => {
    const store = await openForTest();
    const { job } = await aJob(store, 'Outfit');
    const sheet = worked(await createWorksheet(store, { jobId: job.id, kind: 'ring', title: 'Shield ring' }));
    expect(names(await find(store, 'shield'))).toEqual(['Outfit']);
    worked(await renameWorksheet(store, sheet.id, 'Dust cap'));
    expect(await find(store, 'shield')).toEqual([]);
    expect(names(await find(store, 'dust'))).toEqual(['Outfit']);
    const undo = await latestUndo(store);
    worked(await undoLast(store, undo?.id ?? ''));
    expect(await find(store, 'dust')).toEqual([]);
    expect(names(await find(store, 'shield'))).toEqual(['Outfit']);
  });

  test('a removed job is not found, and is again after the undo', async () => {
    const store = await openForTest();
    const { job } = await aJob(store, 'Outfit');
    expect(names(await find(store, 'outfit'))).toEqual(['Outfit']);
    worked(await removeJob(store, job.id));
    expect(await find(store, 'outfit')).toEqual([]);
    const undo = await latestUndo(store);
    worked(await undoLast(store, undo?.id ?? ''));
    expect(names(await find(store, 'outfit'))).toEqual(['Outfit']);
  });

  test('what a file brought is found, and not any more once it was taken out again', async () => {
    const helper = await openForTest();
    const store = await openForTest();
    const { job, read } = await aJob(helper, 'Outfit');
    await carry(helper, store);
    expect(await find(store, '.3131')).toEqual([]);
    expect(names(await find(store, 'outfit'))).toEqual(['Outfit']);
    await read('.3131');
    await carry(helper, store);
    expect(names(await find(store, '.3131'))).toEqual([job.name]);
    const undo = await latestUndo(store);
    expect(worked(await undoLast(store, undo?.id ?? ''))).toBe('What the file brought');
    expect(await find(store, '.3131')).toEqual([]);
    expect(names(await find(store, 'outfit'))).toEqual(['Outfit']);
  });

  test('is read again alone: the words of every other job were kept', async () => {
    const name = freshName();
    const store = await openForTest({ name });
    const outfit = await aJob(store, 'Outfit');
    await aJob(store, 'Trailer');
    await searched(store);
    closeStore(store);
    const again = await openForTest({ name });
    expect(await again.db.count('words')).toBe(2);
    worked(await changeJob(again, outfit.job.id, { customer: 'Ilse' }));
    expect((await again.db.getAllKeys('words')).includes(outfit.job.id)).toBe(false);
    const steps: number[] = [];
    for await (const { left } of readJobSearch(again, () => true)) steps.push(left);
    expect(steps).toEqual([1, 0]);
  });
});

test('on a full disk jobs are found all the same; their words are kept once there is room', async () => {
  const store = await openForTest();
  await aJob(store, 'Outfit');
  fillDisk('words');
  expect(names(await find(store, 'outfit'))).toEqual(['Outfit']);
  vi.restoreAllMocks();
  expect(await store.db.count('words')).toBe(0);
  await searched(store);
  expect(await store.db.count('words')).toBe(1);
});

test('a record that can’t be read is found by what can be read of it', async () => {
  const store = await openForTest();
  const { job } = await aJob(store, 'Outfit');
  await store.db.put('features', { id: 'odd', jobId: job.id, name: 'Brake drum', kind: 7, stamps: 'none' });
  await store.db.put('parts', { id: 'odder', jobId: job.id, name: { text: 'x' } });
  await store.db.delete('words', job.id);
  expect(names(await find(store, 'drum'))).toEqual(['Outfit']);
});
