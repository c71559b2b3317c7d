import { act, screen } from '@testing-library/preact';
import { afterEach, expect, test, vi } from 'vitest';
import { JobsScreen } from '../../../src/screens/jobs/jobs-screen.tsx';
import { createJob } from '../../../src/store/jobs.ts';
import { addRecheck } from '../../../src/store/rechecks.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

// What stands behind the first drawing is fetched when it is first wanted.
const PATIENCE = { timeout: 30_000 };

afterEach(async () => {
  vi.useRealTimers();
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
