import type { Pair } from './backup-compare.ts';
import type { StagedFile } from './backup-staged.ts';
import { readConflict } from '../phones/conflict-schema.ts';
import { differingFields, type Differing } from '../phones/conflicts-find.ts';
import { settledIn } from '../phones/conflicts-open.ts';
import type { Store } from '../opening/open-store.ts';
import { canonicalText } from '../base/paths.ts';
import { read } from '../opening/read.ts';
import { questionId } from '../phones/question-id.ts';
import { asSeen, metByBoth, seenInRow, seenOfOne, seenRowId } from '../phones/record-seen.ts';
import { ownLatest, seenBelieved, type Seen } from '../phones/seen.ts';
import { seenHereNow } from '../phones/seen-here.ts';
import { unitOf } from '../base/unit-of.ts';

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
  return async ({ store: name, here, other: { record, seen: met } }) => {
    if (!here || canonicalText(here['stamps']) === canonicalText(record.stamps)) return 0;
    const { seenHere, seenThere } = await (seen ??= lookUp());
    const unit = unitOf(name, here);
    const row: unknown = await read(store, ['home'], (tx) =>
      tx.objectStore('home').get(seenRowId(name, here.id)),
    );
    const differing = differingFields({
      store: name,
      here,
      other: record,
      seenHere: row === undefined ? seenHere : asSeen(metByBoth(seenInRow(row), seenOfOne(seenHere, unit))),
      seenThere: met ? asSeen(metByBoth(met, seenOfOne(seenThere, unit))) : seenThere,
    });
    const asked = differing.filter((one) => !settledIn(record, one) && !settledIn(here, one));
    const known = await Promise.all(
      asked.map((one) => isAskedAlready(store, questionId({ store: name, id: here.id }, one), one)),
    );
    return known.filter((isKnown) => !isKnown).length;
  };
}

/** The same question may have come another way before. */
async function isAskedAlready(store: Store, id: string, { fields }: Differing): Promise<boolean> {
  const kept: unknown = await read(store, ['conflicts'], (tx) => tx.objectStore('conflicts').get(id));
  const known = readConflict(kept)?.fields.map(({ path }) => path) ?? [];
  return fields.every(({ path }) => known.includes(path));
}
