import type { Step } from './step.ts';

/** 4: the words that each job is found by. Worked out from its records whenever it has none, so it begins empty. */
export const createStoreForSearch: Step = (db) => {
  db.createObjectStore('words', { keyPath: 'id' });
};
