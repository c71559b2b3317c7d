import { act, cleanup, renderHook } from '@testing-library/preact';
import type { ComponentChildren } from 'preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { StoreProvider } from '../../../src/screens/common/store-context.ts';
import { draftsWritten, watchUnwritten } from '../../../src/screens/common/drafts-unwritten.ts';
import { useSizeDraft } from '../../../src/screens/common/use-draft.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import type { StoreResult } from '../../../src/store/base/store-refusal.ts';
import { closeAll, openForTest } from '../../store/open-for-test.ts';

/** Every write asked for, oldest first, ended by the test: a database answers in the order it was asked. */
const asked: { key: string; typed: string; end: (how: StoreResult<void>) => void }[] = [];

/** What was kept of a field, given by the test when it likes; nothing was, where it gives nothing. */
const kept = new Map<string, Promise<{ typed: string; unit: 'in' }>>();

vi.mock('../../../src/store/kept/drafts.ts', () => ({
  getDraft: (_store: Store, key: string) => kept.get(key) ?? Promise.resolve(undefined),
  clearDraft: () => Promise.resolve({ ok: true, value: undefined }),
  putDraft: (_store: Store, key: string, { typed }: { typed: string }) =>
    new Promise<StoreResult<void>>((end) => asked.push({ key, typed, end })),
}));

const full: StoreResult<void> = { ok: false, refusal: { code: 'full-disk' } };
const fine: StoreResult<void> = { ok: true, value: undefined };
const told = vi.fn<(why: unknown) => void>();

let store: Store;
beforeEach(async () => {
  store = await openForTest();
  watchUnwritten(told);
});
afterEach(async () => {
  cleanup();
  while (asked.length > 0) await answered(fine);
  closeAll();
  told.mockClear();
  kept.clear();
});

/** The oldest write that is still out ends so. */
async function answered(how: StoreResult<void>): Promise<string> {
  const next = asked.shift();
  if (!next) throw new Error('nothing was to be written');
  await act(async () => next.end(how));
  return `${next.key} ${next.typed}`;
}

function field(key: string) {
  const wrapper = ({ children }: { children: ComponentChildren }) => (
    <StoreProvider value={store}>{children}</StoreProvider>
  );
  const { result, unmount } = renderHook(() => useSizeDraft(key, 'in'), { wrapper });
  return {
    typed: () => result.current.half.typed,
    type: (typed: string) => act(() => result.current.change({ typed, unit: 'in' })),
    log: () => act(() => result.current.lift()),
    leave: unmount,
  };
}

test('a size that was logged does not come back when its own half-typed write fails late', async () => {
  const bore = field('bore');
  await bore.type('.4487');
  await bore.log();
  await answered(full);
  expect(told).not.toHaveBeenCalled();
  bore.leave();
  expect(field('bore').typed()).toBe('');
  await draftsWritten();
});

test('what a full phone could not keep is written when there is room again, but never over what was typed since', async () => {
  const bore = field('bore');
  const pin = field('pin');
  await bore.type('.44');
  expect(await answered(full)).toBe('bore .44');
  expect(told).toHaveBeenLastCalledWith({ code: 'full-disk' });
  await pin.type('.43');
  await bore.type('.448');
  expect(await answered(fine)).toBe('pin .43');
  expect(await answered(fine)).toBe('bore .448');
  expect(asked).toEqual([]);
  expect(told).toHaveBeenLastCalledWith(undefined);
});

test('what is left alone on a full phone is written after the next write that works', async () => {
  const bore = field('bore');
  const pin = field('pin');
  await bore.type('.44');
  await answered(full);
  await pin.type('.43');
  await answered(fine);
  expect(await answered(fine)).toBe('bore .44');
  expect(told).toHaveBeenLastCalledWith(undefined);
});

test('what was kept of one field never comes late into the one that stands there by then', async () => {
  let answer: (draft: { typed: string; unit: 'in' }) => void = () => undefined;
  kept.set('bore', new Promise((done) => (answer = done)));
  const wrapper = ({ children }: { children: ComponentChildren }) => (
    <StoreProvider value={store}>{children}</StoreProvider>
  );
  const { result, rerender } = renderHook(({ key }) => useSizeDraft(key, 'in'), {
    wrapper,
    initialProps: { key: 'bore' },
  });
  await act(async () => rerender({ key: 'pin' }));
  await act(() => result.current.change({ typed: '.43', unit: 'in' }));
  await act(async () => answer({ typed: '.4487', unit: 'in' }));
  expect(result.current.half.typed).toBe('.43');
});
