import { fireEvent, screen, waitFor, within } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { hrefOf, type Address } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { checksOf } from '../../../src/store/kept/checks.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import type { Id } from '../../../src/store/base/records.ts';
import { putSetting } from '../../../src/store/kept/settings.ts';
import { createWorksheet, getWorksheet } from '../../../src/store/kept/worksheets.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen, said } from '../on-screen.tsx';
import { partOf, typedSize } from '../worksheets/worksheet-for-test.ts';

// The screens are fetched when they are first opened.
const PATIENCE = { timeout: 30_000 };

let store: Store;
let jobId: Id;

beforeEach(async () => {
  location.hash = '';
  store = await openForTest();
  jobId = worked(await createJob(store, { name: 'Outfit', systems: ['brake'] })).id;
});
afterEach(clearAway);

/** A float of .004 between its limits is nothing for a caliper's inside jaws. */
async function withTestIndicator(): Promise<void> {
  await putSetting(store, 'lastUsed/gap', { toolId: 'test-indicator', unit: 'in', jobId });
}

async function openAt(address: Address): Promise<void> {
  location.hash = hrefOf(address);
  onScreen(store, <App store={store} />);
  await screen.findByRole('heading', { level: 1, name: /\S/ }, PATIENCE);
}

async function stack() {
  return worked(
    await createWorksheet(store, {
      jobId,
      kind: 'spacer-stack',
      title: 'Bracket float',
      sizes: { fixed: typedSize('.970') },
      choices: { want: 'float' },
      parts: { a: partOf(1, typedSize('.960')) },
    }),
  );
}

const press = async (name: string | RegExp) =>
  fireEvent.click(await screen.findByRole('button', { name }, PATIENCE));
const follow = async (name: string | RegExp) => {
  const link = await screen.findByRole('link', { name }, PATIENCE);
  location.hash = link.getAttribute('href') ?? '';
};
const seen = (text: string | RegExp) => screen.findByText(text, {}, PATIENCE);

async function log(size: string): Promise<void> {
  fireEvent.input(await screen.findByLabelText(/reading \d/, {}, PATIENCE), { target: { value: size } });
  await press('Log reading');
  await waitFor(() => expect(said()).toMatch(/^Logged/), PATIENCE);
}

describe('the checks of a job', () => {
  test('none yet: the screen says what goes there, with the button that makes one, and the caution of a brake', async () => {
    await openAt({ at: 'fit-up', jobId });
    await seen(/^What has to be proved on the machine goes here/);
    expect(screen.getByRole('link', { name: 'New check' })).toBeTruthy();
    expect(screen.getByText('A mistake here can kill.')).toBeTruthy();
  });

  test('a float that fails goes back to its worksheet with the reading filled in; taken again it holds', async () => {
    await withTestIndicator();
    const { id } = await stack();
    await openAt({ at: 'check', jobId, checkId: 'new' });
    await press(/^Float/);
    await seen('Not done yet; want .008 to .012.');
    await follow('Log a reading');
    await log('.004');
    await follow('Back to the check');
    await seen('Too tight: float .004, want .008 to .012.');
    await press('Back to the worksheet with this reading');
    // The sum says .970 − .960 = .010, and that would be good: the reading counts.
    await screen.findByRole('heading', { level: 1, name: 'Bracket float' }, PATIENCE);
    await waitFor(
      () =>
        expect(document.querySelector('.verdict-band-headline')?.textContent).toMatch(
          /^Too tight: float \.004/,
        ),
      PATIENCE,
    );
    const [check] = await checksOf(store, jobId);
    const worksheet = await getWorksheet(store, id);
    const first = Object.values(check?.takes ?? {})[0]?.featureId;
    expect(worksheet?.sizes['direct']).toEqual({ from: 'feature', featureId: first });
    await follow(/^Float/);
    await press('Take it again');
    await seen('To be taken again; want .008 to .012.');
    await follow('Log a reading');
    await log('.010');
    await follow('Back to the check');
    await seen('Good: float .010, want .008 to .012.');
    await seen('Too tight: float .004, want .008 to .012.');
    // The worksheet still stands on what was read before it was put right.
    await press('Give the worksheet this reading');
    await seen('Good: float .010, want .008 to .012.');
    const takes = Object.values((await checksOf(store, jobId))[0]?.takes ?? {});
    expect((await getWorksheet(store, id))?.sizes['direct']).toEqual({
      from: 'feature',
      featureId: takes[1]?.featureId,
    });
  });

  test('all good so far isn’t all: worksheets of which no check was made are counted in the same sentence', async () => {
    await stack();
    await openAt({ at: 'fit-up', jobId });
    await seen('1 worksheet has no check yet.');
    location.hash = hrefOf({ at: 'check', jobId, checkId: 'new', field: 'list' });
    await press(/^Steering head, turns free/);
    await press('Good');
    await seen('Good, seen by eye.');
    location.hash = hrefOf({ at: 'fit-up', jobId });
    const heading = await screen.findByRole('heading', { name: /^The check is good/ }, PATIENCE);
    expect(heading.textContent).toBe('The check is good; 1 worksheet has none yet.');
  });

  test('what is still to do stands first, the worst on top', async () => {
    await openAt({ at: 'check', jobId, checkId: 'new', field: 'list' });
    await press(/^Steering head, turns free/);
    await press('Good');
    await seen('Good, seen by eye.');
    location.hash = hrefOf({ at: 'check', jobId, checkId: 'new', field: 'list' });
    await press(/^Brake lets go when hot/);
    location.hash = hrefOf({ at: 'check', jobId, checkId: 'new', field: 'list' });
    await press(/^Cotter pins/);
    await press('No good');
    await seen('No good, seen by eye.');
    location.hash = hrefOf({ at: 'fit-up', jobId });
    await screen.findByRole('heading', { name: '1 of 3 checks failed, 1 still to do.' }, PATIENCE);
    const rows = within(screen.getByRole('main')).getAllByRole('link');
    expect(rows.map((row) => row.querySelector('.row-title')?.textContent)).toEqual([
      'Cotter pins and lock wires fitted',
      'Brake lets go when hot',
      'Steering head, turns free',
    ]);
  });
});

describe('a check by eye', () => {
  test('keeps the note with the press, and both when it is looked at again', async () => {
    await openAt({ at: 'check', jobId, checkId: 'new', field: 'list' });
    await press(/^Hose over the whole travel/);
    fireEvent.input(await screen.findByLabelText('Note', {}, PATIENCE), {
      target: { value: 'touches the chain' },
    });
    await press('No good');
    await seen('No good, seen by eye.');
    expect(said()).toBe('Hose over the whole travel: no good.');
    await press('Take it again');
    await seen('To be taken again; by eye.');
    await press('Good');
    await seen('Good, seen by eye.');
    expect(screen.getByText('touches the chain')).toBeTruthy();
    const [check] = await checksOf(store, jobId);
    expect(Object.values(check?.takes ?? {}).map((take) => take.seen)).toEqual(['fails', 'holds']);
  });
});

describe('a check of one’s own', () => {
  test('gets its name, how it is read and its limits; a least above the most is refused', async () => {
    await openAt({ at: 'check', jobId, checkId: 'new', field: 'own' });
    fireEvent.input(await screen.findByLabelText('What is checked', {}, PATIENCE), {
      target: { value: 'Lever to grip' },
    });
    await press(/^Gap/);
    await seen('Not done yet; no limits yet.');
    await follow('Give its limits');
    fireEvent.input(await screen.findByLabelText('Most', {}, PATIENCE), { target: { value: '3/4' } });
    await press('Use it');
    await seen('Not done yet; want .750 or less.');
    await follow(/^Least/);
    fireEvent.input(await screen.findByLabelText('Least', {}, PATIENCE), { target: { value: '1' } });
    await press('Use it');
    await seen('The least, 1 in, would be more than the most, 3/4 in.');
    fireEvent.input(screen.getByLabelText('Least'), { target: { value: '1/2' } });
    await press('Use it');
    await seen('Not done yet; want .500 to .750.');
    await follow(/^Most/);
    await press('Leave out');
    expect(await seen('Not done yet; want .500 or more.')).toBeTruthy();
  });

  test('is renamed, told how it is done, and removed in About', async () => {
    await openAt({ at: 'check', jobId, checkId: 'new', field: 'own' });
    await press(/^Runout/);
    await follow('About');
    fireEvent.input(await screen.findByLabelText('Name', {}, PATIENCE), { target: { value: 'Drum runout' } });
    fireEvent.input(screen.getByLabelText('How to do it'), { target: { value: 'Indicator inside.' } });
    fireEvent.input(screen.getByLabelText('Where the limits come from'), {
      target: { value: 'manual, page 12' },
    });
    await waitFor(async () => {
      const [check] = await checksOf(store, jobId);
      expect(check).toMatchObject({
        name: 'Drum runout',
        how: 'Indicator inside.',
        limitsFrom: 'manual, page 12',
      });
    }, PATIENCE);
    await press(/^Remove/);
    await seen(/^What has to be proved on the machine goes here/);
    expect(await checksOf(store, jobId)).toEqual([]);
  });
});

describe('what a check read', () => {
  test('is listed behind the job’s readings, and offered only where a size is read in place', async () => {
    const { id } = await stack();
    await openAt({ at: 'worksheet', jobId, worksheetId: id });
    await press(/^Float/);
    await follow('Log a reading');
    await log('.010');
    location.hash = hrefOf({ at: 'readings', jobId });
    await screen.findByRole('heading', { name: 'Fit-up' }, PATIENCE);
    expect(screen.getByRole('link', { name: /^Float/ })).toBeTruthy();
    location.hash = hrefOf({ at: 'worksheet', jobId, worksheetId: id, field: 'direct' });
    await screen.findByRole('button', { name: /^Float/ }, PATIENCE);
  });
});

test('limits a worksheet has changed since are taken over by one press', async () => {
  const { id } = await stack();
  await openAt({ at: 'worksheet', jobId, worksheetId: id });
  await press(/^Float/);
  await seen('Not done yet; want .008 to .012.');
  location.hash = hrefOf({ at: 'worksheet', jobId, worksheetId: id, field: 'lower' });
  fireEvent.input(await screen.findByLabelText('What is the least it may be?', {}, PATIENCE), {
    target: { value: '.006' },
  });
  await press('Use it');
  await follow(/^Float/);
  await seen('Older than its sizes');
  await press('Use the new limits');
  await seen('Not done yet; want .006 to .012.');
  expect(screen.queryByText('Older than its sizes')).toBeNull();
});

test('an address of a check that isn’t there says so', async () => {
  await openAt({ at: 'check', jobId, checkId: 'gone' });
  expect(await seen(/^This check is not on this phone/)).toBeTruthy();
});
