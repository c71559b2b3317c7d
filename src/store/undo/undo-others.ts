import type { StoreName } from '../base/stores.ts';
import { deviceOf, seedDevice, type Stamp } from '../base/clock.ts';
import { isGone, isStamped, type Kept } from '../base/kept.ts';
import type { UndoChange } from '../base/records.ts';

export type Readable = {
  objectStore(name: string): {
    get(key: string): Promise<Kept | undefined>;
    index(name: string): { getAll(range: IDBKeyRange | string): Promise<Kept[]> };
  };
};

/**
 * Whether anything in what an act made carries a stamp of another phone: a step a helper added to the job, a check he took
 * again. It would go with an undo, and his file would not bring it back.
 */
export async function isWorkedOnByOthers(
  tx: Readable,
  change: Pick<UndoChange, 'store' | 'id'>,
  act: Stamp,
): Promise<boolean> {
  const own = deviceOf(act);
  const isTheirs = (stamp: unknown) =>
    typeof stamp === 'string' && deviceOf(stamp) !== own && deviceOf(stamp) !== seedDevice;
  const records = await recordsIn(tx, change);
  return records.some((one) => isStamped(one) && Object.values(one.stamps).some(isTheirs));
}

// Readings and signed sheets aren't among them: these stand in the way of an undo whoever they are from.
const ofAJob = [
  'parts',
  'features',
  'worksheets',
  'cuts',
  'checks',
  'steps',
  'rechecks',
  'photos',
  'money',
] as const satisfies readonly StoreName[];

async function recordsIn(tx: Readable, { store, id }: Pick<UndoChange, 'store' | 'id'>): Promise<Kept[]> {
  const made = await tx.objectStore(store).get(id);
  if (!made || isGone(made)) return [];
  const inIt = [
    tx
      .objectStore('photos')
      .index('owner')
      .getAll(IDBKeyRange.only([store, id])),
  ];
  if (store === 'drawer') inIt.push(tx.objectStore('drawerCounts').index('pieceId').getAll(id));
  if (store === 'jobs') inIt.push(...ofAJob.map((name) => tx.objectStore(name).index('jobId').getAll(id)));
  return [made, ...(await Promise.all(inIt)).flat()];
}
