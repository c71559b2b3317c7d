import { cutName } from '../../engine/thread/tap-name.ts';
import { act } from '../opening/act.ts';
import type { NewCut } from './cuts.ts';
import { touchJob } from './jobs.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import type { Cut, Id } from '../base/records.ts';
import { cutRecordKind } from './cut-schema.ts';
import type { StoreResult } from '../base/store-refusal.ts';

/**
 * Takes cuts off the list that nobody has begun and puts others in their place: one act, so that one undo brings the old
 * ones back. One that was begun meanwhile, on another phone say, stays.
 */
export async function replaceCuts(
  store: Store,
  oldIds: readonly Id[],
  cuts: readonly NewCut[],
): Promise<StoreResult<Cut[]>> {
  const ids = cuts.map(newId);
  return act(store, { stores: ['jobs', 'cuts'] }, async (a) => {
    const old = await Promise.all(oldIds.map((id) => a.get(cutRecordKind, id)));
    const notBegun = old.filter(isNotBegun);
    await Promise.all(notBegun.map(({ id }) => a.remove('cuts', id)));
    const made = cuts.map((cut, index) =>
      a.make(cutRecordKind, {
        ...cut,
        id: ids[index] ?? newId(),
        state: 'to-cut',
        passes: {},
        // A millisecond apart, so that they keep the order of work.
        createdAt: a.at + index,
        touchedAt: a.at,
      }),
    );
    const jobId = cuts[0]?.jobId ?? old[0]?.jobId;
    if (jobId !== undefined) await touchJob(a, jobId);
    a.undoable(
      `Replaced ${old.length === 1 ? (old[0] ? cutName(old[0]) : 'a cut') : `${old.length} cuts`}`,
      jobId,
    );
    return made;
  });
}

/** Nothing was cut and nothing measured. */
export function isNotBegun({ state, passes }: Pick<Cut, 'state' | 'passes'>): boolean {
  return state === 'to-cut' && Object.keys(passes).length === 0;
}
