import { act, cleanup, renderHook } from '@testing-library/preact';
import type { ComponentChildren } from 'preact';
import { useErrorBoundary } from 'preact/hooks';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { StoreProvider, useLive } from '../../../src/screens/common/store-context.ts';
import { createJob } from '../../../src/store/kept/jobs.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { closeAll, openForTest, worked } from '../../store/open-for-test.ts';

type Ask = { readonly of: string; answer: (value: string) => void; fail: (error: Error) => void };

/** Every read asked for, oldest first, answered by the test in any order. */
let asks: Ask[] = [];
let faults: unknown[] = [];
let store: Store;
beforeEach(async () => {
  asks = [];
  faults = [];
  store = await openForTest();
});
afterEach(() => {
  cleanup();
  closeAll();
});

function Guard({ children }: { children: ComponentChildren }) {
  useErrorBoundary((fault) => void faults.push(fault));
  return <>{children}</>;
}

function live(first: string) {
  const wrapper = ({ children }: { children: ComponentChildren }) => (
    <StoreProvider value={store}>
      <Guard>{children}</Guard>
    </StoreProvider>
  );
  const read = (of: string) => () => new Promise<string>((answer, fail) => asks.push({ of, answer, fail }));
  return renderHook(({ key }: { key: string }) => useLive(key, ['jobs'], read(key)), {
    wrapper,
    initialProps: { key: first },
  });
}

async function change(): Promise<void> {
  await act(async () => void worked(await createJob(store, { name: 'Outfit 7', systems: [] })));
}

async function end(number: number, how: (ask: Ask) => void): Promise<void> {
  await act(async () => {
    const ask = asks[number];
    if (!ask) throw new Error(`nothing was asked ${number + 1} times`);
    how(ask);
  });
}

async function askedThreeTimes() {
  const screen = live('size');
  await end(0, ({ answer }) => answer('one'));
  await change();
  await change();
  expect(asks).toHaveLength(3);
  return screen;
}

test('a late answer never takes the place of a newer one', async () => {
  const { result } = await askedThreeTimes();
  await end(2, ({ answer }) => answer('three'));
  await end(1, ({ answer }) => answer('two'));
  expect(result.current).toBe('three');
});

test('an answer that is not the newest is shown until that one comes', async () => {
  const { result } = await askedThreeTimes();
  await end(1, ({ answer }) => answer('two'));
  expect(result.current).toBe('two');
  await end(2, ({ answer }) => answer('three'));
  expect(result.current).toBe('three');
});

test('a read that failed late is no fault where a newer one was answered', async () => {
  const { result } = await askedThreeTimes();
  await end(2, ({ answer }) => answer('three'));
  await end(1, ({ fail }) => fail(new Error('lost')));
  expect(faults).toEqual([]);
  expect(result.current).toBe('three');
});

test('what was asked of another thing before says nothing of this one, be it an answer or a fault', async () => {
  const { result, rerender } = live('bore');
  await act(async () => rerender({ key: 'pin' }));
  expect(asks.map(({ of }) => of)).toEqual(['bore', 'pin']);
  await end(1, ({ answer }) => answer('.4375'));
  await end(0, ({ answer }) => answer('.4487'));
  expect(result.current).toBe('.4375');
  await act(async () => rerender({ key: 'gap' }));
  await act(async () => rerender({ key: 'bore' }));
  await end(2, ({ fail }) => fail(new Error('lost')));
  expect(faults).toEqual([]);
  expect(result.current).toBeUndefined();
});

test('a read that failed is a fault where nothing newer was answered', async () => {
  await askedThreeTimes();
  await end(2, ({ fail }) => fail(new Error('lost')));
  expect(faults).toEqual([new Error('lost')]);
});
