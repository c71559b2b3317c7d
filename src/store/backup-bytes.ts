import type { BackupStore } from './backup-format.ts';
import { isBytes } from './paths.ts';

type Fields = Readonly<Record<string, unknown>>;

/** The one field of a store that holds bytes. JSON has no bytes, so a backup has them as base64 (RFC 4648, section 4). */
const bytesField: Partial<Record<BackupStore, string>> = { photos: 'preview', photoBytes: 'bytes' };

// A call takes only so many arguments at once.
const BYTES_AT_ONCE = 0x8000;

/** The record as a backup holds it. */
export function withBase64(store: BackupStore, record: Fields): Fields {
  const field = bytesField[store];
  const bytes = field === undefined ? undefined : record[field];
  return field !== undefined && isBytes(bytes) ? { ...record, [field]: base64Of(bytes) } : record;
}

/** The record as the database holds it. What is no base64 stays as it is, for the schema to refuse. */
export function withBytes(store: BackupStore, record: Fields): Fields {
  const field = bytesField[store];
  const text = field === undefined ? undefined : record[field];
  const bytes = typeof text === 'string' ? bytesOf(text) : undefined;
  return field !== undefined && bytes ? { ...record, [field]: bytes } : record;
}

function base64Of(buffer: ArrayBuffer): string {
  const bytes = new Uint8Array(buffer);
  let characters = '';
  for (let at = 0; at < bytes.length; at += BYTES_AT_ONCE)
    characters += String.fromCharCode(...bytes.subarray(at, at + BYTES_AT_ONCE));
  return btoa(characters);
}

function bytesOf(text: string): ArrayBuffer | undefined {
  try {
    const characters = atob(text);
    const bytes = new Uint8Array(characters.length);
    for (let at = 0; at < characters.length; at += 1) bytes[at] = characters.charCodeAt(at);
    return bytes.buffer;
  } catch {
    return undefined;
  }
}
