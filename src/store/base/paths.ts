import { derivedFields, type Kept } from './kept.ts';

/** The fields whose entries are stamped one by one: `sizes.bore`, `parts.<id>`, `passes.<id>`, `settled.<stamp>`, `got.<what>`. */
export const mapFields: ReadonlySet<string> = new Set([
  'sizes',
  'choices',
  'parts',
  'passes',
  'takes',
  'settled',
  'reasons',
  'got',
  'toGet',
]);

/** Those that a record is without while they have no entry. */
const mayBeMissing: ReadonlySet<string> = new Set(['reasons', 'got', 'toGet']);

const unstamped: ReadonlySet<string> = new Set(['id', 'stamps', ...derivedFields]);

/** What a record holds, by path. A path that isn't there is a field that isn't there. */
export function valuesByPath(record: Kept): Map<string, unknown> {
  const values = new Map<string, unknown>();
  for (const [field, value] of Object.entries(record)) {
    if (unstamped.has(field) || value === undefined) continue;
    if (!mapFields.has(field) || !isPlainObject(value)) values.set(field, value);
    else for (const [key, entry] of Object.entries(value)) values.set(`${field}.${key}`, entry);
  }
  return values;
}

/** The fields built from paths, the way back of `valuesByPath`. A map in `maps` is there even when it has no entry left. */
export function fieldsFromPaths(
  values: ReadonlyMap<string, unknown>,
  maps: readonly string[],
): Record<string, unknown> {
  const entries = new Map<string, [string, unknown][]>(maps.map((field) => [field, []]));
  const fields: [string, unknown][] = [];
  for (const [path, value] of values) {
    const [field, key] = splitPath(path);
    if (key === undefined) fields.push([field, value]);
    else entries.set(field, [...(entries.get(field) ?? []), [key, value]]);
  }
  const filledMaps = [...entries].map(([field, pairs]) => [field, Object.fromEntries(pairs)]);
  return Object.fromEntries([...fields, ...filledMaps]);
}

/** The map fields a record has, empty ones too; of one that a record may be without only if it has an entry. */
export function mapsOf(record: Kept): string[] {
  return [...mapFields].filter((field) => !mayBeMissing.has(field) && isPlainObject(record[field]));
}

function splitPath(path: string): [field: string, key?: string] {
  const dot = path.indexOf('.');
  if (dot < 0 || !mapFields.has(path.slice(0, dot))) return [path];
  return [path.slice(0, dot), path.slice(dot + 1)];
}

/** The same text for the same value, whatever order its keys were written in; missing sorts before everything. */
export function canonicalText(value: unknown): string {
  if (value === undefined) return '';
  return JSON.stringify(value, (_key, inner: unknown) => {
    if (isBytes(inner)) return digestOf(inner);
    if (!isPlainObject(inner)) return inner;
    return Object.fromEntries(Object.entries(inner).toSorted(([a], [b]) => (a < b ? -1 : 1)));
  });
}

/** A photo's bytes. Not `instanceof`: a buffer may come out of another realm. */
export function isBytes(value: unknown): value is ArrayBuffer {
  return Object.prototype.toString.call(value) === '[object ArrayBuffer]';
}

// FNV-1a, 32 bits: enough to see whether bytes are the same ones, without megabytes of text for each photo.
function digestOf(bytes: ArrayBuffer): string {
  let hash = 0x811c9dc5;
  for (const byte of new Uint8Array(bytes)) hash = Math.imul(hash ^ byte, 0x01000193);
  return `${bytes.byteLength} bytes ${(hash >>> 0).toString(16)}`;
}

export function isPlainObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
