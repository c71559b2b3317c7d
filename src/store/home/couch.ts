import { isPlainObject } from '../base/paths.ts';
import { askForBytes, askHome, HomeFault, type Json, type Way } from './couch-ask.ts';

/** One shop's database on a server. */
export type Couch = { readonly way: Way; readonly database: string };

/** A document as it stands at home: a name, the revision, what is in it. */
export type Doc = Json & { readonly _id: string; readonly _rev: string };

export type Leaf = { readonly id: string; readonly rev: string };

/** One document in the feed: its leaves, more than one where two homes that copy each other met. */
export type Change = { readonly id: string; readonly revs: readonly string[]; readonly isDeleted: boolean };

export type ChangesPage = { readonly changes: readonly Change[]; readonly since: string };

/** How one document of many was taken: its new revision, that another is there, or why not. */
export type Written =
  | { readonly id: string; readonly rev: string }
  | { readonly id: string; readonly refused: 'conflict' | 'too-large' | 'forbidden' };

/** What is known of a document that was asked for by name. */
export type Found = {
  readonly id: string;
  /** Missing where there is none, or only a deleted one. */
  readonly doc?: Doc;
  readonly rev?: string;
  /** The other leaves, where there are any. */
  readonly conflicts: readonly string[];
};

/** A note of this phone's own, which no other phone sees and no replication takes along. */
export async function localNote(
  couch: Couch,
  name: string,
): Promise<{ readonly note: Json; readonly rev: string } | undefined> {
  const { status, json } = await askHome(couch.way, { path: at(couch, `_local/${name}`), also: [404] });
  if (status === 404) return undefined;
  const note = objectIn(json);
  return { note, rev: textIn(note, '_rev') };
}

export async function putLocalNote(
  couch: Couch,
  name: string,
  note: Json,
  rev: string | undefined,
): Promise<{ readonly rev: string } | 'other-rev'> {
  const body = { ...note, _id: `_local/${name}`, ...(rev !== undefined && { _rev: rev }) };
  const put = { method: 'PUT', path: at(couch, `_local/${name}`), body, also: [409] } as const;
  const { status, json } = await askHome(couch.way, put);
  return status === 409 ? 'other-rev' : { rev: textIn(objectIn(json), 'rev') };
}

/** Whether the database is there. */
export async function isThere(couch: Couch): Promise<boolean> {
  const { status, json } = await askHome(couch.way, { path: at(couch, ''), also: [404] });
  if (status === 404) return false;
  textIn(objectIn(json), 'db_name');
  return true;
}

export async function oneDoc(couch: Couch, id: string): Promise<Doc | undefined> {
  const { status, json } = await askHome(couch.way, {
    path: at(couch, encodeURIComponent(id)),
    also: [404],
  });
  return status === 404 ? undefined : docIn(json);
}

export async function putDoc(
  couch: Couch,
  id: string,
  body: Json,
  rev?: string,
): Promise<'kept' | 'other-rev'> {
  const path = at(couch, encodeURIComponent(id));
  const put = {
    method: 'PUT',
    path,
    body: { ...body, _id: id, ...(rev !== undefined && { _rev: rev }) },
    also: [409],
  } as const;
  return (await askHome(couch.way, put)).status === 409 ? 'other-rev' : 'kept';
}

/** The documents whose names begin with one letter; few, as the marks are. */
export async function docsWith(couch: Couch, letter: string): Promise<Doc[]> {
  const range = `startkey=${quoted(letter)}&endkey=${quoted(`${letter}\ufff0`)}`;
  const { json } = await askHome(couch.way, { path: at(couch, `_all_docs?include_docs=true&${range}`) });
  return listIn(json, 'rows').flatMap((row) => {
    const doc = isPlainObject(row) ? row['doc'] : undefined;
    return isPlainObject(doc) ? [docIn(doc)] : [];
  });
}

export const FROM_THE_START = '0';

/** What changed after `since`, each document once, in home's order, which nobody may take for the order of writing. */
export async function changesAfter(couch: Couch, since: string, limit: number): Promise<ChangesPage> {
  const query = `_changes?style=all_docs&limit=${limit}&since=${encodeURIComponent(since)}`;
  const { json } = await askHome(couch.way, { path: at(couch, query) });
  const page = objectIn(json);
  const changes = listIn(page, 'results').map((one): Change => {
    const change = objectIn(one);
    const revs = listIn(change, 'changes').map((leaf) => textIn(objectIn(leaf), 'rev'));
    return { id: textIn(change, 'id'), revs, isDeleted: change['deleted'] === true };
  });
  return { changes, since: seqIn(page['last_seq']) };
}

/** These revisions with what is in them. One that is gone by now, or deleted, is left out: a later one will be in the feed. */
export async function leavesOf(couch: Couch, docs: readonly Leaf[]): Promise<Doc[]> {
  const { json } = await askHome(couch.way, { method: 'POST', path: at(couch, '_bulk_get'), body: { docs } });
  return listIn(json, 'results').flatMap((result) =>
    listIn(result, 'docs').flatMap((one) => {
      const doc = isPlainObject(one) ? one['ok'] : undefined;
      return isPlainObject(doc) && doc['_deleted'] !== true ? [docIn(doc)] : [];
    }),
  );
}

/** Which of these names are there, with what is in them where that is wanted. */
export async function findDocs(
  couch: Couch,
  keys: readonly string[],
  { withDocs }: { readonly withDocs: boolean },
): Promise<Found[]> {
  const query = withDocs ? '_all_docs?include_docs=true&conflicts=true' : '_all_docs';
  const { json } = await askHome(couch.way, { method: 'POST', path: at(couch, query), body: { keys } });
  return listIn(json, 'rows').map((row) => foundIn(objectIn(row)));
}

function foundIn(row: Json): Found {
  const id = textIn(row, 'key');
  const value = row['value'];
  if (!isPlainObject(value) || value['deleted'] === true) return { id, conflicts: [] };
  const doc = isPlainObject(row['doc']) ? docIn(row['doc']) : undefined;
  const conflicts = doc?.['_conflicts'];
  return {
    id,
    rev: textIn(value, 'rev'),
    ...(doc && { doc }),
    conflicts: Array.isArray(conflicts) ? conflicts.map(String) : [],
  };
}

/** Writes many at once; `too-large` of the whole when it was more than home takes at once. */
export async function writeDocs(
  couch: Couch,
  docs: readonly (Json & { readonly _id: string })[],
): Promise<readonly Written[] | 'too-large'> {
  const { status, json } = await askHome(couch.way, {
    method: 'POST',
    path: at(couch, '_bulk_docs'),
    body: { docs },
    also: [413],
  });
  if (status === 413) return 'too-large';
  if (!Array.isArray(json)) throw other();
  return json.map((one) => writtenIn(objectIn(one)));
}

function writtenIn(one: Json): Written {
  const id = textIn(one, 'id');
  const { error } = one;
  if (error === undefined) return { id, rev: textIn(one, 'rev') };
  if (error === 'conflict') return { id, refused: 'conflict' };
  return { id, refused: typeof error === 'string' && error.includes('large') ? 'too-large' : 'forbidden' };
}

/** A document that is nothing but bytes; there already, or too large. */
export async function putBytes(
  couch: Couch,
  id: string,
  bytes: ArrayBuffer,
): Promise<'kept' | 'there' | 'too-large'> {
  const { status } = await askHome(couch.way, {
    method: 'PUT',
    path: at(couch, `${encodeURIComponent(id)}/b`),
    bytes,
    also: [409, 413],
  });
  return status === 409 ? 'there' : status === 413 ? 'too-large' : 'kept';
}

export async function bytesAt(couch: Couch, id: string): Promise<ArrayBuffer | undefined> {
  return askForBytes(couch.way, at(couch, `${encodeURIComponent(id)}/b`));
}

/** The path of something in the shop's database. */
export function at({ database }: Couch, rest: string): string {
  return rest === '' ? `/${database}` : `/${database}/${rest}`;
}

function quoted(text: string): string {
  return encodeURIComponent(JSON.stringify(text));
}

/** An answer in JSON that says nothing of what home would have said. */
function other(): HomeFault {
  return new HomeFault({ code: 'sign-in-page' });
}

export function objectIn(json: unknown): Json {
  if (!isPlainObject(json)) throw other();
  return json;
}

function listIn(json: unknown, name: string): readonly unknown[] {
  const list = objectIn(json)[name];
  if (!Array.isArray(list)) throw other();
  return list;
}

function textIn(json: Json, name: string): string {
  const text = json[name];
  if (typeof text !== 'string') throw other();
  return text;
}

function docIn(json: unknown): Doc {
  const doc = objectIn(json);
  return { ...doc, _id: textIn(doc, '_id'), _rev: textIn(doc, '_rev') };
}

/** A number on some servers, text on others; only ever handed back. */
function seqIn(seq: unknown): string {
  if (typeof seq === 'number' || typeof seq === 'string') return String(seq);
  throw other();
}
