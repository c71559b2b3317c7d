import type { BackupStore } from '../base/stores.ts';
import { isBytes } from '../base/paths.ts';

export type Fields = Readonly<Record<string, unknown>>;

/** The one field of a store that holds bytes. JSON has no bytes, so a backup has them as base64 (RFC 4648, section 4). */
export const bytesField: Partial<Record<BackupStore, string>> = { photos: 'preview', photoBytes: 'bytes' };

// A call takes only so many arguments at once.
const BYTES_AT_ONCE = 0x8000;

/** The record as a backup holds it. */
export function withBase64(store: BackupStore, record: Fields): Fields {
  const field = bytesField[store];
  const bytes = field === undefined ? undefined : record[field];
  return field !== undefined && isBytes(bytes) ? { ...record, [field]: base64Of(bytes) } : record;
}

export function base64Of(buffer: ArrayBuffer): string {
  const bytes = new Uint8Array(buffer);
  let characters = '';
  for (let at = 0; at < bytes.length; at += BYTES_AT_ONCE)
    characters += String.fromCharCode(...bytes.subarray(at, at + BYTES_AT_ONCE));
  return btoa(characters);
}
