import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, expect, test } from 'vitest';
import { JobScreen } from '../../../src/screens/jobs/job-screen.tsx';
import { createJob, getJob } from '../../../src/store/jobs.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen, said } from '../on-screen.tsx';

afterEach(clearAway);

async function aJob() {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  onScreen(store, <JobScreen jobId={job.id} />);
  await screen.findByLabelText('Name');
  return { store, job };
}

test('a job is named, described and noted as it is typed, but never left without a name', async () => {
  const { store, job } = await aJob();
  fireEvent.input(screen.getByLabelText('What it is'), { target: { value: 'Sidecar outfit' } });
  fireEvent.input(screen.getByLabelText('Note for the sheet'), {
    target: { value: 'Check after 100 miles' },
  });
  fireEvent.input(screen.getByLabelText('Name'), { target: { value: '' } });
  await waitFor(async () =>
    expect(await getJob(store, job.id)).toMatchObject({
      name: 'Outfit',
      what: 'Sidecar outfit',
      customerNote: 'Check after 100 miles',
    }),
  );
});

test('a job that touches the brake says what a mistake can do', async () => {
  await aJob();
  expect(screen.queryByText(/can kill/)).toBeNull();
  fireEvent.click(screen.getByRole('button', { name: 'brake' }));
  await screen.findByText(/can kill/);
});

test('a job is closed and opened again by one key', async () => {
  const { store, job } = await aJob();
  fireEvent.click(screen.getByRole('button', { name: 'Close this job' }));
  const again = await screen.findByRole('button', { name: 'Open this job again' });
  expect(said()).toBe('The job is closed.');
  expect((await getJob(store, job.id))?.state).toBe('closed');
  fireEvent.click(again);
  await screen.findByRole('button', { name: 'Close this job' });
  expect((await getJob(store, job.id))?.state).toBe('open');
});
