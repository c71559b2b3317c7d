import { newId } from '../base/new-id.ts';
import { isPlainObject } from '../base/paths.ts';
import { backupStores } from '../base/stores.ts';
import type { StoreResult } from '../base/store-refusal.ts';
import { putSeen } from '../file/conflicts-keep.ts';
import { act } from '../opening/act.ts';
import type { Store } from '../opening/open-store.ts';
import { keptSeen, seenByRecords } from '../phones/seen-here.ts';
import { FROM_THE_START } from './couch.ts';
import type { Way } from './couch-ask.ts';
import { usualSizes, type Home, type MetRecord, type Sizes } from './home-context.ts';
import { EVERYTHING_HERE, readKeys, readPlace, type OutboxRow, type Place } from './home-rows.ts';
import type { HomeKeys, ShopDoc } from './sealing.ts';

export type Pairing = {
  readonly address: string;
  readonly database: string;
  readonly user: string;
  readonly password: string;
  readonly phone: string;
  readonly shop: ShopDoc;
};

const uncounted = { durability: 'strict', counted: false } as const;

/** From here on everything goes home: what is here is looked through once, what an act touches is noted with it. */
export async function pairWith(store: Store, pairing: Pairing, keys: HomeKeys): Promise<StoreResult<void>> {
  const stores = [...backupStores, 'home', 'outbox', 'device'] as const;
  return act(store, { stores, ...uncounted }, async (a) => {
    const mark = newId();
    // What it has seen up to now is written down, as from now on its records tell less: part of home's may be missing.
    await putSeen(a, (await keptSeen(a.tx)) ?? (await seenByRecords(a.tx)));
    const place: Place = {
      ...pairing,
      id: 'place',
      me: newId(),
      n: 0,
      since: FROM_THE_START,
      sweepMark: mark,
    };
    a.putKept('home', place);
    a.putKept('home', { id: 'keys', ...keys });
    a.putKept('home', { id: 'state' });
    a.putKept('outbox', { id: EVERYTHING_HERE, mark } satisfies OutboxRow);
    const clock: unknown = await a.tx.objectStore('device').get('clock');
    await a.tx.objectStore('device').put({ ...(isPlainObject(clock) && clock), id: 'clock', home: true });
  });
}

/** This phone forgets home. What single copies have met stays: it is true of them wherever they go next. */
export async function unpair(store: Store): Promise<StoreResult<void>> {
  return act(store, { stores: ['home', 'outbox', 'device'], ...uncounted }, async (a) => {
    for (const id of (await a.tx.objectStore('home').getAllKeys()).map(String))
      if (!id.startsWith('seen/')) a.drop('home', id);
    for (const id of (await a.tx.objectStore('outbox').getAllKeys()).map(String)) a.drop('outbox', id);
    const clock: unknown = await a.tx.objectStore('device').get('clock');
    const { home: _home, ...rest } = isPlainObject(clock) ? clock : {};
    await a.tx.objectStore('device').put({ ...rest, id: 'clock' });
  });
}

export type OpenHome = {
  readonly fetch: Way['fetch'];
  readonly sizes?: Sizes;
  readonly onMet?: (meeting: MetRecord) => void;
};

/** What a round works with, on a phone that is paired. */
export async function openHome(store: Store, { fetch, sizes, onMet }: OpenHome): Promise<Home | undefined> {
  const [place, keys] = [await readPlace(store), await readKeys(store)];
  if (!place || !keys) return undefined;
  const { address, database, user, password } = place;
  return {
    store,
    couch: { way: { fetch, address, user, password }, database },
    keys,
    device: () => '',
    ownRevs: new Set(),
    sent: new Map(),
    whoIs: () => ({}),
    sizes: sizes ?? usualSizes,
    ...(onMet && { onMet }),
  };
}
