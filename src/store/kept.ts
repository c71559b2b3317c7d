import type { Stamps } from './records.ts';

export const storeNames = [
  'jobs',
  'parts',
  'features',
  'readings',
  'worksheets',
  'cuts',
  'checks',
  'steps',
  'rechecks',
  'photos',
  'photoBytes',
  'money',
  'sheets',
  'drawer',
  'drawerCounts',
  'tools',
  'settings',
  'drafts',
  'undo',
  'device',
  'staging',
  'brought',
  'conflicts',
] as const;

export type StoreName = (typeof storeNames)[number];

const byJob = ['jobId'];

/** The indexes that today's stores have, as the steps of `steps/` made them. */
export const indexesOf: Readonly<Partial<Record<StoreName, readonly string[]>>> = {
  jobs: ['listedAt'],
  parts: byJob,
  features: byJob,
  readings: ['featureId+at', 'jobId+at'],
  worksheets: byJob,
  cuts: ['jobId', 'openAt'],
  checks: byJob,
  steps: byJob,
  rechecks: ['jobId', 'openAt'],
  photos: ['jobId', 'owner'],
  money: byJob,
  sheets: byJob,
  drawerCounts: ['pieceId'],
  undo: ['jobId+id'],
  conflicts: byJob,
};

/** A record as the database holds it: plain values only, lengths as decimal text in millimetres. */
export type Kept = { readonly id: string; readonly [field: string]: unknown };

/** A record that can be changed, removed and merged field by field. */
export type KeptStamped = Kept & { readonly stamps: Stamps };

export function isStamped(record: Kept): record is KeptStamped {
  const { stamps } = record;
  return typeof stamps === 'object' && stamps !== null && '*' in stamps && typeof stamps['*'] === 'string';
}

/** Fields that follow from others. They are worked out at every put, and left out of backups and merges. */
export const derivedFields: ReadonlySet<string> = new Set(['listedAt', 'openAt', 'broughtBack']);

/** Removed, and not brought back by a reading that was logged elsewhere. */
export function isGone(record: Kept): boolean {
  return record['deleted'] !== undefined && record['broughtBack'] !== true;
}

/**
 * The record with the field its list is sorted by: `listedAt` of a job, `openAt` of a cut that is still to be made and of
 * a re-check that is still to be done. What is removed or done with has none, so the index of the list doesn't hold it
 * and the list needn't step over it.
 */
export function withListField(store: StoreName, record: Kept): Kept {
  const list = lists[store];
  if (!list) return record;
  const { [list.field]: _stale, ...rest } = record;
  const kept: Kept = { ...rest, id: record.id };
  return isGone(kept) || !list.holds(kept) ? kept : { ...kept, [list.field]: kept[list.sortedBy] };
}

type List = {
  readonly field: 'listedAt' | 'openAt';
  readonly sortedBy: string;
  readonly holds: (record: Kept) => boolean;
};

const openCutStates: ReadonlySet<unknown> = new Set(['to-cut', 'cutting', 'over']);

const lists: Partial<Record<StoreName, List>> = {
  jobs: { field: 'listedAt', sortedBy: 'touchedAt', holds: () => true },
  cuts: { field: 'openAt', sortedBy: 'createdAt', holds: ({ state }) => openCutStates.has(state) },
  rechecks: { field: 'openAt', sortedBy: 'from', holds: ({ done }) => done === undefined },
};
