import { act, fireEvent, screen } from '@testing-library/preact';
import { afterEach, expect, test, vi } from 'vitest';
import { JobsScreen } from '../../../src/screens/jobs/jobs-screen.tsx';
import { demoText } from '../../../src/store/demo/demo-lines.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { addRecheck } from '../../../src/store/kept/rechecks.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { aMomentLater, clearAway, onScreen } from '../on-screen.tsx';

// What stands behind the first drawing is fetched when it is first wanted.
const PATIENCE = { timeout: 30_000 };

afterEach(async () => {
  vi.useRealTimers();
  vi.restoreAllMocks();
  await clearAway();
});

test('a list left open over night has in the morning what came due', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const from = new Date(2026, 2, 5, 12).getTime();
  worked(await addRecheck(store, { jobId: job.id, what: 'Wheel nuts', afterDays: 8, from }));
  worked(await addRecheck(store, { jobId: job.id, what: 'Axle nut', afterDays: 7, from }));
  vi.useFakeTimers({ toFake: ['Date'], now: new Date(2026, 2, 12, 22, 30) });
  onScreen(store, <JobsScreen />);
  await screen.findByText('Outfit: Axle nut', {}, PATIENCE);
  expect(screen.queryByText('Outfit: Wheel nuts')).toBeNull();
  vi.setSystemTime(new Date(2026, 2, 13, 6, 0));
  void act(() => void document.dispatchEvent(new Event('visibilitychange')));
  await screen.findByText('Outfit: Wheel nuts', {}, PATIENCE);
});

test('the demo comes out of its file in one press; where the file can’t be had, it is said, and nothing is put in', async () => {
  const store = await openForTest();
  const asked = vi.spyOn(globalThis, 'fetch').mockRejectedValueOnce(new TypeError('no signal'));
  onScreen(store, <JobsScreen />);
  const key = await screen.findByRole('button', { name: 'Show me with the demo job' });
  fireEvent.click(key);
  expect((await screen.findByRole('alert', {}, PATIENCE)).textContent).toContain('Come back with signal');
  expect(screen.queryByText('Outfit 7')).toBeNull();
  asked.mockResolvedValueOnce(new Response(await demoText(Date.UTC(2026, 0, 1))));
  await aMomentLater();
  fireEvent.click(key);
  await screen.findByText('Outfit 7', {}, PATIENCE);
  expect(screen.getAllByText(/demo data/).length).toBe(2);
});
