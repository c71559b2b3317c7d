import { cleanup, fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { hrefOf, type Address } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { groundOf } from '../../../src/screens/older/job-ground.ts';
import { isOlderThanSizes } from '../../../src/screens/older/older-than-sizes.ts';
import { basisOf } from '../../../src/store/kept/basis.ts';
import { createCheck, sayCheckSeen, takesOf } from '../../../src/store/kept/checks.ts';
import { createCuts, getCut } from '../../../src/store/kept/cuts.ts';
import { logPass } from '../../../src/store/kept/cut-passes.ts';
import { makeAgain } from '../../../src/store/kept/make-cut-again.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import type { Check, Cut, Job, Worksheet } from '../../../src/store/base/records.ts';
import { putSetting } from '../../../src/store/kept/settings.ts';
import { addSteps, markDone, stepsOf } from '../../../src/store/kept/steps.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { createWorksheet, setPart } from '../../../src/store/kept/worksheets.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen, said } from '../on-screen.tsx';
import { typedSize } from '../worksheets/worksheet-for-test.ts';

const PATIENCE = { timeout: 30_000 };
const OLDER = 'Older than its sizes';

let store: Store;
let job: Job;
let worksheet: Worksheet;
let cut: Cut;
let check: Check;
beforeEach(async () => {
  store = await openForTest({ now: () => Date.now() });
  job = worked(await createJob(store, { name: 'Outfit', systems: ['brake'] }));
  await putSetting(store, 'fitter', 'Jo B.');
  // Sleeve 2.510, bracket .640, float wanted .010: the spacer goes to 2.510 − .640 − .010 = 1.860.
  worksheet = worked(
    await createWorksheet(store, {
      jobId: job.id,
      kind: 'spacer-stack',
      title: 'Bracket float',
      choices: { want: 'float' },
      sizes: {
        fixed: typedSize('2.510'),
        lower: typedSize('.008'),
        upper: typedSize('.012'),
        aim: typedSize('.010'),
      },
      parts: {
        a: { name: 'bracket', order: 1, size: typedSize('.640'), count: 1, adjustable: false },
        b: { name: 'spacer', order: 2, size: typedSize('1.900'), count: 1, adjustable: true },
      },
    }),
  );
  const [made] = worked(
    await createCuts(store, [
      {
        jobId: job.id,
        worksheetId: worksheet.id,
        name: 'Spacer, faced to length',
        part: 'spacer',
        operation: 'face',
        of: 'length',
        blank: typedSize('1.900'),
        target: typedSize('1.860'),
        lower: typedSize('1.858'),
        upper: typedSize('1.862'),
        limitsFrom: 'float',
        cuttingTool: 'hss',
        machine: 'lathe',
        basis: basisOf(worksheet, []),
      },
    ]),
  );
  if (!made) throw new Error('no cut was made');
  cut = made;
  check = worked(
    await createCheck(store, {
      jobId: job.id,
      worksheetId: worksheet.id,
      name: 'Slides free by hand',
      by: 'by-eye',
      limitsFrom: 'by eye',
      how: '',
    }),
  );
});
afterEach(clearAway);

/** Another bracket, .690: the spacer would go to 2.510 − .690 − .010 = 1.810. */
async function anotherBracket() {
  const bracket = worksheet.parts['a'];
  if (bracket) worked(await setPart(store, worksheet.id, 'a', { ...bracket, size: typedSize('.690') }));
}

function at(address: Address) {
  cleanup();
  location.hash = hrefOf(address);
  onScreen(store, <App store={store} />);
}

async function marked(address: Address, heading: string | RegExp) {
  at(address);
  await screen.findAllByRole('heading', { name: heading }, PATIENCE);
  return screen.findAllByText(OLDER, {}, PATIENCE);
}

const seen = (takeId: string) => sayCheckSeen(store, check.id, takeId, 'holds', '');
const firstTake = () => takesOf(check)[0]?.[0] ?? '';
const press = async (name: string | RegExp) =>
  fireEvent.click(await screen.findByRole('button', { name }, PATIENCE));
const gone = () => waitFor(() => expect(screen.queryByText(OLDER)).toBeNull(), PATIENCE);

describe('a cut whose bracket was changed for another', () => {
  const places = (): readonly [Address, string | RegExp][] => [
    [{ at: 'cuts', jobId: job.id }, 'Cut'],
    [{ at: 'all-cuts' }, 'All I have to cut'],
    [{ at: 'cut', jobId: job.id, cutId: cut.id }, /^Spacer/],
    [{ at: 'lathe', jobId: job.id, cutId: cut.id }, /^Spacer/],
    [{ at: 'cut', jobId: job.id, cutId: cut.id, field: 'again' }, /^Make it again/],
  ];

  test('says so on the cut list, among all cuts, on its own page, at the lathe and before it is made again', async () => {
    for (const [address, heading] of places()) {
      at(address);
      // One place after the other: the app has one screen.
      // oxlint-disable-next-line no-await-in-loop
      await screen.findAllByRole('heading', { name: heading }, PATIENCE);
      expect(screen.queryByText(OLDER)).toBeNull();
    }
    await anotherBracket();
    for (const [address, heading] of places()) {
      // oxlint-disable-next-line no-await-in-loop
      expect(await marked(address, heading)).not.toHaveLength(0);
    }
  });

  test('is brought up to date by one press at the lathe, and one undo takes that back', async () => {
    await anotherBracket();
    await marked({ at: 'lathe', jobId: job.id, cutId: cut.id }, /^Spacer/);
    await press('Use the new figures');
    await gone();
    // 2.510 − .690 − .010 = 1.810
    expect((await getCut(store, cut.id))?.target.typed).toBe('1.81');
    worked(await undoLast(store, (await latestUndo(store, job.id))?.id ?? ''));
    await screen.findAllByText(OLDER, {}, PATIENCE);
    expect((await getCut(store, cut.id))?.target.typed).toBe('1.860');
  });

  test('says so aloud at the lathe too, at every size that is logged', async () => {
    const log = async (typed: string) => {
      const field = await screen.findByRole('textbox', {}, PATIENCE);
      fireEvent.input(field, { target: { value: typed } });
      fireEvent.keyDown(field, { key: 'Enter' });
      await waitFor(() => expect(said()).toContain(typed), PATIENCE);
    };
    at({ at: 'lathe', jobId: job.id, cutId: cut.id });
    await log('1.895');
    expect(said()).not.toContain(OLDER);
    await anotherBracket();
    await screen.findAllByText(OLDER, {}, PATIENCE);
    await log('1.890');
    expect(said()).toContain(OLDER);
  });

  test('that was to size stops the sign-off and is marked on the sheet', async () => {
    worked(await logPass(store, cut.id, { measured: typedSize('1.860') }));
    at({ at: 'cut', jobId: job.id, cutId: cut.id });
    await screen.findByRole('img', { name: 'good' }, PATIENCE);
    await anotherBracket();
    await screen.findByText('to size by its older figures', {}, PATIENCE);
    at({ at: 'lathe', jobId: job.id, cutId: cut.id });
    await screen.findByText(/^By its older figures: /, {}, PATIENCE);
    expect(screen.queryByRole('img', { name: 'good' })).toBeNull();
    at({ at: 'sign-off', jobId: job.id });
    await screen.findByText('Spacer, faced to length: older than its sizes', {}, PATIENCE);
    at({ at: 'sheet', jobId: job.id });
    expect(await screen.findByText(/^Older than its sizes: a size behind it/, {}, PATIENCE)).toBeTruthy();
  });

  test('says so in the job it was copied to', async () => {
    const other = worked(await createJob(store, { name: 'Trailer', systems: [] }));
    worked(await makeAgain(store, [cut.id], other.id));
    at({ at: 'cuts', jobId: other.id });
    await screen.findAllByText('Spacer, faced to length', {}, PATIENCE);
    expect(screen.queryByText(OLDER)).toBeNull();
    await anotherBracket();
    await screen.findByText(OLDER, {}, PATIENCE);
  });

  test('is not marked any more when the old bracket is put back', async () => {
    await anotherBracket();
    await marked({ at: 'cuts', jobId: job.id }, 'Cut');
    worked(await undoLast(store, (await latestUndo(store, job.id))?.id ?? ''));
    await waitFor(() => expect(screen.queryByText(OLDER)).toBeNull(), PATIENCE);
  });
});

describe('the list of worksheets', () => {
  test('has each one’s answer of today with its mark, never one of before', async () => {
    at({ at: 'worksheets', jobId: job.id });
    // 2.510 − .640 − 1.900 = −.030; with the other bracket −.080.
    await screen.findByText(/^Too tight: \.030* proud, want \.008 to \.012 free/, {}, PATIENCE);
    expect(screen.getByRole('img', { name: 'no good' })).toBeTruthy();
    await anotherBracket();
    expect(
      await screen.findByText(/^Too tight: \.080* proud, want \.008 to \.012 free/, {}, PATIENCE),
    ).toBeTruthy();
  });
});

describe('the route of a job', () => {
  const marks = () =>
    screen.queryAllByText(/^(older than its sizes|read before a size changed|to be done again)$/).length;

  test('are marked where something in that place is older', async () => {
    worked(await seen(firstTake()));
    const [step] = worked(
      await addSteps(store, [{ jobId: job.id, text: 'Stack it', worksheetId: worksheet.id }]),
    );
    worked(await markDone(store, step?.id ?? '', 'Jo B.'));
    at({ at: 'route', jobId: job.id });
    await screen.findByRole('link', { name: /^Cut/ }, PATIENCE);
    expect(marks()).toBe(0);
    await anotherBracket();
    // Cut, prove, put together.
    await waitFor(() => expect(marks()).toBe(3), PATIENCE);
    worked(await undoLast(store, (await latestUndo(store, job.id))?.id ?? ''));
    await waitFor(() => expect(marks()).toBe(0), PATIENCE);
  });
});

describe('a check that was seen before the bracket was changed', () => {
  test('is not good any more: it is listed as open, marked, stops the sign-off, and is seen again by one press', async () => {
    worked(await seen(firstTake()));
    at({ at: 'fit-up', jobId: job.id });
    await screen.findByText('Slides free by hand', {}, PATIENCE);
    expect(screen.queryByText(OLDER)).toBeNull();
    await anotherBracket();
    await screen.findByText(OLDER, {}, PATIENCE);
    at({ at: 'sign-off', jobId: job.id });
    await screen.findByText('Slides free by hand: read before a size changed', {}, PATIENCE);
    await marked({ at: 'check', jobId: job.id, checkId: check.id }, /^Slides free/);
    // What it was found to be then is told as of then, without the mark of what is good.
    expect(screen.getByText(/^Before a size changed: /)).toBeTruthy();
    expect(screen.queryByRole('img', { name: 'good' })).toBeNull();
    await press('Check it again');
    await press('Good');
    await gone();
  });
});

describe('a step that was done before the bracket was changed', () => {
  test('is to be done again: in the assembly, on its own page, on the sheet and at the sign-off', async () => {
    at({ at: 'assembly', jobId: job.id, field: 'steps' });
    await press(/^Bracket float: 3 steps/);
    await screen.findByText('Steps: 0 of 3 done', {}, PATIENCE);
    const [first] = await stepsOf(store, job.id);
    worked(await markDone(store, first?.id ?? '', 'Jo B.'));
    await screen.findByText('Steps: 1 of 3 done', {}, PATIENCE);
    expect(screen.queryByText(OLDER)).toBeNull();
    await anotherBracket();
    await screen.findByText('Steps: 0 of 3 done', {}, PATIENCE);
    await screen.findByText(OLDER, {}, PATIENCE);
    await screen.findByText(/^Done by Jo B\., .*changed since: do it again\./, {}, PATIENCE);
    at({ at: 'step', jobId: job.id, stepId: first?.id ?? '' });
    await screen.findByRole('button', { name: 'Step done' }, PATIENCE);
    at({ at: 'sheet', jobId: job.id });
    await screen.findAllByText(/^Older than its sizes: a size behind it/, {}, PATIENCE);
    at({ at: 'sign-off', jobId: job.id });
    await screen.findByText('Step 1: sizes changed since it was done', {}, PATIENCE);
    // Done again, it stands.
    worked(await markDone(store, first?.id ?? '', 'Jo B.'));
    at({ at: 'assembly', jobId: job.id });
    expect(await screen.findByText('Steps: 1 of 3 done', {}, PATIENCE)).toBeTruthy();
    expect(screen.queryByText(OLDER)).toBeNull();
  });

  test('is so on the other phone too, whichever of the two files comes in: nothing is marked that a merge could lose', async () => {
    const [step] = worked(
      await addSteps(store, [{ jobId: job.id, text: 'Stack it', worksheetId: worksheet.id }]),
    );
    worked(await markDone(store, step?.id ?? '', 'Jo B.'));
    const [before] = await stepsOf(store, job.id);
    await anotherBracket();
    // The step's record is the same as before the change: what stands otherwise is the worksheet, which every file carries.
    const [after] = await stepsOf(store, job.id);
    expect(after).toEqual(before);
    const ground = await groundOf(store, [job.id]);
    expect(after && isOlderThanSizes({ of: 'done', step: after }, ground)).toBe(true);
  });
});
