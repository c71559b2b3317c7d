import { fireEvent, screen, waitFor, within } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { hrefOf } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { createPart, partsOf } from '../../../src/store/kept/parts.ts';
import type { AssemblyStep, Job } from '../../../src/store/base/records.ts';
import { getSetting, putSetting } from '../../../src/store/kept/settings.ts';
import { addSteps, stepsOf, type NewStep } from '../../../src/store/kept/steps.ts';
import { createWorksheet } from '../../../src/store/kept/worksheets.ts';
import { fillDisk } from '../../store/fill-disk.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { aMomentLater, clearAway, onScreen, said } from '../on-screen.tsx';
import { typedSize } from '../worksheets/worksheet-for-test.ts';

// The screens are fetched when they are first opened.
const PATIENCE = { timeout: 30_000 };

let store: Store;
let job: Job;
beforeEach(async () => {
  store = await openForTest({ now: () => Date.now() });
  job = worked(await createJob(store, { name: 'Outfit', systems: ['brake'] }));
});
afterEach(clearAway);

function at(field?: string) {
  location.hash = hrefOf({ at: 'assembly', jobId: job.id, ...(field !== undefined && { field }) });
  onScreen(store, <App store={store} />);
}

async function withSteps(...steps: readonly Omit<NewStep, 'jobId'>[]): Promise<AssemblyStep[]> {
  return worked(
    await addSteps(
      store,
      steps.map((step) => ({ ...step, jobId: job.id })),
    ),
  );
}

const press = async (name: string | RegExp) =>
  fireEvent.click(await screen.findByRole('button', { name }, PATIENCE));
const follow = async (name: string | RegExp) =>
  fireEvent.click(await screen.findByRole('link', { name }, PATIENCE));
const heading = (name: string | RegExp) => screen.findByRole('heading', { name }, PATIENCE);
const doneBy = async () => (await stepsOf(store, job.id)).map(({ done }) => done?.by);

describe('a step', () => {
  test('that could not be kept as done on a full disk says so, and the name typed for it stays', async () => {
    await withSteps({ text: 'Fit the washer' });
    at();
    await press('Step 1 is done');
    fireEvent.input(await screen.findByLabelText('Name or initials', {}, PATIENCE), {
      target: { value: 'Jo B.' },
    });
    fillDisk('steps');
    await press('Use this name, step done');
    expect((await screen.findByRole('alert')).textContent).toContain('The phone is full');
    expect(screen.getByLabelText<HTMLInputElement>('Name or initials').value).toBe('Jo B.');
    vi.restoreAllMocks();
    expect(await doneBy()).toEqual([undefined]);
  });

  test('is done by whoever was asked for once, and the next one by the same', async () => {
    await withSteps({ text: 'Fit the washer' }, { text: 'Fit the spacer' });
    at();
    await press('Step 1 is done');
    await heading('Who does the work?');
    fireEvent.input(screen.getByLabelText('Name or initials'), { target: { value: 'Jo B.' } });
    await press('Use this name, step done');
    await screen.findByText('Done by Jo B.', {}, PATIENCE);
    await press('Step 2 is done');
    await heading('All 2 steps done');
    expect(await doneBy()).toEqual(['Jo B.', 'Jo B.']);
    expect(await getSetting(store, 'fitter')).toBe('Jo B.');
    expect(said()).toBe('Step 2 done by Jo B.');
  });

  test('is not done by nobody', async () => {
    await withSteps({ text: 'Fit the washer' });
    at();
    await press('Step 1 is done');
    await press('Use this name, step done');
    expect((await screen.findByRole('alert')).textContent).toBe('Type a name or initials first.');
    expect(await doneBy()).toEqual([undefined]);
  });

  test('that was pressed by mistake is not done again', async () => {
    await putSetting(store, 'fitter', 'Jo B.');
    await withSteps({ text: 'Fit the washer' });
    at();
    await press('Step 1 is done');
    await aMomentLater();
    await press('Step 1 is not done after all');
    await heading('Steps: 0 of 1 done');
    expect(await doneBy()).toEqual([undefined]);
  });

  test('shows the manual’s torque with where it stands, and beside it the same on other wrenches', async () => {
    await withSteps({
      text: 'Tighten the axle nut',
      torque: { typed: '45', unit: 'lbf-ft', source: 'Manual, page 7-12' },
      cotterPin: true,
      grease: 'copper paste',
      orientation: 'flange outward',
    });
    at();
    expect(await screen.findByText('45 lbf·ft', {}, PATIENCE)).toBeTruthy();
    // 45 × 1.355818 = 61.01, 45 × 12 = 540 (NIST SP 811, B.8)
    expect(screen.getByText('61.0 N·m · 540 lbf·in')).toBeTruthy();
    for (const words of [
      'Manual, page 7-12',
      'Cotter pin: a new one, both legs bent',
      'Grease: copper paste',
      'Which way: flange outward',
    ])
      expect(screen.getByText(words)).toBeTruthy();
  });

  test('with locker says how long it has to cure from when it was done', async () => {
    await putSetting(store, 'fitter', 'Jo B.');
    await withSteps({ text: 'Fit the bolt', locker: 'medium', cureHours: '24' });
    at();
    expect(await screen.findByText('Thread locker: medium, cures in 24 h', {}, PATIENCE)).toBeTruthy();
    await press('Step 1 is done');
    expect(await screen.findByText(/^Thread locker: medium, cures until .* 24 h to go$/)).toBeTruthy();
  });
});

describe('steps to add', () => {
  test('come from a stack’s worksheet in its order, with its drawing', async () => {
    const worksheet = worked(
      await createWorksheet(store, {
        jobId: job.id,
        kind: 'spacer-stack',
        title: 'Bracket float',
        sizes: { fixed: typedSize('.970') },
        parts: {
          a: { name: 'washer', order: 1, count: 1, adjustable: false, size: typedSize('.060') },
          b: { name: 'spacer', order: 2, count: 1, adjustable: true, size: typedSize('.900') },
        },
      }),
    );
    at('steps');
    await press(/^Bracket float: 3 steps/);
    await heading('Steps: 0 of 3 done');
    const steps = await stepsOf(store, job.id);
    expect(steps.map(({ text }) => text)).toEqual([
      'Stack in this order, from the left on the sleeve: washer, spacer',
      'Fit the washer',
      'Fit the spacer',
    ]);
    expect(steps[0]?.worksheetId).toBe(worksheet.id);
  });

  test('in the fitter’s own words open to be filled in', async () => {
    at('steps');
    await press('Add this step');
    expect((await screen.findByRole('alert')).textContent).toBe('Say what is done in this step.');
    fireEvent.input(screen.getByLabelText('What is done'), { target: { value: 'Bleed the brake' } });
    await press('Add this step');
    await heading('Step 1 of 1');
    expect((await stepsOf(store, job.id))[0]?.text).toBe('Bleed the brake');
  });
});

describe('a part', () => {
  test('that is a mock-up stands first, marked, until the real part is in', async () => {
    worked(await createPart(store, { jobId: job.id, name: 'Arm', origin: 'donor' }));
    worked(await createPart(store, { jobId: job.id, name: 'Spacer', origin: 'mock-up' }));
    at();
    const parts = await screen.findByRole('region', { name: 'Parts' }, PATIENCE);
    await within(parts).findByText('mock-up: must come out');
    expect(within(parts).getByRole('img', { name: 'mock-up' })).toBeTruthy();
    expect(within(parts).getAllByRole('listitem')[0]?.textContent).toContain('Spacer');
    await press('Spacer: swapped for the real part');
    await waitFor(() => expect(within(parts).queryByRole('img', { name: 'mock-up' })).toBeNull(), PATIENCE);
    expect((await partsOf(store, job.id)).find(({ name }) => name === 'Spacer')?.swapped).toBeTruthy();
  });

  test('is added with where it came from, renamed, and may turn out to be a mock-up', async () => {
    at('parts/new');
    await press('Add the part');
    expect((await screen.findByRole('alert')).textContent).toBe('Say what the part is called.');
    fireEvent.input(screen.getByLabelText('Name'), { target: { value: 'Caliper' } });
    await press('bought');
    await press('Add the part');
    await follow(/^Caliper/);
    fireEvent.input(await screen.findByLabelText('Name', {}, PATIENCE), {
      target: { value: 'Rear caliper' },
    });
    await press('mock-up');
    await press('Rear caliper: swapped for the real part');
    await press('The mock-up is in after all');
    await waitFor(async () => {
      const [part] = await partsOf(store, job.id);
      expect(part).toMatchObject({ name: 'Rear caliper', origin: 'mock-up' });
      expect(part).not.toHaveProperty('swapped');
    }, PATIENCE);
    await press('Remove Rear caliper');
    await heading('Parts');
    expect(await partsOf(store, job.id)).toEqual([]);
  });
});

test('an assembly that is empty says what goes there; a job that is gone says so', async () => {
  at();
  expect(await screen.findByText(/^The steps of putting it together go here/, {}, PATIENCE)).toBeTruthy();
  expect(screen.getByText('A mistake here can kill.')).toBeTruthy();
  location.hash = '#/job/nowhere/assembly';
  expect(await heading('Not here')).toBeTruthy();
});
