import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { hrefOf } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { createJob, getJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { addRecheck, rechecksOf, setOdometer } from '../../../src/store/kept/rechecks.ts';
import type { Job } from '../../../src/store/base/records.ts';
import { putSetting } from '../../../src/store/kept/settings.ts';
import { fillDisk } from '../../store/fill-disk.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

// The screens are fetched when they are first opened.
const PATIENCE = { timeout: 30_000 };
const DAY_MS = 86_400_000;

let store: Store;
let job: Job;
beforeEach(async () => {
  store = await openForTest({ now: () => Date.now() });
  job = worked(await createJob(store, { name: 'Outfit', systems: ['brake'] }));
  await putSetting(store, 'fitter', 'Jo B.');
});
afterEach(clearAway);

function at(field?: string) {
  location.hash = hrefOf({ at: 'assembly', jobId: job.id, ...(field !== undefined && { field }) });
  onScreen(store, <App store={store} />);
}

const press = async (name: string | RegExp) =>
  fireEvent.click(await screen.findByRole('button', { name }, PATIENCE));
const follow = async (name: string | RegExp) =>
  fireEvent.click(await screen.findByRole('link', { name }, PATIENCE));
const heading = (name: string | RegExp) => screen.findByRole('heading', { name }, PATIENCE);
const first = async () => (await rechecksOf(store, job.id))[0];

async function type(label: string, text: string) {
  fireEvent.input(await screen.findByLabelText(label, {}, PATIENCE), { target: { value: text } });
}

describe('a usual re-check', () => {
  test('is marked common practice, and counts from the first odometer reading that is typed', async () => {
    at('rechecks/new');
    const usual = await screen.findByRole('button', { name: /^Nuts, torque, runout: after 50 mi/ }, PATIENCE);
    expect(usual.textContent).toContain('common practice, no source; the manual’s own interval rules');
    fireEvent.click(usual);
    await screen.findByText('It needs an odometer reading to count from. Set for after 50 mi.', {}, PATIENCE);
    await follow(/^Odometer/);
    await type('Odometer', '12040');
    await press('Use it');
    await screen.findByText('Not yet: 50 mi to go. Set for after 50 mi.', {}, PATIENCE);
    expect(await first()).toMatchObject({ afterDistance: 50, unit: 'mi', fromOdometer: 12_040 });
  });

  test('that is past its miles stands at the top of the job list until it is done', async () => {
    worked(await setOdometer(store, job.id, { reading: 12_000, unit: 'mi' }));
    worked(await addRecheck(store, { jobId: job.id, what: 'Nuts', afterDistance: 50, unit: 'mi' }));
    worked(await setOdometer(store, job.id, { reading: 12_062, unit: 'mi' }));
    location.hash = '#/jobs';
    onScreen(store, <App store={store} />);
    const due = await screen.findByRole('link', { name: /^Outfit: Nuts/ }, PATIENCE);
    expect(due.textContent).toContain('Overdue by 12 mi.');
    fireEvent.click(due);
    await press('Re-check done: Nuts');
    await screen.findByText(/^Done by Jo B\., /, {}, PATIENCE);
    expect((await first())?.done).toMatchObject({ by: 'Jo B.', odometer: 12_062 });
    await follow('Back to the job');
    await follow('Back to the jobs');
    await heading('Jobs');
    await waitFor(() => expect(screen.queryByRole('link', { name: /^Outfit: Nuts/ })).toBeNull(), PATIENCE);
  });

  test('after days comes due without any odometer', async () => {
    worked(
      await addRecheck(store, {
        jobId: job.id,
        what: 'Cotter pins',
        afterDays: 7,
        from: Date.now() - 9 * DAY_MS,
      }),
    );
    location.hash = '#/jobs';
    onScreen(store, <App store={store} />);
    const due = await screen.findByRole('link', { name: /^Outfit: Cotter pins/ }, PATIENCE);
    expect(due.textContent).toContain('Overdue by 2 days.');
  });

  test('stands above the steps of its job while it is due, and below them once it is done', async () => {
    const days = { jobId: job.id, what: 'Cotter pins', afterDays: 7, from: Date.now() - 9 * DAY_MS };
    worked(await addRecheck(store, days));
    at();
    await screen.findByText(/^Overdue by 2 days/, {}, PATIENCE);
    const order = () => screen.getAllByRole('heading', { level: 2 }).map(({ textContent }) => textContent);
    expect(order()[0]).toBe('Re-checks');
    await press('Re-check done: Cotter pins');
    await screen.findByText(/^Done by Jo B\., /, {}, PATIENCE);
    expect(order().at(-1)).toBe('Re-checks');
  });
});

describe('a re-check of one’s own', () => {
  test('has its days and its distance, in kilometres where the odometer counts those', async () => {
    worked(await setOdometer(store, job.id, { reading: 100, unit: 'km' }));
    at('rechecks/new');
    await press('Add the re-check');
    expect((await screen.findByRole('alert')).textContent).toBe('Say what is to be looked at again.');
    await type('What is looked at again', 'Wheel nuts');
    await press('Add the re-check');
    await follow(/^After so many days/);
    await type('Days', '7');
    await press('Use it');
    await follow(/^After so many miles or kilometres/);
    await type('Distance', '80');
    await press('Use it');
    await screen.findByText('Not yet: 7 days, 80 km to go.', {}, PATIENCE);
    expect(await first()).toMatchObject({
      what: 'Wheel nuts',
      afterDays: 7,
      afterDistance: 80,
      unit: 'km',
      fromOdometer: 100,
    });
  });

  test('that is set in miles on a kilometre odometer starts from the whole mile below', async () => {
    worked(await setOdometer(store, job.id, { reading: 100, unit: 'km' }));
    const set = worked(await addRecheck(store, { jobId: job.id, what: 'Wheel nuts', unit: 'km' }));
    at(`rechecks/${set.id}/distance`);
    await type('Distance', '50');
    await press('mi, miles');
    await press('Use it');
    await heading('Wheel nuts');
    // 100 / 1.609344 = 62.14
    expect(await first()).toMatchObject({ afterDistance: 50, unit: 'mi', fromOdometer: 62 });
  });

  test('done by mistake is to be done again; one that is removed is gone', async () => {
    worked(await addRecheck(store, { jobId: job.id, what: 'Wheel nuts', afterDays: 7 }));
    at();
    await press('Re-check done: Wheel nuts');
    await press('Not done after all: Wheel nuts');
    await waitFor(async () => expect(await first()).not.toHaveProperty('done'), PATIENCE);
    await follow(/^Wheel nuts/);
    await press('Remove this re-check');
    await heading('Re-checks');
    expect(await rechecksOf(store, job.id)).toEqual([]);
  });

  test('says nothing of an odometer that was not read that day', async () => {
    worked(await addRecheck(store, { jobId: job.id, what: 'Wheel nuts', afterDays: 7 }));
    const monthAgo = Date.now() - 30 * DAY_MS;
    const earlier = { ...store, now: () => monthAgo };
    worked(await setOdometer(earlier, job.id, { reading: 1200, unit: 'mi' }));
    at();
    await press('Re-check done: Wheel nuts');
    await screen.findByText(/^Done by Jo B\., /, {}, PATIENCE);
    expect((await first())?.done).not.toHaveProperty('odometer');
    expect((await getJob(store, job.id))?.odometer).toMatchObject({ reading: 1200, at: monthAgo });
  });

  test('goes with the odometer that was read that day', async () => {
    worked(await addRecheck(store, { jobId: job.id, what: 'Wheel nuts', afterDays: 7 }));
    worked(await setOdometer(store, job.id, { reading: 1200, unit: 'mi' }));
    at();
    await press('Re-check done: Wheel nuts');
    await waitFor(async () => expect((await first())?.done).toMatchObject({ odometer: 1200 }), PATIENCE);
  });

  test('on a full phone keeps what the odometer reads in the field', async () => {
    at('odometer');
    await type('Odometer', '12047');
    fillDisk('jobs');
    await press('Use it');
    expect(await screen.findByText(/full/, {}, PATIENCE)).toBeTruthy();
    expect(screen.getByLabelText<HTMLInputElement>('Odometer').value).toBe('12047');
    vi.restoreAllMocks();
    expect((await getJob(store, job.id))?.odometer).toBeUndefined();
  });

  test('asks who does the work where nobody was asked yet', async () => {
    await putSetting(store, 'fitter', '');
    worked(await addRecheck(store, { jobId: job.id, what: 'Wheel nuts', afterDays: 7 }));
    at();
    await press('Re-check done: Wheel nuts');
    await type('Name or initials', 'Kim');
    await press('Use this name');
    expect(await screen.findByText(/^Done by Kim, /, {}, PATIENCE)).toBeTruthy();
  });
});
