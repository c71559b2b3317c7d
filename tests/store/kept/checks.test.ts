import { afterEach, expect, test } from 'vitest';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import {
  changeCheck,
  checksOf,
  createCheck,
  createChecks,
  getCheck,
  lastTake,
  removeCheck,
  retake,
  sayCheckSeen,
  takesOf,
  type NewCheck,
} from '../../../src/store/kept/checks.ts';
import { featuresOf, getFeature } from '../../../src/store/kept/features.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { logReading, readingsOf } from '../../../src/store/kept/readings.ts';
import type { Check } from '../../../src/store/base/records.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { inches } from '../cut-for-test.ts';
import { closeAll, openForTest, refused, worked } from '../open-for-test.ts';

afterEach(closeAll);

function floatCheck(jobId: string, more: Partial<NewCheck> = {}): NewCheck {
  return {
    jobId,
    name: 'Float of the axle',
    by: 'gap',
    lower: inches('.001'),
    upper: inches('.006'),
    limitsFrom: 'the worksheet',
    how: 'Indicator on the end, push both ways',
    ...more,
  };
}

async function withCheck(store: Store, more: Partial<NewCheck> = {}) {
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  return { job, check: worked(await createCheck(store, floatCheck(job.id, more))) };
}

async function logInLast(store: Store, check: Check, typed: string): Promise<string> {
  const featureId = lastTake(check)?.featureId ?? '';
  const [tool] = usualTools;
  if (!tool) throw new Error('no tools');
  const reading = { featureId, jobId: check.jobId, entry: inches(typed), tool, zeroChecked: true };
  worked(await logReading(store, reading));
  return featureId;
}

async function undoNewest(store: Store) {
  const newest = await latestUndo(store);
  return newest && worked(await undoLast(store, newest.id));
}

test('a measured check comes with its first go and a feature of its kind that knows its check', async () => {
  const store = await openForTest();
  const { job, check } = await withCheck(store);
  const take = lastTake(check);
  expect(await getFeature(store, take?.featureId ?? '')).toMatchObject({
    kind: 'gap',
    name: 'Float of the axle',
    checkId: check.id,
  });
  expect(await undoNewest(store)).toBe('Made the check Float of the axle');
  expect(await checksOf(store, job.id)).toEqual([]);
  expect(await featuresOf(store, job.id)).toEqual([]);
});

test('a check by eye has no feature; what was seen stays with its go', async () => {
  const store = await openForTest();
  const { job, check } = await withCheck(store, { by: 'by-eye' });
  expect(await featuresOf(store, job.id)).toEqual([]);
  const takeId = lastTake(check)?.id ?? '';
  worked(await sayCheckSeen(store, check.id, takeId, 'fails', 'the hose rubs'));
  const again = worked(await retake(store, check.id));
  worked(await sayCheckSeen(store, check.id, lastTake(again)?.id ?? '', 'holds', ''));
  const kept = await getCheck(store, check.id);
  expect(kept && takesOf(kept).map(([, { seen, seenNote }]) => [seen, seenNote])).toEqual([
    ['fails', 'the hose rubs'],
    ['holds', undefined],
  ]);
  expect(await undoNewest(store)).toBe('Float of the axle: holds');
});

test('a check by eye that asks for something else is to be looked at again; what was seen before stays readable', async () => {
  const store = await openForTest();
  const { check } = await withCheck(store, { by: 'by-eye', how: 'Pull the lever' });
  worked(await sayCheckSeen(store, check.id, lastTake(check)?.id ?? '', 'holds', ''));
  worked(await changeCheck(store, check.id, { how: 'Pull the lever', name: check.name }));
  expect(takesOf((await getCheck(store, check.id)) ?? check)).toHaveLength(1);
  worked(await changeCheck(store, check.id, { how: 'Pull the lever at full lock' }));
  const changed = worked(await changeCheck(store, check.id, { how: 'Pull the lever at both locks' }));
  expect(takesOf(changed).map(([, { seen }]) => seen)).toEqual(['holds', undefined]);
  await undoNewest(store);
  await undoNewest(store);
  const back = await getCheck(store, check.id);
  expect(back?.how).toBe('Pull the lever');
  expect(lastTake(back ?? check)?.seen).toBe('holds');
});

test('a retake leaves the failed go with its reading and starts an empty one', async () => {
  const store = await openForTest();
  const { check } = await withCheck(store);
  const failed = await logInLast(store, check, '.009');
  const again = worked(await retake(store, check.id));
  expect(takesOf(again)).toHaveLength(2);
  expect((await readingsOf(store, failed)).map(({ typed }) => typed)).toEqual(['.009']);
  expect(await readingsOf(store, lastTake(again)?.featureId ?? '')).toEqual([]);
  expect(await undoNewest(store)).toBe('Float of the axle: to be taken again');
  expect(takesOf((await getCheck(store, check.id)) ?? check)).toHaveLength(1);
});

test('neither making a check nor taking it again can be undone once a reading was logged in it', async () => {
  const store = await openForTest();
  const { job, check } = await withCheck(store);
  const featureId = await logInLast(store, check, '.004');
  expect(await latestUndo(store, job.id)).toBeUndefined();
  const again = worked(await retake(store, check.id));
  await logInLast(store, again, '.005');
  expect(await latestUndo(store, job.id)).toBeUndefined();
  expect(await readingsOf(store, featureId)).toHaveLength(1);
});

test('a removed check takes its features and readings along, and undo brings all of them back', async () => {
  const store = await openForTest();
  const { job, check } = await withCheck(store);
  const featureId = await logInLast(store, check, '.004');
  worked(await removeCheck(store, check.id));
  expect(await checksOf(store, job.id)).toEqual([]);
  expect(await featuresOf(store, job.id)).toEqual([]);
  expect(await readingsOf(store, featureId)).toEqual([]);
  expect(await undoNewest(store)).toBe('Removed the check Float of the axle');
  expect(await checksOf(store, job.id)).toHaveLength(1);
  expect((await readingsOf(store, featureId)).map(({ typed }) => typed)).toEqual(['.004']);
});

test('a renamed check renames the features that hold its readings', async () => {
  const store = await openForTest();
  const { job, check } = await withCheck(store);
  worked(await changeCheck(store, check.id, { name: 'Float, hot', upper: undefined }));
  expect(await getCheck(store, check.id)).not.toHaveProperty('upper');
  expect((await featuresOf(store, job.id)).map(({ name }) => name)).toEqual(['Float, hot']);
});

test('checks of a list are made in one act and keep its order', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const names = ['Runout', 'Left stop', 'Right stop'];
  worked(
    await createChecks(
      store,
      names.map((name) => floatCheck(job.id, { name })),
    ),
  );
  expect((await checksOf(store, job.id)).map(({ name }) => name)).toEqual(names);
  expect(await undoNewest(store)).toBe('Made 3 checks');
  expect(await featuresOf(store, job.id)).toEqual([]);
});

test('a check of a worksheet that never was is not kept', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const result = await createCheck(store, floatCheck(job.id, { worksheetId: 'never-was' }));
  expect(refused(result)).toEqual({ code: 'gone', store: 'worksheets' });
  expect(await store.db.count('features')).toBe(0);
});
