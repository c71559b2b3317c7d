import { demoJobIds } from '../../src/store/demo-jobs.ts';
import { afterEach, expect, test } from 'vitest';
import { canMeasure, usualTools } from '../../src/engine/reading/measuring-tool.ts';
import { threadNamed } from '../../src/engine/thread/threads.ts';
import { isOlder } from '../../src/store/basis.ts';
import { createCuts, cutsOf, getCut, openCuts } from '../../src/store/cuts.ts';
import { addDemo, hasDemo, removeDemo } from '../../src/store/demo.ts';
import { createFeature, featuresOf } from '../../src/store/features.ts';
import { listJobs } from '../../src/store/job-list.ts';
import { createJob, getJob } from '../../src/store/jobs.ts';
import type { Store } from '../../src/store/open-store.ts';
import { readingsOf, readingsOfJob, strikeOut } from '../../src/store/readings.ts';
import { addSteps, stepsOf } from '../../src/store/steps.ts';
import { latestUndo, undoLast } from '../../src/store/undo.ts';
import { featuresIn, getWorksheet, worksheetsOf } from '../../src/store/worksheets.ts';
import { facing } from './cut-for-test.ts';
import { closeAll, openForTest, worked } from './open-for-test.ts';

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
  expect([...new Set(worksheets.map(({ kind }) => kind))].toSorted()).toEqual([
    'axle-line-up',
    'bearing-seat',
    'bushing',
    'fit',
    'hole-and-pin',
    'ring',
    'spacer-stack',
    'steering-geometry',
    'thread-engagement',
    'thread-insert',
  ]);
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
  worked(await removeDemo(store));
  worked(await addDemo(store));
  expect(await featuresOf(store, 'demo-outfit-7')).toHaveLength(6);
  expect(await worksheetsOf(store, 'demo-outfit-7')).toHaveLength(8);
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
