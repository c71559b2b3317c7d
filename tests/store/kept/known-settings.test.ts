import { afterEach, expect, test, vi } from 'vitest';
import { knownSettings } from '../../../src/store/kept/known-settings.ts';
import { getSetting, putSetting } from '../../../src/store/kept/settings.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { closeAll, freshName, openForTest, worked } from '../open-for-test.ts';

afterEach(closeAll);

test('nothing is known until they were read; then all of them, without asking again', async () => {
  const store = await openForTest();
  worked(await putSetting(store, 'shownUnit', 'mm'));
  const known = knownSettings(store);
  expect([known.isRead(), known.get('padSize')]).toEqual([false, undefined]);
  await known.ready();
  const asked = vi.spyOn(store.db, 'transaction');
  expect([known.isRead(), known.get('shownUnit'), known.get('padSize')]).toEqual([true, 'mm', undefined]);
  expect(known.get('shownUnit')).toBe(known.get('shownUnit'));
  expect(asked).not.toHaveBeenCalled();
  expect(knownSettings(store)).toBe(known);
});

test('who follows a setting is told of its changes and its undo, and of no other', async () => {
  const store = await openForTest();
  const known = knownSettings(store);
  await known.ready();
  const told = vi.fn<() => void>();
  const stop = known.follow('shownUnit', told);
  worked(await putSetting(store, 'lastPlace', '#/shop'));
  worked(await putSetting(store, 'padSize', 'glove'));
  await expect.poll(() => known.get('padSize')).toBe('glove');
  expect(told).not.toHaveBeenCalled();
  worked(await putSetting(store, 'shownUnit', 'mm'));
  await expect.poll(() => known.get('shownUnit')).toBe('mm');
  expect(told).toHaveBeenCalledTimes(1);
  worked(await undoLast(store, (await latestUndo(store))?.id ?? ''));
  await expect.poll(() => known.get('shownUnit')).toBe(undefined);
  expect(await getSetting(store, 'shownUnit')).toBe(undefined);
  expect(told).toHaveBeenCalledTimes(2);
  stop();
  worked(await putSetting(store, 'shownUnit', 'in'));
  await expect.poll(() => known.get('shownUnit')).toBe('in');
  expect(told).toHaveBeenCalledTimes(2);
});

test('a change in another tab is known here', async () => {
  const name = freshName();
  const [here, there] = [await openForTest({ name }), await openForTest({ name })];
  const known = knownSettings(here);
  await known.ready();
  const told = vi.fn<() => void>();
  known.follow('shownUnit', told);
  worked(await putSetting(there, 'shownUnit', 'mm'));
  await expect.poll(() => known.get('shownUnit')).toBe('mm');
  expect(told).toHaveBeenCalledTimes(1);
});

test('settings that can’t be read are no settings that were never made: why is kept until they can', async () => {
  const store = await openForTest();
  worked(await putSetting(store, 'shownUnit', 'mm'));
  const broken = vi.spyOn(store.db, 'transaction').mockImplementation(() => {
    throw new DOMException('the disk is gone', 'UnknownError');
  });
  const known = knownSettings(store);
  const told = vi.fn<() => void>();
  known.follow('shownUnit', told);
  await known.ready();
  expect(known.isRead()).toBe(false);
  expect(known.fault()).toBeDefined();
  expect(told).toHaveBeenCalledTimes(1);
  broken.mockRestore();
  await known.ready();
  expect([known.fault(), known.get('shownUnit')]).toEqual([undefined, 'mm']);
  expect(told).toHaveBeenCalledTimes(2);
});
