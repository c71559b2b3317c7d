import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { hrefOf } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { createPart } from '../../../src/store/kept/parts.ts';
import type { AssemblyStep, Job } from '../../../src/store/base/records.ts';
import { putSetting } from '../../../src/store/kept/settings.ts';
import { addSteps, getStep, markDone, stepsOf } from '../../../src/store/kept/steps.ts';
import { createWorksheet } from '../../../src/store/kept/worksheets.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen, said } from '../on-screen.tsx';

// The screens are fetched when they are first opened.
const PATIENCE = { timeout: 30_000 };

let store: Store;
let job: Job;
let first: AssemblyStep;
beforeEach(async () => {
  store = await openForTest({ now: () => Date.now() });
  job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const texts = ['Fit the axle', 'Tighten the nut', 'Fit the cover'];
  const steps = worked(
    await addSteps(
      store,
      texts.map((text) => ({ jobId: job.id, text })),
    ),
  );
  const [step] = steps;
  if (!step) throw new Error('no step was made');
  first = step;
});
afterEach(clearAway);

function at(field?: string) {
  location.hash = hrefOf({
    at: 'step',
    jobId: job.id,
    stepId: first.id,
    ...(field !== undefined && { field }),
  });
  onScreen(store, <App store={store} />);
}

const press = async (name: string | RegExp) =>
  fireEvent.click(await screen.findByRole('button', { name }, PATIENCE));
const follow = async (name: string | RegExp) =>
  fireEvent.click(await screen.findByRole('link', { name }, PATIENCE));
const heading = (name: string | RegExp) => screen.findByRole('heading', { name }, PATIENCE);
const kept = () => getStep(store, first.id);

async function type(label: string, text: string) {
  fireEvent.input(await screen.findByLabelText(label, {}, PATIENCE), { target: { value: text } });
}

describe('the torque of a step', () => {
  test('is the manual’s figure in the manual’s unit, and where it stands is asked for next', async () => {
    at('torque');
    await heading('Torque in the manual?');
    await type('Torque', '61');
    await press('N·m');
    await press('Use it');
    await heading('Where is it stated?');
    await press('Use it');
    expect((await screen.findByRole('alert')).textContent).toBe(
      'Name the manual and the page, or who stated it.',
    );
    await type('Manual and page', 'Manual, page 7-12');
    await press('Use it');
    await heading('Step 1 of 3');
    expect((await kept())?.torque).toEqual({ typed: '61', unit: 'Nm', source: 'Manual, page 7-12' });
  });

  test('that no bolt of a motorcycle has is asked about, not taken', async () => {
    at('torque');
    await type('Torque', '15000');
    await press('Use it');
    // 2000 N·m are 1475 lbf·ft.
    expect((await screen.findByRole('alert')).textContent).toBe(
      '15000 lbf·ft is outside 0.1 to 1475 lbf·ft. Check the figure.',
    );
    expect((await kept())?.torque).toBeUndefined();
  });

  test('can be taken out again', async () => {
    at('torque');
    await type('Torque', '45');
    await press('Use it');
    await type('Manual and page', 'Manual, page 1');
    await press('Use it');
    await follow(/^Torque/);
    await press('Leave out');
    await heading('Step 1 of 3');
    expect((await kept())?.torque).toBeUndefined();
  });
});

describe('a step', () => {
  test('that is done says so before it is changed, and why it is to be done again after', async () => {
    worked(await markDone(store, first.id, 'Jo B.'));
    at();
    await screen.findByText(/Change it, and it has to be done again\./, {}, PATIENCE);
    await type('Grease', 'copper paste');
    const again = await screen.findByText(
      /^Done by Jo B\., .*, and changed since: do it again\.$/,
      {},
      PATIENCE,
    );
    expect(said()).toBe(again.textContent);
    await screen.findByRole('button', { name: 'Step done' });
    location.hash = hrefOf({ at: 'assembly', jobId: job.id });
    await screen.findByText(/^Done by Jo B\., .*, and changed since: do it again\.$/, {}, PATIENCE);
  });

  test('keeps its words at every letter, and its last words when they are wiped', async () => {
    at();
    await type('Which way round', 'head to the left');
    await type('Grease', 'copper paste');
    await type('What is done', 'Push the axle in');
    await type('What is done', '');
    await waitFor(
      async () =>
        expect(await kept()).toMatchObject({
          orientation: 'head to the left',
          grease: 'copper paste',
          text: 'Push the axle in',
        }),
      PATIENCE,
    );
    await type('Grease', '');
    await waitFor(async () => expect(await kept()).not.toHaveProperty('grease'), PATIENCE);
  });

  test('with a locker asks how long it cures, half an hour being .5', async () => {
    at();
    await type('Thread locker', 'medium');
    await follow(/^Cure time/);
    await type('Cure time, hours', '.5');
    await press('Use it');
    await heading('Step 1 of 3');
    expect((await kept())?.cureHours).toBe('0.5');
  });

  test('comes later or earlier by a press each, and no further than the ends', async () => {
    at();
    await heading('Step 1 of 3');
    expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Earlier' }).disabled).toBe(true);
    await press('Later');
    await heading('Step 2 of 3');
    await press('Later');
    await heading('Step 3 of 3');
    expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Later' }).disabled).toBe(true);
    expect((await stepsOf(store, job.id)).map(({ text }) => text)).toEqual([
      'Tighten the nut',
      'Fit the cover',
      'Fit the axle',
    ]);
  });

  test('is done from here too, by whoever does the work', async () => {
    await putSetting(store, 'fitter', 'Jo B.');
    at();
    await press('Step done');
    await heading('Steps: 1 of 3 done');
    expect((await kept())?.done?.by).toBe('Jo B.');
  });

  test('has a cotter pin, parts and a drawing where it needs them', async () => {
    const part = worked(await createPart(store, { jobId: job.id, name: 'Axle', origin: 'kit' }));
    const worksheet = worked(
      await createWorksheet(store, { jobId: job.id, kind: 'spacer-stack', title: 'Float' }),
    );
    at();
    await press('Cotter pin: none');
    await follow(/^Parts/);
    await press('Axle, kit');
    await waitFor(async () => expect((await kept())?.partIds).toEqual([part.id]), PATIENCE);
    await follow('Back to the step');
    await follow(/^Drawing/);
    await press(/^Float/);
    await heading('Step 1 of 3');
    expect(await kept()).toMatchObject({ cotterPin: true, worksheetId: worksheet.id });
  });

  test('that is removed is gone from the assembly', async () => {
    at();
    await press('Remove this step');
    await heading('Steps: 0 of 2 done');
    expect(await kept()).toBeUndefined();
  });
});
