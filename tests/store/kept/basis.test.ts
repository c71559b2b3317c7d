import { afterEach, expect, test } from 'vitest';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { basisOf, isOlder } from '../../../src/store/kept/basis.ts';
import { createFeature } from '../../../src/store/kept/features.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { logReading, readingsOf, strikeOut } from '../../../src/store/kept/readings.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import {
  createWorksheet,
  getWorksheet,
  renameWorksheet,
  setChoice,
  setSize,
} from '../../../src/store/kept/worksheets.ts';
import { inches } from '../cut-for-test.ts';
import { closeAll, openForTest, worked } from '../open-for-test.ts';

afterEach(closeAll);

async function log(store: Store, featureId: string, jobId: string, typed: string) {
  const [tool] = usualTools;
  if (!tool) throw new Error('no tools');
  return worked(await logReading(store, { featureId, jobId, entry: inches(typed), tool, zeroChecked: true }));
}

async function withWorksheet() {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const bore = worked(await createFeature(store, { jobId: job.id, kind: 'bore', name: 'bore' }));
  const reading = await log(store, bore.id, job.id, '.4487');
  const wrong = await log(store, bore.id, job.id, '.4950');
  worked(await strikeOut(store, wrong.id, 'read on the burr'));
  const sizes = {
    bore: { from: 'feature', featureId: bore.id },
    pin: { from: 'typed', ...inches('.4370') },
  } as const;
  const made = worked(
    await createWorksheet(store, { jobId: job.id, kind: 'hole-and-pin', title: 'Slop', sizes }),
  );
  const older = async () =>
    isOlder(basis, await getWorksheet(store, made.id), await readingsOf(store, bore.id));
  const basis = basisOf(made, await readingsOf(store, bore.id));
  return { store, job, bore, reading, made, basis, older };
}

test('a basis names the readings that count, and nothing is older while nothing changes', async () => {
  const { store, basis, reading, made, older } = await withWorksheet();
  expect(basis.readings).toEqual([reading.id]);
  expect(await older()).toBe(false);
  // Its title and when it was touched are no inputs.
  worked(await renameWorksheet(store, made.id, 'Slop, left'));
  expect(await older()).toBe(false);
});

test('a reading struck out makes what stood on it older, until the strike-out is undone', async () => {
  const { store, reading, older } = await withWorksheet();
  worked(await strikeOut(store, reading.id, 'wrong tool'));
  expect(await older()).toBe(true);
  const newest = await latestUndo(store);
  worked(await undoLast(store, newest?.id ?? ''));
  expect(await older()).toBe(false);
});

test('a newer reading, another size or another choice makes it older', async () => {
  const first = await withWorksheet();
  await log(first.store, first.bore.id, first.job.id, '.4490');
  expect(await first.older()).toBe(true);
  const second = await withWorksheet();
  worked(await setSize(second.store, second.made.id, 'pin', { from: 'typed', ...inches('.4375') }));
  expect(await second.older()).toBe(true);
  const third = await withWorksheet();
  worked(await setChoice(third.store, third.made.id, 'material', 'low-carbon-steel'));
  expect(await third.older()).toBe(true);
});

test('of a removed worksheet only a reading that was struck out or removed can still tell', async () => {
  const { store, basis, bore, reading, job } = await withWorksheet();
  expect(isOlder(basis, undefined, [])).toBe(true);
  await log(store, bore.id, job.id, '.4490');
  expect(isOlder(basis, undefined, await readingsOf(store, bore.id))).toBe(false);
  worked(await strikeOut(store, reading.id, 'wrong tool'));
  expect(isOlder(basis, undefined, await readingsOf(store, bore.id))).toBe(true);
});
