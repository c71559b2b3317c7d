import type { Stamp } from '../base/clock.ts';
import type { Kept } from '../base/kept.ts';
import { isPlainObject } from '../base/paths.ts';
import type { Looking } from '../opening/each-kept.ts';
import type { Store } from '../opening/open-store.ts';
import { read } from '../opening/read.ts';
import type { BackupStore } from '../base/stores.ts';
import type { HomeKeys, ShopDoc } from './sealing.ts';

/** Where home is, and how far this phone and home have come with each other. One row; it moves only with a token that both hold. */
export type Place = {
  readonly id: 'place';
  /** `https://home.shop.example`, without a slash at its end. */
  readonly address: string;
  readonly database: string;
  readonly user: string;
  readonly password: string;
  /** What this phone is called. */
  readonly phone: string;
  readonly shop: ShopDoc;
  /** The name of this phone's own note at home. */
  readonly me: string;
  /** What both hold, and how manyth it is; missing before the first. */
  readonly token?: string;
  readonly n: number;
  /** On its way: whether home has it is known only from its answer. */
  readonly next?: string;
  /** Everything in home's feed up to here was met. */
  readonly since: string;
  /** Looking through everything that is here, for what home lacks: done up to here. */
  readonly sweep?: { readonly store: string; readonly after: string };
  /** The mark of the outbox row that this is for: begun from the start of home's feed for it. */
  readonly sweepMark?: string;
  /** All of this phone's own changes up to this stamp were at home. */
  readonly upTo?: Stamp;
  /** The fitter said that it is the right home, though there is nothing. */
  readonly again?: true;
};

export type KeysRow = { readonly id: 'keys' } & HomeKeys;

/** A document that could not be taken in: made by a newer Slipfit, or it can't be opened. */
export type AsideRow = { readonly id: string; readonly rev: string; readonly why: 'newer' | 'closed' };

/** A handful of the feed that is still to be fetched, newest first; only while all of it comes. */
export type ComingRow = { readonly id: string; readonly leaves: readonly (readonly [string, string])[] };

export type OutboxRow = { readonly id: string; readonly mark: string };

export const EVERYTHING_HERE = '*';

const rangeOf = (prefix: string) => IDBKeyRange.bound(prefix, `${prefix}\uffff`);
export const asideRange = () => rangeOf('aside/');
export const comingRange = () => rangeOf('coming/');
export const tooBigRange = () => rangeOf('big/');

export function placeIn(row: unknown): Place | undefined {
  // It is written by this room alone, and no file and no server can reach it.
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion
  return isPlainObject(row) && row['id'] === 'place' ? (row as Place) : undefined;
}

export async function placeFrom(tx: Looking): Promise<Place | undefined> {
  return placeIn(await tx.objectStore('home').get('place'));
}

export async function readPlace(store: Store): Promise<Place | undefined> {
  return read(store, ['home'], placeFrom);
}

export async function readKeys(store: Store): Promise<HomeKeys | undefined> {
  const row: unknown = await read(store, ['home'], (tx) => tx.objectStore('home').get('keys'));
  if (!isPlainObject(row) || !(row['seal'] instanceof CryptoKey) || !(row['name'] instanceof CryptoKey))
    return undefined;
  return { seal: row['seal'], name: row['name'] };
}

/** The store and the id in the id of an outbox row. */
export function recordOf(outboxId: string): {
  readonly store: BackupStore | 'conflicts';
  readonly id: string;
} {
  const slash = outboxId.indexOf('/');
  // Written by `act.ts` with the name of a store that goes home, and by this room.
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion
  return { store: outboxId.slice(0, slash) as BackupStore | 'conflicts', id: outboxId.slice(slash + 1) };
}

/** Anything of the demo stays here. Its ids say so, and those of whatever was added to it name its job. */
export function isOfTheDemo(record: Kept): boolean {
  const { of, owner } = record;
  const names = [
    record.id,
    record['jobId'],
    record['pieceId'],
    isPlainObject(of) && of['id'],
    isPlainObject(owner) && owner['id'],
  ];
  return names.some((name) => typeof name === 'string' && name.startsWith('demo-'));
}
