import { afterEach, expect, test } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { lengthOf, sameLength } from '../../../src/engine/length/length.ts';
import type { ToolInForce } from '../../../src/engine/reading/measuring-tool.ts';
import { getDraft, putDraft } from '../../../src/store/kept/drafts.ts';
import { createFeature } from '../../../src/store/kept/features.ts';
import { createJob, getJob } from '../../../src/store/kept/jobs.ts';
import { closeStore, type Store } from '../../../src/store/opening/open-store.ts';
import { logReading, readingsOf, readingsOfJob, strikeOut } from '../../../src/store/kept/readings.ts';
import { closeAll, freshName, openForTest, worked } from '../open-for-test.ts';

afterEach(closeAll);

const caliper: ToolInForce = {
  id: 'digital-caliper',
  name: 'Digital caliper',
  kind: 'caliper',
  mpe: lengthOf('.001 in'),
  resolution: lengthOf('.0005 in'),
  resolutionInMpe: true,
  repeatability: lengthOf('.0005 in'),
};

async function boreOf(store: Store) {
  const job = worked(await createJob(store, { name: 'Outfit', systems: ['axle'] }));
  const feature = worked(await createFeature(store, { jobId: job.id, kind: 'bore', name: 'left bore' }));
  return { job, feature };
}

async function logIn(store: Store, typed: string, draftKey?: string) {
  const { job, feature } = await boreOf(store);
  const entry = worked(readEntry(typed, { unit: 'in' }));
  const reading = { featureId: feature.id, jobId: job.id, entry, tool: caliper, zeroChecked: true };
  return logReading(store, draftKey === undefined ? reading : { ...reading, draftKey });
}

test('a reading is there as typed, exact and with its tool after the store was closed and opened again', async () => {
  const name = freshName();
  const store = await openForTest({ name });
  const logged = worked(await logIn(store, '29/64'));
  closeStore(store);
  const again = await openForTest({ name });
  const [reading] = await readingsOf(again, logged.featureId);
  expect(reading).toMatchObject({ typed: '29/64', unit: 'in', zeroChecked: true });
  // 29/64 in = 0.453125 in = 11.509375 mm
  expect(reading && sameLength(reading.exact, lengthOf('11.509375 mm'))).toBe(true);
  expect(reading && sameLength(reading.tool.mpe, lengthOf('0.0254 mm'))).toBe(true);
});

test('logging a reading clears the draft it was typed in and moves its job up', async () => {
  const store = await openForTest();
  await putDraft(store, '#/bore.size', { typed: '.448', unit: 'in' });
  const logged = worked(await logIn(store, '.4487', '#/bore.size'));
  expect(await getDraft(store, '#/bore.size')).toBeUndefined();
  expect((await getJob(store, logged.jobId))?.touchedAt).toBe(logged.at);
});

test('a reading logged after the phone’s clock was set back still comes behind the one before it', async () => {
  let nowMs = 1_700_000_000_000;
  const store = await openForTest({ now: () => nowMs });
  const { job, feature } = await boreOf(store);
  const log = async (typed: string) =>
    logReading(store, {
      featureId: feature.id,
      jobId: job.id,
      entry: worked(readEntry(typed, { unit: 'in' })),
      tool: caliper,
      zeroChecked: true,
    });
  const before = worked(await log('.4487'));
  nowMs -= 3_600_000;
  const behind = [worked(await log('.4489')), worked(await log('.4491'))];
  // The time of the one before, and a millisecond each: nearer the truth than an hour ago can't be told.
  expect(behind.map(({ at }) => at - before.at)).toEqual([1, 2]);
  const typed = (await readingsOf(store, feature.id)).map((reading) => reading.typed);
  expect(typed).toEqual(['.4487', '.4489', '.4491']);
  nowMs += 7_200_000;
  expect(worked(await log('.4493')).at).toBe(nowMs);
});

test('a struck-out reading stays in its feature with the reason', async () => {
  const store = await openForTest();
  const logged = worked(await logIn(store, '.4950'));
  worked(await strikeOut(store, logged.id, 'burr'));
  const readings = await readingsOfJob(store, logged.jobId);
  expect(readings).toHaveLength(1);
  expect(readings[0]).toMatchObject({ typed: '.4950', struckOut: { why: 'burr' } });
});
