import type { BackupStore } from '../base/stores.ts';
import { bytesField, type Fields } from './backup-bytes.ts';

/** The record as the database holds it. What is no base64 stays as it is, for the schema to refuse. */
export function withBytes(store: BackupStore, record: Fields): Fields {
  const field = bytesField[store];
  const text = field === undefined ? undefined : record[field];
  const bytes = typeof text === 'string' ? bytesOf(text) : undefined;
  return field !== undefined && bytes ? { ...record, [field]: bytes } : record;
}

export function bytesOf(text: string): ArrayBuffer | undefined {
  try {
    const characters = atob(text);
    const bytes = new Uint8Array(characters.length);
    for (let at = 0; at < characters.length; at += 1) bytes[at] = characters.charCodeAt(at);
    return bytes.buffer;
  } catch {
    return undefined;
  }
}
