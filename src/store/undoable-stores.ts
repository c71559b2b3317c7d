import type { StoreName } from './kept.ts';

/** Stores whose records a finger changes. */
export const undoableStores: readonly StoreName[] = [
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
  'money',
  'drawer',
  'drawerCounts',
  'tools',
  'settings',
];
