import { fireEvent, screen, within } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { LatheScreen } from '../../../src/screens/lathe/lathe-screen.tsx';
import { logPass } from '../../../src/store/kept/cut-passes.ts';
import { createCuts, type NewCut } from '../../../src/store/kept/cuts.ts';
import { timeToKeep } from '../../../src/store/base/clock.ts';
import { changeJob, createJob } from '../../../src/store/kept/jobs.ts';
import type { Cut, Job } from '../../../src/store/base/records.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { facing, inches } from '../../store/cut-for-test.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen, said } from '../on-screen.tsx';

let store: Store;
let job: Job;
beforeEach(async () => {
  store = await openForTest();
  job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
});
afterEach(clearAway);

/** What is cautioned of at the lathe for a cut of 5 in, good over `width` under it. */
async function cautionsOf(upper: string, more: Partial<NewCut> = {}): Promise<HTMLElement> {
  const sizes = { target: inches('5.0000'), lower: inches('5.0000'), upper: inches(upper) };
  const [cut] = worked(await createCuts(store, [facing(job.id, { ...sizes, ...more })]));
  return show(cut);
}

async function show(cut: Cut | undefined): Promise<HTMLElement> {
  if (!cut) throw new Error('no cut was made');
  onScreen(store, <LatheScreen jobId={job.id} cutId={cut.id} />);
  return screen.findByLabelText('Cautions');
}

describe('at the lathe, a part warm from the cut', () => {
  // 15 °C over: aluminium 5 · 15 · 23.6 millionths = .0018; steel 5 · 15 · 11.7 millionths = .0009.
  test('of aluminium is to cool, or is measured .0018 over', async () => {
    const cautions = await cautionsOf('5.0020', { material: 'aluminium-6061' });
    expect(
      within(cautions).getByText('Warm from the cut: let it cool, or measure .0018 in over.'),
    ).toBeTruthy();
  });

  test('whose metal nobody said is taken for what grows most, and that is said', async () => {
    const cautions = await cautionsOf('5.0020');
    expect(
      within(cautions).getByText('Warm from the cut: let it cool, or measure .0018 in over if aluminum.'),
    ).toBeTruthy();
  });

  test('of steel is measured half as much over', async () => {
    const cautions = await cautionsOf('5.0020', { material: 'low-carbon-steel' });
    expect(within(cautions).getByText(/measure \.0009 in over\.$/)).toBeTruthy();
  });

  test('is no word where three times as much is left between the limits', async () => {
    // A third of .0060 is .0020, more than .0018.
    const cautions = await cautionsOf('5.0060', { material: 'aluminium-6061' });
    expect(within(cautions).queryByText(/^Warm from the cut/)).toBeNull();
  });

  test('is no word of a hole that a drill makes, nor once it is past its limit', async () => {
    const drill = { operation: 'ream', of: 'bore', material: 'aluminium-6061' } as const;
    expect(within(await cautionsOf('5.0020', drill)).queryByText(/^Warm from the cut/)).toBeNull();
    await clearAway();
    store = await openForTest();
    job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
    const sizes = { target: inches('5.0000'), lower: inches('5.0000'), upper: inches('5.0020') };
    const [cut] = worked(await createCuts(store, [facing(job.id, { ...sizes, material: 'aluminium-6061' })]));
    if (cut) worked(await logPass(store, cut.id, { measured: inches('4.9900') }, 'over'));
    expect(within(await show(cut)).queryByText(/^Warm from the cut/)).toBeNull();
  });
});

test.each([
  ['1970', Date.UTC(1970, 0, 2)],
  ['today', Date.now()],
])('a warm part measured twice has not grown, with the phone’s clock at %s', async (_when, nowMs) => {
  vi.useFakeTimers({ toFake: ['Date'], now: nowMs });
  const warmth = { degrees: '140', unit: 'F', at: timeToKeep() } as const;
  job = worked(await changeJob(store, job.id, { warmth }));
  await cautionsOf('5.9020', {
    material: 'aluminium-6061',
    target: inches('5.9000'),
    lower: inches('5.9000'),
  });
  // 5.9500 at 140 °F counts as 5.9472; 5.9499 at the same warmth is no metal that came back.
  for (const size of ['5.9500', '5.9499']) {
    // oxlint-disable-next-line no-await-in-loop
    const field = await screen.findByLabelText(/touch it to light the keys/);
    fireEvent.input(field, { target: { value: size } });
    fireEvent.keyDown(field, { key: 'Enter' });
    // oxlint-disable-next-line no-await-in-loop
    await expect.poll(said).toMatch(new RegExp(`^Logged ${size.replace('.', '\\.')} in`));
  }
  vi.useRealTimers();
});
