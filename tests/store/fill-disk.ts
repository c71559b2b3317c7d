import { vi } from 'vitest';

/**
 * What a full disk does: the put reports success, then the transaction aborts with QuotaExceededError (measured in
 * Chromium). Here the abort comes with the put into this store.
 */
export function fillDisk(storeName: string): void {
  // Called with its own `this` below.
  // oxlint-disable-next-line typescript/unbound-method
  const put = IDBObjectStore.prototype.put;
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (
    this: IDBObjectStore,
    value: unknown,
  ) {
    const request = put.call(this, value);
    if (this.name === storeName) {
      const { transaction } = this;
      Object.defineProperty(transaction, 'error', {
        value: new DOMException('The disk is full', 'QuotaExceededError'),
      });
      // One that is told to commit at once can't be aborted from here any more; a real disk would fail it all the same.
      Object.defineProperty(transaction, 'commit', { value: () => undefined });
      request.addEventListener('success', () => transaction.abort());
    }
    return request;
  });
}
