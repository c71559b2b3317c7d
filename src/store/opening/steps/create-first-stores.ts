import type { Step } from './step.ts';

/** 1: the stores of the first release. */
export const createFirstStores: Step = (db) => {
  const create = (name: string) => db.createObjectStore(name, { keyPath: 'id' });
  // Removed jobs have no listedAt, so this index holds just the job list, ready sorted.
  create('jobs').createIndex('listedAt', 'listedAt');
  create('parts').createIndex('jobId', 'jobId');
  create('features').createIndex('jobId', 'jobId');
  const readings = create('readings');
  readings.createIndex('featureId+at', ['featureId', 'at']);
  readings.createIndex('jobId+at', ['jobId', 'at']);
  create('worksheets').createIndex('jobId', 'jobId');
  create('drawer');
  create('drawerCounts').createIndex('pieceId', 'pieceId');
  create('tools');
  create('settings');
  create('drafts');
  // An undo record's id is its act's stamp, so ids sort by time.
  create('undo').createIndex('jobId+id', ['jobId', 'id']);
  create('device');
};
