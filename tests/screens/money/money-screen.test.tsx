import { cleanup, fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { MoneyScreen } from '../../../src/screens/money/money-screen.tsx';
import { draftsWritten } from '../../../src/screens/common/drafts-unwritten.ts';
import { JobScreen } from '../../../src/screens/jobs/job-screen.tsx';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { addMoney, moneyOf, type NewMoneyLine } from '../../../src/store/kept/money.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { getSetting, putSetting } from '../../../src/store/kept/settings.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { fillDisk } from '../../store/fill-disk.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

afterEach(async () => {
  await clearAway();
  vi.restoreAllMocks();
});

async function jobWith(...lines: Omit<NewMoneyLine, 'jobId'>[]) {
  const store = await openForTest();
  const { id: jobId } = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  // oxlint-disable-next-line no-await-in-loop
  for (const line of lines) worked(await addMoney(store, { jobId, ...line }));
  return { store, jobId };
}

function at(store: Store, jobId: string, field?: string) {
  return onScreen(store, <MoneyScreen jobId={jobId} {...(field !== undefined && { field })} />);
}

async function type(label: string | RegExp, text: string): Promise<void> {
  fireEvent.input(await screen.findByLabelText(label), { target: { value: text } });
}

const press = (name: string) => fireEvent.click(screen.getByRole('button', { name }));

describe('the lines of a job', () => {
  test('none yet: one sentence says what goes here', async () => {
    const { store, jobId } = await jobWith();
    at(store, jobId);
    expect(await screen.findByText(/A line for each part and for the hours goes here/)).toBeTruthy();
  });

  test('stand with how they come about, and their total', async () => {
    const { store, jobId } = await jobWith(
      { what: 'Bearings', amount: '48.90' },
      { what: 'Machining', hours: '1:20', rate: '65' },
    );
    at(store, jobId);
    // 48.90 + 80 ÷ 60 × 65 = 48.90 + 86.6667 = 135.5667
    expect((await screen.findByRole('region', { name: 'Total' })).textContent).toContain('$135.57');
    expect(screen.getByText('1:20 h at $65.00 an hour')).toBeTruthy();
    expect(screen.getByText('$86.67')).toBeTruthy();
    expect(screen.getByText(/rounded once, at the end/)).toBeTruthy();
  });

  test('whose rate is missing are said not to count', async () => {
    const { store, jobId } = await jobWith({ what: 'Fitting up', hours: '2' });
    at(store, jobId);
    await screen.findByText(/One line does not count yet/);
    expect(screen.getByText('no rate yet')).toBeTruthy();
  });
});

describe('a new line', () => {
  test('of a part is kept as typed, with a comma or a point', async () => {
    const { store, jobId } = await jobWith();
    at(store, jobId, 'new-amount');
    await type('What for', 'Two bearings');
    await type('Amount', '12,50');
    press('Put it down');
    await waitFor(async () =>
      expect(await moneyOf(store, jobId)).toMatchObject([{ what: 'Two bearings', amount: '12.50' }]),
    );
  });

  test('is one line where Enter comes twice in a row', async () => {
    const { store, jobId } = await jobWith();
    at(store, jobId, 'new-amount');
    await type('Amount', '125');
    const field = screen.getByLabelText('Amount');
    fireEvent.keyDown(field, { key: 'Enter' });
    fireEvent.keyDown(field, { key: 'Enter' });
    await waitFor(() => expect(location.hash).toBe(`#/job/${jobId}/money`));
    expect(await moneyOf(store, jobId)).toMatchObject([{ amount: '125' }]);
  });

  test('of hours asks for the rate next, and the one after takes the same', async () => {
    const { store, jobId } = await jobWith();
    at(store, jobId, 'new-hours');
    await type('Hours', '1 1/2');
    press('Put it down');
    await waitFor(async () => expect(await moneyOf(store, jobId)).toHaveLength(1));
    const [first] = await moneyOf(store, jobId);
    expect(location.hash).toBe(`#/job/${jobId}/money/${first?.id}/rate`);
    cleanup();
    at(store, jobId, `${first?.id}/rate`);
    await type('What does an hour cost?', '65');
    press('Use it');
    await waitFor(async () => expect((await moneyOf(store, jobId))[0]?.rate).toBe('65'));
    cleanup();
    at(store, jobId, 'new-hours');
    await screen.findByText(/at \$65\.00 an hour/);
    await type('Hours', '0:20');
    press('Put it down');
    await waitFor(async () =>
      expect((await moneyOf(store, jobId))[1]).toMatchObject({ what: 'Hours', hours: '0:20', rate: '65' }),
    );
  });

  test('the colon of 1:30 has a key', async () => {
    const { store, jobId } = await jobWith();
    at(store, jobId, 'new-hours');
    await type('Hours', '1');
    press('hours : minutes');
    press('3');
    press('0');
    press('Put it down');
    await waitFor(async () => expect((await moneyOf(store, jobId))[0]?.hours).toBe('1:30'));
  });

  test('that can’t be read says why and keeps what was typed', async () => {
    const { store, jobId } = await jobWith();
    at(store, jobId, 'new-amount');
    await type('Amount', '1,250');
    press('Put it down');
    expect((await screen.findByRole('alert')).textContent).toContain('may be 1250 or 1.250');
    expect(screen.getByLabelText<HTMLInputElement>('Amount').value).toBe('1,250');
    expect(await moneyOf(store, jobId)).toEqual([]);
  });

  test('half typed outlives the screen: its words and its figure', async () => {
    const { store, jobId } = await jobWith();
    at(store, jobId, 'new-amount');
    await type('What for', 'Sealant');
    await type('Amount', '9.9');
    await draftsWritten();
    cleanup();
    at(store, jobId, 'new-amount');
    await waitFor(() => expect(screen.getByLabelText<HTMLInputElement>('Amount').value).toBe('9.9'));
    await waitFor(() => expect(screen.getByLabelText<HTMLInputElement>('What for').value).toBe('Sealant'));
  });

  test('on a full disk says so, and nothing of it is kept', async () => {
    const { store, jobId } = await jobWith();
    at(store, jobId, 'new-amount');
    await type('Amount', '5');
    await draftsWritten();
    fillDisk('money');
    press('Put it down');
    expect((await screen.findByRole('alert')).textContent).toContain('The phone is full');
    vi.restoreAllMocks();
    expect(await moneyOf(store, jobId)).toEqual([]);
  });
});

test('a line removed comes back with undo', async () => {
  const { store, jobId } = await jobWith({ what: 'Bearings', amount: '48.90' });
  const [line] = await moneyOf(store, jobId);
  at(store, jobId, line?.id ?? '');
  fireEvent.click(await screen.findByRole('button', { name: 'Remove this line' }));
  await waitFor(async () => expect(await moneyOf(store, jobId)).toEqual([]));
  const undo = await latestUndo(store, jobId);
  expect(undo?.label).toBe('Removed Bearings');
  worked(await undoLast(store, undo?.id ?? ''));
  expect(await moneyOf(store, jobId)).toHaveLength(1);
});

test('the currency sign is the shop’s, and its smallest coin goes with it', async () => {
  const { store, jobId } = await jobWith({ what: 'Bearings', amount: '1250.5' });
  at(store, jobId, 'currency');
  await type('Another sign', 'JPY');
  await waitFor(async () => expect(await getSetting(store, 'currency')).toBe('JPY'));
  cleanup();
  at(store, jobId);
  expect((await screen.findByRole('region', { name: 'Total' })).textContent).toContain('JPY\u00a01250');
});

test('an amount without a sign is an amount all the same', async () => {
  const { store, jobId } = await jobWith({ what: 'Bearings', amount: '3' });
  worked(await putSetting(store, 'currency', ''));
  at(store, jobId);
  expect((await screen.findByRole('region', { name: 'Total' })).textContent).toContain('Total 3.00');
});

test('the job’s own page shows the total and leads to the lines', async () => {
  const { store, jobId } = await jobWith({ what: 'a', amount: '1.10' }, { what: 'b', amount: '2.20' });
  onScreen(store, <JobScreen jobId={jobId} />);
  const line = await screen.findByRole('link', { name: /^Money and time/ });
  await waitFor(() => expect(line.textContent).toContain('$3.30'));
  expect(line.getAttribute('href')).toBe(`#/job/${jobId}/money`);
});
