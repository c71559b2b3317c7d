import { fireEvent, screen, waitFor, within } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { hrefOf } from '../../../../src/screens/address.ts';
import { App } from '../../../../src/screens/app.tsx';
import { worksheets } from '../../../../src/engine/worksheets/all-worksheets.ts';
import { createJob } from '../../../../src/store/kept/jobs.ts';
import type { Store } from '../../../../src/store/opening/open-store.ts';
import { latestUndo, undoLast } from '../../../../src/store/undo/undo.ts';
import { createWorksheet, getWorksheet } from '../../../../src/store/kept/worksheets.ts';
import { openForTest, worked } from '../../../store/open-for-test.ts';
import { clearAway, onScreen } from '../../on-screen.tsx';

// The screens are fetched when they are first opened.
const PATIENCE = { timeout: 30_000 };

beforeEach(() => {
  location.hash = '';
});
afterEach(clearAway);

async function atNewWorksheet(): Promise<{ store: Store; worksheetId: string }> {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const worksheet = worked(
    await createWorksheet(store, {
      jobId: job.id,
      kind: 'hole-and-pin',
      title: 'Link pivot',
      choices: worksheets['hole-and-pin'].starts,
    }),
  );
  location.hash = hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id, field: 'bore' });
  onScreen(store, <App store={store} />);
  await screen.findByLabelText(BORE, {}, PATIENCE);
  return { store, worksheetId: worksheet.id };
}

const BORE = 'How wide is the bore?';
const PIN = 'How thick is the pin or bolt?';

/** A size is asked for on the pad, a choice by its chips. */
const asked = (question: string) => screen.findByLabelText(question, {}, PATIENCE);
const choiceOf = (question: string) => screen.findByRole('group', { name: question }, PATIENCE);

async function give(label: string, size: string): Promise<void> {
  fireEvent.input(await screen.findByLabelText(label), { target: { value: size } });
  fireEvent.click(screen.getByRole('button', { name: 'Use it' }));
}

async function choose(words: RegExp): Promise<void> {
  fireEvent.click(await screen.findByRole('button', { name: words }));
}

describe('a hole and its pin, typed', () => {
  test('are asked for one after the other, then how they run; then the answer stands there', async () => {
    await atNewWorksheet();
    await give(BORE, '.4487');
    await asked(PIN);
    await give(PIN, '.4375');
    await choiceOf('How should this joint run?');
    await choose(/^Located, fixed by its nut/);
    // .4487 − .4375 = .0112; a bolt that doesn't turn may have .0020 over 1/4 to 1/2 in.
    expect(await screen.findByText('Too loose: slop .0112, want .002 or less.', {}, PATIENCE)).toBeTruthy();
    const band = document.querySelector<HTMLElement>('.verdict-band');
    expect(band && within(band).getByRole('img', { name: 'no good' })).toBeTruthy();
    expect(
      screen.getByRole('group', { name: 'Bore .4487 in, pin .4375 in, clearance .0112 in.' }),
    ).toBeTruthy();
  });

  test('count as one reading each with the usual caliper, unless a figure is said to be exact', async () => {
    const { store, worksheetId } = await atNewWorksheet();
    await give(BORE, '.4487');
    await asked(PIN);
    await choose(/^Read with: .*caliper/);
    await choose(/^Not measured: taken as exact/);
    await give(PIN, '.4375');
    await choiceOf('How should this joint run?');
    const worksheet = await getWorksheet(store, worksheetId);
    expect(worksheet?.sizes['bore']).toMatchObject({
      tool: { name: 'digital caliper, inside jaws' },
      toolAssumed: true,
    });
    expect(worksheet?.sizes['pin']).not.toHaveProperty('tool');
  });

  test('that can’t be read are asked for again, with the reason', async () => {
    const { store, worksheetId } = await atNewWorksheet();
    await give(BORE, '4.4.8');
    expect((await screen.findByRole('alert')).textContent).toBe(
      '4.4.8 has two decimal points. Leave one out.',
    );
    expect((await getWorksheet(store, worksheetId))?.sizes).toEqual({});
  });

  test('come back half-typed when the screen is opened again', async () => {
    await atNewWorksheet();
    const here = location.hash;
    fireEvent.input(await screen.findByLabelText(BORE), { target: { value: '.44' } });
    location.hash = '#/shop';
    await screen.findByRole('heading', { name: 'Shop' }, PATIENCE);
    location.hash = here;
    await waitFor(() => expect(screen.getByLabelText<HTMLInputElement>(BORE).value).toBe('.44'), PATIENCE);
  });

  test('of a bolt: its thread gives the pin and how it is held, and the answer follows', async () => {
    await atNewWorksheet();
    await give(BORE, '.4387');
    await asked(PIN);
    fireEvent.click(await screen.findByRole('button', { name: 'It’s a bolt' }));
    fireEvent.click(await screen.findByRole('button', { name: '7/16' }));
    fireEvent.click(await screen.findByRole('button', { name: '7/16-20 UNF' }));
    // .4387 − 7/16 = .0012, and one reading of the caliper doesn't know it to better than ±.0022: .0018 / √3 and .0004
    // together .0011, twice that.
    await waitFor(
      () =>
        expect(document.querySelector('.verdict-band-headline')?.textContent).toBe(
          'Too close to call: slop .0012 ±.0022, want .002 or less. Assumed: held by its nut.',
        ),
      PATIENCE,
    );
  });

  test('of a bolt that was read first: what is half typed is taken before its thread is picked', async () => {
    const { store, worksheetId } = await atNewWorksheet();
    await give(BORE, '.4545');
    fireEvent.input(await asked(PIN), { target: { value: '.4365' } });
    fireEvent.click(screen.getByRole('button', { name: 'It’s a bolt' }));
    fireEvent.click(await screen.findByRole('button', { name: '7/16' }, PATIENCE));
    fireEvent.click(await screen.findByRole('button', { name: '7/16-20 UNF' }));
    // .4545 − .4365
    expect(await screen.findByText(/^Too loose: slop .018, want .002 or less/, {}, PATIENCE)).toBeTruthy();
    expect((await getWorksheet(store, worksheetId))?.sizes['pin']).toMatchObject({ typed: '.4365' });
  });

  test('with a least above the most of one’s own are not taken', async () => {
    const { store, worksheetId } = await atNewWorksheet();
    const at = (field: string) => {
      location.hash = location.hash.replace(/[^/]+$/, field);
    };
    at('upper');
    await give('What is the most clearance it may have?', '.001');
    await asked(BORE);
    location.hash = `${location.hash}/lower`;
    await give('What is the least clearance it may have? Below zero is a press.', '.002');
    expect((await screen.findByRole('alert')).textContent).toBe(
      'The least, .002 in, would be more than the most, .001 in. Change one of them.',
    );
    expect((await getWorksheet(store, worksheetId))?.sizes).not.toHaveProperty('lower');
  });

  test('of no size at all, by a slip, can still be opened and put right', async () => {
    await atNewWorksheet();
    await give(BORE, '0');
    await asked(PIN);
    await give(PIN, '.4375');
    await choose(/^Located, fixed by its nut/);
    expect(await screen.findByRole('link', { name: /^hole \.0000/ }, PATIENCE)).toBeTruthy();
    expect(screen.queryByText(/ran into a fault of ours/)).toBeNull();
  });

  test('committed by a glove that bounces on “Use it” are one change, taken back by one undo', async () => {
    const { store } = await atNewWorksheet();
    fireEvent.input(await screen.findByLabelText(BORE), { target: { value: '.4487' } });
    const use = screen.getByRole('button', { name: 'Use it' });
    fireEvent.click(use);
    fireEvent.click(use);
    await asked(PIN);
    const change = await latestUndo(store);
    if (!change) throw new Error('nothing to undo');
    worked(await undoLast(store, change.id));
    expect((await latestUndo(store))?.label).toBe('Made Link pivot');
  });
});
