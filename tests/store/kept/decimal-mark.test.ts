import { afterEach, expect, test } from 'vitest';
import { decimalMarkOf } from '../../../src/screens/common/use-settings.ts';
import { knownSettings } from '../../../src/store/kept/known-settings.ts';
import { putSetting } from '../../../src/store/kept/settings.ts';
import { closeAll, openForTest, worked } from '../open-for-test.ts';

afterEach(closeAll);

test.each([
  ['mm', ',', ','],
  ['mm', '.', '.'],
  ['mm', undefined, '.'], // a shop that never chose sees what it saw
  ['in', ',', '.'],
  [undefined, ',', '.'],
] as const)('a shop in %s that chose %s has %s before its decimals', async (unit, mark, written) => {
  const store = await openForTest();
  if (unit) worked(await putSetting(store, 'shownUnit', unit));
  if (mark) worked(await putSetting(store, 'decimalMark', mark));
  const known = knownSettings(store);
  await known.ready();
  expect(decimalMarkOf(known)).toBe(written);
});
