import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { NewJobScreen } from '../../../src/screens/jobs/new-job-screen.tsx';
import { backupFile } from '../../../src/screens/shop/backup-file.ts';
import { BackupLine } from '../../../src/screens/shop/backup-line.tsx';
import { isSame, jobWords, originWords } from '../../../src/screens/shop/restore-words.ts';
import { StoragePart } from '../../../src/screens/shop/storage-part.tsx';
import { backupWords } from '../../../src/screens/shop/storage-words.ts';
import { changeJob, createJob } from '../../../src/store/kept/jobs.ts';
import { askAtFirstJob, askAtStart } from '../../../src/store/opening/persistence.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

const answers: { standalone: boolean | undefined; persists: boolean } = {
  standalone: undefined,
  persists: false,
};

beforeEach(() => {
  Object.assign(answers, { standalone: undefined, persists: false });
  vi.stubGlobal('navigator', {
    get standalone() {
      return answers.standalone;
    },
    storage: {
      persisted: async () => answers.persists,
      persist: async () => answers.persists,
      estimate: async () => ({ usage: 82_400_000, quota: 1e9 }),
    },
  });
  vi.stubGlobal('CSS', { supports: () => false });
  vi.stubGlobal('matchMedia', (query: string) => ({ matches: query.includes('coarse') }));
});
afterEach(async () => {
  await clearAway();
  vi.unstubAllGlobals();
});

test('the shop says what is kept, whether the browser promised, and what only this phone has', async () => {
  const store = await openForTest();
  worked(await createJob(store, { name: 'Outfit', systems: [] }));
  onScreen(store, <StoragePart />);
  expect(await screen.findByText('1 job')).toBeDefined();
  expect(await screen.findByText('82 MB')).toBeDefined();
  expect(await screen.findByText('This browser has not promised to keep them')).toBeDefined();
  expect(await screen.findByText('none yet: 1 change only here')).toBeDefined();
});

test('the shop says of a piece that can’t be read that it is kept', async () => {
  const store = await openForTest();
  await store.db.put('drawer', { id: 'odd', kind: 7 });
  onScreen(store, <StoragePart />);
  const line = await screen.findByText(/^One record of the drawer or the tools can’t be read/);
  expect(line.textContent).toContain('goes into every backup');
});

test.each([
  { zone: 'America/Los_Angeles', at: '2026-11-29T02:30:00Z', day: '2026-11-28' },
  { zone: 'Pacific/Auckland', at: '2026-11-28T22:30:00Z', day: '2026-11-29' },
])('in $zone a backup is named by the day on the wall there', async ({ zone, at, day }) => {
  const { TZ } = process.env;
  process.env['TZ'] = zone;
  vi.useFakeTimers({ toFake: ['Date'], now: new Date(at) });
  try {
    expect((await backupFile(await openForTest())).name).toBe(`slipfit-backup-${day}.txt`);
  } finally {
    vi.useRealTimers();
    if (TZ === undefined) delete process.env['TZ'];
    else process.env['TZ'] = TZ;
  }
});

test('before the first job a browser that promised nothing says so, and not before the second', async () => {
  const store = await openForTest();
  onScreen(store, <NewJobScreen />);
  expect(await screen.findByText('This browser has not promised to keep the records.')).toBeDefined();
  worked(await createJob(store, { name: 'Outfit', systems: [] }));
  await waitFor(() => expect(screen.queryByText(/has not promised/)).toBeNull());
});

test('before the first job in a tab on an iPhone the Home Screen comes first', async () => {
  answers.standalone = false;
  onScreen(await openForTest(), <NewJobScreen />);
  expect(await screen.findByText('Add Slipfit to the Home Screen first.')).toBeDefined();
});

test('in the Home Screen app nothing is said of it, and with a promise neither', async () => {
  Object.assign(answers, { standalone: true, persists: true });
  onScreen(await openForTest(), <NewJobScreen />);
  await screen.findByLabelText('Name');
  await new Promise((done) => setTimeout(done, 50));
  expect(screen.queryByText(/Home Screen|promised/)).toBeNull();
});

test('in a tab on an iPhone the shop tells the way over for what is there', async () => {
  answers.standalone = false;
  onScreen(await openForTest(), <StoragePart />);
  expect(await screen.findByText(/save a backup, add Slipfit to the Home Screen/)).toBeDefined();
});

test('the job list asks for a backup after a week and 25 changes', async () => {
  let now = 1_700_000_000_000;
  const store = await openForTest({ now: () => now });
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  for (let count = 0; count < 24; count += 1)
    worked(await changeJob(store, job.id, { what: `hub ${count}` }));
  now += 7 * 86_400_000;
  onScreen(store, <BackupLine />);
  expect(await screen.findByText('None yet: 25 changes only here')).toBeDefined();
});

test.each([
  [{ at: 1, days: 0, changes: 0 }, 'today, nothing changed since'],
  [{ at: 1, days: 1, changes: 1 }, 'yesterday, 1 change since'],
  [{ at: 1, days: 12, changes: 40 }, '12 days ago, 40 changes since'],
  [{ days: 0, changes: 0 }, 'none yet, and nothing to save'],
])('how old the last backup is: %o', (since, words) => {
  expect(backupWords(since)).toBe(words);
});

const nothing = { id: '1', name: 'Outfit', fields: 0, readings: 0, others: 0, removed: 0, apart: 0, same: 3 };

test('what would become of a job is said in its own figures', () => {
  const here = { ...nothing, isHere: true, staysRemoved: false };
  expect(jobWords({ ...here, fields: 1, readings: 2, removed: 1 })).toBe(
    '1 field changes · 2 readings more · 1 entry was removed there',
  );
  expect(jobWords({ ...here, isHere: false, readings: 14, others: 20 })).toBe(
    'new here · 14 readings, 20 other entries',
  );
  expect(jobWords({ ...here, apart: 2 })).toBe('2 things written on both');
  expect(isSame({ ...here, apart: 1 })).toBe(false);
  expect(isSame(here)).toBe(true);
  expect(isSame({ ...here, fields: 1 })).toBe(false);
});

test('a file says whose phone it is from', () => {
  expect(originWords({ writtenAt: 0, phone: 'a1' }, 'a1')).toBe('From this phone');
  expect(originWords({ writtenAt: 0, phone: 'b2', fitter: 'R. Tiller' }, 'a1')).toBe(
    'From R. Tiller’s phone',
  );
  expect(originWords({ writtenAt: 0 }, undefined)).toBe('From another phone');
});

describe('in a browser that puts the question to whoever holds the phone', () => {
  const persist = vi.fn<() => Promise<boolean>>();
  beforeEach(() => {
    persist.mockReset().mockResolvedValue(true);
    vi.stubGlobal('CSS', { supports: (property: string) => property === '-moz-appearance' });
    Object.assign(navigator.storage, { persist });
    localStorage.clear();
  });
  afterEach(() => {
    localStorage.clear();
  });

  test('it is said before the first job, and asked when that is made, once', async () => {
    const store = await openForTest();
    await askAtStart();
    onScreen(store, <NewJobScreen />);
    await screen.findByText('The browser will ask whether Slipfit may keep its records: let it.');
    expect(persist).not.toHaveBeenCalled();
    fireEvent.click(screen.getByRole('button', { name: 'none of these' }));
    fireEvent.click(screen.getByRole('button', { name: 'Make the job' }));
    await waitFor(() => expect(persist).toHaveBeenCalledTimes(1));
    await askAtFirstJob();
    expect(persist).toHaveBeenCalledTimes(1);
  });

  test('Shop asks when its key is pressed, not when it is opened', async () => {
    onScreen(await openForTest(), <StoragePart />);
    await screen.findByText('This browser has not promised to keep them');
    expect(persist).not.toHaveBeenCalled();
    fireEvent.click(screen.getByRole('button', { name: 'Ask the browser to keep them' }));
    expect(await screen.findByText('This browser has promised to keep them')).toBeDefined();
  });
});

test('a browser that answers by itself is asked at every start', async () => {
  const persist = vi.fn<() => Promise<boolean>>(async () => true);
  Object.assign(navigator.storage, { persist });
  await askAtStart();
  await askAtFirstJob();
  expect(persist).toHaveBeenCalledTimes(1);
});
