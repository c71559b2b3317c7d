import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, expect, test } from 'vitest';
import { SpeedsScreen } from '../../../src/screens/shop/lathe-speeds.tsx';
import { getSetting, putSetting } from '../../../src/store/kept/settings.ts';
import { openForTest } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

afterEach(clearAway);

test('two speeds taken out one right after the other are both out', async () => {
  const store = await openForTest();
  await putSetting(store, 'lathe', { speedsRpm: [200, 300, 400] });
  onScreen(store, <SpeedsScreen />);
  await screen.findByRole('button', { name: 'Take out 300 rpm' });
  for (const rpm of [200, 300]) fireEvent.click(screen.getByRole('button', { name: `Take out ${rpm} rpm` }));
  await waitFor(async () => expect(await getSetting(store, 'lathe')).toEqual({ speedsRpm: [400] }));
});
