import type { Step } from './step.ts';

/** 2: what comes after the worksheet: cuts, checks, assembly, re-checks, photos, money, signed sheets. */
export const createStoresAfterTheWorksheet: Step = (db) => {
  const create = (name: string) => db.createObjectStore(name, { keyPath: 'id' });
  const ofJob = (name: string) => {
    const store = create(name);
    store.createIndex('jobId', 'jobId');
    return store;
  };
  // What is done with has no openAt, so these two indexes hold just what is still to be made or looked at again.
  ofJob('cuts').createIndex('openAt', 'openAt');
  ofJob('rechecks').createIndex('openAt', 'openAt');
  ofJob('checks');
  ofJob('steps');
  ofJob('money');
  ofJob('sheets');
  ofJob('photos').createIndex('owner', ['owner.store', 'owner.id']);
  create('photoBytes');
};
