import { demoJobIds } from '../../../src/store/demo/demo-job-ids.ts';
import { afterEach, expect, test } from 'vitest';
import { canMeasure, usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { worksheetKinds } from '../../../src/engine/worksheets/all-worksheets.ts';
import { threadNamed } from '../../../src/engine/thread/threads.ts';
import { isOlder } from '../../../src/store/kept/basis.ts';
import { createCuts, cutsOf, getCut, openCuts } from '../../../src/store/kept/cuts.ts';
import { addDemo } from '../add-demo.ts';
import { hasDemo, readDemo, removeDemo } from '../../../src/store/demo/demo.ts';
import { demoAt } from '../../../src/store/demo/demo-jobs.ts';
import { demoText } from '../../../src/store/demo/demo-lines.ts';
import { derivedFields } from '../../../src/store/base/kept.ts';
import { EARLIEST_MS } from '../../../src/store/base/clock.ts';
import { restoreBackup } from '../../../src/store/file/backup.ts';
import { checksOf } from '../../../src/store/kept/checks.ts';
import { rechecksOf } from '../../../src/store/kept/rechecks.ts';
import { createFeature, featuresOf } from '../../../src/store/kept/features.ts';
import { listJobs } from '../../../src/store/kept/job-list.ts';
import { createJob, getJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { readingsOf, readingsOfJob, strikeOut } from '../../../src/store/kept/readings.ts';
import { addSteps, stepsOf } from '../../../src/store/kept/steps.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { featuresIn, getWorksheet, worksheetsOf } from '../../../src/store/kept/worksheets.ts';
import { facing } from '../cut-for-test.ts';
import { closeAll, openForTest, worked } from '../open-for-test.ts';

afterEach(closeAll);

async function demoShop(): Promise<Store> {
  const store = await openForTest();
  worked(await addDemo(store));
  return store;
}

test('one press puts two marked jobs in, the outfit on top, and one press takes them out', async () => {
  const store = await openForTest();
  const own = worked(await createJob(store, { name: 'own', systems: [] }));
  expect(await hasDemo(store)).toBe(false);
  worked(await addDemo(store));
  expect(await hasDemo(store)).toBe(true);
  const { jobs } = await listJobs(store, { limit: 9 });
  expect(jobs.map(({ name, demo }) => [name, demo])).toEqual([
    ['Outfit 7', true],
    ['Boat-trailer hub', true],
    ['own', false],
  ]);
  worked(await removeDemo(store));
  expect(await hasDemo(store)).toBe(false);
  expect((await listJobs(store, { limit: 9 })).jobs.map(({ id }) => id)).toEqual([own.id]);
});

test('every demo feature has three readings that count and one struck out', async () => {
  const store = await demoShop();
  const { jobs } = await listJobs(store, { limit: 9 });
  const features = (await Promise.all(jobs.map((job) => featuresOf(store, job.id)))).flat();
  expect(features.length).toBeGreaterThan(5);
  for (const feature of features) {
    const readings = await readingsOf(store, feature.id);
    expect(readings.filter(({ struckOut }) => struckOut)).toHaveLength(1);
    expect(readings.filter(({ struckOut }) => !struckOut)).toHaveLength(3);
  }
});

test('every reading of the demo that counts was taken with a tool that can take it', async () => {
  const store = await demoShop();
  for (const jobId of ['demo-outfit-7', 'demo-trailer-hub']) {
    const kinds = new Map((await featuresOf(store, jobId)).map(({ id, kind }) => [id, kind]));
    for (const reading of (await readingsOfJob(store, jobId)).filter(({ struckOut }) => !struckOut)) {
      const tool = usualTools.find(({ id }) => id === reading.tool.id);
      const kind = kinds.get(reading.featureId);
      expect([reading.typed, tool && kind && canMeasure(tool, kind, reading.exact)]).toEqual([
        reading.typed,
        true,
      ]);
    }
  }
});

test('the demo has a worksheet of each kind, with sizes from features that are there', async () => {
  const store = await demoShop();
  const ofBoth = async <T>(read: (jobId: string) => Promise<readonly T[]>) =>
    (await Promise.all(demoJobIds.map(read))).flat();
  const worksheets = await ofBoth((jobId) => worksheetsOf(store, jobId));
  expect([...new Set(worksheets.map(({ kind }) => kind))].toSorted()).toEqual(worksheetKinds.toSorted());
  const features = new Set((await ofBoth((jobId) => featuresOf(store, jobId))).map(({ id }) => id));
  const inputs = worksheets.flatMap(({ sizes, parts }) => [
    ...Object.values(sizes),
    ...Object.values(parts).map(({ size }) => size),
  ]);
  const named = inputs.flatMap((input) => (input?.from === 'feature' ? [input.featureId] : []));
  expect(named.length).toBeGreaterThan(4);
  expect(named.filter((id) => !features.has(id))).toEqual([]);
  const threads = worksheets.flatMap(({ choices }) => (choices['thread'] ? [choices['thread']] : []));
  expect(threads.map((thread) => threadNamed(thread)?.designation)).toEqual(threads);
});

test('a cut of the demo is worked out from older readings once one behind it is struck out', async () => {
  const store = await demoShop();
  const cut = await getCut(store, 'demo-cut-spacer');
  const worksheet = await getWorksheet(store, 'demo-bracket-float');
  const features = worksheet ? [...featuresIn(worksheet)] : [];
  const older = async () => {
    const readings = (await Promise.all(features.map((id) => readingsOf(store, id)))).flat();
    return cut?.basis && isOlder(cut.basis, worksheet, readings);
  };
  expect(await older()).toBe(false);
  worked(await strikeOut(store, 'demo-sleeve-2', 'anvils not square'));
  expect(await older()).toBe(true);
});

test('the demo put in again after it was taken out is the demo as it was at first', async () => {
  const store = await demoShop();
  const idsOf = async () => [
    (await featuresOf(store, 'demo-outfit-7')).map(({ id }) => id),
    (await worksheetsOf(store, 'demo-outfit-7')).map(({ id }) => id),
  ];
  const atFirst = await idsOf();
  expect(atFirst.map(({ length }) => length > 5)).toEqual([true, true]);
  worked(await removeDemo(store));
  expect(await idsOf()).toEqual([[], []]);
  worked(await addDemo(store));
  expect(await idsOf()).toEqual(atFirst);
});

test('taking the demo out can be undone, with what was added to it', async () => {
  const store = await demoShop();
  worked(await createFeature(store, { jobId: 'demo-outfit-7', kind: 'gap', name: 'own gap' }));
  worked(await removeDemo(store));
  const newest = await latestUndo(store);
  expect(worked(await undoLast(store, newest?.id ?? ''))).toBe('Removed the demo');
  expect((await getJob(store, 'demo-outfit-7'))?.name).toBe('Outfit 7');
  expect((await featuresOf(store, 'demo-outfit-7')).map(({ name }) => name)).toContain('own gap');
});

test('what was made in the demo goes with it, and comes back with it', async () => {
  const store = await demoShop();
  const [jobId] = demoJobIds;
  const cutsOfDemo = (await cutsOf(store, jobId)).length;
  worked(await createCuts(store, [facing(jobId)]));
  worked(await addSteps(store, [{ jobId, text: 'axle in' }]));
  worked(await removeDemo(store));
  expect(await cutsOf(store, jobId)).toEqual([]);
  expect(await openCuts(store)).toEqual([]);
  expect(await stepsOf(store, jobId)).toEqual([]);
  const newest = await latestUndo(store);
  worked(await undoLast(store, newest?.id ?? ''));
  expect(await cutsOf(store, jobId)).toHaveLength(cutsOfDemo + 1);
  expect((await stepsOf(store, jobId)).map(({ text }) => text)).toContain('axle in');
});

test('the file of the demo is a backup like any other: it is put in by the door of every file', async () => {
  const store = await openForTest();
  const put = worked(await restoreBackup(store, await demoText(Date.UTC(2026, 0, 1))));
  expect(put.added).toBeGreaterThan(50);
  expect(await hasDemo(store)).toBe(true);
});

test('put in from its file, the demo is what its source says of this very moment, to the millisecond', async () => {
  const store = await demoShop();
  const job = await getJob(store, 'demo-outfit-7');
  const now = demoAt(job?.createdAt ?? Number.NaN);
  const [outfit, trailer] = demoJobIds;
  const ofBoth = async (read: (store: Store, jobId: string) => Promise<readonly unknown[]>) =>
    [...(await read(store, outfit)), ...(await read(store, trailer))].map((record) => ({
      ...Object(record),
      stamps: undefined,
      ...Object.fromEntries([...derivedFields].map((field) => [field, undefined])),
    }));
  const asKept = (records: readonly object[] = []) =>
    records.map((record) => ({ ...record, stamps: undefined }));
  expect(await ofBoth(worksheetsOf)).toEqual(expect.arrayContaining(asKept(now.worksheets)));
  expect(await ofBoth(cutsOf)).toEqual(expect.arrayContaining(asKept(now.cuts)));
  expect(await ofBoth(stepsOf)).toEqual(expect.arrayContaining(asKept(now.steps)));
  expect(await ofBoth(rechecksOf)).toEqual(expect.arrayContaining(asKept(now.rechecks)));
  expect(await ofBoth(checksOf)).toEqual(expect.arrayContaining(asKept(now.checks)));
  // Three readings and one struck out a feature, twenty seconds apart, the last one just before.
  const [last] = (await readingsOfJob(store, trailer)).toSorted((a, b) => b.at - a.at);
  expect((job?.createdAt ?? 0) - (last?.at ?? 0)).toBe(20_000);
});

test('no number of the demo but a time is as large as one, so that moving the times moves nothing else', async () => {
  const [then, later] = [Date.UTC(2026, 0, 1), Date.UTC(2026, 5, 1)];
  const numbersAt = async (at: number) =>
    [...(await demoText(at)).matchAll(/(?<=[:[,])\d+(?=[,}\]])/g)].map(([number]) => Number(number));
  const [before, after] = [await numbersAt(then), await numbersAt(later)];
  expect(before.length).toBe(after.length);
  const moved = before.map((number, index) => (after[index] ?? Number.NaN) - number);
  expect(before.filter((number, index) => number >= EARLIEST_MS !== (moved[index] === later - then))).toEqual(
    [],
  );
});

test('a file that was changed on its way, or is some page of the network’s, puts nothing in', async () => {
  const text = await demoText(Date.UTC(2026, 0, 1));
  for (const spoiled of [
    text.replace('"typed":".4487"', '"typed":".4478"'),
    text.slice(0, text.length / 2),
    '<!doctype html><title>pay first</title>',
  ])
    expect((await readDemo(spoiled)).ok).toBe(false);
});
