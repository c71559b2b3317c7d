import { expect, test } from 'vitest';
import { addDemo } from '../add-demo.ts';
import { checksOf } from '../../../src/store/kept/checks.ts';
import { cutsOf } from '../../../src/store/kept/cuts.ts';
import { featuresOf } from '../../../src/store/kept/features.ts';
import { readingsOfJob } from '../../../src/store/kept/readings.ts';
import { startAgain } from '../../../src/store/kept/start-again.ts';
import { stepsOf } from '../../../src/store/kept/steps.ts';
import { worksheetsOf } from '../../../src/store/kept/worksheets.ts';
import { openForTest, worked } from '../open-for-test.ts';

const OUTFIT = 'demo-outfit-7';
const all = { worksheets: true, cuts: true, checks: true, steps: true, toGet: true };

async function begun(take: Partial<typeof all> = {}) {
  const store = await openForTest();
  worked(await addDemo(store));
  const job = worked(await startAgain(store, OUTFIT, { name: 'Outfit 8', take: { ...all, ...take } }));
  return { store, job };
}

test('a job begun from another has its questions, checks and steps, and not one reading', async () => {
  const { store, job } = await begun();
  const [worksheets, checks, steps, before] = await Promise.all([
    worksheetsOf(store, job.id),
    checksOf(store, job.id),
    stepsOf(store, job.id),
    worksheetsOf(store, OUTFIT),
  ]);
  expect(worksheets.map(({ title }) => title).toSorted()).toEqual(
    before.map(({ title }) => title).toSorted(),
  );
  expect(checks.length).toBe((await checksOf(store, OUTFIT)).length);
  expect(steps.length).toBe((await stepsOf(store, OUTFIT)).length);
  expect(await readingsOfJob(store, job.id)).toEqual([]);
});

test('nothing of it is proved, done, cut or signed', async () => {
  const { store, job } = await begun();
  expect((await checksOf(store, job.id)).filter(({ takes }) => Object.keys(takes).length > 0)).toEqual([]);
  expect((await stepsOf(store, job.id)).filter(({ done, wasDone }) => done ?? wasDone)).toEqual([]);
  expect((await cutsOf(store, job.id)).filter(({ state }) => state !== 'to-cut')).toEqual([]);
  expect(job).not.toHaveProperty('signedOff');
  expect(job.demo).toBe(false);
});

test('what was measured for the old one is asked anew; what was wanted stays wanted', async () => {
  const { store, job } = await begun();
  const stack = (await worksheetsOf(store, job.id)).find(({ kind }) => kind === 'spacer-stack');
  const features = new Map((await featuresOf(store, job.id)).map((feature) => [feature.id, feature.name]));
  const { fixed, lower } = stack?.sizes ?? {};
  expect(fixed?.from === 'feature' && features.get(fixed.featureId)).toBe('Bracket sleeve');
  expect(lower).toMatchObject({ from: 'typed', typed: '.008' });
  expect(Object.values(stack?.parts ?? {}).map(({ name }) => name)).toContain('outer spacer');
  const measured = [
    ...Object.values(stack?.sizes ?? {}),
    ...Object.values(stack?.parts ?? {}).map(({ size }) => size),
  ];
  expect(measured.filter((size) => size?.from === 'typed' && size.tool !== undefined)).toEqual([]);
});

test('of what is left out nothing comes along', async () => {
  const { store, job } = await begun({ cuts: false, checks: false, steps: false });
  expect(await cutsOf(store, job.id)).toEqual([]);
  expect(await checksOf(store, job.id)).toEqual([]);
  expect(await stepsOf(store, job.id)).toEqual([]);
});
