import { cleanup, fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, expect, test } from 'vitest';
import { BothScreen } from '../../src/screens/both/both-screen.tsx';
import { createFeature, changeFeature } from '../../src/store/kept/features.ts';
import { changeJob } from '../../src/store/kept/jobs.ts';
import { putSetting } from '../../src/store/kept/settings.ts';
import { addSteps, changeStep, markDone } from '../../src/store/kept/steps.ts';
import { createWorksheet, getWorksheet, setChoice, setSize } from '../../src/store/kept/worksheets.ts';
import { latestUndo } from '../../src/store/undo/undo.ts';
import { inches } from '../store/cut-for-test.ts';
import { worked } from '../store/open-for-test.ts';
import { carry, exchange, twoPhonesWithABore } from '../store/two-phones-for-test.ts';
import { clearAway, onScreen, said } from './on-screen.tsx';

afterEach(clearAway);

async function twoPhonesWithAStack() {
  const phones = await twoPhonesWithABore();
  const { owner, helper, job } = phones;
  worked(await changeJob(owner, job.id, { name: 'Outfit 7' }));
  const sheet = worked(
    await createWorksheet(owner, { jobId: job.id, kind: 'spacer-stack', title: 'Spacer stack, brake side' }),
  );
  await exchange(owner, helper);
  return { ...phones, sheet };
}

test('a question names what it is about in the fitter’s words, and both sizes as they were typed', async () => {
  const { owner, helper, sheet } = await twoPhonesWithAStack();
  worked(await putSetting(helper, 'fitter', 'R. Tiller'));
  worked(await setSize(owner, sheet.id, 'aim', { from: 'typed', ...inches('3/32') }));
  worked(await setSize(helper, sheet.id, 'aim', { from: 'typed', ...inches('2.4mm') }));
  await carry(helper, owner);
  onScreen(owner, <BothScreen />);
  expect((await screen.findByRole('heading', { level: 2 })).textContent).toBe(
    'Outfit 7 · Spacer stack, brake side · aim',
  );
  expect(screen.getByText('3/32 in')).toBeDefined();
  expect(screen.getByText('2.4mm')).toBeDefined();
  expect(screen.getByText(/This phone/)).toBeDefined();
  expect(screen.getByText(/R. Tiller’s phone/)).toBeDefined();
});

test('one press settles it, is said, and can be undone', async () => {
  const { owner, helper, job, sheet } = await twoPhonesWithAStack();
  worked(await setSize(owner, sheet.id, 'aim', { from: 'typed', ...inches('.010') }));
  worked(await setSize(helper, sheet.id, 'aim', { from: 'typed', ...inches('.012') }));
  await carry(helper, owner);
  onScreen(owner, <BothScreen />);
  fireEvent.click(await screen.findByRole('button', { name: 'Take that one: .010 in' }));
  await screen.findByText(/^Nothing to settle/);
  expect((await getWorksheet(owner, sheet.id))?.sizes['aim']).toMatchObject({ typed: '.010' });
  await waitFor(() => expect(said()).toContain('Took .010 in for Outfit 7'));
  expect((await latestUndo(owner, job.id))?.label).toContain('Took .010 in');
});

test('a choice, a step that is done and a size from readings are said as their screens say them', async () => {
  const { owner, helper, job, bore, sheet } = await twoPhonesWithAStack();
  const [step] = worked(await addSteps(owner, [{ jobId: job.id, text: 'Fit the bracket' }]));
  await exchange(owner, helper);
  const stepId = step?.id ?? '';
  worked(await setChoice(owner, sheet.id, 'want', 'clamp'));
  worked(await setChoice(helper, sheet.id, 'want', 'end-play'));
  worked(await setSize(owner, sheet.id, 'fixed', { from: 'feature', featureId: bore.id }));
  worked(await setSize(helper, sheet.id, 'fixed', { from: 'typed', ...inches('1.500') }));
  worked(await markDone(owner, stepId, 'Jo'));
  worked(await changeStep(helper, stepId, { text: 'Fit the bracket dry' }));
  worked(await markDone(helper, stepId, 'Ann'));
  await carry(helper, owner);
  onScreen(owner, <BothScreen />);
  await screen.findAllByRole('heading', { level: 2 });
  for (const words of ['Clamp', 'End play', 'readings of left bore', '1.500 in'])
    expect(screen.getByText(words)).toBeDefined();
  expect(screen.getByText(/, Jo$/)).toBeDefined();
  expect(screen.getByText(/, Ann$/)).toBeDefined();
});

test('a name of markup is shown as it is', async () => {
  const { owner, helper, job } = await twoPhonesWithAStack();
  const name = '<img src=x onerror=alert(1)>';
  const pin = worked(await createFeature(owner, { jobId: job.id, kind: 'pin', name: 'pin' }));
  await exchange(owner, helper);
  worked(await changeFeature(owner, pin.id, { name: 'left pin' }));
  worked(await changeFeature(helper, pin.id, { name }));
  await carry(helper, owner);
  onScreen(owner, <BothScreen />);
  expect((await screen.findAllByText(name)).length).toBeGreaterThan(0);
  expect(document.querySelector('img')).toBeNull();
  cleanup();
});
