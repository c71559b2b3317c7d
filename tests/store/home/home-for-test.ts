import { openHome, pairWith } from '../../../src/store/home/pair.ts';
import { goRound } from '../../../src/store/home/round.ts';
import { SHOP_DOC, makeShop, type HomeKeys, type ShopDoc } from '../../../src/store/home/sealing.ts';
import type { Home, Sizes } from '../../../src/store/home/home-context.ts';
import type { Store } from '../../../src/store/opening/open-store.ts';
import { newDatabase, putDoc } from '../../couch/couch-docs.ts';
import { fetchFrom } from '../../couch/couch-fetch.ts';
import { startCouch, type Couch, type CouchOptions } from '../../couch/couch.ts';
import { worked } from '../open-for-test.ts';

export const ADDRESS = 'https://home.shop.example';
export const DATABASE = 'shop-test';
const WORDS = '01234-56789-ABCDE-FGHJK-MNPQR';

/** A server with an empty shop on it, made as pairing makes it; few rounds of stretching, as only their number differs. */
export type TestHome = {
  readonly couch: Couch;
  readonly shop: ShopDoc;
  readonly keys: HomeKeys;
};

export async function startHome(options: CouchOptions = {}): Promise<TestHome> {
  const couch = startCouch(options);
  const { shop, keys } = await makeShop(WORDS, 1000);
  couch.databases.set(DATABASE, newDatabase(DATABASE));
  fillShop(couch, shop);
  return { couch, shop, keys };
}

export function fillShop(couch: Couch, shop: ShopDoc): void {
  const database = couch.databases.get(DATABASE);
  if (database) putDoc(database, { id: SHOP_DOC, rev: undefined, body: shop });
}

/** One more phone is paired, with a user of its own. */
export async function pairForTest(
  { couch, shop, keys }: TestHome,
  store: Store,
  { fetch = fetchFrom(couch, ADDRESS), sizes, phone = 'bench phone' }: ForTest = {},
): Promise<Home> {
  const user = `phone-${couch.users.size}`;
  couch.users.set(user, 'secret');
  const database = couch.databases.get(DATABASE);
  if (database) database.members = [...database.members, user];
  const pairing = { address: ADDRESS, database: DATABASE, user, password: 'secret', phone, shop };
  worked(await pairWith(store, pairing, keys));
  const home = await openHome(store, { fetch, ...(sizes && { sizes }) });
  if (!home) throw new Error('not paired');
  return home;
}

type ForTest = {
  readonly fetch?: (url: string, init: RequestInit) => Promise<Response>;
  readonly sizes?: Sizes;
  readonly phone?: string;
};

/** Rounds by turns until nothing more changes hands. */
export async function untilQuiet(...homes: readonly Home[]): Promise<void> {
  for (let turn = 0; turn < 3; turn += 1)
    for (const home of homes)
      // One after the other.
      // oxlint-disable-next-line no-await-in-loop
      await goRound(home);
}
