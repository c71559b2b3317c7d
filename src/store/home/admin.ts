import { isPlainObject } from '../base/paths.ts';
import { askHome, HomeFault, type Json, type Way } from './couch-ask.ts';
import { objectIn, type Couch } from './couch.ts';
import type { HomeRefusal } from './home-calls.ts';
import { makeUser, type WayIn } from './pairing-code.ts';

/** What only the server's admin may do: once when a shop is made, then for each phone that comes or is lost. */

/** Thrown for what `HomeFault` has no word for. */
export class AdminFault extends Error {
  readonly refusal: HomeRefusal;
  constructor(refusal: HomeRefusal) {
    super(refusal.code);
    this.refusal = refusal;
  }
}

/** Whether what answers is a server of the kind, and knows this admin. */
export async function checkAdmin(way: Way): Promise<void> {
  const { json } = await asAdmin(() => askHome(way, { path: '/' }));
  if (!isPlainObject(json) || json['couchdb'] === undefined) throw new AdminFault({ code: 'not-a-server' });
}

// Every leaf's line is kept up to here: of a record that is changed often the oldest of them are of no use to anybody.
const REVISIONS_KEPT = 20;

/** The shop's database, for nobody yet. */
export async function makeShopDatabase({ way, database }: Couch): Promise<void> {
  await asAdmin(() => askHome(way, { method: 'PUT', path: `/${database}`, also: [412] }));
  await setMembers({ way, database }, () => []);
  await asAdmin(() =>
    askHome(way, { method: 'PUT', path: `/${database}/_revs_limit`, body: REVISIONS_KEPT }),
  );
}

/** A user for one more phone, who may into this database and nothing else. */
export async function addUser({ way, database }: Couch): Promise<WayIn> {
  const { user, password } = makeUser();
  const body = { name: user, password, roles: [], type: 'user' };
  await asAdmin(() => askHome(way, { method: 'PUT', path: userPath(user), body }));
  await setMembers({ way, database }, (names) => [...names, user]);
  return { address: way.address, database, user, password };
}

/** Takes a user away. One who is gone already is as well. */
export async function dropUser({ way, database }: Couch, user: string): Promise<void> {
  const { status, json } = await asAdmin(() => askHome(way, { path: userPath(user), also: [404] }));
  const rev = status === 404 ? undefined : objectIn(json)['_rev'];
  if (typeof rev === 'string') {
    const path = `${userPath(user)}?rev=${encodeURIComponent(rev)}`;
    await asAdmin(() => askHome(way, { method: 'DELETE', path, also: [404] }));
  }
  await setMembers({ way, database }, (names) => names.filter((name) => name !== user));
}

function userPath(user: string): string {
  return `/_users/${encodeURIComponent(`org.couchdb.user:${user}`)}`;
}

async function setMembers({ way, database }: Couch, changed: (names: string[]) => string[]): Promise<void> {
  const path = `/${database}/_security`;
  const { json } = await asAdmin(() => askHome(way, { path }));
  const before: Json = isPlainObject(json) ? json : {};
  const members = isPlainObject(before['members']) ? before['members'] : {};
  const names = Array.isArray(members['names']) ? members['names'].map(String) : [];
  // A database without any member is open to everybody: CouchDB's own admin role keeps it shut until the first phone is in.
  const body = {
    admins: { names: [], roles: ['_admin'], ...(isPlainObject(before['admins']) && before['admins']) },
    members: { roles: ['_admin'], ...members, names: changed(names) },
  };
  await asAdmin(() => askHome(way, { method: 'PUT', path, body }));
}

async function asAdmin<T>(ask: () => Promise<T>): Promise<T> {
  try {
    return await ask();
  } catch (error) {
    const code = error instanceof HomeFault ? error.trouble.code : undefined;
    if (code === 'wrong-password' || code === 'not-allowed') throw new AdminFault({ code: 'wrong-admin' });
    if (code === 'nothing-there') throw new AdminFault({ code: 'not-a-server' });
    throw error;
  }
}
