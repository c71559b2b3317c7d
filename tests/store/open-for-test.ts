import 'fake-indexeddb/auto';
import {
  closeStore,
  openStore,
  type OpenStoreOptions,
  type Store,
} from '../../src/store/opening/open-store.ts';
import type { StoreRefusal } from '../../src/store/base/store-refusal.ts';

let opened = 0;
const stores: Store[] = [];

/** A database name of its own for each test. */
export function freshName(): string {
  opened += 1;
  return `test-${opened}`;
}

/** A clock that moves on by a second at every look, from the same start. */
export function tickingClock(startMs = 1_700_000_000_000): () => number {
  let nowMs = startMs;
  return () => (nowMs += 1000);
}

export async function openForTest(options: OpenStoreOptions = {}): Promise<Store> {
  const store = worked(await openStore({ name: freshName(), now: tickingClock(), ...options }));
  stores.push(store);
  return store;
}

export function closeAll(): void {
  for (const store of stores.splice(0)) closeStore(store);
}

/** The value of something that must have worked, with the refusal in the failure's message. */
export function worked<T>(result: { ok: true; value: T } | { ok: false; refusal: { code: string } }): T {
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.refusal)}`);
  return result.value;
}

/** The refusal of something that must have been refused. */
export function refused<R extends { code: string } = StoreRefusal>(
  result: { ok: true; value: unknown } | { ok: false; refusal: R },
): R {
  if (result.ok) throw new Error('was not refused');
  return result.refusal;
}
