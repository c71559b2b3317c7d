import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { addressOf, hrefOf } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { createCuts, cutsOf } from '../../../src/store/kept/cuts.ts';
import { logPass } from '../../../src/store/kept/cut-passes.ts';
import { drawerPieces } from '../../../src/store/kept/drawer.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { createWorksheet, setPart } from '../../../src/store/kept/worksheets.ts';
import { inches } from '../../store/cut-for-test.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen, said, wholeSentence } from '../on-screen.tsx';
import { partOf, typedSize } from '../worksheets/worksheet-for-test.ts';

// The screens are fetched when they are first opened.
const PATIENCE = { timeout: 30_000 };

beforeEach(() => {
  location.hash = '';
});
afterEach(clearAway);

/** Sleeve .970 with .583 and a spacer of .385 in it: the spacer is faced to .377, good from .375 to .379. */
async function tightStack() {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const worksheet = worked(
    await createWorksheet(store, {
      jobId: job.id,
      kind: 'spacer-stack',
      title: 'Bracket',
      sizes: { fixed: typedSize('.970'), lower: typedSize('.008'), upper: typedSize('.012') },
      choices: { want: 'float' },
      parts: {
        a: { ...partOf(1, typedSize('.583')), adjustable: false },
        b: { ...partOf(2, typedSize('.385')), name: 'spacer' },
      },
    }),
  );
  return {
    store,
    job,
    worksheet,
    at: { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id } as const,
  };
}

const link = (name: string | RegExp) => screen.findByRole('link', { name }, PATIENCE);
const button = (name: string | RegExp) => screen.findByRole('button', { name }, PATIENCE);
const press = async (found: Promise<HTMLElement>) => {
  const target = await found;
  await waitFor(() => expect(target.hasAttribute('disabled')).toBe(false), PATIENCE);
  fireEvent.click(target);
};

async function oneCut(store: Store, jobId: string) {
  const [cut] = await cutsOf(store, jobId);
  if (!cut) throw new Error('no cut on the list');
  return cut;
}

async function putOnTheList() {
  const known = await tightStack();
  location.hash = hrefOf({ ...known.at, field: 'cuts' });
  onScreen(known.store, <App store={known.store} />);
  await press(button('Put on the cut list'));
  await screen.findByText('to cut · 1', {}, PATIENCE);
  return known;
}

describe('from a worksheet to the cut list', () => {
  test('the answer’s main action leads to what is to be cut, and one press puts it on the list', async () => {
    const { store, job, at } = await tightStack();
    location.hash = hrefOf(at);
    onScreen(store, <App store={store} />);
    const cutIt = await link('Cut it');
    expect(cutIt.getAttribute('href')).toBe(hrefOf({ ...at, field: 'cuts' }));
    location.hash = hrefOf({ ...at, field: 'cuts' });
    await screen.findByRole('heading', { name: 'Spacer, faced to length' }, PATIENCE);
    expect(screen.getByText('.008 off .385 in')).toBeTruthy();
    expect(screen.getByText('good from .375 to .379')).toBeTruthy();
    await press(button('Put on the cut list'));
    await waitFor(() => expect(addressOf(location.hash)).toEqual({ at: 'cuts', jobId: job.id }), PATIENCE);
    expect(await screen.findByText('to cut · 1', {}, PATIENCE)).toBeTruthy();
    expect(screen.getByText('.008 in to take')).toBeTruthy();
    expect(said()).toBe('1 cut on the cut list.');
  });

  test('a worksheet that is good has no such action', async () => {
    const { store, worksheet, at } = await tightStack();
    // .970 − .583 − .377 = .010
    const part = { ...partOf(2, typedSize('.377')), name: 'spacer' };
    worked(await setPart(store, worksheet.id, 'b', part));
    location.hash = hrefOf(at);
    onScreen(store, <App store={store} />);
    await screen.findByText(/^Good: float \.010/, {}, PATIENCE);
    expect(screen.queryByRole('link', { name: 'Cut it' })).toBeNull();
  });

  test('with everything unticked nothing can be put down', async () => {
    const { store, at } = await tightStack();
    location.hash = hrefOf({ ...at, field: 'cuts' });
    onScreen(store, <App store={store} />);
    await press(button('Leave out Spacer, faced to length'));
    await waitFor(async () =>
      expect((await button('Put on the cut list')).hasAttribute('disabled')).toBe(true),
    );
  });

  test('a second time it says what is on the list already, and replaces it', async () => {
    const { store, job, at } = await putOnTheList();
    const first = await oneCut(store, job.id);
    location.hash = hrefOf({ ...at, field: 'cuts' });
    expect(
      await screen.findByText(/^1 cut of this worksheet is on the list already: /, {}, PATIENCE),
    ).toBeTruthy();
    await press(button('Replace it'));
    await screen.findByText('to cut · 1', {}, PATIENCE);
    const second = await oneCut(store, job.id);
    expect(second.id).not.toBe(first.id);
  });
});

describe('a cut', () => {
  async function atTheCut() {
    const known = await putOnTheList();
    const cut = await oneCut(known.store, known.job.id);
    location.hash = hrefOf({ at: 'cut', jobId: known.job.id, cutId: cut.id });
    await screen.findByRole('heading', { name: 'Left to take' }, PATIENCE);
    return { ...known, cut };
  }

  test('says when its worksheet has changed since, and takes the new figures over', async () => {
    const { store, job, worksheet } = await atTheCut();
    expect(screen.queryByText('Older than its sizes')).toBeNull();
    // .970 − .585 − .375 = .010: two thou more has to come off
    worked(await setPart(store, worksheet.id, 'a', { ...partOf(1, typedSize('.585')), adjustable: false }));
    expect(await screen.findByText('Older than its sizes', {}, PATIENCE)).toBeTruthy();
    await press(button('Use the new figures'));
    await waitFor(async () => expect((await oneCut(store, job.id)).target.typed).toBe('.375'), PATIENCE);
    await waitFor(() => expect(screen.queryByText('Older than its sizes')).toBeNull(), PATIENCE);
  });

  test('says so where the worksheet asks for it no more', async () => {
    const { store, worksheet } = await atTheCut();
    worked(await setPart(store, worksheet.id, 'a', { ...partOf(1, typedSize('.575')), adjustable: false }));
    expect(
      await screen.findByText('The worksheet asks for no such cut any more.', {}, PATIENCE),
    ).toBeTruthy();
  });

  test('is scrapped, and not scrapped after all', async () => {
    const { store, job } = await atTheCut();
    await press(button('Scrapped'));
    await waitFor(async () => expect((await oneCut(store, job.id)).state).toBe('scrapped'), PATIENCE);
    await press(button('Not scrapped after all'));
    await waitFor(async () => expect((await oneCut(store, job.id)).state).toBe('to-cut'), PATIENCE);
  });

  test('is made again in another job', async () => {
    const { store, cut } = await atTheCut();
    const other = worked(await createJob(store, { name: 'Trailer', systems: [] }));
    location.hash = hrefOf({ at: 'cut', jobId: cut.jobId, cutId: cut.id, field: 'again' });
    await press(button('Trailer'));
    await waitFor(() => expect(addressOf(location.hash)).toEqual({ at: 'cuts', jobId: other.id }), PATIENCE);
    expect(await oneCut(store, other.id)).toMatchObject({ copyOf: cut.id, state: 'to-cut' });
  });

  test('that is to size is a spare: a new piece in the drawer, then one more of it', async () => {
    const { store, cut } = await atTheCut();
    worked(await logPass(store, cut.id, { measured: inches('.377') }));
    const spare = hrefOf({ at: 'cut', jobId: cut.jobId, cutId: cut.id, field: 'spare' });
    location.hash = spare;
    await press(button(/^Spacer /));
    await waitFor(
      async () => expect((await drawerPieces(store)).map(({ count }) => count)).toEqual([1]),
      PATIENCE,
    );
    location.hash = spare;
    await screen.findByRole('heading', { name: 'One more of these' }, PATIENCE);
    const [, more] = screen.getAllByRole('button', { name: /^Spacer / });
    if (more) fireEvent.click(more);
    await waitFor(
      async () => expect((await drawerPieces(store)).map(({ count }) => count)).toEqual([2]),
      PATIENCE,
    );
  });

  test('takes a new target only between its limits', async () => {
    const { store, job, cut } = await atTheCut();
    location.hash = hrefOf({ at: 'cut', jobId: job.id, cutId: cut.id, field: 'target' });
    const field = await screen.findByLabelText('Target, spacer', {}, PATIENCE);
    fireEvent.input(field, { target: { value: '.380' } });
    await press(button('Use it'));
    expect(await screen.findByText(/^The limits are \.375 to \.379 in/, {}, PATIENCE)).toBeTruthy();
    fireEvent.input(field, { target: { value: '.378' } });
    await press(button('Use it'));
    await waitFor(async () => expect((await oneCut(store, job.id)).target.typed).toBe('.378'), PATIENCE);
  });
});

describe('a hole that is drilled', () => {
  const entry = (typed: string) => {
    const { from: _typed, ...size } = typedSize(typed);
    return size;
  };

  test('is done by the size it measures: to size inside its limits, over past them', async () => {
    const store = await openForTest();
    const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
    const made = await createCuts(store, [
      {
        jobId: job.id,
        name: 'Hole, drilled 29/64',
        part: 'hole',
        operation: 'drill',
        of: 'tap-drill',
        target: entry('29/64'),
        lower: entry('.4483'),
        upper: entry('.4561'),
        limitsFrom: 'test',
        cuttingTool: 'hss',
        machine: 'drill-press',
        drill: '29/64',
      },
    ]);
    const [cut] = worked(made);
    if (!cut) throw new Error('no cut');
    const at = { at: 'cut', jobId: job.id, cutId: cut.id } as const;
    location.hash = hrefOf(at);
    onScreen(store, <App store={store} />);
    expect((await link('Done: measure it')).getAttribute('href')).toBe(hrefOf({ ...at, field: 'measured' }));
    expect(screen.getByLabelText('Before you drill, ream or tap:').textContent).toContain('no gloves');
    location.hash = hrefOf({ ...at, field: 'measured' });
    const field = await screen.findByLabelText('Measured, hole', {}, PATIENCE);
    fireEvent.input(field, { target: { value: '.4535' } });
    await press(button('Log it'));
    expect(await screen.findByText(wholeSentence(/^To size: \.4535 in\.$/), {}, PATIENCE)).toBeTruthy();
    // Never as if it were exact: the tool that stood beside the pad is kept with it.
    const [pass] = Object.values((await oneCut(store, job.id)).passes);
    expect(pass?.tool?.id).toBe('digital-caliper-inside');
    await press(button('Strike out .4535'));
    expect(await screen.findByText(/ · struck out: /, {}, PATIENCE)).toBeTruthy();
    await waitFor(async () => expect((await oneCut(store, job.id)).state).toBe('to-cut'), PATIENCE);
  });
});

describe('all there is to cut', () => {
  test('is reached from the jobs with how many there are, and lies by machine, material and tool', async () => {
    const { store } = await putOnTheList();
    location.hash = hrefOf({ at: 'jobs' });
    const row = await link(/^All I have to cut/);
    expect(row.textContent).toContain('1 cut');
    location.hash = hrefOf({ at: 'all-cuts' });
    expect(await screen.findByRole('heading', { name: 'lathe · 1' }, PATIENCE)).toBeTruthy();
    expect(screen.getByRole('heading', { name: 'material not said, HSS' })).toBeTruthy();
    void store;
  });
});

test('a cut of one’s own is asked for by what is done, its target and its limits', async () => {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  location.hash = hrefOf({ at: 'cut', jobId: job.id, cutId: 'new' });
  onScreen(store, <App store={store} />);
  await press(button(/^Turn an outside/));
  for (const [label, size] of [
    ['Target', '.500'],
    ['Good from', '.499'],
    ['Good to', '.501'],
  ] as const) {
    fireEvent.input(await screen.findByLabelText(label, {}, PATIENCE), { target: { value: size } });
    // Two commits within a glove's bounce are one.
    // oxlint-disable-next-line no-await-in-loop
    await press(button('Use it'));
  }
  fireEvent.input(await screen.findByLabelText('Name', {}, PATIENCE), { target: { value: 'Pivot pin' } });
  await press(button('Put on the cut list'));
  expect(await screen.findByRole('heading', { name: 'Pivot pin' }, PATIENCE)).toBeTruthy();
  expect(await oneCut(store, job.id)).toMatchObject({
    name: 'Pivot pin',
    operation: 'turn',
    target: { typed: '.500' },
    limitsFrom: 'your own limits',
  });
});
