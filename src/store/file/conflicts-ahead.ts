import type { Pair } from './backup-compare.ts';
import type { StagedFile } from './backup-staged.ts';
import { differingFields } from '../phones/conflicts-find.ts';
import { settledIn } from '../phones/conflicts-open.ts';
import type { Store } from '../opening/open-store.ts';
import { canonicalText } from '../base/paths.ts';
import { read } from '../opening/read.ts';
import { ownLatest, seenBelieved, type Seen } from '../phones/seen.ts';
import { seenHereNow } from '../phones/seen-here.ts';

/**
 * How many things of a record both phones wrote, neither having seen the other's: what will be asked about once the file
 * is in. What this phone has seen is looked up when the first record is met that stands here otherwise than in the file.
 */
export function writtenApart(store: Store, file: StagedFile): (pair: Pair) => Promise<number> {
  let seen: Promise<{ readonly seenHere: Seen; readonly seenThere: Seen }> | undefined;
  const lookUp = async () => {
    const clock: unknown = await read(store, ['device'], (tx) => tx.objectStore('device').get('clock'));
    const seenThere = seenBelieved(file.seen, { last: ownLatest(clock), nowMs: store.now() });
    return { seenHere: await seenHereNow(store), seenThere };
  };
  return async ({ store: name, here, other: { record } }) => {
    if (!here || canonicalText(here['stamps']) === canonicalText(record.stamps)) return 0;
    const copies = { store: name, here, other: record, ...(await (seen ??= lookUp())) };
    return differingFields(copies).filter((one) => !settledIn(record, one) && !settledIn(here, one)).length;
  };
}
