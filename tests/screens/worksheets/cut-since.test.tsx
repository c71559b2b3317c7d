import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { lineUp } from '../../../src/engine/worksheets/axle-line-up/line-up.ts';
import { hrefOf } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { isOlderThanSizes, type Ground } from '../../../src/screens/older/older-than-sizes.ts';
import { axleQuestion } from '../../../src/engine/worksheets/axle-line-up/question.ts';
import { givenOf } from '../../../src/screens/worksheets/given-of.ts';
import { cutSince, giveWorksheet } from '../../../src/screens/worksheets/cut-since.ts';
import { basisNow } from '../../../src/screens/worksheets/new-cuts.ts';
import { createCuts, cutsOf, getCut } from '../../../src/store/kept/cuts.ts';
import { logPass } from '../../../src/store/kept/cut-passes.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Cut, SizeInput, StackPartInput } from '../../../src/store/base/records.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { createWorksheet, getWorksheet, setPart } from '../../../src/store/kept/worksheets.ts';
import { facing, inches } from '../../store/cut-for-test.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen, said } from '../on-screen.tsx';
import {
  featureOf,
  is,
  ofFeature,
  partOf,
  readingOf,
  struckOut,
  tool,
  typedSize,
  worksheetOf,
} from './worksheet-for-test.ts';

const PATIENCE = { timeout: 30_000 };

beforeEach(() => {
  location.hash = '';
});
afterEach(clearAway);

const sizes = { fixed: typedSize('.970'), lower: typedSize('.008'), upper: typedSize('.012') };
const bracket: StackPartInput = { ...partOf(1, typedSize('.583')), adjustable: false };
const spacer = (size: SizeInput): StackPartInput => ({ ...partOf(2, size), name: 'spacer' });

/** Sleeve .970, .968 in it: the spacer of .385 is faced to .377. */
function stack(size: SizeInput, more: Parameters<typeof worksheetOf>[1] = {}) {
  return worksheetOf('spacer-stack', {
    choices: { want: 'float' },
    parts: { a: bracket, b: spacer(size) },
    ...more,
    sizes: { ...sizes, ...more.sizes },
  });
}

/** The spacer as it was faced at a time, by a worksheet as it stood before. */
function faced(measured: string, at: number, before: ReturnType<typeof stack>): Cut {
  return {
    ...facing('job', { part: 'spacer', worksheetId: 'sheet', basis: basisNow(before) }),
    id: `cut-${at}`,
    state: 'to-size',
    passes: { p: { at, measured: inches(measured) } },
    createdAt: 0,
    touchedAt: 0,
  };
}

const waiting = (data: ReturnType<typeof stack>, cuts: readonly Cut[]) =>
  cutSince(data, cuts).notGiven.map(({ pass }) => pass.measured.typed);

describe('a part that was cut to size', () => {
  const before = stack(typedSize('.385'));

  test('waits to be given to the worksheet that still has its old size', () => {
    expect(waiting(before, [faced('.377', 500, before)])).toEqual(['.377']);
  });

  test('waits no longer once its new size is in, or another one was typed since', () => {
    const cut = faced('.377', 500, before);
    expect(waiting(stack(typedSize('.377')), [cut])).toEqual([]);
    expect(waiting(stack(typedSize('.3768')), [cut])).toEqual([]);
  });

  test('waits no longer once it was measured again after the cut', () => {
    const read = (at: number) =>
      stack(ofFeature('length'), {
        features: [featureOf('length', 'length')],
        readings: [readingOf('length', '.385', { tool: tool('micrometer-0-1'), at })],
      });
    const cut = faced('.377', 500, read(100));
    expect(waiting(read(100), [cut])).toEqual(['.377']);
    expect(waiting(read(600), [cut])).toEqual([]);
  });

  test('counts by its last cut, and not at all while it is still being cut', () => {
    const first = faced('.377', 500, before);
    const second = faced('.371', 700, before);
    expect(waiting(before, [first, second])).toEqual(['.371']);
    expect(waiting(before, [{ ...first, state: 'cutting' }])).toEqual([]);
  });

  test('makes the gap that was read before it another gap by now', () => {
    const read = stack(typedSize('.377'), {
      sizes: { direct: ofFeature('gap') },
      features: [{ ...featureOf('gap', 'gap'), checkId: 'float' }],
      readings: [readingOf('gap', '.0041', { tool: tool('test-indicator'), at: 600 })],
    });
    expect(cutSince(read, [faced('.377', 500, before)]).gapReadBefore).toBeUndefined();
    expect(cutSince(read, [faced('.371', 700, before)]).gapReadBefore).toMatchObject({
      cut: { name: 'spacer' },
      name: 'direct',
    });
  });

  // Read .0041, so .0059 came off: the sum, which had said .0102, would ask for as much to go in again.
  test.each([
    { how: 'read in a check', direct: ofFeature('gap') },
    { how: 'typed', direct: { ...typedSize('.0041'), at: 600 } },
  ])('leaves the gap that was $how to be read again, once its size is in', ({ direct }) => {
    const given = (partsChanged: { at: number; why: string; otherwiseAt?: number }) => {
      const data = stack(typedSize('.371'), {
        sizes: { direct },
        features: [{ ...featureOf('gap', 'gap'), checkId: 'float' }],
        readings: [readingOf('gap', '.0041', { tool: tool('test-indicator'), at: 600 })],
      });
      return { ...data, worksheet: { ...data.worksheet, partsChanged } };
    };
    const why = 'spacer of another size';
    const cuts = [faced('.371', 700, before)];
    expect(cutSince(given({ at: 710, why, otherwiseAt: 500 }), cuts).gapReadBefore).toMatchObject({
      cut: { name: 'spacer' },
    });
    expect(
      cutSince(given({ at: 710, why: 'shim put in', otherwiseAt: 500 }), []).gapReadBefore,
    ).toMatchObject({ why: 'shim put in' });
    // Changed by choice after it was read: it was a reading of other parts, and the sum counts.
    expect(cutSince(given({ at: 710, why, otherwiseAt: 650 }), cuts).gapReadBefore).toBeUndefined();
    expect(cutSince(given({ at: 710, why }), cuts).gapReadBefore).toBeUndefined();
  });
});

describe('a spacer of an axle that was cut to size', () => {
  const axle = (
    onHand: Readonly<Record<string, string>> = {},
    choices: Readonly<Record<string, string>> = {},
  ) =>
    worksheetOf('axle-line-up', {
      choices: { layout: 'front-one-disc', side: 'right', ...choices },
      sizes: Object.fromEntries(
        Object.entries({
          width: '6.750',
          hub: '4.412',
          centre: '2.300',
          disc: '.312',
          slot: '.187',
          bracket: '.500',
          float: '.010',
          ...onHand,
        }).map(([name, size]) => [name, typedSize(size)]),
      ),
    });
  const cutOf = (part: string, measured: string, at: number, before: ReturnType<typeof axle>): Cut => ({
    ...facing('job', { part, worksheetId: 'sheet', basis: basisNow(before) }),
    id: `cut-${at}`,
    state: 'to-size',
    passes: { p: { at, measured: inches(measured) } },
    createdAt: 0,
    touchedAt: 0,
  });

  test('waits to be given to it, in the order of work, whether it was made new or trimmed', () => {
    const before = axle({ 'onHand-far': '1.110' });
    const cuts = [cutOf('sleeve', '1.264', 600, before), cutOf('left spacer', '1.075', 500, before)];
    expect(waiting(before, cuts)).toEqual(['1.075', '1.264']);
    // Given: nothing waits. Another one on hand by now: it is not the one that was cut.
    expect(waiting(axle({ 'onHand-far': '1.075', 'onHand-sleeve': '1.264' }), cuts)).toEqual([]);
    expect(waiting(axle({ 'onHand-far': '1.090' }), cuts)).toEqual(['1.264']);
  });

  test('is known by the side it is on', () => {
    const left = axle({}, { side: 'left' });
    expect(waiting(left, [cutOf('right spacer', '1.263', 500, left)])).toEqual(['1.263']);
    expect(waiting(left, [cutOf('left spacer', '1.263', 500, left)])).toEqual([]);
  });

  test('goes in as the part on hand, the other cuts that stood stand, and the last is cut to it', async () => {
    const store = await openForTest();
    const { id: jobId } = worked(await createJob(store, { name: 'Outfit', systems: [] }));
    const { worksheet: plain } = axle();
    const { id } = worked(
      await createWorksheet(store, {
        jobId,
        kind: 'axle-line-up',
        title: 'Wheel',
        sizes: plain.sizes,
        choices: plain.choices,
      }),
    );
    const known = async () => {
      const worksheet = await getWorksheet(store, id);
      if (!worksheet) throw new Error('no worksheet');
      return { ...axle(), worksheet };
    };
    const basis = basisNow(await known());
    const [cut] = worked(
      await createCuts(store, [
        {
          ...facing(jobId, { part: 'sleeve', worksheetId: id, basis }),
          target: inches('1.263'),
          lower: inches('1.261'),
          upper: inches('1.265'),
          blank: inches('1.400'),
        },
      ]),
    );
    worked(await logPass(store, cut?.id ?? '', { measured: inches('1.2645') }));
    const [waits] = cutSince(await known(), await cutsOf(store, jobId)).notGiven;
    expect(waits?.place).toEqual({ sizeName: 'onHand-sleeve' });
    if (!waits) throw new Error('nothing waits');
    worked(await giveWorksheet(store, await known(), waits));
    const after = await known();
    expect(cutSince(after, await cutsOf(store, jobId)).notGiven).toEqual([]);
    const kept = await getCut(store, cut?.id ?? '');
    const ground = { worksheets: [after.worksheet], features: [], readings: [] };
    expect(kept && isOlderThanSizes({ of: 'cut', cut: kept }, ground)).toBe(false);
    // C = 1.2645 − .120 − .500 − .010 = .6345
    const question = axleQuestion(givenOf(after));
    const answer = question && lineUp(question);
    const outer = answer?.ok === true ? answer.value.spacers.find(({ name }) => name === 'outer') : undefined;
    expect(is(outer?.value, '.6345 in')).toBe(true);
  });
});

type Known = { readonly features: Ground['features']; readonly readings: Ground['readings'] } & {
  readonly worksheet: Ground['worksheets'][number] | undefined;
};

function isOlder(cut: Cut, { worksheet, features, readings }: Known): boolean {
  return isOlderThanSizes(
    { of: 'cut', cut },
    { worksheets: worksheet ? [worksheet] : [], features, readings },
  );
}

describe('figures of a cut that is to size', () => {
  const micrometer = { tool: tool('micrometer-0-1') };
  const features = [featureOf('length', 'length'), { ...featureOf('gap', 'gap'), checkId: 'float' }];
  const reading = readingOf('length', '.385', micrometer);
  const before = stack(ofFeature('length'), { features, readings: [reading] });
  const cut = faced('.377', 500, before);

  test('don’t look out of date by what is read on the machine to prove them', () => {
    const proved = stack(ofFeature('length'), {
      sizes: { direct: ofFeature('gap') },
      features,
      readings: [reading, readingOf('gap', '.0099', { tool: tool('test-indicator'), at: 600 })],
    });
    expect(isOlder(cut, proved)).toBe(false);
    expect(isOlder({ ...cut, state: 'to-cut' }, proved)).toBe(true);
  });

  test('do look out of date when a reading they stand on is struck out', () => {
    const struck = { ...before, readings: [{ ...reading, ...struckOut }] };
    expect(isOlder(cut, struck)).toBe(true);
  });
});

describe('the worksheet after the lathe', () => {
  async function afterTheLathe() {
    const store = await openForTest();
    const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
    const parts = { a: bracket, b: spacer(typedSize('.385')) };
    const given = {
      jobId: job.id,
      kind: 'spacer-stack',
      title: 'Bracket',
      sizes,
      choices: { want: 'float' },
    };
    const worksheet = worked(await createWorksheet(store, { ...given, parts }));
    const basis = basisNow({ worksheet, readings: [] });
    const limits = { target: inches('.377'), lower: inches('.375'), upper: inches('.379') };
    const put = facing(job.id, { part: 'spacer', worksheetId: worksheet.id, basis, ...limits });
    const [cut] = worked(await createCuts(store, [put]));
    if (!cut) throw new Error('no cut');
    worked(await logPass(store, cut.id, { measured: inches('.3772') }));
    location.hash = hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id });
    onScreen(store, <App store={store} />);
    return { store, worksheet, cut, job };
  }

  test('asks for no metal a second time, and one press works it out with the new size', async () => {
    const { store, worksheet, cut } = await afterTheLathe();
    await screen.findByText('Worked out here with .385 in still.', {}, PATIENCE);
    expect(screen.queryByText('Face spacer')).toBeNull();
    expect(screen.queryByRole('link', { name: 'Cut it' })).toBeNull();
    fireEvent.click(screen.getByRole('button', { name: 'Work it out with .3772 in' }));
    // .970 − .583 − .3772
    await screen.findByText(/^Good: float \.0098/, {}, PATIENCE);
    await waitFor(() => expect(said()).toBe('Worked out with .3772 in now.'));
    const kept = await getWorksheet(store, worksheet.id);
    const now = await getCut(store, cut.id);
    expect(now && isOlder(now, { worksheet: kept, features: [], readings: [] })).toBe(false);
  });

  test('one undo takes it back, and the cut waits again', async () => {
    const { store, job } = await afterTheLathe();
    fireEvent.click(await screen.findByRole('button', { name: /^Work it out with/ }, PATIENCE));
    await screen.findByText(/^Good: float/, {}, PATIENCE);
    const newest = await latestUndo(store);
    worked(await undoLast(store, newest?.id ?? ''));
    await screen.findByRole('button', { name: /^Work it out with/ }, PATIENCE);
    expect((await cutsOf(store, job.id)).map(({ state }) => state)).toEqual(['to-size']);
  });

  test('a bracket that changes afterwards still says that the spacer was cut to older figures', async () => {
    const { store, worksheet, cut } = await afterTheLathe();
    fireEvent.click(await screen.findByRole('button', { name: /^Work it out with/ }, PATIENCE));
    await screen.findByText(/^Good: float/, {}, PATIENCE);
    worked(await setPart(store, worksheet.id, 'a', { ...bracket, size: typedSize('.590') }));
    const kept = await getWorksheet(store, worksheet.id);
    const now = await getCut(store, cut.id);
    expect(now && isOlder(now, { worksheet: kept, features: [], readings: [] })).toBe(true);
  });
});
