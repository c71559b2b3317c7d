import type { Act } from '../opening/act.ts';
import { isStamped, type Kept } from '../base/kept.ts';
import type { BackupStore } from '../base/stores.ts';
import { isPlainObject } from '../base/paths.ts';
import {
  metBy,
  metByBoth,
  rowOf,
  seenInRow,
  seenRowId,
  type RecordSeen,
  type SeenRow,
} from '../phones/record-seen.ts';
import type { StagedRecord } from './backup-staged.ts';

/** The notes beside single records of what they have met, while a file is put in. */
export type SeenRows = {
  /** What is noted of one; nothing where nothing is, as on every phone that was never paired. */
  readonly known: (store: BackupStore, id: string) => Promise<RecordSeen | undefined>;
  /** Notes that the two copies have met. */
  readonly raise: (store: BackupStore, meeting: MeetingOfTwo) => Promise<void>;
};

type MeetingOfTwo = {
  readonly here: Kept | undefined;
  readonly other: StagedRecord;
  readonly known: RecordSeen | undefined;
};

const allRows = () => IDBKeyRange.bound('seen/', 'seen/\uffff');

export async function startSeenRows(a: Act, isPaired: boolean): Promise<SeenRows> {
  const ids = new Set((await a.tx.objectStore('home').getAllKeys(allRows())).map(String));
  return {
    async known(store, id) {
      const rowId = seenRowId(store, id);
      return ids.has(rowId) ? seenInRow(await a.kept('home', rowId)) : undefined;
    },
    async raise(store, { here, other, known }) {
      const isNoted = known !== undefined || other.seen !== undefined || (isPaired && here !== undefined);
      if (!isNoted || store === 'photoBytes') return;
      const before = known ?? new Map();
      const met = [
        metBy(other.record),
        other.seen ?? new Map(),
        here && isStamped(here) ? metBy(here) : before,
      ];
      const row = rowOf(store, other.record.id, met.reduce(metByBoth, before));
      const asBefore = { undoId: a.stamp, stamps: [...before.values()] };
      await a.tx.objectStore('home').put({ ...row, before: asBefore } satisfies SeenRow);
    },
  };
}

/** As they were before the file came that is being taken out again. */
export async function rowsTakenBack(
  a: Act,
  undoId: string,
): Promise<(store: string, id: string) => Promise<void>> {
  const count = await a.tx.objectStore('home').count(allRows());
  return async (store, id) => {
    if (count === 0) return;
    const row = await a.kept('home', `seen/${store}/${id}`);
    const before = row?.['before'];
    if (!row || !isPlainObject(before) || before['undoId'] !== undoId) return;
    const stamps = before['stamps'];
    if (Array.isArray(stamps) && stamps.length > 0) a.putKept('home', { id: row.id, stamps });
    else a.drop('home', row.id);
  };
}
