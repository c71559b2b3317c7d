import type { Step } from './step.ts';

/** 5: what a paired phone has still to send home, and what it knows of home. */
export const createStoresForHome: Step = (db) => {
  const create = (name: string) => db.createObjectStore(name, { keyPath: 'id' });
  create('outbox');
  create('home');
};
