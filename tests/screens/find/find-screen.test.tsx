import { fireEvent, screen } from '@testing-library/preact';
import { afterEach, expect, test } from 'vitest';
import { FindScreen } from '../../../src/screens/find/find-screen.tsx';
import { createJob, changeJob } from '../../../src/store/kept/jobs.ts';
import { addDemo } from '../../store/add-demo.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

afterEach(clearAway);

const FIELD = 'Any word or size in a job';

test('a size leads to where it was read, in the job that has it', async () => {
  const store = await openForTest();
  worked(await addDemo(store));
  onScreen(store, <FindScreen />);
  fireEvent.input(await screen.findByLabelText(FIELD), { target: { value: '.4490' } });
  const row = await screen.findByRole('link', { name: /Outfit 7.*\.4490 in/ });
  expect(row.getAttribute('href')).toBe('#/job/demo-outfit-7/readings/demo-link-bore');
  screen.getByText('1 job.');
});

test('a customer that is written down while the search stands open is found', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  onScreen(store, <FindScreen />);
  fireEvent.input(await screen.findByLabelText(FIELD), { target: { value: 'weav' } });
  await screen.findByText('Nothing found.');
  worked(await changeJob(store, job.id, { customer: 'I. Weaver' }));
  const row = await screen.findByRole('link', { name: /Outfit.*I\. Weaver/ });
  expect(row.getAttribute('href')).toBe(`#/job/${job.id}/about`);
});

test('more jobs than a screenful come on a press', async () => {
  const store = await openForTest();
  for (let number = 1; number <= 23; number += 1)
    // oxlint-disable-next-line no-await-in-loop
    worked(await createJob(store, { name: `Hub ${number}`, systems: [] }));
  onScreen(store, <FindScreen />);
  fireEvent.input(await screen.findByLabelText(FIELD), { target: { value: 'hub' } });
  await screen.findByText('23 jobs.');
  expect(screen.getAllByRole('link', { name: /^Hub/ })).toHaveLength(20);
  fireEvent.click(screen.getByRole('button', { name: 'Show more' }));
  expect(screen.getAllByRole('link', { name: /^Hub/ })).toHaveLength(23);
});
