import { fireEvent, render, screen } from '@testing-library/preact';
import { afterEach, expect, test, vi } from 'vitest';
import { App } from '../../../src/screens/app.tsx';
import { knownSettings } from '../../../src/store/kept/known-settings.ts';
import { openForTest } from '../../store/open-for-test.ts';
import { clearAway } from '../on-screen.tsx';

afterEach(clearAway);

test('settings that can’t be read stop at the boundary, and “Try again” gets over it once they can', async () => {
  const store = await openForTest();
  location.hash = '#/shop';
  const broken = vi.spyOn(store.db, 'transaction').mockImplementation(() => {
    throw new DOMException('the disk is gone', 'UnknownError');
  });
  await knownSettings(store).ready();
  render(<App store={store} />);
  await screen.findByRole('button', { name: 'Try again' });
  broken.mockRestore();
  // A read that was on its way may still fail: a fitter presses once more.
  const isOpen = () => {
    const again = screen.queryByRole('button', { name: 'Try again' });
    if (again) fireEvent.click(again);
    return screen.queryByRole('heading', { name: 'Shop' }) !== null;
  };
  await expect.poll(isOpen).toBe(true);
});
