import type { Step } from './step.ts';

/** 3: what is read from a file before it is put in, what a file brought, and what two phones say differently. */
export const createStoresForFiles: Step = (db) => {
  const create = (name: string) => db.createObjectStore(name, { keyPath: 'id' });
  create('staging');
  create('brought');
  create('conflicts').createIndex('jobId', 'jobId');
};
