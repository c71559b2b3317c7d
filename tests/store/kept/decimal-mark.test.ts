import { afterEach, describe, expect, test } from 'vitest';
import { decimalMarkOf } from '../../../src/screens/common/use-settings.ts';
import { knownSettings } from '../../../src/store/kept/known-settings.ts';
import { getSetting, putSetting, putUnit } from '../../../src/store/kept/settings.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { closeAll, openForTest, worked } from '../open-for-test.ts';

afterEach(closeAll);

const goOverTo = async (store: Store, unit: 'in' | 'mm', usualMark: 'point' | 'comma') =>
  worked(await putUnit(store, { unit, usualMark }));

async function markIn(store: Store): Promise<string> {
  const known = knownSettings(store);
  await known.ready();
  return decimalMarkOf(known);
}

describe('what stands before the decimals', () => {
  test('is a comma from the press on millimetres, where the phone writes one', async () => {
    const store = await openForTest();
    await goOverTo(store, 'mm', 'comma');
    expect(await markIn(store)).toBe(',');
  });

  test('is a point where the phone writes one, and in inches on any phone', async () => {
    const store = await openForTest();
    await goOverTo(store, 'mm', 'point');
    expect(await getSetting(store, 'decimalMark')).toBeUndefined();
    const other = await openForTest();
    await goOverTo(other, 'mm', 'comma');
    await goOverTo(other, 'in', 'comma');
    expect(await markIn(other)).toBe('.');
  });

  test('stays as it was in a shop that counted in millimetres before', async () => {
    const store = await openForTest();
    worked(await putSetting(store, 'shownUnit', 'mm'));
    await goOverTo(store, 'mm', 'comma');
    expect(await markIn(store)).toBe('.');
  });

  test('stays as the fitter chose it, whatever the phone writes', async () => {
    const store = await openForTest();
    worked(await putSetting(store, 'decimalMark', 'point'));
    await goOverTo(store, 'mm', 'comma');
    expect(await markIn(store)).toBe('.');
  });

  test('goes with the unit in one undo', async () => {
    const store = await openForTest();
    await goOverTo(store, 'mm', 'comma');
    const undo = await latestUndo(store);
    worked(await undoLast(store, undo?.id ?? ''));
    expect([await getSetting(store, 'shownUnit'), await getSetting(store, 'decimalMark')]).toEqual([
      undefined,
      undefined,
    ]);
  });
});
