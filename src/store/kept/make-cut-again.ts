import { act } from '../opening/act.ts';
import { withChanges } from '../base/changes.ts';
import { touchJob } from './jobs.ts';
import { newId } from '../base/new-id.ts';
import type { Store } from '../opening/open-store.ts';
import type { Cut, Id, Stamped } from '../base/records.ts';
import { cutRecordKind } from './cut-schema.ts';
import type { StoreResult } from '../base/store-refusal.ts';
import { type NewCut, makeCut, cutsLabel } from './cuts.ts';

/**
 * Puts copies of cuts on the list of this or another job, without passes and without the blank's size: the new piece is
 * another one. In its own job a cut that was scrapped or went over is marked as made again.
 */
export async function makeAgain(
  store: Store,
  cutIds: readonly Id[],
  toJobId: Id,
): Promise<StoreResult<Cut[]>> {
  const ids = cutIds.map(newId);
  return act(store, { stores: ['jobs', 'cuts'] }, async (a) => {
    const old = await Promise.all(cutIds.map((id) => a.get(cutRecordKind, id)));
    const made = old.map((cut, index) =>
      makeCut(a, { id: ids[index] ?? newId(), order: index }, copyFor(cut, toJobId)),
    );
    const replaced = old.filter((cut) => cut.jobId === toJobId && isSpoilt(cut));
    await Promise.all(
      replaced.map(({ id }) =>
        a.change(cutRecordKind, id, (cut) => ({ ...cut, state: 'made-again' as const, touchedAt: a.at })),
      ),
    );
    await touchJob(a, toJobId);
    a.undoable(cutsLabel('Make again:', old), toJobId);
    return made;
  });
}

export function copyFor(cut: Cut & Stamped, toJobId: Id): NewCut {
  const copied: NewCut = withChanges(newOf(cut), { blank: undefined, jobId: toJobId, copyOf: cut.id });
  if (cut.jobId === toJobId) return copied;
  // The other job has parts and worksheets of its own; where the figures come from is still known.
  const { worksheetId, jobId } = cut;
  const workedOutIn = cut.workedOutIn ?? (worksheetId === undefined ? undefined : { jobId, worksheetId });
  return withChanges(copied, {
    partId: undefined,
    worksheetId: undefined,
    workedOutIn,
    ...(workedOutIn === undefined && { basis: undefined }),
  });
}

function newOf(cut: Cut & Stamped): NewCut {
  const { id: _id, stamps: _stamps, deleted: _deleted, broughtBack: _back, state: _state, ...rest } = cut;
  const { passes: _passes, ...copied } = rest;
  return copied;
}

function isSpoilt({ state }: Cut): boolean {
  return state === 'scrapped' || state === 'over';
}
