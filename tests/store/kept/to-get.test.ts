import { expect, test } from 'vitest';
import { createJob, getJob } from '../../../src/store/kept/jobs.ts';
import { addToGet, dropToGet, setGot } from '../../../src/store/kept/to-get.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { openForTest, worked } from '../open-for-test.ts';

const tap = { key: 'tap/STI tap 7/16-20 UNF', what: 'STI tap 7/16-20 UNF' };

test('a thing that is there is ticked, and a tick taken back leaves nothing', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  worked(await setGot(store, job.id, tap, true));
  const ticked = await getJob(store, job.id);
  expect(Object.keys(ticked?.got ?? {})).toEqual([tap.key]);
  worked(await setGot(store, job.id, tap, false));
  expect(await getJob(store, job.id)).not.toHaveProperty('got');
});

test('a thing of the fitter’s own stands on the list until it is taken off, and its undo puts it back', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  worked(await addToGet(store, job.id, 'brake fluid'));
  worked(await addToGet(store, job.id, 'split pins'));
  worked(await dropToGet(store, job.id, 'brake fluid'));
  expect(Object.values((await getJob(store, job.id))?.toGet ?? {})).toEqual(['split pins']);
  const last = await latestUndo(store, job.id);
  expect(last?.label).toBe('Took brake fluid off the list');
  worked(await undoLast(store, last?.id ?? ''));
  expect(Object.values((await getJob(store, job.id))?.toGet ?? {}).toSorted()).toEqual([
    'brake fluid',
    'split pins',
  ]);
});
