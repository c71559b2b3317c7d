import { afterEach, expect, test } from 'vitest';
import { createCheck, takesOf } from '../../../src/store/kept/checks.ts';
import { changeFeature, createFeature, featuresOf } from '../../../src/store/kept/features.ts';
import { createJob, getJob } from '../../../src/store/kept/jobs.ts';
import { bringKnown, knownPartsOf, lastReadAt, type KnownPart } from '../../../src/store/kept/known-parts.ts';
import { createPart, partsOf } from '../../../src/store/kept/parts.ts';
import { readingsOf, readingsOfJob, strikeOut } from '../../../src/store/kept/readings.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import type { FeatureKind } from '../../../src/engine/reading/measuring-tool.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { closeAll, openForTest, worked } from '../open-for-test.ts';
import { backupOf, carry, everythingIn, log } from '../two-phones-for-test.ts';
import { restoreBackup } from '../../../src/store/file/backup.ts';

afterEach(closeAll);

async function aJob(store: Store, name: string) {
  const job = worked(await createJob(store, { name, systems: ['wheel'] }));
  const size = async (kind: FeatureKind, called: string, read: readonly string[], partId?: string) => {
    const feature = worked(
      await createFeature(store, { jobId: job.id, kind, name: called, ...(partId && { partId }) }),
    );
    // oxlint-disable-next-line no-await-in-loop
    for (const typed of read) worked(await log(store, feature.id, job.id, typed));
    return feature;
  };
  return { job, size };
}

async function knownIn(store: Store, jobId: string): Promise<KnownPart[]> {
  const job = await getJob(store, jobId);
  if (!job) throw new Error('no job');
  return knownPartsOf(store, job);
}

/** A hub of two sizes in one job. */
async function aHub(store: Store) {
  const { job, size } = await aJob(store, 'Outfit 6');
  const hub = worked(await createPart(store, { jobId: job.id, name: 'Rear hub', origin: 'donor' }));
  const width = await size('length', 'Over the bearings', ['4.4118', '4.4121'], hub.id);
  await size('bore', 'Bearing bore', ['1.8503'], hub.id);
  return { job, hub, width, size };
}

test('a hub comes into the next job with all its sizes, and none of it is a reading of that job', async () => {
  const store = await openForTest();
  const { job } = await aHub(store);
  const next = worked(await createJob(store, { name: 'Outfit 7', systems: ['wheel'] }));
  const [hub, ...others] = await knownIn(store, job.id);
  expect(others).toEqual([]);
  if (!hub) throw new Error('no hub');
  worked(await bringKnown(store, next.id, hub));
  expect(await readingsOfJob(store, next.id)).toEqual([]);
  const [part] = await partsOf(store, next.id);
  expect(part).toMatchObject({ name: 'Rear hub', origin: 'donor' });
  const brought = await featuresOf(store, next.id);
  const there = await featuresOf(store, job.id);
  expect(brought.map(({ kind, name, partId }) => [kind, name, partId === part?.id])).toEqual([
    ['length', 'Over the bearings', true],
    ['bore', 'Bearing bore', true],
  ]);
  expect(brought.map(({ id }) => there.some((one) => one.id === id))).toEqual([false, false]);
  // Each reading as it was logged there: as typed, by that tool, at that time.
  const readThere = await readingsOf(store, there[0]?.id ?? '');
  expect(brought[0]?.elsewhere).toMatchObject({
    jobId: job.id,
    jobName: 'Outfit 6',
    readings: readThere.map(({ typed, unit, tool: { id }, at }) => ({ typed, unit, tool: { id }, at })),
  });
  expect(lastReadAt(hub)).toBe(Math.max(...(await readingsOfJob(store, job.id)).map(({ at }) => at)));
});

test('one undo takes all of it out again', async () => {
  const store = await openForTest();
  const { job } = await aHub(store);
  const next = worked(await createJob(store, { name: 'Outfit 7', systems: ['wheel'] }));
  const [hub] = await knownIn(store, job.id);
  if (!hub) throw new Error('no hub');
  worked(await bringKnown(store, next.id, hub));
  const undo = await latestUndo(store, next.id);
  expect(worked(await undoLast(store, undo?.id ?? ''))).toBe('Brought in Rear hub');
  expect(await featuresOf(store, next.id)).toEqual([]);
  expect(await partsOf(store, next.id)).toEqual([]);
});

test('what was struck out, a runout, a check’s reading and a mock-up are nobody’s known size', async () => {
  const store = await openForTest();
  const { job, size } = await aJob(store, 'Outfit 6');
  const spacer = await size('length', 'Spacer', ['1.5', '1.9']);
  const [, wrong] = await readingsOf(store, spacer.id);
  worked(await strikeOut(store, wrong?.id ?? '', 'chip'));
  const none = await size('pin', 'Bolt', ['.437']);
  const [only] = await readingsOf(store, none.id);
  worked(await strikeOut(store, only?.id ?? '', 'burr'));
  await size('runout', 'Disc', ['.002']);
  const block = worked(await createPart(store, { jobId: job.id, name: 'Wood block', origin: 'mock-up' }));
  await size('length', 'Block', ['2'], block.id);
  const check = worked(
    await createCheck(store, { jobId: job.id, name: 'Float', by: 'gap', limitsFrom: 'own', how: '' }),
  );
  worked(await log(store, takesOf(check)[0]?.[1].featureId ?? '', job.id, '.010'));
  const known = await knownIn(store, job.id);
  expect(known.map(({ name }) => name)).toEqual(['Spacer']);
  expect(known[0]?.sizes[0]?.elsewhere.readings.map(({ typed }) => typed)).toEqual(['1.5']);
});

test('a size that was never read in the job between keeps where it was read', async () => {
  const store = await openForTest();
  const { job } = await aHub(store);
  const second = worked(await createJob(store, { name: 'Outfit 7', systems: ['wheel'] }));
  const [hub] = await knownIn(store, job.id);
  if (!hub) throw new Error('no hub');
  worked(await bringKnown(store, second.id, hub));
  const [, bore] = await featuresOf(store, second.id);
  worked(await log(store, bore?.id ?? '', second.id, '1.8505'));
  const [again] = await knownIn(store, second.id);
  expect(again?.sizes.map(({ name, elsewhere }) => [name, elsewhere.jobName])).toEqual([
    ['Over the bearings', 'Outfit 6'],
    ['Bearing bore', 'Outfit 7'],
  ]);
});

test('it goes through a file and back, and two phones that have it come to the same', async () => {
  const store = await openForTest();
  const helper = await openForTest();
  const { job, width } = await aHub(store);
  const next = worked(await createJob(store, { name: 'Outfit 7', systems: ['wheel'] }));
  const [hub] = await knownIn(store, job.id);
  if (!hub) throw new Error('no hub');
  worked(await bringKnown(store, next.id, hub));
  await carry(store, helper);
  worked(await changeFeature(helper, width.id, { name: 'Over both bearings' }));
  await carry(helper, store);
  await carry(store, helper);
  expect(await everythingIn(helper)).toBe(await everythingIn(store));
  expect((await featuresOf(helper, next.id))[0]?.elsewhere?.readings).toHaveLength(2);
});

test('a file whose known size is not what was typed is refused', async () => {
  const store = await openForTest();
  const { job } = await aHub(store);
  const next = worked(await createJob(store, { name: 'Outfit 7', systems: ['wheel'] }));
  const [hub] = await knownIn(store, job.id);
  if (!hub) throw new Error('no hub');
  worked(await bringKnown(store, next.id, hub));
  const [brought] = await featuresOf(store, next.id);
  const kept = await store.db.get('features', brought?.id ?? '');
  // 4.4118 × 25.4 = 112.05972
  expect(kept.elsewhere.readings[0].exact).toBe('112.05972');
  kept.elsewhere.readings[0].exact = '112.5';
  await store.db.put('features', kept);
  const other = await openForTest();
  const result = await restoreBackup(other, await backupOf(store));
  expect(result).toMatchObject({ ok: false, refusal: { code: 'typed-differs' } });
});
