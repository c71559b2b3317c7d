import { afterEach, expect, test } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { EARLIEST_MS, nextStamp, stampMs, stampShape } from '../../../src/store/base/clock.ts';
import { addDemo } from '../add-demo.ts';
import { createFeature, featuresOf } from '../../../src/store/kept/features.ts';
import { listJobs } from '../../../src/store/kept/job-list.ts';
import { changeJob, createJob, getJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { logReading, readingsOf } from '../../../src/store/kept/readings.ts';
import { closeAll, openForTest, worked } from '../open-for-test.ts';

afterEach(closeAll);

async function log(store: Store, typed: string) {
  const [job] = (await listJobs(store, { limit: 1 })).jobs;
  const [bore] = await featuresOf(store, job?.id ?? '');
  const [tool] = usualTools;
  if (!job || !bore || !tool) throw new Error('no bore to log in');
  const entry = worked(readEntry(typed, { unit: 'in' }));
  worked(await logReading(store, { featureId: bore.id, jobId: job.id, entry, tool, zeroChecked: true }));
  return bore.id;
}

async function shopWithABore(now?: () => number): Promise<Store> {
  const store = await openForTest(now ? { now } : {});
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  worked(await createFeature(store, { jobId: job.id, kind: 'bore', name: 'left bore' }));
  return store;
}

const lastOf = async (store: Store): Promise<string> => (await store.db.get('device', 'clock')).last;

// 1_700_000_000_000 is 14 November 2023, where a test's clock begins.
test.each<{ what: string; damage: unknown }>([
  { what: 'a last stamp that is none', damage: { id: 'clock', deviceId: 'abcd1234', last: 'yesterday' } },
  { what: 'a last stamp that is a number', damage: { id: 'clock', deviceId: 'abcd1234', last: 17 } },
  { what: 'no last stamp', damage: { id: 'clock', deviceId: 'abcd1234' } },
  { what: 'a device that is none', damage: { id: 'clock', deviceId: 'Ä b', last: '001700000000500-0000-x' } },
  { what: 'a device of no letters', damage: { id: 'clock', deviceId: '', last: '001700000000500-0000-x' } },
  { what: 'nothing but its name', damage: { id: 'clock' } },
  {
    what: 'a last stamp from the end of all time',
    damage: { id: 'clock', deviceId: 'abcd1234', last: '007999999999999-ffff-abcd1234' },
  },
  { what: 'no such note any more', damage: undefined },
])('logging goes on behind the last stamp there is, with $what', async ({ damage }) => {
  const store = await shopWithABore();
  const before = await lastOf(store);
  if (damage === undefined) await store.db.delete('device', 'clock');
  else await store.db.put('device', damage);
  const boreId = await log(store, '.4487');
  expect((await readingsOf(store, boreId)).map(({ typed }) => typed)).toEqual(['.4487']);
  expect(await lastOf(store)).toMatch(stampShape);
  expect((await lastOf(store)) > before).toBe(true);
  // A test's clock moves on by seconds: an hour behind its beginning is far more than it took.
  expect(stampMs(await lastOf(store))).toBeLessThan(1_700_003_600_000);
});

test('a note that is damaged while the clock was set back gives no stamp before one that was given', async () => {
  let nowMs = 1_700_000_000_000;
  const store = await shopWithABore(() => (nowMs += 1000));
  const before = await lastOf(store);
  nowMs = 1_600_000_000_000;
  await store.db.put('device', { id: 'clock', deviceId: 'abcd1234', last: 5 });
  await log(store, '.4487');
  expect((await lastOf(store)) > before).toBe(true);
});

test.each([
  { what: 'before 1970', nowMs: -86_400_000 },
  { what: 'at 1970', nowMs: 0 },
  { what: 'at 1 January 1970, noon', nowMs: 43_200_000 },
  { what: 'a moment before 2020', nowMs: EARLIEST_MS - 1 },
  { what: 'in 2100', nowMs: Date.UTC(2100, 0, 1) },
  { what: 'past 2200', nowMs: Date.UTC(2200, 0, 2) },
  { what: 'past 2223, where a stamp ends', nowMs: 8_100_000_000_000 },
  { what: 'at the end of what a date can be', nowMs: 8_640_000_000_000_000 },
])('with the clock $what a job is made, the demo put in and readings keep their order', async ({ nowMs }) => {
  const store = await shopWithABore(() => nowMs);
  await log(store, '.4487');
  await log(store, '.4488');
  const boreId = await log(store, '.4489');
  expect((await readingsOf(store, boreId)).map(({ typed }) => typed)).toEqual(['.4487', '.4488', '.4489']);
  worked(await addDemo(store));
  expect((await listJobs(store, { limit: 9 })).jobs).toHaveLength(3); // this one and the demo's two
});

test('once the clock is right again, stamps follow it', async () => {
  let nowMs = 8_100_000_000_000;
  const store = await shopWithABore(() => nowMs);
  nowMs = 1_700_000_000_000;
  const [job] = (await listJobs(store, { limit: 1 })).jobs;
  worked(await changeJob(store, job?.id ?? '', { name: 'Wheel' }));
  expect(stampMs(await lastOf(store))).toBe(1_700_000_000_000);
  expect((await getJob(store, job?.id ?? ''))?.touchedAt).toBe(1_700_000_000_000);
});

test('a stamp without a date comes a millisecond behind the last one, or at the first that could be', () => {
  expect(nextStamp({ last: undefined, nowMs: 0, deviceId: 'a' })).toBe('001577836800000-0000-a'); // 1 January 2020
  const last = '001700000000000-0003-b';
  expect(nextStamp({ last, nowMs: 0, deviceId: 'a' })).toBe('001700000000001-0000-a');
  expect(nextStamp({ last, nowMs: 8_100_000_000_000, deviceId: 'a' })).toBe('001700000000001-0000-a');
});
