import { afterEach, expect, test } from 'vitest';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { changePart, createPart, partsOf } from '../../../src/store/kept/parts.ts';
import {
  addSteps,
  changeStep,
  markDone,
  markUndone,
  moveStep,
  removeStep,
  stepsOf,
} from '../../../src/store/kept/steps.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { closeAll, openForTest, refused, worked } from '../open-for-test.ts';

afterEach(closeAll);

async function withSteps(store: Store, texts: readonly string[]) {
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const steps = worked(
    await addSteps(
      store,
      texts.map((text) => ({ jobId: job.id, text })),
    ),
  );
  return { job, steps };
}

async function textsOf(store: Store, jobId: string): Promise<string[]> {
  return (await stepsOf(store, jobId)).map(({ text }) => text);
}

async function undoNewest(store: Store) {
  const newest = await latestUndo(store);
  return newest && worked(await undoLast(store, newest.id));
}

test('steps come in the order given, and later ones behind them', async () => {
  const store = await openForTest();
  const { job } = await withSteps(store, ['axle', 'spacer']);
  worked(await addSteps(store, [{ jobId: job.id, text: 'nut' }]));
  expect(await textsOf(store, job.id)).toEqual(['axle', 'spacer', 'nut']);
  expect(await undoNewest(store)).toBe('Added nut');
  expect(await undoNewest(store)).toBe('Added 2 steps');
  expect(await textsOf(store, job.id)).toEqual([]);
});

test('a step moves one place up or down, stays at the ends, and undo moves it back', async () => {
  const store = await openForTest();
  const { job, steps } = await withSteps(store, ['axle', 'spacer', 'nut']);
  const [axle, , nut] = steps;
  worked(await moveStep(store, nut?.id ?? '', 'up'));
  expect(await textsOf(store, job.id)).toEqual(['axle', 'nut', 'spacer']);
  worked(await moveStep(store, axle?.id ?? '', 'up'));
  expect(await textsOf(store, job.id)).toEqual(['axle', 'nut', 'spacer']);
  worked(await moveStep(store, axle?.id ?? '', 'down'));
  expect(await textsOf(store, job.id)).toEqual(['nut', 'axle', 'spacer']);
  expect(await undoNewest(store)).toBe('Moved axle down');
  expect(await undoNewest(store)).toBe('Moved nut up');
  expect(await textsOf(store, job.id)).toEqual(['axle', 'spacer', 'nut']);
});

test('two steps that two phones gave the same place can still be moved past each other', async () => {
  const store = await openForTest();
  const { job, steps } = await withSteps(store, ['axle', 'spacer']);
  const kept = await store.db.get('steps', steps[1]?.id ?? '');
  await store.db.put('steps', { ...kept, order: 0, createdAt: kept.createdAt + 1 });
  worked(await moveStep(store, steps[1]?.id ?? '', 'up'));
  expect(await textsOf(store, job.id)).toEqual(['spacer', 'axle']);
});

test('a done step says by whom and when, until it is not done after all', async () => {
  const store = await openForTest();
  const { steps } = await withSteps(store, ['axle']);
  const id = steps[0]?.id ?? '';
  const done = worked(await markDone(store, id, 'R. Tiller'));
  expect(done.done?.by).toBe('R. Tiller');
  expect(done.done?.at).toBeGreaterThan(1_700_000_000_000);
  expect(worked(await markUndone(store, id)).done).toBeUndefined();
  expect(await undoNewest(store)).toBe('Not done: axle');
  expect((await stepsOf(store, done.jobId))[0]?.done?.by).toBe('R. Tiller');
});

test('a step’s torque is kept as the manual states it and can be taken out again', async () => {
  const store = await openForTest();
  const { job, steps } = await withSteps(store, ['nut']);
  const id = steps[0]?.id ?? '';
  const torque = { typed: '65', unit: 'Nm', source: 'service manual, page 7-12' } as const;
  worked(await changeStep(store, id, { torque, cotterPin: true }));
  expect((await stepsOf(store, job.id))[0]).toMatchObject({ torque, cotterPin: true });
  worked(await changeStep(store, id, { torque: undefined }));
  expect((await stepsOf(store, job.id))[0]).not.toHaveProperty('torque');
  const nowhere = await changeStep(store, id, { partIds: ['never-was'] });
  expect(refused(nowhere)).toEqual({ code: 'gone', store: 'parts' });
});

test.each([
  ['torque', { torque: { typed: '52', unit: 'Nm', source: 'manual' } }],
  ['unit of its torque', { torque: { typed: '25', unit: 'lbf-ft', source: 'manual' } }],
  ['torque left out', { torque: undefined }],
  ['words', { text: 'nut and washer' }],
  ['thread locker', { locker: 'high' }],
  ['cotter pin', { cotterPin: true }],
  ['orientation', { orientation: 'flange to the hub' }],
] as const)(
  'a done step whose %s is changed is to be done again, and one undo brings both back',
  async (_what, changes) => {
    const store = await openForTest();
    const { job, steps } = await withSteps(store, ['nut']);
    const id = steps[0]?.id ?? '';
    worked(await changeStep(store, id, { torque: { typed: '25', unit: 'Nm', source: 'manual' } }));
    const { done } = worked(await markDone(store, id, 'R. Tiller'));
    const before = await stepsOf(store, job.id);
    const changed = worked(await changeStep(store, id, changes));
    expect(changed).not.toHaveProperty('done');
    expect(changed.wasDone).toEqual(done);
    await undoNewest(store);
    expect((await stepsOf(store, job.id))[0]).toMatchObject({ text: 'nut', done, torque: { typed: '25' } });
    expect((await stepsOf(store, job.id))[0]).not.toHaveProperty('wasDone');
    expect(before[0]?.done).toEqual(done);
    worked(await changeStep(store, id, changes));
    expect(worked(await markDone(store, id, 'Jo B.'))).not.toHaveProperty('wasDone');
  },
);

test('a done step stays done when only its cure time or the page of its torque is written down, or nothing changes', async () => {
  const store = await openForTest();
  const { steps } = await withSteps(store, ['nut']);
  const id = steps[0]?.id ?? '';
  const torque = { typed: '25', unit: 'Nm', source: '' } as const;
  worked(await changeStep(store, id, { torque, locker: 'medium' }));
  const { done } = worked(await markDone(store, id, 'R. Tiller'));
  const changes = { text: 'nut', cureHours: '24', torque: { ...torque, source: 'manual, page 7-12' } };
  expect(worked(await changeStep(store, id, changes)).done).toEqual(done);
});

test('a removed step comes back in its place', async () => {
  const store = await openForTest();
  const { job, steps } = await withSteps(store, ['axle', 'spacer', 'nut']);
  worked(await removeStep(store, steps[1]?.id ?? ''));
  expect(await textsOf(store, job.id)).toEqual(['axle', 'nut']);
  await undoNewest(store);
  expect(await textsOf(store, job.id)).toEqual(['axle', 'spacer', 'nut']);
});

test('a mock-up part says when it was swapped and for what, and undo puts it back in', async () => {
  const store = await openForTest();
  const { job } = await withSteps(store, []);
  const part = worked(await createPart(store, { jobId: job.id, name: 'Spacer, plywood', origin: 'mock-up' }));
  worked(await changePart(store, part.id, { swapped: { at: 1_700_000_000_000, by: 'Spacer, turned' } }));
  expect((await partsOf(store, job.id))[0]?.swapped?.by).toBe('Spacer, turned');
  expect(await undoNewest(store)).toBe('Swapped Spacer, plywood');
  expect((await partsOf(store, job.id))[0]).not.toHaveProperty('swapped');
});
