import { featuresOf } from '../../store/kept/features.ts';
import type { Store } from '../../store/opening/open-store.ts';
import { readingsOfJob } from '../../store/kept/readings.ts';
import type { Cut, Id } from '../../store/base/records.ts';
import { worksheetsOf } from '../../store/kept/worksheets.ts';
import { useLive } from '../common/store-context.ts';
import { isOlderThanSizes, type Ground } from './older-than-sizes.ts';

/** The stores a ground is read from. */
export const groundStores = ['worksheets', 'features', 'readings'] as const;

/** What the figures of these jobs stand on. */
export async function groundOf(store: Store, jobIds: Iterable<Id>): Promise<Ground> {
  const grounds = await Promise.all(
    [...new Set(jobIds)].map(async (jobId) => {
      const [worksheets, features, readings] = await Promise.all([
        worksheetsOf(store, jobId),
        featuresOf(store, jobId),
        readingsOfJob(store, jobId),
      ]);
      return { worksheets, features, readings };
    }),
  );
  return {
    worksheets: grounds.flatMap(({ worksheets }) => worksheets),
    features: grounds.flatMap(({ features }) => features),
    readings: grounds.flatMap(({ readings }) => readings),
  };
}

/** The cuts among these that are older than their sizes, of whatever jobs they are. */
export async function olderCuts(store: Store, cuts: readonly Cut[]): Promise<ReadonlySet<Id>> {
  const standing = cuts.filter(({ basis }) => basis !== undefined);
  const ground = await groundOf(store, standing.map(jobOfFigures));
  return olderAmong(standing, ground);
}

export function olderAmong(cuts: readonly Cut[], ground: Ground): ReadonlySet<Id> {
  return new Set(cuts.filter((cut) => isOlderThanSizes({ of: 'cut', cut }, ground)).map(({ id }) => id));
}

/** The job in which a cut's figures were worked out. */
export function jobOfFigures({ jobId, workedOutIn }: Cut): Id {
  return workedOutIn?.jobId ?? jobId;
}

/** Whether one cut is older than its sizes, kept up with every change; undefined until it is known. */
export function useCutOlder(cut: Cut): boolean | undefined {
  const { id, state, basis } = cut;
  const key = `cut-older/${id}/${state}/${basis?.readings.join(' ') ?? ''}/${basis?.worksheet ?? ''}`;
  return useLive(key, groundStores, async (store) => (await olderCuts(store, [cut])).has(id));
}
