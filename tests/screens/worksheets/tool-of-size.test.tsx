import { fireEvent, screen, waitFor, within } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { hrefOf } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { worksheets } from '../../../src/engine/worksheets/all-worksheets.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { getSetting, putSetting } from '../../../src/store/kept/settings.ts';
import { createWorksheet, getWorksheet } from '../../../src/store/kept/worksheets.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

// The screens are fetched when they are first opened.
const PATIENCE = { timeout: 30_000 };

let store: Store;
beforeEach(async () => {
  location.hash = '';
  store = await openForTest();
});
afterEach(clearAway);

async function newFit(): Promise<{ jobId: string; id: string }> {
  const { id: jobId } = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const choices = worksheets.fit.starts;
  const { id } = worked(await createWorksheet(store, { jobId, kind: 'fit', title: 'Spindle', choices }));
  return { jobId, id };
}

const LABELS: Readonly<Record<string, string>> = { bore: 'Bore', pin: 'Pin' };

async function openField({ jobId, id }: { jobId: string; id: string }, field: string): Promise<void> {
  location.hash = hrefOf({ at: 'worksheet', jobId, worksheetId: id, field });
  if (document.querySelector('.app') === null) onScreen(store, <App store={store} />);
  await pad(LABELS[field] ?? '');
}

const pad = (label: string) => screen.findByLabelText<HTMLInputElement>(label, {}, PATIENCE);
async function typeIn(label: string, size: string): Promise<void> {
  fireEvent.input(await pad(label), { target: { value: size } });
}
const use = () => fireEvent.click(screen.getByRole('button', { name: 'Use it' }));
const toolKey = () => screen.findByRole('button', { name: /^Read with: / }, PATIENCE);
const press = async (name: RegExp | string) =>
  fireEvent.click(await screen.findByRole('button', { name }, PATIENCE));
const pinOf = async (id: string) => (await getWorksheet(store, id))?.sizes['pin'];

describe('the tool of a typed size', () => {
  test('is the usual caliper, said as such, whatever was chosen in another job', async () => {
    const first = await newFit();
    await putSetting(store, 'lastUsed/pin', { toolId: 'micrometer-1-2', unit: 'in', jobId: first.jobId });
    const second = await newFit();
    await openField(second, 'pin');
    await typeIn('Pin', '1.227');
    expect((await toolKey()).textContent).toBe('usual: caliper ±.001');
    use();
    await waitFor(async () =>
      expect(await pinOf(second.id)).toMatchObject({
        typed: '1.227',
        toolAssumed: true,
        tool: { id: 'digital-caliper' },
      }),
    );
  });

  test('is not carried over from a record of before, either, nor to the next size', async () => {
    await putSetting(store, 'lastUsed/pin', { toolId: 'micrometer-1-2', unit: 'in' });
    const fit = await newFit();
    await openField(fit, 'pin');
    expect((await toolKey()).textContent).toBe('usual: caliper ±.001');
    await typeIn('Pin', '1.227');
    await press(/^Read with: /);
    await press(/^1–2 in micrometer/);
    expect((await toolKey()).textContent).toMatch(/^1–2 in micrometer ±/);
    use();
    await waitFor(async () => expect(await pinOf(fit.id)).toMatchObject({ tool: { id: 'micrometer-1-2' } }));
    expect(await pinOf(fit.id)).not.toHaveProperty('toolAssumed');
    const other = await newFit();
    await openField(other, 'pin');
    await waitFor(async () => expect((await toolKey()).textContent).toBe('usual: caliper ±.001'));
    expect(await getSetting(store, 'lastUsed/pin')).toMatchObject({ toolId: 'micrometer-1-2' });
  });

  test('opens the choice when its name is pressed, of those tools only that can read such a size', async () => {
    const fit = await newFit();
    await openField(fit, 'pin');
    await typeIn('Pin', '.227');
    await press(/^Read with: /);
    await screen.findByRole('heading', { name: '.227 in: read with' }, PATIENCE);
    const offered = within(screen.getByRole('main')).getAllByRole('button');
    const names = offered.map((row) => row.querySelector('.row-title')?.textContent);
    expect(names).toContain('0–1 in micrometer');
    expect(names).not.toContain('1–2 in micrometer');
    await press('Back to the pad');
    expect((await pad('Pin')).value).toBe('.227');
    expect((await toolKey()).textContent).toBe('usual: caliper ±.001');
  });

  test('that was chosen for one figure is not taken for another outside its range', async () => {
    const fit = await newFit();
    await openField(fit, 'pin');
    await typeIn('Pin', '1.5');
    await press(/^Read with: /);
    await press(/^1–2 in micrometer/);
    await typeIn('Pin', '.9999');
    use();
    expect((await screen.findByRole('alert')).textContent).toBe(
      'The 1–2 in micrometer reads 1.000 to 2.000 in. Choose the tool that read .9999 in.',
    );
    expect(await pinOf(fit.id)).toBeUndefined();
    expect((await pad('Pin')).value).toBe('.9999');
  });

  test('is the rule where the usual caliper is too short', async () => {
    const fit = await newFit();
    await openField(fit, 'pin');
    await typeIn('Pin', '6.001');
    use();
    // No rule reads a pin across; the choice says so instead of taking it as exact.
    expect((await screen.findByRole('alert')).textContent).toBe(
      'No tool in Shop reads 6.001 in. Choose how it is known.',
    );
  });

  test('stays with its size when that is opened again', async () => {
    const fit = await newFit();
    await openField(fit, 'pin');
    await typeIn('Pin', '.4375');
    await press(/^Read with: /);
    await press(/^0–1 in micrometer/);
    use();
    await waitFor(async () => expect(await pinOf(fit.id)).toBeDefined());
    await openField(fit, 'bore');
    await openField(fit, 'pin');
    await waitFor(async () => expect((await toolKey()).textContent).toBe('0–1 in micrometer ±.0001'));
  });
});

describe('a size that looks like a slip', () => {
  const boreOf = async (id: string) => (await getWorksheet(store, id))?.sizes['bore'];

  test('is asked about, and taken as it was meant, with the tool for that size', async () => {
    const fit = await newFit();
    await openField(fit, 'bore');
    await typeIn('Bore', '24.12');
    use();
    expect((await screen.findByRole('alert')).textContent).toBe(
      '24.12 in is not usual here: .030 to 8.000 in is. Which is meant?',
    );
    await press('24.12 mm');
    await waitFor(async () =>
      expect(await boreOf(fit.id)).toMatchObject({
        typed: '24.12 mm',
        unit: 'mm',
        tool: { id: 'digital-caliper-inside' },
      }),
    );
  });

  test('beside the other size of the worksheet is kept where the fitter says so', async () => {
    const fit = await newFit();
    await openField(fit, 'pin');
    await typeIn('Pin', '.4375');
    use();
    await waitFor(async () => expect(await pinOf(fit.id)).toBeDefined());
    await openField(fit, 'bore');
    await typeIn('Bore', '4.49');
    use();
    await press('Keep 4.49 in');
    await waitFor(async () => expect(await boreOf(fit.id)).toMatchObject({ typed: '4.49', unit: 'in' }));
  });
});
