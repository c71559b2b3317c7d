import type { Stamp } from '../base/clock.ts';
import { derivedFields, type Kept, type KeptStamped } from '../base/kept.ts';
import { isPlainObject } from '../base/paths.ts';
import type { BackupStore } from '../base/stores.ts';
import { withBase64 } from '../file/backup-bytes.ts';
import { withBytes } from '../file/backup-bytes-read.ts';
import { checkRecord } from '../kept/any-record.ts';
import { readConflict, type Conflict } from '../phones/conflict-schema.ts';
import { latestOf, metBy, metByBoth, stampsIn, type RecordSeen } from '../phones/record-seen.ts';
import type { Doc } from './couch.ts';
import { sweptStores } from './swept-stores.ts';
import { nameAtHome, openBytes, openText, sealBytes, sealText, type HomeKeys } from './sealing.ts';

/**
 * A record as a document: `{k: 1, d: base64(iv, AES-GCM of {store, record, seen?})}` under a name that the key makes of its
 * store and id. `seen` is what the copy has met, left out while it is as it was made. Only sealed text leaves the phone.
 */
const FORM = 1;

/** A document that was opened and found right. `met` is what its copy has met. */
export type Opened =
  | {
      readonly of: 'record';
      readonly store: BackupStore;
      readonly record: KeptStamped;
      readonly met: RecordSeen;
    }
  | { readonly of: 'question'; readonly question: Conflict };

export type Opening =
  | { readonly ok: true; readonly value: Opened }
  | { readonly ok: false; readonly why: 'newer' | 'closed' };

/** How a document's bytes are fetched, where they stand apart. */
export type FetchBytes = (docId: string) => Promise<ArrayBuffer | undefined>;

export function textOf(store: BackupStore, record: Kept, met: RecordSeen | undefined): string {
  const own = Object.entries(record).filter(([field]) => !derivedFields.has(field));
  const seen: readonly Stamp[] | undefined = met && [...met.values()];
  return JSON.stringify({
    store,
    record: withBase64(store, Object.fromEntries(own)),
    ...(seen && { seen }),
  });
}

export function textOfQuestion(question: Conflict): string {
  return JSON.stringify({ store: 'conflicts', record: question });
}

/** The name of a record's document; of its bytes, where they stand apart. */
export async function docIdOf(keys: HomeKeys, store: string, id: string): Promise<string> {
  return nameAtHome(keys, 'r', `${store}/${id}`);
}

export async function bytesIdOf(keys: HomeKeys, store: string, id: string): Promise<string> {
  return nameAtHome(keys, 'b', `${store}/${id}`);
}

export async function sealDoc(
  keys: HomeKeys,
  docId: string,
  text: string,
): Promise<{ readonly _id: string; readonly k: number; readonly d: string }> {
  return { _id: docId, k: FORM, d: await sealText(keys, docId, text) };
}

/** What stands in a document's place whose bytes are apart: a signed sheet of over a megabyte. */
export function textOfLarge(store: BackupStore, id: string): string {
  return JSON.stringify({ store, id, large: true });
}

export async function sealLarge(keys: HomeKeys, bytesId: string, text: string): Promise<ArrayBuffer> {
  return sealBytes(keys, bytesId, new TextEncoder().encode(text));
}

/** Opens a document, whichever phone it is from. One that is no record of ours, or of a later Slipfit, says so. */
export async function openDoc(keys: HomeKeys, doc: Doc, fetchBytes: FetchBytes): Promise<Opening> {
  const { _id: docId, k, d } = doc;
  if (typeof k === 'number' && k > FORM) return { ok: false, why: 'newer' };
  const text = typeof d === 'string' ? await openText(keys, docId, d) : undefined;
  const said = text === undefined ? undefined : parsed(text);
  if (!said) return { ok: false, why: 'closed' };
  const { store, id } = said;
  if (said['large'] !== true) return openedOf(keys, doc, said);
  if (typeof store !== 'string' || typeof id !== 'string') return { ok: false, why: 'closed' };
  const bytesId = await bytesIdOf(keys, store, id);
  const bytes = await fetchBytes(bytesId);
  const opened = bytes && (await openBytes(keys, bytesId, bytes));
  const inside = opened && parsed(new TextDecoder().decode(opened));
  return inside ? openedOf(keys, doc, inside) : { ok: false, why: 'closed' };
}

async function openedOf(
  keys: HomeKeys,
  { _id }: Pick<Doc, '_id'>,
  said: Readonly<Record<string, unknown>>,
): Promise<Opening> {
  const { store, record } = said;
  if (typeof store !== 'string' || !isPlainObject(record) || typeof record['id'] !== 'string')
    return { ok: false, why: 'closed' };
  // The seal holds it to its document's name already; this holds the name to what is inside.
  if ((await docIdOf(keys, store, record['id'])) !== _id) return { ok: false, why: 'closed' };
  if (store === 'conflicts') {
    const question = readConflict(record);
    return question ? { ok: true, value: { of: 'question', question } } : { ok: false, why: 'newer' };
  }
  if (!isOfHome(store)) return { ok: false, why: 'newer' };
  const checked = checkRecord(store, withBytes(store, withoutDerived(record)));
  // It was sealed by a phone of this shop: what can't be read is a later form.
  if (!checked.ok) return { ok: false, why: 'newer' };
  const met = metByBoth(latestOf(stampsIn(said['seen'])), metBy(checked.value));
  return { ok: true, value: { of: 'record', store, record: checked.value, met } };
}

function parsed(text: string): Readonly<Record<string, unknown>> | undefined {
  try {
    const value: unknown = JSON.parse(text);
    return isPlainObject(value) ? value : undefined;
  } catch {
    return undefined;
  }
}

function isOfHome(store: string): store is BackupStore {
  const names: readonly string[] = sweptStores;
  return names.includes(store) && store !== 'conflicts';
}

function withoutDerived(record: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  return Object.fromEntries(Object.entries(record).filter(([field]) => !derivedFields.has(field)));
}
