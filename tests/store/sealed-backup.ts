import { backupStores } from '../../src/store/base/stores.ts';
import { startChecksum } from '../../src/store/file/backup-format.ts';
import { backupLines } from '../../src/store/file/backup.ts';
import type { Store } from '../../src/store/opening/open-store.ts';
import { isPlainObject } from '../../src/store/base/paths.ts';

export type Line = Record<string, unknown>;
export type Lines = Line[];

/** A store's backup, line by line, to be tampered with. */
export async function linesOf(store: Store): Promise<Lines> {
  const lines: Lines = [];
  for await (const line of backupLines(store)) lines.push(JSON.parse(line));
  return lines;
}

/** The text of these lines with counts and checksum made right again, so that only what was tampered with is wrong. */
export async function sealed(lines: Lines): Promise<string> {
  const body = lines.slice(0, -1);
  const [header] = body;
  if (header?.['counts'] !== undefined) header['counts'] = countsOf(body);
  return sealedTexts(body.map((line) => JSON.stringify(line)));
}

export function countsOf(body: Lines): Record<string, number> {
  const count = (name: string) =>
    body.filter(({ store, unreadable }) => (store ?? unreadable) === name).length;
  return Object.fromEntries(backupStores.map((name) => [name, count(name)]));
}

export async function sealedTexts(texts: readonly string[]): Promise<string> {
  const checksum = startChecksum();
  for (const text of texts) await checksum.add(text);
  const end = JSON.stringify({ lines: texts.length, checksum: await checksum.end() });
  return [...texts, end].map((text) => `${text}\n`).join('');
}

export function recordsOf(lines: Lines, store: string): Line[] {
  return lines
    .filter((line) => line['store'] === store)
    .map(({ record }) => (isPlainObject(record) ? record : {}));
}
