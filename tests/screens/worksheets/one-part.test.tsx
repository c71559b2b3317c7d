import { fireEvent, screen } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { hrefOf } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { createCuts } from '../../../src/store/kept/cuts.ts';
import { logPass } from '../../../src/store/kept/cut-passes.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { createWorksheet, getWorksheet } from '../../../src/store/kept/worksheets.ts';
import { facing, inches } from '../../store/cut-for-test.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen, wholeSentence } from '../on-screen.tsx';
import { partOf, tool, typedSize } from './worksheet-for-test.ts';

const PATIENCE = { timeout: 30_000 };

beforeEach(() => {
  location.hash = '';
});
afterEach(clearAway);

/** Sleeve 2.000 over a hub of 1.763 and two parts, all by caliper: too loose by a long way, and nothing can be proved. */
async function atStack(field?: string) {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const caliper = tool('digital-caliper');
  const worksheet = worked(
    await createWorksheet(store, {
      jobId: job.id,
      kind: 'spacer-stack',
      title: 'Bracket',
      sizes: { fixed: typedSize('2.000', caliper), lower: typedSize('.009'), upper: typedSize('.011') },
      choices: { want: 'float' },
      parts: {
        a: partOf(1, typedSize('1.763', caliper)),
        b: partOf(2, typedSize('.062', caliper)),
        c: partOf(3, typedSize('.105', caliper)),
      },
    }),
  );
  const at = { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id } as const;
  location.hash = hrefOf({ ...at, ...(field !== undefined && { field }) });
  onScreen(store, <App store={store} />);
  return { store, jobId: job.id, worksheetId: worksheet.id };
}

describe('one part in place of several', () => {
  test('is cut as it is said, however little the caliper proves: .227, not another part', async () => {
    await atStack();
    fireEvent.click(await screen.findByRole('button', { name: 'One part in place of several' }, PATIENCE));
    fireEvent.click(screen.getByRole('button', { name: 'part 2' }));
    fireEvent.click(screen.getByRole('button', { name: 'part 3' }));
    // 2.000 − 1.763 = .237; less .010
    expect(screen.getByText(/^For float \.010 make it \.227 in; by the sizes alone from/)).toBeTruthy();
    fireEvent.click(screen.getByRole('link', { name: 'Cut the one part' }));
    expect(
      await screen.findByRole('heading', { name: 'One part for part 2 and part 3, made new' }, PATIENCE),
    ).toBeTruthy();
    const figures = [...document.querySelectorAll('.cut-it-figure')].map((one) => one.textContent);
    expect(figures).toEqual(['.227 in']);
    expect(screen.getByText(/^Not sure yet/)).toBeTruthy();
  });

  test('that is no way to cut any more is never another one in its place', async () => {
    // the two that are left fill all but .062 + .105 of the sleeve: their one part is another length than part 1 and 9
    await atStack('cuts/one-part-1-9');
    expect(
      await screen.findByText(/^As it stands this way asks for no cut any more/, {}, PATIENCE),
    ).toBeTruthy();
    expect(document.querySelectorAll('.cut-it-figure')).toHaveLength(0);
    expect(screen.getByRole('button', { name: 'Make part 1 new, longer' })).toBeTruthy();
  });
});

describe('a part that was made for the stack', () => {
  async function madeFor(part: string, measured: string) {
    const { store, jobId, worksheetId } = await atStack();
    const limits = { target: inches(measured), lower: inches(measured), upper: inches(measured) };
    const [cut] = worked(await createCuts(store, [facing(jobId, { part, worksheetId, ...limits })]));
    worked(await logPass(store, cut?.id ?? '', { measured: inches(measured) }));
    return async () => {
      const kept = Object.values((await getWorksheet(store, worksheetId))?.parts ?? {});
      return kept
        .toSorted((a, b) => a.order - b.order)
        .map(({ name, size }) => [name, size?.from === 'typed' && size.typed]);
    };
  }

  test('in place of two others goes in with one press, and they go out', async () => {
    const parts = await madeFor('one part for part 2 and part 3', '.227');
    fireEvent.click(await screen.findByRole('button', { name: 'Put it in, in place of them' }, PATIENCE));
    // 2.000 − 1.763 − .227 = .010
    await screen.findByText(/float \.010/, {}, PATIENCE);
    expect(await parts()).toEqual([
      ['part 1', '1.763'],
      ['one part for part 2 and part 3', '.227'],
    ]);
    expect(screen.queryByText(/made since$/)).toBeNull();
  });

  test('besides the others goes in behind them', async () => {
    const parts = await madeFor('one more spacer', '.060');
    fireEvent.click(await screen.findByRole('button', { name: 'Put it into the stack' }, PATIENCE));
    await screen.findByText(/float \.010/, {}, PATIENCE);
    expect((await parts()).at(-1)).toEqual(['one more spacer', '.060']);
    expect(await parts()).toHaveLength(4);
  });
});

test('a stack .060 short by caliper says its figures, and with what they are settled', async () => {
  await atStack();
  // 2.000 − 1.930 = .070; less .010
  expect(await screen.findByRole('heading', { name: /^Add a shim of/ }, PATIENCE)).toBeTruthy();
  expect(document.querySelector('.account-lead-figure')?.textContent).toBe('.060 in');
  expect(document.querySelector('.account-lead-limits')?.textContent).toMatch(/^by the sizes alone from/);
  expect(
    screen.getByText(/^Digital caliper proves this to ±\.\d+\. Feeler the float once it is together\.$/),
  ).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: /^Other ways/ }));
  expect(screen.getByText('Make part 3 new, longer')).toBeTruthy();
  expect(screen.getByText(wholeSentence(/^\.165 in in place of \.105; by the sizes alone/))).toBeTruthy();
  expect(screen.getByText('Put one more spacer in')).toBeTruthy();
  expect(screen.getByText(wholeSentence(/^\.060 in; by the sizes alone/))).toBeTruthy();
});
