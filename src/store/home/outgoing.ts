import { isStamped, type Kept } from '../base/kept.ts';
import { isPlainObject } from '../base/paths.ts';
import type { BackupStore } from '../base/stores.ts';
import { unitOf } from '../base/unit-of.ts';
import { checkRecord } from '../kept/any-record.ts';
import { read, type Reads } from '../opening/read.ts';
import { readConflict } from '../phones/conflict-schema.ts';
import { isAsMade, metBy, metByBoth, seenInRow, seenOfOne, seenRowId } from '../phones/record-seen.ts';
import { seenIn, type Seen } from '../phones/seen.ts';
import type { Json } from './couch-ask.ts';
import { bytesIdOf, docIdOf, sealDoc, sealLarge, textOf, textOfLarge, textOfQuestion } from './doc-form.ts';
import type { Home } from './home-context.ts';
import { isOfTheDemo, recordOf } from './home-rows.ts';
import { putBytes } from './couch.ts';

/** One record on its way home. `isFresh`: as it was made, so that home can't have another copy but this one. */
export type Outgoing = {
  readonly outboxId: string;
  /** The mark of its outbox row; none where it was found by looking through everything. */
  readonly mark: string | undefined;
  readonly docId: string;
  readonly text: string;
  readonly isFresh: boolean;
  readonly store: BackupStore | 'conflicts';
  readonly id: string;
};

export type Wanted = { readonly outboxId: string; readonly mark: string | undefined };

export type Prepared = {
  readonly outgoing: readonly Outgoing[];
  /** Nothing to send: gone since, removed for good, or of the demo. */
  readonly nothing: readonly Wanted[];
  /** This Slipfit can't read them: left here, and counted. */
  readonly unreadable: readonly Wanted[];
};

/** Reads what is to go, in one look at the database, so that a record and what it has met belong together. */
export async function prepare(home: Home, wanted: readonly Wanted[]): Promise<Prepared> {
  const names = [...new Set(wanted.map(({ outboxId }) => recordOf(outboxId).store))];
  const looked = await read(home.store, [...names, 'home', 'device'], async (tx) => ({
    seen: await seenOfPhone(tx),
    found: await Promise.all(wanted.map((one) => lookUp(tx, one))),
  }));
  const outgoing: Outgoing[] = [];
  const nothing: Wanted[] = [];
  const unreadable: Wanted[] = [];
  for (const found of looked.found) {
    const { record, one } = found;
    if (!record || isOfTheDemo(record)) nothing.push(one);
    else {
      // oxlint-disable-next-line no-await-in-loop
      const made = await outgoingOf(home, found, looked.seen);
      if (made) outgoing.push(made);
      else unreadable.push(one);
    }
  }
  return { outgoing, nothing, unreadable };
}

type Looked = { readonly one: Wanted; readonly record: Kept | undefined; readonly row: unknown };

async function lookUp(tx: Reads, one: Wanted): Promise<Looked> {
  const { store, id } = recordOf(one.outboxId);
  const [record, row]: [Kept | undefined, unknown] = await Promise.all([
    tx.objectStore(store).get(id),
    store === 'conflicts' ? undefined : tx.objectStore('home').get(seenRowId(store, id)),
  ]);
  return { one, record, row };
}

async function seenOfPhone(tx: Reads): Promise<Seen> {
  const kept: unknown = await tx.objectStore('device').get('seen');
  return (isPlainObject(kept) ? seenIn(kept['lists']) : undefined) ?? new Map();
}

async function outgoingOf(
  home: Home,
  { one, record, row }: Looked,
  seen: Seen,
): Promise<Outgoing | undefined> {
  if (!record) return undefined;
  const { store, id } = recordOf(one.outboxId);
  const docId = await docIdOf(home.keys, store, id);
  if (store === 'conflicts') {
    const question = readConflict(record);
    return question && { ...one, store, id, docId, text: textOfQuestion(question), isFresh: true };
  }
  const checked = checkRecord(store, record);
  if (!checked.ok || !isStamped(record)) return undefined;
  const isFresh = row === undefined && isAsMade(checked.value);
  const met = metByBoth(metBy(checked.value), seenInRow(row));
  const all = isFresh ? undefined : metByBoth(met, seenOfOne(withoutOwn(seen, home), unitOf(store, record)));
  return { ...one, store, id, docId, text: textOf(store, record, all), isFresh };
}

/** Of its own writes a copy has met those that stand in it or beside it, whatever the phone as a whole has seen. */
function withoutOwn(seen: Seen, { device }: Home): Seen {
  return new Map(
    [...seen].map(([unit, latest]) => [unit, new Map([...latest].filter(([name]) => name !== device()))]),
  );
}

// CouchDB refuses a document of over 8 MB, and whoever reads it has to hold it whole. Chosen.
const LARGE = 1_000_000;

export type Sealed =
  | { readonly ok: true; readonly doc: Json & { readonly _id: string } }
  /** Of so many bytes. */
  | { readonly ok: false; readonly tooLarge: number };

/** Sealed for home. A signed sheet that is large goes as bytes of their own: it never changes. */
export async function sealed(home: Home, { store, id, docId, text }: Outgoing): Promise<Sealed> {
  const { keys, couch } = home;
  if (store !== 'sheets' || text.length < LARGE) return { ok: true, doc: await sealDoc(keys, docId, text) };
  const bytesId = await bytesIdOf(keys, store, id);
  const put = await putBytes(couch, bytesId, await sealLarge(keys, bytesId, text));
  if (put === 'too-large') return { ok: false, tooLarge: text.length };
  return { ok: true, doc: await sealDoc(keys, docId, textOfLarge(store, id)) };
}
