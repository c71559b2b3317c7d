import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { hrefOf } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { addPiece, drawerPieces, type NewPiece } from '../../../src/store/kept/drawer.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import { createWorksheet, getWorksheet, type NewWorksheet } from '../../../src/store/kept/worksheets.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';
import { typedSize } from './worksheet-for-test.ts';

const PATIENCE = { timeout: 30_000 };

beforeEach(() => {
  location.hash = '';
});
afterEach(clearAway);

async function at(worksheet: Omit<NewWorksheet, 'jobId'>, piece: NewPiece) {
  const store = await openForTest();
  const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
  const made = worked(await createWorksheet(store, { jobId: job.id, ...worksheet }));
  worked(await addPiece(store, piece, 2));
  location.hash = hrefOf({ at: 'worksheet', jobId: job.id, worksheetId: made.id });
  onScreen(store, <App store={store} />);
  return {
    counts: async () => (await drawerPieces(store)).map(({ count }) => count),
    sizes: async () => (await getWorksheet(store, made.id))?.sizes ?? {},
  };
}

test('the washer a ring is cut from is taken by one press, and is the one in hand from then on', async () => {
  const washer = {
    kind: 'washer',
    name: 'Big washer',
    material: '',
    thickness: typedSize('.100'),
    outside: typedSize('1.625'),
    inside: typedSize('.688'),
  } as const;
  const sizes = { recess: typedSize('1.500'), stem: typedSize('.750') };
  const known = await at({ kind: 'ring', title: 'Shield', sizes }, washer);
  fireEvent.click(await screen.findByRole('button', { name: 'Take Big washer from the drawer' }, PATIENCE));
  await waitFor(async () => expect(await known.counts()).toEqual([1]), PATIENCE);
  expect(await known.sizes()).toMatchObject({
    blankOutside: { typed: '1.625' },
    blankInside: { typed: '.688' },
  });
  await waitFor(
    () => expect(screen.queryByRole('button', { name: /^Take Big washer/ })).toBeNull(),
    PATIENCE,
  );
});

test('a bearing that lies too deep takes its shim from the drawer, and then sits right', async () => {
  // .590 wide in .600: .010 under the face; .001 to .003 proud, aim .002, wants .012
  const sizes = {
    depth: typedSize('.600'),
    width: typedSize('.590'),
    lower: typedSize('.001'),
    upper: typedSize('.003'),
  };
  const shim = { kind: 'shim', name: 'Shim .012', material: '', thickness: typedSize('.012') } as const;
  const known = await at({ kind: 'bearing-seat', title: 'Hub', sizes, choices: { bearing: 'seat' } }, shim);
  fireEvent.click(await screen.findByRole('button', { name: 'Take it' }, PATIENCE));
  await waitFor(async () => expect(await known.counts()).toEqual([1]), PATIENCE);
  expect((await known.sizes())['alsoIn']).toMatchObject({ typed: '.012' });
  expect(await screen.findByText(/^Good: projection \.002/, {}, PATIENCE)).toBeTruthy();
});
