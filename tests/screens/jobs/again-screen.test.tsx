import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, expect, test } from 'vitest';
import { AgainScreen } from '../../../src/screens/jobs/again-screen.tsx';
import { addDemo } from '../../store/add-demo.ts';
import { cutsOf } from '../../../src/store/kept/cuts.ts';
import { listJobs } from '../../../src/store/kept/job-list.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

afterEach(clearAway);

test('a job is begun from another by one press more than its page, without the old cuts unless they are chosen', async () => {
  const store = await openForTest();
  worked(await addDemo(store));
  onScreen(store, <AgainScreen jobId="demo-outfit-7" />);
  const cuts = await screen.findByRole('button', { name: 'Cuts, old figures' });
  expect(cuts.getAttribute('aria-pressed')).toBe('false');
  fireEvent.click(screen.getByRole('button', { name: 'Make the job' }));
  const begun = async () =>
    (await listJobs(store, { limit: 9 })).jobs.find(({ name }) => name === 'Outfit 7, again');
  await waitFor(async () => expect(await begun()).toBeDefined());
  expect(await cutsOf(store, (await begun())?.id ?? '')).toEqual([]);
});
