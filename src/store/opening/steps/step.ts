import type { IDBPDatabase, IDBPTransaction } from 'idb';

/**
 * One step of the database, from one version to the next. It touches only this transaction and awaits nothing else;
 * it imports no schema and no record type of today, which will have moved on.
 */
export type Step = (
  db: IDBPDatabase,
  transaction: IDBPTransaction<unknown, string[], 'versionchange'>,
) => void | Promise<void>;
