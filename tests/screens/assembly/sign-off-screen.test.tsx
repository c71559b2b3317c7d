import { cleanup, fireEvent, screen, waitFor, within } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { longDayWords } from '../../../src/screens/common/day-words.ts';
import { hrefOf, type Address } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { createCheck, sayCheckSeen } from '../../../src/store/kept/checks.ts';
import { createCuts } from '../../../src/store/kept/cuts.ts';
import { logPass } from '../../../src/store/kept/cut-passes.ts';
import { createFeature } from '../../../src/store/kept/features.ts';
import { createJob, getJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { createPart } from '../../../src/store/kept/parts.ts';
import { logReading } from '../../../src/store/kept/readings.ts';
import { addRecheck, rechecksOf } from '../../../src/store/kept/rechecks.ts';
import type { Feature, Job } from '../../../src/store/base/records.ts';
import { putSetting } from '../../../src/store/kept/settings.ts';
import { sheetsOf } from '../../../src/store/kept/sheets.ts';
import { addSteps, markDone } from '../../../src/store/kept/steps.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { createWorksheet, setSize } from '../../../src/store/kept/worksheets.ts';
import { appVersion } from '../../../src/version.ts';
import { facing, inches } from '../../store/cut-for-test.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';
import { tool, typedSize } from '../worksheets/worksheet-for-test.ts';

// The screens are fetched when they are first opened.
const PATIENCE = { timeout: 30_000 };

let store: Store;
let job: Job;
let feature: Feature;
beforeEach(async () => {
  store = await openForTest({ now: () => Date.now() });
  job = worked(await createJob(store, { name: 'Outfit', systems: ['brake'] }));
  feature = worked(await createFeature(store, { jobId: job.id, kind: 'length', name: 'Outer spacer' }));
  await read('1.1381');
});
afterEach(clearAway);

async function read(typed: string) {
  const entry = worked(readEntry(typed, { unit: 'in' }));
  worked(
    await logReading(store, {
      featureId: feature.id,
      jobId: job.id,
      entry,
      tool: tool('digital-caliper'),
      zeroChecked: true,
    }),
  );
}

async function stepDone() {
  const torque = { typed: '45', unit: 'lbf-ft', source: 'manual, p. 12' } as const;
  const [step] = worked(await addSteps(store, [{ jobId: job.id, text: 'Fit the spacer', torque }]));
  if (step) worked(await markDone(store, step.id, 'Jo B.'));
}

async function checkSeen(seen: 'holds' | 'fails') {
  const check = worked(
    await createCheck(store, {
      jobId: job.id,
      name: 'Hose at full lock',
      by: 'by-eye',
      limitsFrom: 'by eye',
      how: 'turn to both stops',
    }),
  );
  const [takeId = ''] = Object.keys(check.takes);
  worked(await sayCheckSeen(store, check.id, takeId, seen, ''));
}

function at(address: Address) {
  location.hash = hrefOf(address);
  onScreen(store, <App store={store} />);
}

const atSignOff = () => at({ at: 'sign-off', jobId: job.id });
const press = async (name: string | RegExp) =>
  fireEvent.click(await screen.findByRole('button', { name }, PATIENCE));
const heading = (name: string | RegExp) => screen.findByRole('heading', { name }, PATIENCE);

/** Where a line of what stands in the way leads. */
async function wayFrom(line: RegExp): Promise<string | null> {
  return (await screen.findByRole('link', { name: line }, PATIENCE)).getAttribute('href');
}

/** Signed by the fitter whose name stands there already. */
async function signAsFitter() {
  await screen.findByDisplayValue('Jo B.', {}, PATIENCE);
  await press('Sign off');
  await heading('Outfit, signed');
}

/** A signed sheet stands in a root of its own. */
function signedSheet(): HTMLElement {
  const root = document.querySelector('.frozen-sheet')?.shadowRoot;
  const sheet = root?.querySelector<HTMLElement>('article');
  if (!sheet) throw new Error('no signed sheet stands here');
  return sheet;
}

/** What stands on a line of the sign-off. */
function lineToSign(sheet: HTMLElement, label: string): string | undefined {
  const line = [...sheet.querySelectorAll('.sheet-line')].find(({ textContent }) =>
    textContent.startsWith(label),
  );
  return line?.textContent.slice(label.length).trim();
}

describe('a brake job', () => {
  test('without a check, with a step to do and a mock-up in it, can’t be signed, and each line leads to its cure', async () => {
    const torque = { typed: '45', unit: 'lbf-ft', source: 'manual, p. 12' } as const;
    worked(await addSteps(store, [{ jobId: job.id, text: 'Fit the spacer', torque }]));
    const part = worked(await createPart(store, { jobId: job.id, name: 'Outer spacer', origin: 'mock-up' }));
    atSignOff();
    await screen.findByText('3 things stand in the way of signing.', {}, PATIENCE);
    expect(await wayFrom(/^No fit-up check at all/)).toContain('/fit-up');
    expect(await wayFrom(/^Outer spacer is still a mock-up/)).toContain(`/assembly/parts/${part.id}`);
    expect(await wayFrom(/^Step 1 is not done/)).toContain('/assembly');
    expect(screen.queryByRole('button', { name: 'Sign off' })).toBeNull();
    expect(screen.getByText('A mistake here can kill.')).toBeTruthy();
  });

  test('is told what a good worksheet takes for granted, one press from saying it', async () => {
    const part = (order: number, typed: string) => ({
      name: `part ${order}`,
      order,
      count: 1,
      adjustable: true,
      size: typedSize(typed),
    });
    // .970 − .960 = .010 of float; nobody said that it should float.
    const worksheet = worked(
      await createWorksheet(store, {
        jobId: job.id,
        kind: 'spacer-stack',
        title: 'Bracket',
        sizes: { fixed: typedSize('.970') },
        parts: { a: part(1, '.480'), b: part(2, '.480') },
      }),
    );
    atSignOff();
    expect(await wayFrom(/^Bracket: good only as assumed/)).toContain(`/worksheets/${worksheet.id}/want`);
  });

  test('with a spacer called to size by caliper between limits .001 apart can’t be signed; by micrometer it can', async () => {
    await stepDone();
    await checkSeen('holds');
    // ±.0012 by caliper, 1.96 · √((.001)² / 3 + (.0002)²), is wider than half of .001; a micrometer’s is .00015.
    const [cut] = worked(
      await createCuts(store, [
        {
          ...facing(job.id),
          target: inches('1.4795'),
          lower: inches('1.4790'),
          upper: inches('1.4800'),
          blank: inches('1.500'),
        },
      ]),
    );
    const id = cut?.id ?? '';
    worked(await logPass(store, id, { measured: inches('1.4795'), tool: tool('digital-caliper') }));
    atSignOff();
    expect(await wayFrom(/^Spacer, face to length: measured too coarsely/)).toContain(`/cuts/${id}/measured`);
    worked(await logPass(store, id, { measured: inches('1.4796'), tool: tool('micrometer-1-2') }));
    await screen.findByText('Nothing stands in the way of signing.', {}, PATIENCE);
  });

  test('with a spacer to size that nobody said the tool of counts it as read by caliper, and can’t be signed', async () => {
    await stepDone();
    await checkSeen('holds');
    const limits = { target: inches('1.4795'), lower: inches('1.4790'), upper: inches('1.4800') };
    const [cut, wide] = worked(
      await createCuts(store, [
        { ...facing(job.id), ...limits },
        // .010 apart: a caliper’s ±.0012 proves that.
        { ...facing(job.id), name: 'Blank', lower: inches('1.4750'), upper: inches('1.4850') },
      ]),
    );
    worked(await logPass(store, cut?.id ?? '', { measured: inches('1.4795') }));
    worked(await logPass(store, wide?.id ?? '', { measured: inches('1.4800') }));
    atSignOff();
    const row = await screen.findByRole(
      'link',
      { name: /^Spacer, face to length: nobody said what it was measured with/ },
      PATIENCE,
    );
    expect(row.textContent).toContain('Assumed: digital caliper');
    await screen.findByText('One thing stands in the way of signing.', {}, PATIENCE);
  });

  test('with a check that failed can’t be signed', async () => {
    await stepDone();
    await checkSeen('fails');
    atSignOff();
    await screen.findByText('One thing stands in the way of signing.', {}, PATIENCE);
    expect(await wayFrom(/^Hose at full lock: no good/)).toContain('/fit-up/');
  });

  test('with a check that can’t be read can’t be signed: it may have failed', async () => {
    await stepDone();
    await checkSeen('holds');
    await checkSeen('fails');
    const [, second] = await store.db.getAllKeys('checks');
    await store.db.put('checks', { ...(await store.db.get('checks', second ?? '')), by: 7 });
    atSignOff();
    expect(await wayFrom(/^Can’t be read by this version: one record/)).toBe(
      hrefOf({ at: 'job', jobId: job.id }),
    );
    expect(screen.queryByRole('button', { name: 'Sign off' })).toBeNull();
  });

  test('over a worksheet that is no good can’t be signed until a reason is written, which is printed and asked again at another figure', async () => {
    await stepDone();
    await checkSeen('holds');
    const bolts = worked(
      await createWorksheet(store, {
        jobId: job.id,
        kind: 'thread-engagement',
        title: 'Caliper bolts',
        choices: { thread: 'M10x1.5', grade: '8.8', parentTensile: '150', held: 'tapped', insert: 'no' },
        sizes: { engaged: typedSize('8 mm') },
      }),
    );
    await putSetting(store, 'fitter', 'Jo B.');
    atSignOff();
    expect(await wayFrom(/^Caliper bolts: no good/)).toBe(
      hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: bolts.id }),
    );
    expect(screen.queryByRole('button', { name: 'Sign off' })).toBeNull();
    const write = async (words: string) => {
      fireEvent.input(await screen.findByLabelText('Reason', {}, PATIENCE), { target: { value: words } });
      await press('Keep this reason');
    };
    fireEvent.click(await screen.findByRole('link', { name: /^Or write why it may stand/ }, PATIENCE));
    await write(' - ');
    expect((await screen.findByRole('alert')).textContent).toContain('Write the reason in words');
    await write('Pulled to 40 kN on the bench');
    await screen.findByText('Can be signed: one thing stands by your reason.', {}, PATIENCE);
    expect((await screen.findByRole('article')).textContent).toContain('Pulled to 40 kN on the bench');
    // One undo takes the reason back, and another puts no signed sheet at risk: nothing is signed yet.
    worked(await undoLast(store, (await latestUndo(store, job.id))?.id ?? ''));
    await screen.findByText('One thing stands in the way of signing.', {}, PATIENCE);
    fireEvent.click(await screen.findByRole('link', { name: /^Or write why it may stand/ }, PATIENCE));
    await write('Pulled to 40 kN on the bench');
    await screen.findByText('Can be signed: one thing stands by your reason.', {}, PATIENCE);
    worked(await setSize(store, bolts.id, 'engaged', typedSize('7 mm')));
    await screen.findByText('Changed since you wrote “Pulled to 40 kN on the bench”.', {}, PATIENCE);
    expect(screen.queryByRole('button', { name: 'Sign off' })).toBeNull();
    worked(await setSize(store, bolts.id, 'engaged', typedSize('8 mm')));
    // Opened anew: a sheet that was drawn before the last change is not signed.
    cleanup();
    atSignOff();
    await signAsFitter();
    const article = signedSheet();
    expect(article.textContent).toContain('Stands by a written reason: Caliper bolts: no good.');
    expect(article.textContent).toContain('Pulled to 40 kN on the bench');
    // What was signed under is not undone any more.
    expect((await latestUndo(store, job.id))?.label).not.toBe('Wrote a reason');
  });

  test('with a torque step lacks its figure first, then where it stands', async () => {
    const [step] = worked(
      await addSteps(store, [
        { jobId: job.id, text: 'Axle nut', torque: { typed: '45', unit: 'lbf-ft', source: '' } },
        { jobId: job.id, text: 'Cover', torque: { typed: '', unit: 'Nm', source: '' }, locker: 'medium' },
      ]),
    );
    atSignOff();
    expect(await wayFrom(/^Step 1: where is its torque stated/)).toContain(
      `/assembly/${step?.id ?? ''}/torque/source`,
    );
    expect(await wayFrom(/^Step 2 has no torque yet/)).toContain('/torque');
    expect(await wayFrom(/^Step 2: no cure time/)).toContain('/cure');
  });
});

describe('a job that is ready', () => {
  beforeEach(async () => {
    await stepDone();
    await checkSeen('holds');
  });

  test('is signed with a name, and the sheet that was signed stands there', async () => {
    atSignOff();
    await screen.findByText('Nothing stands in the way of signing.', {}, PATIENCE);
    await press('Sign off');
    expect((await screen.findByRole('alert')).textContent).toBe('Type the name it is signed with.');
    fireEvent.input(screen.getByLabelText('Signed by'), { target: { value: 'Kim, licence 12' } });
    await press('Sign off');
    await heading('Outfit, signed');
    const [sheet] = await sheetsOf(store, job.id);
    expect(sheet?.signedBy).toBe('Kim, licence 12');
    expect(sheet?.engineVersion).toBe(appVersion);
    expect(sheet?.readingsCsv).toContain('Outer spacer');
    const article = signedSheet();
    expect(within(article).getByText(/^Signed off by Kim, licence 12, .*\. Slipfit /)).toBeTruthy();
    expect(article.textContent).toContain('1.1381');
    expect(lineToSign(article, 'Put together by')).toBe('Kim, licence 12');
    expect(lineToSign(article, 'Date')).toBe(longDayWords(sheet?.signedAt ?? 0));
    // Somebody else checks it, by hand.
    expect(lineToSign(article, 'Checked by')).toBe('');
    expect((await getJob(store, job.id))?.signedOff).toMatchObject({
      by: 'Kim, licence 12',
      sheetId: sheet?.id,
    });
  });

  test('that stands as it was signed bears the name on its own sheet too', async () => {
    await putSetting(store, 'fitter', 'Jo B.');
    atSignOff();
    await signAsFitter();
    location.hash = hrefOf({ at: 'sheet', jobId: job.id });
    const sheet = await screen.findByRole('article', {}, PATIENCE);
    await waitFor(() => expect(lineToSign(sheet, 'Put together by')).toBe('Jo B.'), PATIENCE);
  });

  test('keeps what was signed whatever is read later, and a second signing makes a second sheet', async () => {
    await putSetting(store, 'fitter', 'Jo B.');
    atSignOff();
    await signAsFitter();
    const [signed] = await sheetsOf(store, job.id);
    const before = signedSheet().innerHTML;
    await read('1.1402');
    location.hash = hrefOf({ at: 'sheet', jobId: job.id });
    const link = await screen.findByRole('link', { name: /^Signed off .* by Jo B\./ }, PATIENCE);
    await waitFor(() => expect(screen.getByRole('article').textContent).toContain('1.1402'), PATIENCE);
    // This sheet is of more than was signed.
    await waitFor(
      () => expect(lineToSign(screen.getByRole('article'), 'Put together by')).toBe(''),
      PATIENCE,
    );
    fireEvent.click(link);
    await heading('Outfit, signed');
    expect(signedSheet().innerHTML).toBe(before);
    expect(before).not.toContain('1.1402');
    location.hash = hrefOf({ at: 'sign-off', jobId: job.id });
    await signAsFitter();
    const sheets = await sheetsOf(store, job.id);
    expect(sheets).toHaveLength(2);
    expect(sheets.find(({ id }) => id === signed?.id)).toEqual(signed);
  });

  test('has its re-checks counted from the sign-off', async () => {
    const longAgo = Date.now() - 90 * 86_400_000;
    worked(await addRecheck(store, { jobId: job.id, what: 'Nuts', afterDays: 7, from: longAgo }));
    await putSetting(store, 'fitter', 'Jo B.');
    atSignOff();
    await signAsFitter();
    await waitFor(async () => {
      const [recheck] = await rechecksOf(store, job.id);
      const [sheet] = await sheetsOf(store, job.id);
      expect(recheck?.from).toBe(sheet?.signedAt);
    }, PATIENCE);
  });

  test('says on the sheet what was known to be open when it was signed', async () => {
    worked(await addRecheck(store, { jobId: job.id, what: 'Nuts', afterDistance: 50, unit: 'mi' }));
    await putSetting(store, 'fitter', 'Jo B.');
    atSignOff();
    expect(await wayFrom(/^No odometer reading to count from/)).toContain('/assembly/odometer');
    await signAsFitter();
    expect(signedSheet().textContent).toContain(
      'Known when it was signed: No odometer reading to count from.',
    );
  });

  test('says on the job list and in the assembly that it is signed off', async () => {
    await putSetting(store, 'fitter', 'Jo B.');
    atSignOff();
    await signAsFitter();
    location.hash = hrefOf({ at: 'assembly', jobId: job.id });
    expect(await screen.findByRole('link', { name: /^Signed off .* by Jo B\.$/ }, PATIENCE)).toBeTruthy();
    location.hash = '#/jobs';
    expect(await screen.findByText(/signed off/, {}, PATIENCE)).toBeTruthy();
  });

  test('that was signed and changed since says so wherever it says that it is signed, and is signed again from there', async () => {
    await putSetting(store, 'fitter', 'Jo B.');
    atSignOff();
    await signAsFitter();
    await checkSeen('fails');
    await screen.findByText('The job was changed since: check Hose at full lock.', {}, PATIENCE);
    location.hash = hrefOf({ at: 'sheet', jobId: job.id });
    await screen.findByText('as it stood then; changed since: check Hose at full lock', {}, PATIENCE);
    location.hash = hrefOf({ at: 'job', jobId: job.id });
    await screen.findByText(/signed off .*, changed since/, {}, PATIENCE);
    location.hash = '#/jobs';
    await screen.findByText(/signed off .*, changed since/, {}, PATIENCE);
    location.hash = hrefOf({ at: 'assembly', jobId: job.id });
    await screen.findByText(
      'Changed since: check Hose at full lock. Hose at full lock: no good.',
      {},
      PATIENCE,
    );
    expect(await wayFrom(/^Sign again$/)).toContain('/sign-off');
    // What was seen, then the check itself.
    for (let undone = 0; undone < 2; undone += 1) {
      // oxlint-disable-next-line no-await-in-loop
      const last = await latestUndo(store, job.id);
      // oxlint-disable-next-line no-await-in-loop
      worked(await undoLast(store, last?.id ?? ''));
    }
    await waitFor(() => expect(screen.queryByText('Sign again')).toBeNull(), PATIENCE);
    location.hash = '#/jobs';
    expect((await screen.findByText(/signed off/, {}, PATIENCE)).textContent).not.toContain('changed');
  });
});

describe('on a phone that has lost its date', () => {
  afterEach(() => void vi.useRealTimers());

  test.each([
    ['1970', Date.UTC(1970, 0, 2)],
    ['past 2200', Date.UTC(2200, 0, 2)],
  ])(
    'at %s the sheet says the time that its record has, and that the clock was wrong',
    async (_when, nowMs) => {
      await stepDone();
      await checkSeen('holds');
      await putSetting(store, 'fitter', 'Jo B.');
      vi.useFakeTimers({ toFake: ['Date'], now: nowMs });
      atSignOff();
      await signAsFitter();
      const [signed] = await sheetsOf(store, job.id);
      const words = signedSheet().textContent ?? '';
      const year = new Date(signed?.signedAt ?? 0).getFullYear();
      // What was logged before stands in the year of the test; the act comes right behind it.
      expect(Math.abs((signed?.signedAt ?? 0) - job.createdAt)).toBeLessThan(600_000);
      expect(words).toMatch(new RegExp(`Signed off by Jo B\\., [^.]*${year}`));
      expect(words).toContain('The phone’s clock was wrong');
      expect(words).not.toMatch(/1970|2200/);
    },
  );

  test.each([
    ['1970', Date.UTC(1970, 0, 2)],
    ['past 2200', Date.UTC(2200, 0, 2)],
  ])('at %s a locker put on before the date was lost is not taken for cured', async (_when, nowMs) => {
    const torque = { typed: '45', unit: 'lbf-ft', source: 'manual, p. 12' } as const;
    const [step] = worked(
      await addSteps(store, [
        { jobId: job.id, text: 'Fit the spacer', torque, locker: 'medium', cureHours: '24' },
      ]),
    );
    worked(await markDone(store, step?.id ?? '', 'Jo B.'));
    await checkSeen('holds');
    vi.useFakeTimers({ toFake: ['Date'], now: nowMs });
    atSignOff();
    // Nobody knows how long it has been on: all of its 24 h are to go.
    expect(await wayFrom(/still curing.*24 h/)).toContain('/assembly');
    expect(screen.queryByRole('button', { name: 'Sign off' })).toBeNull();
  });
});
