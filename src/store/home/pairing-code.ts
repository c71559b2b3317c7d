import { sha256 } from '../base/sha-256.ts';
import { refuse, worked } from '../../engine/length/refusal.ts';
import type { HomeResult, PairingCode } from './home-calls.ts';
import { byChance, inGroups, readLetters } from './home-words.ts';

/** Where a shop is and who may in: all that a phone needs beside the shop's words. */
export type WayIn = {
  /** The server's address, without a slash at its end. */
  readonly address: string;
  readonly database: string;
  readonly user: string;
  readonly password: string;
};

const MARK = 'SLIPFIT:';
const USER = 'phone-';
/** 40 bits tell one phone's user from another's; 125 can't be guessed. */
const LETTERS_OF_USER = 8;
const LETTERS_OF_PASSWORD = 25;
/** So that a letter that was typed wrong is seen before anything is asked: one in 1,024 slips through. */
const LETTERS_OF_CHECK = 2;

export function makeUser(): { readonly user: string; readonly password: string } {
  return {
    user: `${USER}${byChance(LETTERS_OF_USER).toLowerCase()}`,
    password: byChance(LETTERS_OF_PASSWORD),
  };
}

export function makeDatabase(): string {
  return `shop-${byChance(10).toLowerCase()}`;
}

/** As a phone shows it to another. The words are not in it: whoever photographs it can send nothing and read nothing. */
export function codeOf({ address, database, user, password }: WayIn): PairingCode {
  const place = `${address}/${database}`;
  const secret = `${user.slice(USER.length).toUpperCase()}${password}`;
  const letters = `${secret}${checkOf(place, secret)}`;
  const text = `${MARK}${place}*${letters}`;
  const isPlain = place === place.toLowerCase();
  return { forQr: isPlain ? text.toUpperCase() : text, groups: inGroups(letters), address: place };
}

/** What was scanned, or typed beside the address. */
export function readCode(
  code: string | { readonly address: string; readonly groups: string },
): HomeResult<WayIn> {
  const said = typeof code === 'string' ? scanned(code.trim()) : code;
  if (!said) return refuse({ code: 'not-a-code' });
  const place = readPlaceAt(said.address);
  if (!place.ok) return typeof code === 'string' ? refuse({ code: 'not-a-code' }) : place;
  const letters = readLetters(said.groups);
  if (letters?.length !== LETTERS_OF_USER + LETTERS_OF_PASSWORD + LETTERS_OF_CHECK)
    return refuse({ code: 'not-a-code' });
  const secret = letters.slice(0, -LETTERS_OF_CHECK);
  const { address, database } = place.value;
  if (checkOf(`${address}/${database}`, secret) !== letters.slice(-LETTERS_OF_CHECK))
    return refuse({ code: 'not-a-code' });
  const user = `${USER}${secret.slice(0, LETTERS_OF_USER).toLowerCase()}`;
  return worked({ address, database, user, password: secret.slice(LETTERS_OF_USER) });
}

function scanned(text: string): { readonly address: string; readonly groups: string } | undefined {
  if (!text.toUpperCase().startsWith(MARK)) return undefined;
  const rest = text.slice(MARK.length);
  const star = rest.lastIndexOf('*');
  const place = rest.slice(0, Math.max(0, star));
  return { address: text === text.toUpperCase() ? place.toLowerCase() : place, groups: rest.slice(star + 1) };
}

const LETTERS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

function checkOf(place: string, secret: string): string {
  const sum = sha256(new TextEncoder().encode(`${place} ${secret}`));
  return Array.from(sum.subarray(0, LETTERS_OF_CHECK), (byte) => LETTERS[byte % 32]).join('');
}

/** The address of a server as a person types it: https, or this machine itself. Without a slash at its end. */
export function readAddress(typed: string): HomeResult<string> {
  const text = typed.trim();
  const url = urlOf(/^[a-z]+:\/\//i.test(text) ? text : `https://${text}`);
  if (
    !url ||
    text === '' ||
    url.username !== '' ||
    url.password !== '' ||
    url.search !== '' ||
    url.hash !== ''
  )
    return refuse({ code: 'not-an-address' });
  const isHere = ['localhost', '127.0.0.1', '[::1]'].includes(url.hostname);
  if (url.protocol !== 'https:' && !(url.protocol === 'http:' && isHere))
    return refuse({ code: url.protocol === 'http:' ? 'not-https' : 'not-an-address' });
  return worked(`${url.origin}${url.pathname}`.replace(/\/+$/, ''));
}

/** The same with a database behind it. */
export function readPlaceAt(typed: string): HomeResult<Pick<WayIn, 'address' | 'database'>> {
  const whole = readAddress(typed);
  if (!whole.ok) return whole;
  const slash = whole.value.lastIndexOf('/');
  const database = whole.value.slice(slash + 1);
  const address = whole.value.slice(0, slash);
  // Names of databases as CouchDB allows them, without its slashes.
  if (urlOf(address) === undefined || !/^[a-z][a-z0-9_$()+-]*$/.test(database))
    return refuse({ code: 'not-an-address' });
  return worked({ address, database });
}

function urlOf(text: string): URL | undefined {
  try {
    const url = new URL(text);
    return url.hostname === '' ? undefined : url;
  } catch {
    return undefined;
  }
}
