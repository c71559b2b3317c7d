import type { Step } from './step.ts';

/** 5: what a paired phone has still to send home, and what it knows of home. */
export const createStoresForHome: Step = (db) => {
  for (const name of ['outbox', 'home']) db.createObjectStore(name, { keyPath: 'id' });
};
