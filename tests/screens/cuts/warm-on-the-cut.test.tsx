import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { hrefOf } from '../../../src/screens/address.ts';
import { App } from '../../../src/screens/app.tsx';
import { timeToKeep } from '../../../src/store/base/clock.ts';
import { createCuts, getCut } from '../../../src/store/kept/cuts.ts';
import { changeJob, createJob } from '../../../src/store/kept/jobs.ts';
import { facing, inches } from '../../store/cut-for-test.ts';
import { openForTest, worked } from '../../store/open-for-test.ts';
import { clearAway, onScreen } from '../on-screen.tsx';

const PATIENCE = { timeout: 30_000 };

beforeEach(() => {
  location.hash = '';
});
afterEach(async () => {
  vi.useRealTimers();
  await clearAway();
});

test.each([
  ['1970', Date.UTC(1970, 0, 2)],
  ['today', Date.now()],
])(
  'a warm part measured on its cut’s page counts at 68 °F, with the phone’s clock at %s',
  async (_when, now) => {
    vi.useFakeTimers({ toFake: ['Date'], now });
    const store = await openForTest();
    const { id: jobId } = worked(await createJob(store, { name: 'Outfit', systems: [] }));
    worked(await changeJob(store, jobId, { warmth: { degrees: '95', unit: 'F', at: timeToKeep() } }));
    const limits = { target: inches('4.0000'), lower: inches('3.9995'), upper: inches('4.0005') };
    const [cut] = worked(await createCuts(store, [facing(jobId, { ...limits, material: 'aluminium-6061' })]));
    const cutId = cut?.id ?? '';
    location.hash = hrefOf({ at: 'cut', jobId, cutId, field: 'measured' });
    onScreen(store, <App store={store} />);
    fireEvent.input(await screen.findByRole('textbox', {}, PATIENCE), { target: { value: '4.0010' } });
    fireEvent.click(await screen.findByRole('button', { name: /^(?:Log|Use) / }, PATIENCE));
    // 4.0010 at 95 °F is 4.0003 at 68: to size, where the size as read would be .0005 over.
    await waitFor(async () => expect((await getCut(store, cutId))?.state).toBe('to-size'), PATIENCE);
    const [pass] = Object.values((await getCut(store, cutId))?.passes ?? {});
    expect(pass?.warmth).toMatchObject({ degrees: '95', unit: 'F', material: 'aluminium-6061' });
  },
);
