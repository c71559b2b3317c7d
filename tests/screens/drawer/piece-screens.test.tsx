import { fireEvent, screen } from '@testing-library/preact';
import { afterEach, expect, test } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { NewPieceScreen } from '../../../src/screens/drawer/new-piece-screen.tsx';
import { PieceScreen } from '../../../src/screens/drawer/piece-screen.tsx';
import { addPiece, drawerPieces } from '../../../src/store/kept/drawer.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

afterEach(clearAway);

async function typeNothing(key: string) {
  fireEvent.input(await screen.findByRole('textbox'), { target: { value: '0' } });
  fireEvent.click(screen.getByRole('button', { name: key }));
  expect((await screen.findByRole('alert')).textContent).toBe('A size is more than nothing.');
}

test('a shim of nothing does not go into the drawer', async () => {
  const store = await openForTest();
  onScreen(store, <NewPieceScreen />);
  await typeNothing('Put it in');
  expect(await drawerPieces(store)).toEqual([]);
});

test.each(['thickness', 'outside', 'inside'])('a washer’s %s is more than nothing', async (field) => {
  const store = await openForTest();
  const thickness = { from: 'typed', ...worked(readEntry('1/16', { unit: 'in' })) } as const;
  const washer = worked(
    await addPiece(store, { kind: 'washer', name: 'Washer', thickness, material: '' }, 1),
  );
  onScreen(store, <PieceScreen pieceId={washer.id} field={field} />);
  await typeNothing('Use it');
  expect((await drawerPieces(store))[0]?.piece).toEqual(washer);
});
