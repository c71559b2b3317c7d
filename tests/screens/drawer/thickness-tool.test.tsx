import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { NewPieceScreen } from '../../../src/screens/drawer/new-piece-screen.tsx';
import { PieceScreen } from '../../../src/screens/drawer/piece-screen.tsx';
import { addPiece, drawerPieces } from '../../../src/store/kept/drawer.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { takeShims } from '../../../src/store/kept/take-shims.ts';
import { createWorksheet } from '../../../src/store/kept/worksheets.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { typedSize } from '../worksheets/worksheet-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

afterEach(clearAway);

async function thicknessIn(store: Store) {
  const size = (await drawerPieces(store))[0]?.piece.thickness;
  return size?.from === 'typed' ? size : undefined;
}

async function type(text: string, commit: string) {
  fireEvent.input(await screen.findByRole('textbox'), { target: { value: text } });
  fireEvent.click(screen.getByRole('button', { name: commit }));
}

describe('a shim for the drawer', () => {
  test('is read with the usual caliper until another tool is named, and says so', async () => {
    const store = await openForTest();
    onScreen(store, <NewPieceScreen />);
    expect(await screen.findByRole('button', { name: /^Read with: .*caliper.*, usual$/ })).toBeTruthy();
    await type('.010', 'Put it in');
    await waitFor(async () =>
      expect(await thicknessIn(store)).toMatchObject({ typed: '.010', toolAssumed: true }),
    );
  });

  test('keeps the micrometer it was read with, and takes it into the stack', async () => {
    const store = await openForTest();
    onScreen(store, <NewPieceScreen />);
    fireEvent.click(await screen.findByRole('button', { name: /^Read with/ }));
    fireEvent.click(screen.getByRole('button', { name: /^0–1 in micrometer/ }));
    await type('.0100', 'Put it in');
    await waitFor(async () =>
      expect(await thicknessIn(store)).toMatchObject({ tool: { id: 'micrometer-0-1' } }),
    );
    expect(await thicknessIn(store)).not.toHaveProperty('toolAssumed');
    const job = worked(await createJob(store, { name: 'Outfit', systems: [] }));
    const stack = worked(
      await createWorksheet(store, { jobId: job.id, kind: 'spacer-stack', title: 'Bracket' }),
    );
    const [shim] = await drawerPieces(store);
    const after = worked(await takeShims(store, stack.id, [{ pieceId: shim?.piece.id ?? '', count: 1 }]));
    expect(Object.values(after.parts)).toMatchObject([
      { size: { typed: '.0100', tool: { id: 'micrometer-0-1' } } },
    ]);
  });

  test('of more than a tool can read is not taken as read with it', async () => {
    const store = await openForTest();
    onScreen(store, <NewPieceScreen />);
    fireEvent.click(await screen.findByRole('button', { name: /^Read with/ }));
    fireEvent.click(screen.getByRole('button', { name: /^0–1 in micrometer/ }));
    await type('1.250', 'Put it in');
    // No usual shim: asked about first, and confirmed.
    fireEvent.click(await screen.findByRole('button', { name: 'Keep 1.250 in' }));
    await waitFor(() => expect(screen.getByRole('alert').textContent).toMatch(/micrometer/));
    expect(await drawerPieces(store)).toEqual([]);
  });
});

test('a thickness that was put in without a tool stays taken as exact, and says so', async () => {
  const store = await openForTest();
  const piece = { kind: 'shim', name: 'Shim', material: '', thickness: typedSize('.010') } as const;
  const made = worked(await addPiece(store, piece, 1));
  onScreen(store, <PieceScreen pieceId={made.id} field="thickness" />);
  expect(await screen.findByRole('button', { name: 'Read with: taken as exact' })).toBeTruthy();
});

test('a reamer’s size has no tool beside it', async () => {
  const store = await openForTest();
  onScreen(store, <NewPieceScreen />);
  fireEvent.click(await screen.findByRole('button', { name: 'More kinds' }));
  fireEvent.click(await screen.findByRole('button', { name: 'Reamer' }));
  expect(screen.queryByRole('button', { name: /^Read with/ })).toBeNull();
});

describe('a size for the drawer that looks like a slip', () => {
  test.each([
    // No shim is 10 in, nor 10 mm: .100, .010 and .001 are left.
    { typed: '10', meant: '.010 in' },
    { typed: '.5', meant: '.5 mm' },
    { typed: '23.590', meant: '.2359 in' },
  ])('a shim of $typed in is asked about, and nothing is put in before', async ({ typed, meant }) => {
    const store = await openForTest();
    onScreen(store, <NewPieceScreen />);
    await type(typed, 'Put it in');
    expect((await screen.findByRole('alert')).textContent).toContain('not usual here');
    expect(await drawerPieces(store)).toEqual([]);
    fireEvent.click(screen.getByRole('button', { name: meant }));
    await waitFor(async () => expect(await thicknessIn(store)).toMatchObject({ typed: meant }));
  });

  test('is kept as typed where that is confirmed', async () => {
    const store = await openForTest();
    onScreen(store, <NewPieceScreen />);
    await type('.5', 'Put it in');
    fireEvent.click(await screen.findByRole('button', { name: 'Keep .5 in' }));
    await waitFor(async () => expect(await thicknessIn(store)).toMatchObject({ typed: '.5', unit: 'in' }));
  });
});
