import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, expect, test } from 'vitest';
import { ShopScreen } from '../../../src/screens/shop/shop-screen.tsx';
import { getSetting } from '../../../src/store/kept/settings.ts';
import { openForTest } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

afterEach(clearAway);

test('what the dial reads and its graduation, pressed one right after the other, are both kept', async () => {
  const store = await openForTest();
  onScreen(store, <ShopScreen />);
  const radius = await screen.findByRole('button', { name: 'radius' });
  const two = screen.getByRole('button', { name: '.002 in' });
  fireEvent.click(radius);
  fireEvent.click(two);
  await waitFor(async () =>
    expect(await getSetting(store, 'dial')).toMatchObject({
      reads: 'radius',
      graduation: { typed: '.002 in' },
    }),
  );
});
