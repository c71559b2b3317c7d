import { fireEvent, screen } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { hrefOf } from '../../../../src/screens/address.ts';
import { App } from '../../../../src/screens/app.tsx';
import { createJob } from '../../../../src/store/kept/jobs.ts';
import type { Store } from '../../../../src/store/opening/open-store.ts';
import { createWorksheet, getWorksheet, setSize } from '../../../../src/store/kept/worksheets.ts';
import { openForTest, worked } from '../../../store/open-for-test.ts';
import { clearAway, onScreen } from '../../on-screen.tsx';
import { typedSize } from '../worksheet-for-test.ts';

const PATIENCE = { timeout: 30_000 };

beforeEach(() => {
  location.hash = '';
});
afterEach(clearAway);

type Ring = { readonly store: Store; readonly jobId: string; readonly worksheetId: string };

/** A ring with its two sizes typed. */
async function ring(): Promise<Ring> {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Guide', systems: [] }));
  const made = worked(
    await createWorksheet(store, { jobId: job.id, kind: 'ring', title: 'Ring', choices: {} }),
  );
  worked(await setSize(store, made.id, 'recess', typedSize('1.5')));
  worked(await setSize(store, made.id, 'stem', typedSize('.75')));
  return { store, jobId: job.id, worksheetId: made.id };
}

function open({ store, jobId, worksheetId }: Ring, field?: string): void {
  location.hash = hrefOf({ at: 'worksheet', jobId, worksheetId, ...(field !== undefined && { field }) });
  onScreen(store, <App store={store} />);
}

test('the tool that a size counts with stands in the heading, one press from the others', async () => {
  open(await ring(), 'recess');
  const key = await screen.findByRole('button', { name: /^Read with: / }, PATIENCE);
  expect(key.closest('header')).not.toBeNull();
  fireEvent.click(key);
  expect(await screen.findByRole('button', { name: /^dial bore gauge/ })).toBeTruthy();
});

test('a choice is pressed under the drawing, the one that holds now is marked, and the answer follows', async () => {
  const made = await ring();
  open(made, 'locates');
  fireEvent.click(await screen.findByRole('button', { name: /^The stem/ }, PATIENCE));
  await screen.findByText('Outside', {}, PATIENCE);
  expect((await getWorksheet(made.store, made.worksheetId))?.choices['locates']).toBe('stem');
  location.hash = hrefOf({ at: 'worksheet', ...made, field: 'locates' });
  const now = await screen.findByRole('button', { name: /^The stem/ }, PATIENCE);
  expect(now.getAttribute('aria-pressed')).toBe('true');
  expect(document.querySelector('.form-drawing')).not.toBeNull();
});

test('what no drawing carries is asked in words under it', async () => {
  open(await ring(), 'outLeast');
  await screen.findByRole('button', { name: 'Use it' }, PATIENCE);
  expect(document.querySelector('.form-panel')?.textContent).toContain(
    'How much smaller than the recess must it be at least?',
  );
});

// Recess 1.5000 less the clearance in the middle of .001 and .005, left full to a dial of .001: 1.497.
test('the list of worksheets says the figure that the ring’s own page leads with', async () => {
  const { store, jobId } = await ring();
  location.hash = hrefOf({ at: 'worksheets', jobId });
  onScreen(store, <App store={store} />);
  expect(await screen.findByText('Outside 1.497 in', {}, PATIENCE)).toBeTruthy();
});
