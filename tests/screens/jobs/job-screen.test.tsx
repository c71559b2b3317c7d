import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, expect, test, vi } from 'vitest';
import { JobScreen } from '../../../src/screens/jobs/job-screen.tsx';
import { RouteScreen } from '../../../src/screens/route/route-screen.tsx';
import { restoreBackup } from '../../../src/store/file/backup.ts';
import { createFeature } from '../../../src/store/kept/features.ts';
import { changeJob, createJob, getJob } from '../../../src/store/kept/jobs.ts';
import { signSheet } from '../../../src/store/kept/sheets.ts';
import { addSteps } from '../../../src/store/kept/steps.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { backupOf, log } from '../../store/two-phones-for-test.ts';
import { aMomentLater, clearAway, onScreen, said } from '../on-screen.tsx';

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

test('a field shows what is kept again after an undo, and what is typed while it is typed', async () => {
  const { store, job } = await aJob();
  const field = () => screen.getByLabelText<HTMLTextAreaElement>('What it is');
  fireEvent.input(field(), { target: { value: 'Side' } });
  fireEvent.input(field(), { target: { value: 'Sidecar ' } });
  expect(field().value).toBe('Sidecar ');
  await waitFor(async () => expect((await getJob(store, job.id))?.what).toBe('Sidecar'));
  expect(field().value).toBe('Sidecar ');
  for (const left of ['Side', '']) {
    // oxlint-disable-next-line no-await-in-loop
    fireEvent.click(await screen.findByRole('button', { name: 'Undo: changed Outfit' }));
    // oxlint-disable-next-line no-await-in-loop
    await waitFor(() => expect(field().value).toBe(left));
    // oxlint-disable-next-line no-await-in-loop
    await aMomentLater();
  }
  fireEvent.input(field(), { target: { value: 'Trailer' } });
  await waitFor(async () => expect((await getJob(store, job.id))?.what).toBe('Trailer'));
  worked(await changeJob(store, job.id, { what: 'Boat trailer' }));
  await waitFor(() => expect(field().value).toBe('Boat trailer'));
});

test('a signed job says at a letter that it was changed, and reads none of its readings for it', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const bore = worked(await createFeature(store, { jobId: job.id, kind: 'bore', name: 'left bore' }));
  worked(await log(store, bore.id, job.id, '.4487'));
  const by = { signedBy: 'Jo B.', engineVersion: '0.1.0', readingsCsv: '', cutsCsv: '' };
  worked(await signSheet(store, { jobId: job.id, content: ['as it stands'], ...by }));
  const reads = vi.spyOn(IDBIndex.prototype, 'getAll');
  onScreen(store, <JobScreen jobId={job.id} />);
  await screen.findByText(/signed off/);
  expect(screen.queryByText(/changed since/)).toBeNull();
  await aMomentLater();
  reads.mockClear();
  fireEvent.input(screen.getByLabelText('What it is'), { target: { value: 'Sidecar' } });
  await screen.findByText(/changed since/);
  const read = reads.mock.contexts.map((index) => index instanceof IDBIndex && index.name);
  expect(read).toContain('jobId');
  expect(read).not.toContain('jobId+at');
  reads.mockRestore();
});

test('a job that touches the brake says what a mistake can do', async () => {
  await aJob();
  expect(screen.queryByText(/can kill/)).toBeNull();
  fireEvent.click(screen.getByRole('button', { name: 'brake' }));
  await screen.findByText(/can kill/);
});

test('two systems pressed one right after the other are both kept', async () => {
  const { store, job } = await aJob();
  for (const name of ['brake', 'axle']) fireEvent.click(screen.getByRole('button', { name }));
  await waitFor(async () => expect((await getJob(store, job.id))?.systems).toEqual(['brake', 'axle']));
});

test('a job is closed and opened again by one key', async () => {
  const { store, job } = await aJob();
  // A busy machine may take its time between two presses: by the app's clock there is none.
  vi.useFakeTimers({ toFake: ['performance'] });
  fireEvent.click(screen.getByRole('button', { name: 'Close this job' }));
  const again = await screen.findByRole('button', { name: 'Open this job again' });
  expect(said()).toBe('The job is closed.');
  expect((await getJob(store, job.id))?.state).toBe('closed');
  // At once it would be the first press again, bounced.
  fireEvent.click(again);
  vi.advanceTimersByTime(400);
  expect((await getJob(store, job.id))?.state).toBe('closed');
  fireEvent.click(again);
  vi.useRealTimers();
  await screen.findByRole('button', { name: 'Close this job' });
  expect((await getJob(store, job.id))?.state).toBe('open');
});

test.each([
  { place: 'on its route', Place: RouteScreen },
  { place: 'about it', Place: JobScreen },
])('a job says $place how much of it can’t be read, until a file mends it', async ({ Place }) => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const bore = worked(await createFeature(store, { jobId: job.id, kind: 'bore', name: 'left bore' }));
  const whole = await backupOf(store);
  await store.db.put('features', { ...(await store.db.get('features', bore.id)), kind: 7 });
  onScreen(store, <Place jobId={job.id} />);
  await screen.findByText(/^One record of this job can’t be read/);
  worked(await restoreBackup(store, whole));
  await waitFor(() => expect(screen.queryByText(/can’t be read/)).toBeNull());
});

test('where making the job can’t be undone for another phone’s work, About says so', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const helper = await openForTest();
  worked(await restoreBackup(helper, await backupOf(store)));
  worked(await addSteps(helper, [{ jobId: job.id, text: 'Fit the axle' }]));
  worked(await restoreBackup(store, await backupOf(helper)));
  onScreen(store, <JobScreen jobId={job.id} />);
  await screen.findByText(/^“Made the job Outfit” can't be undone any more: work from another phone/);
  expect(screen.queryByRole('button', { name: /^Undo/ })).toBeNull();
});
