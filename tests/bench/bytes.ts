import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import type { Part } from './figures.ts';

/** What a phone fetches: the first load, which is the entry and all it imports, and the whole app that is kept. */
export function shippedBytes(folder: string): Part {
  const scripts = filesIn(folder).filter((file) => file.endsWith('.js'));
  const first = firstLoadScripts(folder);
  const styles = filesIn(folder).filter((file) => file.endsWith('.css'));
  const sized = (name: string, files: readonly string[], aim?: number) => [
    { name: `${name}, gzip`, unit: 'kB' as const, value: sum(files, gzipSync), runs: 1, ...(aim && { aim }) },
    { name: `${name}, brotli`, unit: 'kB' as const, value: sum(files, brotliCompressSync), runs: 1 },
  ];
  return {
    title: 'Bytes shipped',
    figures: [
      ...sized('JavaScript of the first load', first, 40),
      ...sized('JavaScript of the whole app', scripts, 310),
      ...sized('the whole app: scripts, styles, page', [...scripts, ...styles, join(folder, 'index.html')]),
    ],
  };
}

/** The entry, and every script that it imports before anything is shown. */
export function firstLoadScripts(folder: string): string[] {
  const page = readFileSync(join(folder, 'index.html'), 'utf8');
  const queue = [...page.matchAll(/(?:src|href)="\.?\/?([^"]+\.js)"/g)].map(([, file]) =>
    join(folder, file ?? ''),
  );
  const seen = new Set<string>();
  for (let file = queue.pop(); file !== undefined; file = queue.pop()) {
    if (seen.has(file)) continue;
    seen.add(file);
    const text = readFileSync(file, 'utf8');
    // Static imports only: what is fetched on demand stands in import( ... ).
    for (const [, imported] of text.matchAll(/(?:from|import)\s*["']\.\/([^"']+\.js)["']/g))
      queue.push(join(folder, 'assets', imported ?? ''));
  }
  return [...seen];
}

function filesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));
}

function sum(files: readonly string[], pack: (bytes: Buffer) => Buffer): number {
  return files.reduce((total, file) => total + pack(readFileSync(file)).length, 0) / 1000;
}
