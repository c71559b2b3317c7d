import { afterEach, expect, test } from 'vitest';
import { createFeature } from '../../../src/store/kept/features.ts';
import { changeJob, createJob } from '../../../src/store/kept/jobs.ts';
import { readingsOf } from '../../../src/store/kept/readings.ts';
import { goRound } from '../../../src/store/home/round.ts';
import { openConflicts } from '../../../src/store/phones/conflicts-open.ts';
import { settleConflict } from '../../../src/store/phones/conflicts-settle.ts';
import { closeAll, openForTest, tickingClock, worked } from '../open-for-test.ts';
import { everythingIn, log } from '../two-phones-for-test.ts';
import { DATABASE, pairForTest, startHome, untilQuiet } from './home-for-test.ts';

afterEach(closeAll);

async function twoPhones() {
  const home = await startHome();
  const lathe = await openForTest();
  const bench = await openForTest({ now: tickingClock(1_700_000_500_000) });
  const job = worked(await createJob(lathe, { name: 'Outfit', systems: [] }));
  const bore = worked(await createFeature(lathe, { jobId: job.id, kind: 'bore', name: 'left bore' }));
  const atLathe = await pairForTest(home, lathe);
  const atBench = await pairForTest(home, bench);
  return { home, lathe, bench, job, bore, atLathe, atBench };
}

test('what is on one phone comes to the other by way of home, the same record by record', async () => {
  const { lathe, bench, job, bore, atLathe, atBench } = await twoPhones();
  await goRound(atLathe);
  await goRound(atBench);
  const reading = worked(await log(bench, bore.id, job.id, '.4487'));
  await untilQuiet(atBench, atLathe);
  expect((await readingsOf(lathe, bore.id)).map(({ id }) => id)).toEqual([reading.id]);
  expect(await everythingIn(lathe)).toBe(await everythingIn(bench));
  expect(await lathe.db.getAll('outbox')).toEqual([]);
});

test('home holds no word and no figure that anybody could read', async () => {
  const { home, lathe, bore, job, atLathe } = await twoPhones();
  worked(await log(lathe, bore.id, job.id, '.4487'));
  await goRound(atLathe);
  const docs = [...(home.couch.databases.get(DATABASE)?.docs.values() ?? [])];
  const text = JSON.stringify(docs.map(({ revisions }) => [...revisions.values()]));
  expect(docs.length).toBeGreaterThan(3);
  for (const word of ['Outfit', 'bore', '4487', job.id, bore.id, 'readings'])
    expect(text).not.toContain(word);
});

test('of what both wrote apart each is asked once, and the answer of one is the answer of all', async () => {
  const { lathe, bench, job, atLathe, atBench } = await twoPhones();
  await untilQuiet(atLathe, atBench);
  worked(await changeJob(lathe, job.id, { name: 'left' }));
  worked(await changeJob(bench, job.id, { name: 'right' }));
  await untilQuiet(atLathe, atBench);
  const [asked, ...others] = await openConflicts(bench);
  expect(others).toEqual([]);
  expect((await openConflicts(lathe)).map(({ conflict }) => conflict.id)).toEqual([asked?.conflict.id]);
  worked(await settleConflict(bench, { id: asked?.conflict.id ?? '', take: 'lost', label: 'Took it' }));
  await untilQuiet(atBench, atLathe);
  expect(await openConflicts(lathe)).toEqual([]);
  expect(await everythingIn(lathe)).toBe(await everythingIn(bench));
});

test('a round with nothing new asks three times and writes nothing', async () => {
  const { home, atLathe, atBench } = await twoPhones();
  await untilQuiet(atLathe, atBench);
  const before = home.couch.counted.requests;
  await goRound(atLathe);
  expect(home.couch.counted.requests - before).toBe(3);
});
