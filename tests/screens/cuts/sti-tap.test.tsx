import { cleanup, fireEvent, screen } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { lengthOf } from '../../../src/engine/length/length.ts';
import { hrefOf, type Address } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { cutsCsv } from '../../../src/screens/sheet/csv.ts';
import { createCuts } from '../../../src/store/kept/cuts.ts';
import { drawerPieces } from '../../../src/store/kept/drawer.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

// The screens are fetched when they are first opened.
const PATIENCE = { timeout: 30_000 };
const size = (typed: string) => ({ typed, unit: 'in', exact: lengthOf(`${typed} in`) }) as const;

beforeEach(() => {
  location.hash = '';
});
afterEach(clearAway);

/** A cut as it was kept before its name said STI. */
async function keptBefore() {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const [cut] = worked(
    await createCuts(store, [
      {
        jobId: job.id,
        name: 'Hole, tapped for an insert 1/2-20 UNF',
        part: 'hole',
        operation: 'tap',
        of: 'tap-drill',
        target: size('.5156'),
        lower: size('.5108'),
        upper: size('.5185'),
        limitsFrom: 'the insert',
        material: 'low-carbon-steel',
        cuttingTool: 'hss',
        machine: 'lathe',
        thread: '1/2-20 UNF',
      },
    ]),
  );
  if (!cut) throw new Error('no cut');
  return { store, job, cut };
}

const TAP = 'STI tap 1/2-20 UNF';

test('a kept cut for an insert says STI in the list, on its page, at the lathe, on the sheet and in the file', async () => {
  const { store, job, cut } = await keptBefore();
  const places: readonly Address[] = [
    { at: 'cuts', jobId: job.id },
    { at: 'cut', jobId: job.id, cutId: cut.id },
    { at: 'lathe', jobId: job.id, cutId: cut.id },
    { at: 'sheet', jobId: job.id },
  ];
  for (const place of places) {
    location.hash = hrefOf(place);
    onScreen(store, <App store={store} />);
    expect((await screen.findAllByText(new RegExp(TAP), {}, PATIENCE)).length).toBeGreaterThan(0);
    // Every mention of the thread has STI before it, but the sentence that says where limits are from.
    expect(document.body.textContent).not.toMatch(/(?<!STI )tap(ped)?( with| for an insert)? 1\/2-20/i);
    cleanup();
  }
  const file = cutsCsv([cut], new Set());
  expect(file).toContain(TAP);
  expect(file).not.toContain('tapped for an insert');
});

test('an STI tap lies in the drawer apart from plain taps, by the bolt that it is for', async () => {
  const store = await openForTest();
  for (const kind of ['STI tap', 'plain tap']) {
    location.hash = hrefOf({ at: 'new-piece' });
    onScreen(store, <App store={store} />);
    fireEvent.click(await screen.findByRole('button', { name: 'Tap' }, PATIENCE));
    fireEvent.click(await screen.findByRole('button', { name: kind }));
    fireEvent.input(await screen.findByRole('textbox'), { target: { value: '1/2' } });
    fireEvent.click(screen.getByRole('button', { name: 'Put it in' }));
    await expect.poll(async () => (await drawerPieces(store)).length).toBe(kind === 'plain tap' ? 2 : 1);
    cleanup();
  }
  location.hash = hrefOf({ at: 'drawer' });
  onScreen(store, <App store={store} />);
  const heading = await screen.findByRole('heading', { name: 'STI taps' }, PATIENCE);
  expect(heading.closest('section')?.textContent).toMatch(/STI tap 1\/2 in.*for a 1\/2 in bolt/);
  const plain = screen.getByRole('heading', { name: 'Taps' }).closest('section');
  expect(plain?.textContent).not.toContain('STI');
});
