import type { IDBPTransaction } from 'idb';
import type { Stamp } from '../base/clock.ts';
import type { StoreRefusal } from '../base/store-refusal.ts';
import type { Store } from './open-store.ts';
import type { Touched } from './watch.ts';

export type Writing = IDBPTransaction<unknown, string[], 'readwrite'>;

/** What an act works in. */
export type ActParts = {
  readonly store: Store;
  readonly tx: Writing;
  /** On their way: all are waited for before the act is done. */
  readonly writes: Promise<unknown>[];
  readonly touched: Touched[];
  readonly stamped: boolean;
  readonly counted: boolean;
  /** The act's stamp, on a phone that is paired: what it touched is to go home. */
  home?: Stamp;
};

// Leaving a transaction from any depth is what an exception is for; it is caught in `tryAct` and never leaves this folder.
export class Refused extends Error {
  readonly refusal: StoreRefusal;
  constructor(refusal: StoreRefusal) {
    super(refusal.code);
    this.refusal = refusal;
  }
}

// The same way out: no stamp can be given behind one that can't be read.
export class ClockDamaged extends Error {}

/** Marks a promise as looked after: it is awaited with the others later, and an abort must not count as unhandled before that. */
export function quiet<T>(promise: Promise<T>): Promise<T> {
  promise.catch(() => undefined);
  return promise;
}
