import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, expect, test, vi } from 'vitest';
import { UnitChoice } from '../../../src/screens/common/choice.tsx';
import { getSetting, putSetting } from '../../../src/store/kept/settings.ts';
import type { SettingValues } from '../../../src/store/base/records.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

afterEach(async () => {
  vi.restoreAllMocks();
  await clearAway();
});

type Before = Partial<Pick<SettingValues, 'shownUnit' | 'decimalMark'>>;

/** The mark that is kept once millimetres were pressed, on a phone that writes 1.5 as `writes`. */
async function markAfter(writes: string, { shownUnit, decimalMark }: Before = {}) {
  vi.spyOn(Number.prototype, 'toLocaleString').mockReturnValue(writes);
  const store = await openForTest();
  if (shownUnit) worked(await putSetting(store, 'shownUnit', shownUnit));
  if (decimalMark) worked(await putSetting(store, 'decimalMark', decimalMark));
  onScreen(store, <UnitChoice />);
  const key = screen.getByRole('button', { name: 'millimetres' });
  await waitFor(() => expect(key.getAttribute('aria-pressed')).toBe(String(shownUnit === 'mm')));
  fireEvent.click(key);
  await waitFor(() => expect(key.getAttribute('aria-pressed')).toBe('true'));
  await waitFor(async () => expect(await getSetting(store, 'shownUnit')).toBe('mm'));
  return getSetting(store, 'decimalMark');
}

test('who goes over to millimetres gets commas with them where the phone writes commas', async () => {
  expect(await markAfter('1,5')).toBe(',');
});

test('a phone that writes points leaves it at points', async () => {
  expect(await markAfter('1.5')).toBeUndefined();
});

test('a shop that counted in millimetres before keeps its points', async () => {
  expect(await markAfter('1,5', { shownUnit: 'mm' })).toBeUndefined();
});

test('what the fitter chose stays chosen', async () => {
  expect(await markAfter('1,5', { shownUnit: 'in', decimalMark: '.' })).toBe('.');
});
