import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { hrefOf } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { addPiece, drawerPieces } from '../../../src/store/kept/drawer.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { createWorksheet } from '../../../src/store/kept/worksheets.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen, said } from '../on-screen.tsx';
import { partOf, typedSize } from './worksheet-for-test.ts';

const PATIENCE = { timeout: 30_000 };

beforeEach(() => {
  location.hash = '';
});
afterEach(clearAway);

async function atLooseStack(shims: readonly (readonly [string, number])[]) {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const worksheet = worked(
    await createWorksheet(store, {
      jobId: job.id,
      kind: 'spacer-stack',
      title: 'Bracket',
      sizes: { fixed: typedSize('.9348') },
      choices: { want: 'float' },
      parts: { a: partOf(1, typedSize('.900')) },
    }),
  );
  for (const [size, count] of shims) {
    const piece = { kind: 'shim', name: `Shim ${size}`, material: '', thickness: typedSize(size) } as const;
    worked(await addPiece(store, piece, count));
  }
  location.hash = hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: worksheet.id });
  onScreen(store, <App store={store} />);
  return store;
}

test('a stack .0248 too loose takes 2 × .010 and a .005 out of the drawer, and then floats .0098', async () => {
  const store = await atLooseStack([
    ['.010', 3],
    ['.005', 2],
  ]);
  // .9348 − .900 = .0348; .0348 − .010 wanted = .0248; 2 × .010 + .005 = .025; .0348 − .025 = .0098
  expect(await screen.findByText('2 × .010 + .005', {}, PATIENCE)).toBeTruthy();
  expect(screen.getByText('Together .025, leaves .0098.')).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Take them' }));
  expect(await screen.findByText('Good: float .0098, want .008 to .012.', {}, PATIENCE)).toBeTruthy();
  expect((await drawerPieces(store)).map(({ piece, count }) => `${piece.name}: ${count}`)).toEqual([
    'Shim .005: 1',
    'Shim .010: 1',
  ]);
  expect(said()).toBe('2 × .010 + .005 taken from the drawer and put into the stack.');
});

test('and gets them back into the drawer with one undo', async () => {
  const store = await atLooseStack([['.025', 1]]);
  fireEvent.click(await screen.findByRole('button', { name: 'Take them' }, PATIENCE));
  fireEvent.click(
    await screen.findByRole(
      'button',
      { name: 'Undo: changed Bracket: shims taken from the drawer' },
      PATIENCE,
    ),
  );
  await screen.findByRole('button', { name: 'Take them' }, PATIENCE);
  await waitFor(async () => expect((await drawerPieces(store)).map(({ count }) => count)).toEqual([1]));
});

test('out of a drawer that can’t do it is told the nearest possible, and what is still missing', async () => {
  await atLooseStack([['.006', 3]]);
  // 3 × .006 = .018; .0248 − .018 = .0068; .0348 − .018 = .0168
  expect(
    await screen.findByText(
      'Nothing in the drawer fits. Nearest possible: together .018, leaves .0168, .0068 too thin for the aim.',
      {},
      PATIENCE,
    ),
  ).toBeTruthy();
  expect(screen.getByRole('button', { name: 'Take these all the same' })).toBeTruthy();
});

test('out of an empty drawer is told to put shims in', async () => {
  await atLooseStack([]);
  expect(await screen.findByText(/The drawer holds no shim or washer/, {}, PATIENCE)).toBeTruthy();
});
