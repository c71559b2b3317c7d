import * as fc from 'fast-check';
import { afterEach, expect, test } from 'vitest';
import {
  checksOf,
  createCheck,
  lastTake,
  removeCheck,
  retake,
  sayCheckSeen,
} from '../../../src/store/kept/checks.ts';
import { passesOf, stateByPasses } from '../../../src/store/kept/cut-state.ts';
import { changeCut, createCuts, cutsOf, removeCut, setCutState } from '../../../src/store/kept/cuts.ts';
import { logPass, strikeOutPass } from '../../../src/store/kept/cut-passes.ts';
import { makeAgain } from '../../../src/store/kept/make-cut-again.ts';
import { createFeature, featuresOf, removeFeature } from '../../../src/store/kept/features.ts';
import { listJobs } from '../../../src/store/kept/job-list.ts';
import { changeJob, createJob, removeJob } from '../../../src/store/kept/jobs.ts';
import { type Kept } from '../../../src/store/base/kept.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import type { Cut } from '../../../src/store/base/records.ts';
import { parseKept } from '../../../src/store/base/schema-common.ts';
import { cutRecordKind } from '../../../src/store/kept/cut-schema.ts';
import { readingsOf, strikeOut } from '../../../src/store/kept/readings.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { createWorksheet, setSize, worksheetsOf } from '../../../src/store/kept/worksheets.ts';
import { facing, inches } from '../cut-for-test.ts';
import { carry, exchange, everythingIn, log } from '../two-phones-for-test.ts';
import { closeAll, openForTest, tickingClock } from '../open-for-test.ts';

afterEach(closeAll);

type Move = { readonly phone: 0 | 1; readonly act: number; readonly pick: number };

const moves = fc.array(
  fc.record({
    phone: fc.constantFrom<0 | 1>(0, 1),
    act: fc.nat({ max: 18 }),
    pick: fc.nat({ max: 50 }),
  }),
  { minLength: 5, maxLength: 35 },
);

async function make(store: Store, other: Store, { act, pick }: Move): Promise<void> {
  const { jobs } = await listJobs(store, { limit: 20 });
  const job = jobs[pick % Math.max(jobs.length, 1)];
  if (act === 0 || !job) await createJob(store, { name: `job ${pick}`, systems: [] });
  else if (act === 1) await changeJob(store, job.id, { name: `renamed ${pick}` });
  else if (act === 2 && pick % 3 === 0) await removeJob(store, job.id);
  else if (act === 3) await createFeature(store, { jobId: job.id, kind: 'bore', name: `bore ${pick}` });
  else if (act === 9) await carry(other, store);
  else if (act === 10) {
    const newest = await latestUndo(store);
    if (newest) await undoLast(store, newest.id);
  } else if (act <= 8) await makeInFeature(store, job.id, act, pick);
  else if (act <= 14) await makeInCut(store, job.id, act, pick);
  else await makeInCheck(store, job.id, act, pick);
}

async function makeInCut(store: Store, jobId: string, act: number, pick: number): Promise<void> {
  const cuts = await cutsOf(store, jobId);
  const cut = cuts[pick % Math.max(cuts.length, 1)];
  if (act === 11 || !cut) await createCuts(store, [facing(jobId, { name: `cut ${pick}` })]);
  else if (act === 12) await logPass(store, cut.id, { measured: inches(`1.${4760 + 2 * pick}`) });
  else if (act === 13) {
    const [first] = passesOf(cut);
    if (pick % 3 === 0) await removeCut(store, cut.id);
    else if (first) await strikeOutPass(store, cut.id, first[0], `why ${pick}`);
  } else if (pick % 4 === 0) await setCutState(store, cut.id, 'scrapped');
  else if (pick % 2 === 0) await changeCut(store, cut.id, { upper: inches(`1.${4800 + pick}`) });
  else await makeAgain(store, [cut.id], jobId);
}

async function makeInCheck(store: Store, jobId: string, act: number, pick: number): Promise<void> {
  const checks = await checksOf(store, jobId);
  const check = checks[pick % Math.max(checks.length, 1)];
  const by = pick % 2 === 0 ? 'gap' : 'by-eye';
  if (act === 15 || !check)
    await createCheck(store, { jobId, name: `check ${pick}`, by, limitsFrom: '', how: '' });
  else if (act === 16) await retake(store, check.id);
  else if (act === 17) {
    const take = lastTake(check);
    if (take?.featureId === undefined)
      await sayCheckSeen(store, check.id, take?.id ?? '', 'fails', `${pick}`);
    else await log(store, take.featureId, jobId, `.00${pick % 10}`);
  } else if (pick % 2 === 0) await removeCheck(store, check.id);
}

async function makeInFeature(store: Store, jobId: string, act: number, pick: number): Promise<void> {
  const features = await featuresOf(store, jobId);
  const feature = features[pick % Math.max(features.length, 1)];
  if (!feature) return;
  const readings = await readingsOf(store, feature.id);
  const [reading] = readings;
  const [sheet] = await worksheetsOf(store, jobId);
  if (act === 4) await log(store, feature.id, jobId, `.${4000 + pick}`);
  else if (act === 5 && reading) await strikeOut(store, reading.id, `why ${pick}`);
  else if (act === 6 && pick % 2 === 0) await removeFeature(store, feature.id);
  else if (act === 7) await createWorksheet(store, { jobId, kind: 'hole-and-pin', title: `sheet ${pick}` });
  else if (act === 8 && sheet)
    await setSize(
      store,
      sheet.id,
      pick % 2 === 0 ? 'bore' : 'pin',
      pick % 3 === 0 ? undefined : { from: 'feature', featureId: feature.id },
    );
}

async function cutsIn(phone: Store): Promise<readonly Cut[]> {
  const kept = await phone.db.getAll('cuts');
  return kept.map((record) => {
    const parsed = parseKept(cutRecordKind, record);
    if (!parsed.ok) throw new Error(parsed.field);
    return parsed.value;
  });
}

/** Every pass ever measured, on whichever phone, with its cut. */
async function passesIn(phones: readonly Store[]): Promise<string[]> {
  const kept: Kept[][] = await Promise.all(phones.map((phone) => phone.db.getAll('cuts')));
  const all = kept
    .flat()
    .flatMap(({ id, passes }) => Object.keys(Object(passes)).map((pass) => `${id}/${pass}`));
  return [...new Set(all)].toSorted();
}

test('whatever two phones do, after two exchanges they hold the same, and no reading or pass is lost', async () => {
  await fc.assert(
    fc.asyncProperty(moves, async (played) => {
      const phones = [
        await openForTest(),
        await openForTest({ now: tickingClock(1_699_999_000_000) }), // a quarter of an hour behind
      ] as const;
      for (const move of played) await make(phones[move.phone], phones[move.phone === 0 ? 1 : 0], move);
      const logged = new Set(
        (await Promise.all(phones.map((phone) => phone.db.getAllKeys('readings')))).flat(),
      );
      const passes = await passesIn(phones);
      await exchange(...phones);
      await exchange(...phones);
      expect(await passesIn([phones[0]])).toEqual(passes);
      expect(await everythingIn(phones[1])).toBe(await everythingIn(phones[0]));
      expect(await phones[0].db.count('readings')).toBe(logged.size);
      const cuts = await cutsIn(phones[0]);
      expect(cuts.map(({ state }) => state)).toEqual(cuts.map(stateByPasses));
    }),
    { numRuns: 40 },
  );
}, 60_000);
