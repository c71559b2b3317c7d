import { storeNames } from '../../../src/store/base/stores.ts';
import { afterEach, expect, test, vi } from 'vitest';
import { readEntry } from '../../../src/engine/length/entry.ts';
import { usualTools } from '../../../src/engine/reading/measuring-tool.ts';
import { addDemo } from '../add-demo.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { logReading } from '../../../src/store/kept/readings.ts';
import { signSheet } from '../../../src/store/kept/sheets.ts';
import { latestUndo, undoLast } from '../../../src/store/undo/undo.ts';
import { acts } from '../every-act.ts';
import { closeAll, openForTest, worked } from '../open-for-test.ts';

/** The quota reached at each record of each kind of write: it is said, nothing is half there, and with room it goes on. */

afterEach(() => {
  vi.restoreAllMocks();
  closeAll();
});

type Prepared = (store: Store) => Promise<() => Promise<{ ok: boolean }>>;

const [tool] = usualTools;
const entry = () => worked(readEntry('.4487', { unit: 'in' }));
const whole = { jobId: 'demo-outfit-7', signedBy: 'Jo B.', engineVersion: '0', readingsCsv: '', cutsCsv: '' };

const others: Readonly<Record<string, Prepared>> = {
  logReading: async (s) => async () => {
    if (!tool) throw new Error('no tools');
    const of = { featureId: 'demo-link-bore', jobId: 'demo-outfit-7', draftKey: '#/bore' };
    return logReading(s, { ...of, entry: entry(), tool, zeroChecked: true });
  },
  signSheet: async (s) => async () => signSheet(s, { ...whole, content: ['as it stands'] }),
  undoLast: async (s) => {
    await (
      await acts['changeJob']?.(s)
    )?.();
    const last = await latestUndo(s);
    return async () => undoLast(s, last?.id ?? '');
  },
};

const everyWrite: Readonly<Record<string, Prepared>> = { ...acts, ...others };

test.each(Object.keys(everyWrite))(
  '%s: wherever the phone is full on the way it says so and changes nothing; with room it is done',
  async (name) => {
    const store = await openForTest();
    worked(await addDemo(store));
    const finger = await everyWrite[name]?.(store);
    const before = await all(store);
    let refused = 0;
    // At the first record, the second, the fourth …: a demo has hundreds.
    for (let at = 1; ; at *= 2) {
      fullAt(at);
      const done = await finger?.();
      vi.restoreAllMocks();
      if (done?.ok) break;
      refused += 1;
      expect(done).toEqual({ ok: false, refusal: { code: 'full-disk' } });
      expect(await all(store)).toEqual(before);
    }
    expect(refused).toBeGreaterThan(0);
    expect(await all(store)).not.toEqual(before);
  },
);

/** As Chromium has it: the put reports success, then the transaction aborts with QuotaExceededError. */
function fullAt(put: number): void {
  let puts = 0;
  // Called with its own `this` below.
  // oxlint-disable-next-line typescript/unbound-method
  const usual = IDBObjectStore.prototype.put;
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (
    this: IDBObjectStore,
    value: unknown,
  ) {
    const request = usual.call(this, value);
    puts += 1;
    if (puts !== put) return request;
    const { transaction } = this;
    Object.defineProperty(transaction, 'error', {
      value: new DOMException('The disk is full', 'QuotaExceededError'),
    });
    request.addEventListener('success', () => transaction.abort());
    return request;
  });
}

async function all(store: Store) {
  const pairs = storeNames.map(async (name) => [name, await store.db.getAll(name)] as const);
  return Object.fromEntries(await Promise.all(pairs));
}
