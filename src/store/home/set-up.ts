import { refuse, worked } from '../../engine/length/refusal.ts';
import type { Store } from '../opening/open-store.ts';
import { addUser, AdminFault, checkAdmin, dropUser, makeShopDatabase } from './admin.ts';
import { isThere, oneDoc, putDoc, type Couch } from './couch.ts';
import { HomeFault, type Way } from './couch-ask.ts';
import type { Admin, HomeCalls, HomeResult, PairingCode } from './home-calls.ts';
import { readKeys, readPlace } from './home-rows.ts';
import { makeWords, readWords } from './home-words.ts';
import { lockMarksOut } from './marks.ts';
import { pairWith } from './pair.ts';
import { codeOf, makeDatabase, readAddress, readCode, readPlaceAt, type WayIn } from './pairing-code.ts';
import { fitsShop, keysFrom, makeShop, readShop, SHOP_DOC, type HomeKeys, type ShopDoc } from './sealing.ts';

type Fetch = Way['fetch'];
type Wanted<Name extends keyof HomeCalls> = Parameters<HomeCalls[Name]>[0];

/** What pairing asks of a server, each as `home-calls.ts` says it. They go over the network, so they run in home's worker. */
export type Doing = { readonly store: Store; readonly fetch: Fetch };

export async function setUp(
  { store, fetch }: Doing,
  { address, admin, phone }: Wanted<'setUp'>,
): Promise<HomeResult<{ readonly words: string }>> {
  const server = readAddress(address);
  if (!server.ok) return server;
  return saying(async () => {
    const way = wayOf(fetch, server.value, { user: admin.name, password: admin.password });
    await checkAdmin(way);
    const couch: Couch = { way, database: makeDatabase() };
    await makeShopDatabase(couch);
    const wayIn = await addUser(couch);
    const words = makeWords();
    const { shop, keys } = await makeShop(words);
    await putDoc(couch, SHOP_DOC, shop);
    return then(await pair(store, { wayIn, shop, keys, phone }), { words });
  });
}

export async function join(doing: Doing, { code, words, phone }: Wanted<'join'>): Promise<HomeResult<void>> {
  const wayIn = readCode(code);
  if (!wayIn.ok) return wayIn;
  const read = readWords(words);
  if (read === undefined) return refuse({ code: 'not-the-words' });
  return saying(async () => {
    const shop = await shopAt(doing.fetch, wayIn.value);
    if (!shop) return refuse({ code: 'nothing-there' });
    return joinShop(doing, { wayIn: wayIn.value, shop, words: read, phone });
  });
}

export async function joinByHand(
  doing: Doing,
  { address, user, password, words, phone }: Wanted<'joinByHand'>,
): Promise<HomeResult<{ readonly words?: string }>> {
  const place = readPlaceAt(address);
  if (!place.ok) return place;
  const read = words === undefined || words.trim() === '' ? undefined : readWords(words);
  if (words !== undefined && words.trim() !== '' && read === undefined)
    return refuse({ code: 'not-the-words' });
  const wayIn = { ...place.value, user, password };
  return saying(async () => {
    const shop = await shopAt(doing.fetch, wayIn);
    if (shop && read === undefined) return refuse({ code: 'words-wanted' });
    if (shop && read !== undefined)
      return then(await joinShop(doing, { wayIn, shop, words: read, phone }), {});
    // Words that are no other shop's are made here: nobody's own are as good.
    if (read !== undefined) return refuse({ code: 'nothing-there' });
    const made = makeWords();
    const fresh = await makeShop(made);
    await putDoc(couchOf(doing.fetch, wayIn), SHOP_DOC, fresh.shop);
    return then(await pair(doing.store, { wayIn, ...fresh, phone }), { words: made });
  });
}

export async function addPhone(
  { store, fetch }: Doing,
  { admin }: Wanted<'addPhone'>,
): Promise<HomeResult<PairingCode>> {
  const couch = await couchAsAdmin(store, fetch, admin);
  if (!couch) return refuse({ code: 'nothing-there' });
  return saying(async () => {
    await checkAdmin(couch.way);
    return worked(codeOf(await addUser(couch)));
  });
}

export async function lockOut(
  { store, fetch }: Doing,
  { admin, user }: Wanted<'lockOut'>,
): Promise<HomeResult<void>> {
  const couch = await couchAsAdmin(store, fetch, admin);
  const keys = await readKeys(store);
  const place = await readPlace(store);
  if (!couch || !keys || !place) return refuse({ code: 'nothing-there' });
  if (place.user === user) return refuse({ code: 'is-this-phone' });
  return saying(async () => {
    await checkAdmin(couch.way);
    await dropUser(couch, user);
    await lockMarksOut(couch, keys, user);
    return worked(undefined);
  });
}

async function couchAsAdmin(store: Store, fetch: Fetch, admin: Admin): Promise<Couch | undefined> {
  const place = await readPlace(store);
  return place && couchOf(fetch, { ...place, user: admin.name, password: admin.password });
}

async function shopAt(fetch: Fetch, wayIn: WayIn): Promise<ShopDoc | undefined> {
  const couch = couchOf(fetch, wayIn);
  if (!(await isThere(couch))) throw new HomeFault({ code: 'nothing-there' });
  const doc = await oneDoc(couch, SHOP_DOC);
  const shop = doc && readShop(doc);
  if (shop === 'newer') throw new HomeFault({ code: 'newer-home' });
  // Something else stands under its name: that is never written over.
  if (doc && !shop) throw new AdminFault({ code: 'not-a-server' });
  return shop;
}

type Joining = {
  readonly wayIn: WayIn;
  readonly shop: ShopDoc;
  readonly words: string;
  readonly phone: string;
};

/** The words are held against the shop's document before anything else is sent or read. */
async function joinShop({ store }: Doing, { wayIn, shop, words, phone }: Joining): Promise<HomeResult<void>> {
  const keys = await keysFrom(words, shop);
  if (!(await fitsShop(keys, shop))) return refuse({ code: 'wrong-words' });
  return pair(store, { wayIn, shop, keys, phone });
}

async function pair(
  store: Store,
  { wayIn, shop, keys, phone }: Omit<Joining, 'words'> & { readonly keys: HomeKeys },
): Promise<HomeResult<void>> {
  const { address, database, user, password } = wayIn;
  const paired = await pairWith(store, { address, database, user, password, phone, shop }, keys);
  return paired.ok ? paired : refuse({ code: 'store', refusal: paired.refusal });
}

function then<T>(result: HomeResult<void>, value: T): HomeResult<T> {
  return result.ok ? worked(value) : result;
}

function couchOf(fetch: Fetch, { address, database, user, password }: WayIn): Couch {
  return { way: wayOf(fetch, address, { user, password }), database };
}

function wayOf(fetch: Fetch, address: string, who: Pick<WayIn, 'user' | 'password'>): Way {
  return { fetch, address, ...who };
}

/** What went wrong on the way comes back as a refusal. */
export async function saying<T>(work: () => Promise<HomeResult<T>>): Promise<HomeResult<T>> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof AdminFault) return refuse(error.refusal);
    if (error instanceof HomeFault) return refuse(error.trouble);
    throw error;
  }
}
