import { isZero, minus } from '../../engine/length/length.ts';
import type { Entry } from '../../engine/length/entry.ts';
import { cutName } from '../../engine/thread/tap-name.ts';
import { act } from '../opening/act.ts';
import type { Store } from '../opening/open-store.ts';
import type { Cut, Id } from '../base/records.ts';
import type { StoreResult } from '../base/store-refusal.ts';
import { actOnCut, inItsState, plainEntry } from './cuts.ts';
import { cutRecordKind } from './cut-schema.ts';
import { touchJob } from './jobs.ts';

/** Ticks a hole as drilled at its place, or takes the tick away; whether it is to size is still measured. */
export async function setMade(store: Store, id: Id, isMade: boolean): Promise<StoreResult<Cut>> {
  return actOnCut(store, id, undefined, async (a, before) => {
    const after = await a.change(cutRecordKind, id, ({ made: _before, ...cut }) =>
      inItsState({
        ...cut,
        state: isMade ? 'cutting' : 'to-cut',
        ...(isMade && { made: { at: a.at } }),
        touchedAt: a.at,
      }),
    );
    a.undoable(`${isMade ? 'Drilled' : 'Not drilled:'} ${cutName(before)}`, before.jobId);
    return after;
  });
}

export type ZeroRead = { readonly axis: 'x' | 'y'; readonly reads: Entry };

/**
 * Shifts the zero for holes that are left, in one act with one undo: what is drilled already stays as it was set.
 *
 * Units:   `reads` is what the slide reads where it should read nothing; it counts from the zero that was set, and takes the
 *          place of a shift of that slide before.
 */
export async function shiftZero(
  store: Store,
  ids: readonly Id[],
  { axis, reads }: ZeroRead,
): Promise<StoreResult<void>> {
  return act(store, { stores: ['jobs', 'cuts'] }, async (a) => {
    const cuts = await Promise.all(ids.map((id) => a.get(cutRecordKind, id)));
    const left = cuts.filter(({ made, state }) => !made && state === 'to-cut');
    await Promise.all(
      left.map(({ id }) =>
        a.change(cutRecordKind, id, (cut) => {
          const none = { ...plainEntry(reads), typed: '0', exact: zeroOf(reads) };
          const before = cut.zeroShift ?? { x: none, y: none };
          return { ...cut, zeroShift: { ...before, [axis]: plainEntry(reads) }, touchedAt: a.at };
        }),
      ),
    );
    const [first] = cuts;
    if (first) await touchJob(a, first.jobId);
    a.undoable(isZero(reads.exact) ? 'Zero as it was' : `Zero shifted in ${axis}`, first?.jobId);
  });
}

function zeroOf({ exact }: Entry) {
  return minus(exact, exact);
}
