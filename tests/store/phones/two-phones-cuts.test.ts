import { afterEach, expect, test } from 'vitest';
import { checksOf, createCheck, lastTake, removeCheck, retake } from '../../../src/store/kept/checks.ts';
import { passesOf } from '../../../src/store/kept/cut-state.ts';
import { changeCut, createCuts, cutsOf, openCuts, removeCut } from '../../../src/store/kept/cuts.ts';
import { logPass, strikeOutPass } from '../../../src/store/kept/cut-passes.ts';
import { getJob, removeJob } from '../../../src/store/kept/jobs.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { facing, inches } from '../cut-for-test.ts';
import { exchange, everythingIn, log, twoPhonesWithABore } from '../two-phones-for-test.ts';
import { closeAll, worked } from '../open-for-test.ts';

afterEach(closeAll);

test('a cut removed on one phone comes back, marked, when a pass was measured on the other after that', async () => {
  const { owner, helper, job } = await twoPhonesWithABore();
  const [cut] = worked(await createCuts(owner, [facing(job.id)]));
  await exchange(owner, helper);
  worked(await removeCut(owner, cut?.id ?? ''));
  worked(await logPass(helper, cut?.id ?? '', { measured: inches('1.4990'), asked: inches('.020') }));
  await exchange(owner, helper);
  for (const phone of [owner, helper]) {
    const [back] = await cutsOf(phone, job.id);
    expect(back).toMatchObject({ broughtBack: true, state: 'cutting' });
    expect(back && passesOf(back)[0]?.[1].measured.typed).toBe('1.4990');
    expect(await openCuts(phone)).toHaveLength(1);
  }
});

test('a pass measured in a job that was removed before that on the other phone brings the job back', async () => {
  const { owner, helper, job } = await twoPhonesWithABore();
  const [cut] = worked(await createCuts(owner, [facing(job.id)]));
  await exchange(owner, helper);
  worked(await removeJob(owner, job.id));
  worked(await logPass(helper, cut?.id ?? '', { measured: inches('1.4990') }));
  await exchange(owner, helper);
  expect(await getJob(owner, job.id)).toMatchObject({ broughtBack: true });
  expect(await openCuts(owner)).toHaveLength(1);
});

test('a check removed on one phone comes back with its feature when the other logged a reading in it', async () => {
  const { owner, helper, job } = await twoPhonesWithABore();
  const check = worked(
    await createCheck(owner, { jobId: job.id, name: 'Float', by: 'gap', limitsFrom: '', how: '' }),
  );
  await exchange(owner, helper);
  worked(await removeCheck(owner, check.id));
  worked(await log(helper, lastTake(check)?.featureId ?? '', job.id, '.004'));
  await exchange(owner, helper);
  for (const phone of [owner, helper]) {
    expect(await checksOf(phone, job.id)).toMatchObject([{ name: 'Float', broughtBack: true }]);
  }
  worked(await removeCheck(owner, check.id));
  await exchange(owner, helper);
  for (const phone of [owner, helper]) expect(await checksOf(phone, job.id)).toEqual([]);
});

test('a go at a check that was undone on one phone comes back when the other logged a reading in it', async () => {
  const { owner, helper, job } = await twoPhonesWithABore();
  const check = worked(
    await createCheck(owner, { jobId: job.id, name: 'Float', by: 'gap', limitsFrom: '', how: '' }),
  );
  const again = worked(await retake(owner, check.id));
  await exchange(owner, helper);
  const newest = await latestUndo(owner, job.id);
  expect(worked(await undoLast(owner, newest?.id ?? ''))).toBe('Float: to be taken again');
  const featureId = lastTake(again)?.featureId ?? '';
  worked(await log(helper, featureId, job.id, '.004'));
  await exchange(owner, helper);
  await exchange(owner, helper);
  for (const phone of [owner, helper]) {
    const [kept] = await checksOf(phone, job.id);
    expect(kept && lastTake(kept)?.featureId).toBe(featureId);
    expect(kept && Object.keys(kept.takes)).toHaveLength(2);
  }
  expect(await everythingIn(helper)).toBe(await everythingIn(owner));
});

test('passes measured on two phones at one cut are all there on both, and a strike-out holds', async () => {
  const { owner, helper, job } = await twoPhonesWithABore();
  const [cut] = worked(await createCuts(owner, [facing(job.id)]));
  const id = cut?.id ?? '';
  const first = worked(await logPass(owner, id, { measured: inches('1.5200') }));
  await exchange(owner, helper);
  worked(await strikeOutPass(owner, id, passesOf(first)[0]?.[0] ?? '', 'chip'));
  worked(await logPass(helper, id, { measured: inches('1.4990') }));
  worked(await logPass(owner, id, { measured: inches('1.5100') }));
  await exchange(owner, helper);
  for (const phone of [owner, helper]) {
    const [kept] = await cutsOf(phone, job.id);
    const passes = kept ? passesOf(kept).map(([, pass]) => [pass.measured.typed, pass.struckOut?.why]) : [];
    expect(Object.fromEntries(passes)).toEqual({
      '1.5200': 'chip',
      '1.4990': undefined,
      '1.5100': undefined,
    });
  }
});

test('limits narrowed on one phone and a pass measured on the other: both see that it is not to size', async () => {
  const { owner, helper, job } = await twoPhonesWithABore();
  const [cut] = worked(await createCuts(owner, [facing(job.id)]));
  const id = cut?.id ?? '';
  await exchange(owner, helper);
  worked(await changeCut(owner, id, { upper: inches('1.479'), target: inches('1.4785') }));
  worked(await logPass(helper, id, { measured: inches('1.4800'), asked: inches('.020') }));
  expect((await cutsOf(helper, job.id))[0]?.state).toBe('to-size');
  await exchange(owner, helper);
  for (const phone of [owner, helper]) {
    expect((await cutsOf(phone, job.id))[0]?.state).toBe('cutting');
    expect(await openCuts(phone)).toHaveLength(1);
  }
});
