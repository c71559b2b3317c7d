import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { GetScreen } from '../../../src/screens/get/get-screen.tsx';
import { createJob, getJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import type { Job } from '../../../src/store/base/records.ts';
import { addSteps } from '../../../src/store/kept/steps.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen, said } from '../on-screen.tsx';

let store: Store;
let job: Job;
beforeEach(async () => {
  store = await openForTest();
  job = worked(await createJob(store, { name: 'Link arm', systems: [] }));
  worked(await addSteps(store, [{ jobId: job.id, text: 'Fit the bolt', locker: 'medium', cureHours: '24' }]));
  onScreen(store, <GetScreen jobId={job.id} />);
});
afterEach(async () => {
  vi.unstubAllGlobals();
  await clearAway();
});

const tick = async (name: RegExp) => screen.findByRole('checkbox', { name });

describe('what is to be got for a job', () => {
  test('is ticked when it is there, and the tick is kept', async () => {
    const box = await tick(/^thread locker, medium/);
    expect(box.getAttribute('aria-checked')).toBe('false');
    expect(box.textContent).toContain('for Fit the bolt');
    fireEvent.click(box);
    await waitFor(async () => {
      expect((await tick(/^thread locker/)).getAttribute('aria-checked')).toBe('true');
    });
    expect(Object.keys((await getJob(store, job.id))?.got ?? {})).toHaveLength(1);
    expect(screen.queryByRole('button', { name: 'Share as text' })).toBeNull();
  });

  test('takes a thing of the fitter’s own, and nothing where nothing was said', async () => {
    await tick(/^thread locker/);
    fireEvent.click(screen.getByRole('button', { name: 'Put it on the list' }));
    expect((await screen.findByRole('alert')).textContent).toBe('Say what is to be got.');
    fireEvent.input(screen.getByLabelText(/Something else/), { target: { value: 'split pins' } });
    await new Promise((done) => setTimeout(done, 400));
    fireEvent.click(screen.getByRole('button', { name: 'Put it on the list' }));
    await tick(/^split pins/);
    fireEvent.click(screen.getByRole('button', { name: 'Take split pins off the list' }));
    await waitFor(() => expect(screen.queryByRole('checkbox', { name: /^split pins/ })).toBeNull());
  });

  test('goes out as text, without what is there already', async () => {
    const share = vi.fn<(data: { text: string }) => Promise<void>>(() => Promise.resolve());
    vi.stubGlobal('navigator', Object.assign(Object.create(navigator), { share }));
    await tick(/^thread locker/);
    fireEvent.click(screen.getByRole('button', { name: 'Share as text' }));
    await waitFor(() => expect(said()).toBe('The list was handed over.'));
    expect(share).toHaveBeenCalledWith({ text: 'Link arm\n- thread locker, medium' });
  });
});
