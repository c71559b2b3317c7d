import { afterEach, expect, test } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { addPiece, countPiece, drawerPieces } from '../../../src/store/kept/drawer.ts';
import { createFeature, featuresOf, removeFeature } from '../../../src/store/kept/features.ts';
import { listJobs } from '../../../src/store/kept/job-list.ts';
import { changeJob, createJob, getJob, removeJob } from '../../../src/store/kept/jobs.ts';
import { closeStore, type Store } from '../../../src/store/opening/open-store.ts';
import { logReading, readingsOf, strikeOut } from '../../../src/store/kept/readings.ts';
import { changeTool, measuringTools } from '../../../src/store/kept/tools.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { createWorksheet, getWorksheet, setSize } from '../../../src/store/kept/worksheets.ts';
import { closeAll, freshName, openForTest, refused, worked } from '../open-for-test.ts';

afterEach(closeAll);

async function boreWithReading(store: Store, typed = '.4950') {
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const bore = worked(await createFeature(store, { jobId: job.id, kind: 'bore', name: 'left bore' }));
  const [tool] = usualTools;
  if (!tool) throw new Error('no tools');
  const entry = worked(readEntry(typed, { unit: 'in' }));
  const reading = worked(
    await logReading(store, { featureId: bore.id, jobId: job.id, entry, tool, zeroChecked: false }),
  );
  return { job, bore, reading };
}

async function undoNewest(store: Store, jobId?: string) {
  const newest = await latestUndo(store, jobId);
  if (!newest) throw new Error('nothing to undo');
  return undoLast(store, newest.id);
}

test('a strike-out can be undone after the app was closed and opened again', async () => {
  const name = freshName();
  const store = await openForTest({ name });
  const { reading, job } = await boreWithReading(store);
  worked(await strikeOut(store, reading.id, 'wrong tool'));
  closeStore(store);
  const again = await openForTest({ name });
  expect((await latestUndo(again, job.id))?.label).toBe('Struck out .4950 in');
  expect(worked(await undoNewest(again, job.id))).toBe('Struck out .4950 in');
  expect((await readingsOf(again, reading.featureId))[0]?.struckOut).toBeUndefined();
});

test('a logged reading can’t be undone, and neither can the feature it was logged in', async () => {
  const store = await openForTest();
  const { job, bore } = await boreWithReading(store);
  expect(await latestUndo(store, job.id)).toBeUndefined();
  expect(await featuresOf(store, job.id)).toHaveLength(1);
  expect(await readingsOf(store, bore.id)).toHaveLength(1);
});

test('an act from before a reading was logged can still be undone', async () => {
  const store = await openForTest();
  const { job, bore } = await boreWithReading(store);
  worked(await changeJob(store, job.id, { name: 'Outfit 9' }));
  const second = worked(await createFeature(store, { jobId: job.id, kind: 'pin', name: 'bolt' }));
  const [tool] = usualTools;
  if (!tool) throw new Error('no tools');
  const entry = worked(readEntry('.4370', { unit: 'in' }));
  worked(await logReading(store, { featureId: second.id, jobId: job.id, entry, tool, zeroChecked: true }));
  expect(worked(await undoNewest(store, job.id))).toBe('Changed Outfit');
  expect((await getJob(store, job.id))?.name).toBe('Outfit');
  expect(await readingsOf(store, bore.id)).toHaveLength(1);
});

test('what was taken away says that its job was worked in since, once something is logged there', async () => {
  let now = Date.parse('2026-03-02T08:00:00Z');
  const store = await openForTest({ now: () => (now += 1000) });
  const { job, bore } = await boreWithReading(store);
  const spare = worked(await createFeature(store, { jobId: job.id, kind: 'pin', name: 'bolt' }));
  worked(await removeFeature(store, spare.id));
  const taken = await latestUndo(store, job.id);
  expect(taken?.label).toBe('Removed bolt');
  expect(taken?.workedSince).toBeUndefined();
  const [tool] = usualTools;
  if (!tool) throw new Error('no tools');
  const entry = worked(readEntry('.4951', { unit: 'in' }));
  worked(await logReading(store, { featureId: bore.id, jobId: job.id, entry, tool, zeroChecked: false }));
  expect(await latestUndo(store, job.id)).toMatchObject({ label: 'Removed bolt', workedSince: true });
});

test('a removed feature comes back with its readings', async () => {
  const store = await openForTest();
  const { job, bore } = await boreWithReading(store);
  worked(await removeFeature(store, bore.id));
  expect(await readingsOf(store, bore.id)).toEqual([]);
  worked(await undoNewest(store, job.id));
  expect(await featuresOf(store, job.id)).toHaveLength(1);
  expect(await readingsOf(store, bore.id)).toHaveLength(1);
});

test('a removed job comes back to its place in the list', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  worked(await createJob(store, { name: 'newer', systems: [] }));
  worked(await removeJob(store, job.id));
  worked(await undoNewest(store, job.id));
  const { jobs } = await listJobs(store, { limit: 5 });
  expect(jobs.map(({ name }) => name)).toEqual(['newer', 'Outfit']);
});

test('two changes of one field are undone one after the other', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'one', systems: [] }));
  worked(await changeJob(store, job.id, { name: 'two' }));
  worked(await changeJob(store, job.id, { name: 'three' }));
  worked(await undoNewest(store, job.id));
  expect((await getJob(store, job.id))?.name).toBe('two');
  worked(await undoNewest(store, job.id));
  expect((await getJob(store, job.id))?.name).toBe('one');
});

test('what has been changed again since is not undone', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'one', systems: [] }));
  worked(await changeJob(store, job.id, { name: 'two' }));
  const early = await latestUndo(store, job.id);
  worked(await changeJob(store, job.id, { name: 'three' }));
  expect(refused(await undoLast(store, early?.id ?? ''))).toEqual({
    code: 'changed-since',
    label: 'Changed one',
  });
  expect((await getJob(store, job.id))?.name).toBe('three');
});

test('undoing one size of a worksheet leaves the other sizes as they are', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const sheet = worked(await createWorksheet(store, { jobId: job.id, kind: 'spacer-stack', title: 'Left' }));
  const size = (typed: string) => ({ from: 'typed', ...worked(readEntry(typed, { unit: 'in' })) }) as const;
  worked(await setSize(store, sheet.id, 'lower', size('.008')));
  worked(await setSize(store, sheet.id, 'upper', size('.012')));
  worked(await undoNewest(store, job.id));
  expect(Object.keys((await getWorksheet(store, sheet.id))?.sizes ?? {})).toEqual(['lower']);
});

test('an undo is used up: pressing it twice refuses the second time', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'one', systems: [] }));
  worked(await changeJob(store, job.id, { name: 'two' }));
  const newest = await latestUndo(store, job.id);
  worked(await undoLast(store, newest?.id ?? ''));
  expect(refused(await undoLast(store, newest?.id ?? ''))).toEqual({ code: 'nothing-to-undo' });
});

test('closing a job forgets what came before, and can itself be undone', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'one', systems: [] }));
  worked(await changeJob(store, job.id, { name: 'two' }));
  worked(await changeJob(store, job.id, { state: 'closed' }));
  worked(await undoNewest(store, job.id));
  expect((await getJob(store, job.id))?.state).toBe('open');
  expect(await latestUndo(store, job.id)).toBeUndefined();
});

test('a count in the drawer and a change of a tool can be undone without a job', async () => {
  const store = await openForTest();
  const piece = worked(await addPiece(store, { kind: 'shim', name: 'shim', material: 'brass' }, 5));
  worked(await countPiece(store, piece.id, -2, 'used'));
  worked(await undoNewest(store));
  expect((await drawerPieces(store)).map(({ count }) => count)).toEqual([5]);
  const [tool] = await measuringTools(store);
  worked(await changeTool(store, tool?.id ?? '', { tool: { name: 'other' } }));
  worked(await undoNewest(store));
  expect((await measuringTools(store))[0]?.name).toBe(tool?.name);
});

test('acts in the same millisecond are undone in the order in which they were done', async () => {
  const store = await openForTest({ now: () => 1_700_000_000_000 });
  const job = worked(await createJob(store, { name: '0', systems: [] }));
  for (const name of ['1', '2', '3']) worked(await changeJob(store, job.id, { name }));
  for (const name of ['2', '1', '0']) {
    worked(await undoNewest(store, job.id));
    expect((await getJob(store, job.id))?.name).toBe(name);
  }
});
