import { base64Of } from '../file/backup-bytes.ts';
import { bytesOf } from '../file/backup-bytes-read.ts';
import { byChance } from './home-words.ts';

/** The keys that the shop's words give. They can't be read out again: neither is the words' text. */
export type HomeKeys = { readonly seal: CryptoKey; readonly name: CryptoKey };

/** What a phone needs beside the words: at home as the document `slipfit`. It says nothing about the words. */
export type ShopDoc = {
  readonly v: 1;
  readonly salt: string;
  readonly iterations: number;
  /** A word sealed with the shop's key: other words don't open it. */
  readonly check: string;
};

export const SHOP_DOC = 'slipfit';
const CHECK_WORD = 'slipfit at home';

// OWASP's advice for PBKDF2 with SHA-256 (2023): 600,000. The words are 125 bits by chance, so this is a belt beside braces.
const ITERATIONS = 600_000;
// A document from outside must not keep a phone busy for minutes.
const MOST_ITERATIONS = 5_000_000;

const IV_BYTES = 12;
const encoder = new TextEncoder();
const decoder = new TextDecoder('utf-8', { fatal: true });

/**
 * The shop's words turned into keys: PBKDF2-SHA-256, then HKDF to one key that seals (AES-GCM, 256 bits) and one that names
 * (HMAC-SHA-256), neither extractable. Source: RFC 8018, RFC 5869, NIST SP 800-38D.
 */
export async function keysFrom(
  words: string,
  { salt, iterations }: Pick<ShopDoc, 'salt' | 'iterations'>,
): Promise<HomeKeys> {
  const typed = await crypto.subtle.importKey('raw', encoder.encode(words), 'PBKDF2', false, ['deriveBits']);
  const stretch = { name: 'PBKDF2', hash: 'SHA-256', salt: encoder.encode(salt), iterations };
  const bits = await crypto.subtle.deriveBits(stretch, typed, 256);
  const root = await crypto.subtle.importKey('raw', bits, 'HKDF', false, ['deriveKey']);
  const hkdf = (info: string) => ({
    name: 'HKDF',
    hash: 'SHA-256',
    salt: new Uint8Array(),
    info: encoder.encode(info),
  });
  const [seal, name] = await Promise.all([
    crypto.subtle.deriveKey(hkdf('slipfit seal'), root, { name: 'AES-GCM', length: 256 }, false, [
      'encrypt',
      'decrypt',
    ]),
    crypto.subtle.deriveKey(
      hkdf('slipfit name'),
      root,
      { name: 'HMAC', hash: 'SHA-256', length: 256 },
      false,
      ['sign'],
    ),
  ]);
  return { seal, name };
}

/** A new shop's document with the keys of its words. */
export async function makeShop(
  words: string,
  iterations: number = ITERATIONS,
): Promise<{ readonly shop: ShopDoc; readonly keys: HomeKeys }> {
  const salt = byChance(26);
  const keys = await keysFrom(words, { salt, iterations });
  const check = await sealText(keys, SHOP_DOC, CHECK_WORD);
  return { shop: { v: 1, salt, iterations, check }, keys };
}

/** Whether these keys are those of the words that the shop was made with. */
export async function fitsShop(keys: HomeKeys, { check }: ShopDoc): Promise<boolean> {
  return (await openText(keys, SHOP_DOC, check)) === CHECK_WORD;
}

/** The shop's document as it came; `newer` where a later Slipfit made it, nothing where it is none. */
export function readShop(doc: Readonly<Record<string, unknown>>): ShopDoc | 'newer' | undefined {
  const { v, salt, iterations, check } = doc;
  if (typeof v === 'number' && v > 1) return 'newer';
  if (v !== 1 || typeof salt !== 'string' || typeof check !== 'string') return undefined;
  if (typeof iterations !== 'number' || !(iterations >= 1 && iterations <= MOST_ITERATIONS)) return undefined;
  return { v, salt, iterations, check };
}

// 132 bits: two documents of one name would need more records than there ever will be.
const CHARACTERS_OF_A_NAME = 22;

/** What a thing is called at home: nobody who has not the key can tell which it is, or whether two homes hold the same. */
export async function nameAtHome(keys: HomeKeys, letter: 'r' | 'b' | 'm', what: string): Promise<string> {
  const sum = await crypto.subtle.sign('HMAC', keys.name, encoder.encode(what));
  const text = base64Of(sum).replaceAll('+', '-').replaceAll('/', '_');
  return `${letter}${text.slice(0, CHARACTERS_OF_A_NAME)}`;
}

/** Text sealed under the name of its document: put under another name it can't be opened. */
export async function sealText(keys: HomeKeys, docId: string, text: string): Promise<string> {
  return base64Of(await sealBytes(keys, docId, encoder.encode(text)));
}

/** The text again; nothing where it was changed, moved, or sealed with other words. */
export async function openText(keys: HomeKeys, docId: string, sealed: string): Promise<string | undefined> {
  const bytes = bytesOf(sealed);
  const opened = bytes && (await openBytes(keys, docId, bytes));
  try {
    return opened && decoder.decode(opened);
  } catch {
    return undefined;
  }
}

export async function sealBytes(
  keys: HomeKeys,
  docId: string,
  bytes: Uint8Array<ArrayBuffer>,
): Promise<ArrayBuffer> {
  const iv = crypto.getRandomValues(new Uint8Array(IV_BYTES));
  const how = { name: 'AES-GCM', iv, additionalData: encoder.encode(docId) };
  const sealed = new Uint8Array(await crypto.subtle.encrypt(how, keys.seal, bytes));
  const all = new Uint8Array(IV_BYTES + sealed.length);
  all.set(iv);
  all.set(sealed, IV_BYTES);
  return all.buffer;
}

export async function openBytes(
  keys: HomeKeys,
  docId: string,
  sealed: ArrayBuffer,
): Promise<ArrayBuffer | undefined> {
  if (sealed.byteLength <= IV_BYTES) return undefined;
  const how = {
    name: 'AES-GCM',
    iv: new Uint8Array(sealed, 0, IV_BYTES),
    additionalData: encoder.encode(docId),
  };
  try {
    return await crypto.subtle.decrypt(how, keys.seal, new Uint8Array(sealed, IV_BYTES));
  } catch {
    return undefined;
  }
}
