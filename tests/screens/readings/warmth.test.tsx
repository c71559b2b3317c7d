import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { decimalText, lengthOf } from '../../../src/engine/length/length.ts';
import { mean } from '../../../src/engine/reading/estimate.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { hrefOf } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { formOfReadings } from '../../../src/screens/readings/feature-summary.ts';
import { createFeature } from '../../../src/store/kept/features.ts';
import { changeJob, createJob, getJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { logReading, readingsOf } from '../../../src/store/kept/readings.ts';
import type { Feature, Job } from '../../../src/store/base/records.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

// The screens are fetched when they are first opened.
const PATIENCE = { timeout: 30_000 };

let store: Store;
let job: Job;
let hub: Feature;
beforeEach(async () => {
  store = await openForTest();
  job = worked(await createJob(store, { name: 'Outfit', systems: ['wheel'] }));
  hub = worked(await createFeature(store, { jobId: job.id, kind: 'length', name: 'Hub' }));
});
afterEach(clearAway);

function open(choosing?: string): void {
  const at = { at: 'feature', jobId: job.id, featureId: hub.id } as const;
  location.hash = hrefOf(choosing === undefined ? at : { ...at, choosing });
  if (document.querySelector('.app') === null) onScreen(store, <App store={store} />);
}

async function log(size: string, number: number): Promise<void> {
  fireEvent.input(await screen.findByLabelText(`Hub, reading ${number}`, {}, PATIENCE), {
    target: { value: size },
  });
  fireEvent.click(screen.getByRole('button', { name: 'Log reading' }));
  await waitFor(async () => expect(await readingsOf(store, hub.id)).toHaveLength(number), PATIENCE);
}

test('a hub of 4.412 is asked about, and brought to 68 °F once metal and warmth are said', async () => {
  open();
  await log('4.412', 1);
  // 4.412 · 11.9 millionths · 10 °C
  await screen.findByText('How warm? ±.0005 in if aluminum.', {}, PATIENCE);
  open('warm');
  fireEvent.click(await screen.findByRole('button', { name: 'Aluminum 6061' }, PATIENCE));
  fireEvent.input(await screen.findByLabelText('Temperature, °F', {}, PATIENCE), { target: { value: '95' } });
  fireEvent.click(screen.getByRole('button', { name: 'Use it' }));
  await log('4.412', 2);
  // 15 °C · 11.9 millionths of 4.412 in
  await screen.findByText('95 °F takes .0008 in off: Aluminum 6061, at 68 °F.', {}, PATIENCE);
  const [cold, warm] = await readingsOf(store, hub.id);
  expect(cold).not.toHaveProperty('warmth');
  expect(warm).toMatchObject({
    typed: '4.412',
    warmth: { degrees: '95', unit: 'F', material: 'aluminium-6061' },
  });
  const form = warm && formOfReadings('length', [warm]);
  // 4.412 − .000788
  expect(form && decimalText(mean(form.tightest.estimate), 'in', 5)).toBe('4.41121');
  // The one before it lay in the same shop: both count alike, and neither is left as it was read.
  const both = formOfReadings('length', await readingsOf(store, hub.id));
  expect(both && decimalText(mean(both.tightest.estimate), 'in', 5)).toBe('4.41121');
  expect(both && decimalText(mean(both.loosest.estimate), 'in', 5)).toBe('4.41121');
  expect((await getJob(store, job.id))?.warmth).toMatchObject({ degrees: '95', unit: 'F' });
});

test('once it is said how warm it is, another size is asked for its metal only', async () => {
  worked(await changeJob(store, job.id, { warmth: { degrees: '95', unit: 'F', at: Date.now() } }));
  open();
  await log('4.412', 1);
  expect(await screen.findByText('Which metal? ±.0005 in if aluminum.', {}, PATIENCE)).toBeTruthy();
});

test('what was said yesterday is not taken for today', async () => {
  const yesterday = Date.now() - 24 * 3_600_000;
  worked(await changeJob(store, job.id, { warmth: { degrees: '95', unit: 'F', at: yesterday } }));
  open('warm');
  fireEvent.click(await screen.findByRole('button', { name: 'Aluminum 6061' }, PATIENCE));
  await screen.findByLabelText('Temperature, °F', {}, PATIENCE);
  open();
  await log('4.412', 1);
  expect((await readingsOf(store, hub.id))[0]).not.toHaveProperty('warmth');
});

test('a size that warmth can’t matter for is not asked about', async () => {
  const caliper = usualTools.find(({ id }) => id === 'digital-caliper');
  if (!caliper) throw new Error('a caliper is among the tools');
  const entry = { exact: lengthOf('.385 in'), typed: '.385', unit: 'in' } as const;
  worked(
    await logReading(store, { featureId: hub.id, jobId: job.id, entry, tool: caliper, zeroChecked: false }),
  );
  open();
  await screen.findByLabelText('Hub, reading 2', {}, PATIENCE);
  expect(screen.queryByText(/^How warm\?/)).toBeNull();
});

test.each([
  ['1970', Date.UTC(1970, 0, 2)],
  ['past 2200', Date.UTC(2200, 0, 2)],
])('with the phone’s clock at %s warmth is asked once, and kept with the reading', async (_when, nowMs) => {
  vi.useFakeTimers({ toFake: ['Date'], now: nowMs });
  open('warm');
  fireEvent.click(await screen.findByRole('button', { name: 'Aluminum 6061' }, PATIENCE));
  fireEvent.input(await screen.findByLabelText('Temperature, °F', {}, PATIENCE), { target: { value: '95' } });
  fireEvent.click(screen.getByRole('button', { name: 'Use it' }));
  await log('4.412', 1);
  await screen.findByText('95 °F takes .0008 in off: Aluminum 6061, at 68 °F.', {}, PATIENCE);
  expect((await readingsOf(store, hub.id))[0]).toMatchObject({ warmth: { degrees: '95', unit: 'F' } });
  vi.useRealTimers();
});
