import { fireEvent, screen, waitFor, within } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { decimalText } from '../../../src/engine/length/length.ts';
import { hrefOf } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { changeJob, createJob, getJob } from '../../../src/store/kept/jobs.ts';
import { putSetting } from '../../../src/store/kept/settings.ts';
import { createWorksheet, getWorksheet } from '../../../src/store/kept/worksheets.ts';
import type { Job, Worksheet } from '../../../src/store/base/records.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { aMomentLater, clearAway, onScreen } from '../on-screen.tsx';
import { partOf, tool, typedSize } from './worksheet-for-test.ts';

const PATIENCE = { timeout: 30_000 };
const caliper = tool('digital-caliper');

let store: Store;
let job: Job;
beforeEach(async () => {
  location.hash = '';
  store = await openForTest();
  job = worked(await createJob(store, { name: 'Outfit', systems: ['wheel'] }));
});
afterEach(clearAway);

/** A sleeve of 5.125 with a tube of 5.110 on it, both by caliper: 10 °C of aluminium are .0006 of either. */
async function stackOf(): Promise<Worksheet> {
  return worked(
    await createWorksheet(store, {
      jobId: job.id,
      kind: 'spacer-stack',
      title: 'Swing arm',
      sizes: { fixed: typedSize('5.125', caliper) },
      choices: { want: 'float' },
      parts: { a: { ...partOf(1, typedSize('5.110', caliper)), name: 'tube', adjustable: false } },
    }),
  );
}

function open(worksheet: Worksheet, field?: string): void {
  const at = { at: 'worksheet', jobId: job.id, worksheetId: worksheet.id } as const;
  location.hash = hrefOf(field === undefined ? at : { ...at, field });
  if (document.querySelector('.app') === null) onScreen(store, <App store={store} />);
}

const heading = (name: RegExp) => screen.findByRole('heading', { level: 1, name }, PATIENCE);

async function say(degrees: string, unit = 'F'): Promise<void> {
  fireEvent.input(await screen.findByLabelText(`Temperature, °${unit}`, {}, PATIENCE), {
    target: { value: degrees },
  });
  fireEvent.click(screen.getByRole('button', { name: 'Use it' }));
}

async function pressMetal(name: string): Promise<void> {
  fireEvent.click(await screen.findByRole('button', { name }, PATIENCE));
  // The next one lies under the same finger.
  await aMomentLater();
}

describe('how warm typed sizes were read', () => {
  test('is asked once, then of each size what it is made of, and the answer stands on sizes at 68 °F', async () => {
    const worksheet = await stackOf();
    open(worksheet);
    // 5.125 · 11.9 millionths · 10 °C = .00061
    const key = await screen.findByRole(
      'link',
      { name: /^Sleeve or opening: how warm\? ±\.0006 in/ },
      PATIENCE,
    );
    expect(key.getAttribute('href')).toBe(
      hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id, field: 'warm' }),
    );
    open(worksheet, 'warm');
    await heading(/^How warm are parts and tool\?/);
    await say('86');
    await heading(/^Sleeve or opening: what is it made of\?/);
    expect((await getJob(store, job.id))?.warmth).toMatchObject({ degrees: '86', unit: 'F' });
    await pressMetal('Aluminum 6061');
    await heading(/^tube: what is it made of\?/);
    await pressMetal('Stainless 303');
    await heading(/^Warmth is said/);
    expect(screen.getByText('These sizes count as they are at 20 °C, 68 °F.')).toBeTruthy();
    const kept = await getWorksheet(store, worksheet.id);
    expect(kept?.sizes['fixed']).toMatchObject({
      typed: '5.125',
      warmth: { degrees: '86', unit: 'F', material: 'aluminium-6061' },
    });
    expect(kept?.parts['a']?.size).toMatchObject({
      typed: '5.110',
      warmth: { degrees: '86', unit: 'F', material: 'stainless-303' },
    });
    // What was typed stays what was typed.
    const fixed = kept?.sizes['fixed'];
    expect(fixed?.from === 'typed' && decimalText(fixed.exact, 'in', 6)).toBe('5.125000');
    open(worksheet);
    // 86 °F is 30 °C: 5.125 − 5.125 · 10 · 11.9 millionths = 5.12439; the tube of 17.2 millionths, Δ 5.5: 5.11 − .00028
    // = 5.10972. Float 5.12439 − 5.10972 = .0147 where the sizes as read leave .0150.
    expect(await screen.findByText(/float \.0147/, {}, PATIENCE)).toBeTruthy();
    expect(screen.queryByRole('link', { name: /how warm/ })).toBeNull();
    fireEvent.click(screen.getByRole('button', { name: /^Sizes/ }));
    expect(screen.getAllByText(/brought to 20 °C/).length).toBe(2);
  });

  test('is asked for the metal alone where it was said today, and again where it was another day', async () => {
    const worksheet = await stackOf();
    worked(await changeJob(store, job.id, { warmth: { degrees: '50', unit: 'F', at: Date.now() } }));
    open(worksheet, 'warm');
    await heading(/^Sleeve or opening: what is it made of\?/);
    worked(
      await changeJob(store, job.id, {
        warmth: { degrees: '50', unit: 'F', at: Date.now() - 13 * 3_600_000 },
      }),
    );
    expect(await heading(/^How warm are parts and tool\?/)).toBeTruthy();
  });

  test('lists the metal that the worksheet knows first, with the others behind it', async () => {
    const worksheet = worked(
      await createWorksheet(store, {
        jobId: job.id,
        kind: 'bushing',
        title: 'Pivot',
        sizes: { bore: typedSize('4.250', caliper), pin: typedSize('4.000') },
        choices: { joint: 'turns', partMetal: 'aluminium-7075', bushingMetal: 'bearing-bronze' },
      }),
    );
    worked(await changeJob(store, job.id, { warmth: { degrees: '95', unit: 'F', at: Date.now() } }));
    open(worksheet, 'warm');
    const page = (await heading(/what is it made of\?/)).closest('.page') ?? document.body;
    const rows = within(page instanceof HTMLElement ? page : document.body)
      .getAllByRole('listitem')
      .map(({ textContent }) => textContent);
    expect(rows[0]).toContain('7075');
    expect(new Set(rows).size).toBe(rows.length);
    expect(rows.length).toBeGreaterThan(10);
  });

  test('that no shop has is refused in a sentence, and nothing is kept', async () => {
    const worksheet = await stackOf();
    open(worksheet, 'warm');
    await say('400');
    await waitFor(() => expect(document.body.textContent).toMatch(/140/), PATIENCE);
    expect((await getJob(store, job.id))?.warmth).toBeUndefined();
    expect(screen.getByLabelText<HTMLInputElement>('Temperature, °F').value).toBe('400');
  });

  test('is asked in Celsius in a metric shop', async () => {
    await putSetting(store, 'shownUnit', 'mm');
    const worksheet = await stackOf();
    open(worksheet, 'warm');
    await say('30', 'C');
    await heading(/what is it made of\?/);
    expect((await getJob(store, job.id))?.warmth).toMatchObject({ degrees: '30', unit: 'C' });
  });

  test('is one undo for each size', async () => {
    const worksheet = await stackOf();
    worked(await changeJob(store, job.id, { warmth: { degrees: '86', unit: 'F', at: Date.now() } }));
    open(worksheet, 'warm');
    await heading(/^Sleeve or opening/);
    await pressMetal('Aluminum 6061');
    await heading(/^tube/);
    open(worksheet);
    fireEvent.click(await screen.findByRole('button', { name: /^Undo/ }, PATIENCE));
    // 5.125 is asked about again.
    await screen.findByRole('link', { name: /^Sleeve or opening: which metal\?/ }, PATIENCE);
    expect((await getWorksheet(store, worksheet.id))?.sizes['fixed']).not.toHaveProperty('warmth');
  });
});
