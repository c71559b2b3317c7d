import { screen, within } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { SheetScreen } from '../../../src/screens/sheet/sheet-screen.tsx';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { addMoney } from '../../../src/store/kept/money.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { signSheet } from '../../../src/store/kept/sheets.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';
import { makeSmallJob } from './small-job.ts';
import { makeWholeJob, wholeJobId } from './whole-job.ts';

let store: Store;
beforeEach(async () => {
  store = await openForTest();
});
afterEach(clearAway);

describe('the sheet of a whole job', () => {
  let sheet: HTMLElement;
  beforeEach(async () => {
    await makeWholeJob(store);
    onScreen(store, <SheetScreen jobId={wholeJobId} />);
    sheet = await screen.findByRole('article');
  });

  test('has what came of the work first, and what it was read from behind that', () => {
    const headings = within(sheet).getAllByRole('heading', { level: 3 });
    expect(headings.map(({ textContent }) => textContent)).toEqual([
      'Worksheets',
      'Cuts',
      'Fit-up checks',
      'Parts',
      'Assembly',
      'Re-checks',
      'Money and time',
      'Readings',
      'Sign-off',
    ]);
  });

  test('a mock-up part that is still in says so', () => {
    expect(rowOf(sheet, 'Stand-in axle bar')).toBe('Stand-in axle bar mock-up still in');
  });

  test('a struck-out reading keeps its figure, crossed out, with why', () => {
    const row = rowElement(sheet, '4.370 in');
    expect(row.querySelector('s')?.textContent).toBe('4.370 in');
    expect(row.textContent).toContain('struck out: point slipped');
  });

  test('a cut has its blank, target, limits with their source, each measurement, and the last as its final size', () => {
    const cut = partOf(sheet, 'Lathe spacer, face to length');
    expect(cut).toContain('State: to size');
    expect(cut).toContain('Blank: 1.1452 in');
    expect(cut).toContain('Target: 1.1380 in');
    expect(cut).toContain('Good from: 1.1366 in to 1.1394 in (bracket float worksheet)');
    expect(cut).toContain('Final size: 1.1381 in');
    expect(cut).toContain('1.1404 in');
    expect(cut).toContain('struck out: chip under the anvil');
  });

  test('a check keeps the go that failed beside the one that passed', () => {
    const check = partOf(sheet, 'Bracket float, far side');
    expect(check).toContain('Want .008 to .012 (bracket float worksheet)');
    expect(check).toContain('Too tight: float .0035');
    expect(check).toContain('.0102 in');
  });

  test('a step has its torque as the manual prints it, with where it stands', () => {
    const step = stepOf(sheet, 'Nut of the axle');
    expect(step).toContain('85 lbf·ft');
    expect(step).toContain('service manual, section 9, page 4');
    // 85 × 1.355 818 = 115.2 N·m (NIST SP 811, B.8)
    expect(step).toContain('115 N·m');
    expect(step).toContain('medium, cures 24 h');
    expect(step).toContain('Cotter pin');
  });

  test('a step that is done says by whom; one that is not has a line to sign on', () => {
    expect(stepOf(sheet, 'Sleeve through the bracket')).toContain('Done by R. Marsh');
    expect(stepOf(sheet, 'Nut of the axle')).toContain('Done by, when');
  });

  test('money comes to its exact total', () => {
    // 41.90 + 2.5 × 65 = 204.40
    expect(within(sheet).getByText('Total $204.40')).toBeTruthy();
    expect(sheet.textContent).toContain('2.5 h of work');
  });

  test('of the ways to cure a hole only the one that a worksheet goes on with is there, with what it gives back', () => {
    const slop = partOf(sheet, 'Shock link on its bolt');
    expect(slop).toContain('Thread insert: Run 29/64');
    expect(slop).not.toContain('1/2 bolt');
    expect(slop).not.toContain('Sleeve on the pin');
    expect(partOf(sheet, 'Insert for the link bolt')).toContain('not the metal that was lost');
  });

  test('it carries the caution of a safety-critical job', () => {
    expect(within(sheet).getByText('A mistake here can kill.')).toBeTruthy();
  });
});

describe('the sheet of a small job', () => {
  let sheet: HTMLElement;
  beforeEach(async () => {
    const jobId = await makeSmallJob(store);
    onScreen(store, <SheetScreen jobId={jobId} />);
    sheet = await screen.findByRole('article');
  });

  test('says what its worksheet came to, and how it came about in one line of sources', () => {
    const worksheet = partOf(sheet, 'Pulley between its cheeks');
    // 2.412 − 1.279 − 1.155 = −.022; face (.010 + .022) = .032 off
    expect(worksheet).toContain('Too tight: .022 proud, want .008 to .012 free.');
    expect(worksheet).toContain('Face spacer: .032 in off; 1.155 → 1.123');
    expect(worksheet).toContain('Sources: your own limits; JCGM 100:2008');
    expect(worksheet).not.toContain('sleeve − parts');
  });

  test('a part that was read and is in no stack any more is not among its parts, and its reading says so', () => {
    expect(partOf(sheet, 'Pulley between its cheeks')).not.toContain('washer');
    expect(partOf(sheet, 'Old washer')).toMatch(/^Old washer \(length, in no worksheet\): \.0615 in/);
    expect(partOf(sheet, 'Sleeve')).not.toContain('in no worksheet');
    // Behind those that the worksheet stands on.
    const heads = within(sheet).getAllByRole('heading', { level: 4 });
    expect(heads.at(-1)?.textContent).toMatch(/^Old washer/);
  });
});

test('a job with nothing in it says what will stand there, and can be signed by hand all the same', async () => {
  const job = worked(await createJob(store, { name: 'Bare', systems: [] }));
  onScreen(store, <SheetScreen jobId={job.id} />);
  const sheet = await screen.findByRole('article');
  expect(sheet.textContent).toContain('will stand here, ready to print');
  expect(within(sheet).getByText('Checked by')).toBeTruthy();
});

test('money without a sign of the shop’s own stands on the sheet with the one the money screen shows', async () => {
  const job = worked(await createJob(store, { name: 'Bare', systems: [] }));
  worked(await addMoney(store, { jobId: job.id, what: 'Bearings', amount: '12.50' }));
  onScreen(store, <SheetScreen jobId={job.id} />);
  const sheet = await screen.findByRole('article');
  expect(within(sheet).getByText('Total $12.50')).toBeTruthy();
});

describe('a signed sheet', () => {
  const signed = async () => {
    const job = worked(await createJob(store, { name: 'Bare', systems: [] }));
    const paragraph = { tag: 'p', attributes: {}, children: ['Float .0102, as it was signed'] };
    const sheet = worked(
      await signSheet(store, {
        jobId: job.id,
        signedBy: 'R. Marsh',
        engineVersion: '0.1.0',
        content: [{ tag: 'article', attributes: { class: 'sheet' }, children: [paragraph] }],
        readingsCsv: 'as typed\r\n.0102 in\r\n',
        cutsCsv: 'cut\r\n',
      }),
    );
    return { jobId: job.id, sheetId: sheet.id };
  };

  test('is shown as it was frozen, with who signed, and its readings and cuts can be taken along', async () => {
    const { jobId, sheetId } = await signed();
    onScreen(store, <SheetScreen jobId={jobId} field={`signed/${sheetId}`} />);
    expect(await screen.findByText(/by R\. Marsh/)).toBeTruthy();
    const root = document.querySelector('.frozen-sheet')?.shadowRoot;
    expect(root?.textContent).toContain('Float .0102, as it was signed');
    expect(screen.getByRole('button', { name: 'Readings' })).toBeTruthy();
  });

  test('of another job is not shown under this one', async () => {
    const { sheetId } = await signed();
    const other = worked(await createJob(store, { name: 'Other', systems: [] }));
    onScreen(store, <SheetScreen jobId={other.id} field={`signed/${sheetId}`} />);
    expect(await screen.findByText(/This signed sheet is not on this phone/)).toBeTruthy();
  });
});

function rowElement(sheet: HTMLElement, words: string): HTMLElement {
  const row = within(sheet).getAllByText(words)[0]?.closest('tr');
  if (!row) throw new Error(`no row with ${words}`);
  return row;
}

function rowOf(sheet: HTMLElement, words: string): string {
  return [...rowElement(sheet, words).children].map(({ textContent }) => textContent).join(' ');
}

/** The text of the block under a heading, each fact as "Name: value". */
function partOf(sheet: HTMLElement, heading: string): string {
  const part = [...sheet.querySelectorAll('h4')].find(({ textContent }) => textContent?.startsWith(heading));
  return textOf(part?.closest('section'));
}

function stepOf(sheet: HTMLElement, words: string): string {
  const step = [...sheet.querySelectorAll('li')].find(({ textContent }) => textContent?.startsWith(words));
  return textOf(step);
}

function textOf(block: Element | null | undefined): string {
  if (!block) throw new Error('no such block on the sheet');
  const facts = [...block.querySelectorAll('.sheet-facts > div')].map(
    (fact) => `${fact.querySelector('dt')?.textContent}: ${fact.querySelector('dd')?.textContent}`,
  );
  return [block.textContent, ...facts].join(' ');
}
