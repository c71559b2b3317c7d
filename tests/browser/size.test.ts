import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openPhone, removeTemporaryFolders, startServer, untilReadyOffline } from './launch.ts';

/**
 * 45 KB is what a mid-range phone on slow 3G has loaded and started well within 5 s, with the styles beside it. The 0.5 above
 * it draw the list of jobs before all else, and are paid back at every start. 40 is aimed at: DEVELOPERS.md says what stands in the way.
 */
const limit = 45_500;
/**
 * What is there, 537 KB, rounded up a little: it is fetched once, after the first load, and kept. A jump past this means
 * that something came in twice or unpacked. Twice that is so on purpose: the 6 KB of the rescue page, which stands on its own,
 * and the 48 KB of home's worker, which has the store's schemas and merging again: nothing else may reach out of the phone.
 * The last 2 KB write decimals with a comma and name at the sign-off what nothing judged; the 3 KB before them pair a phone with a copy at home; the 3 KB before them bring a measured part into the next job; the 3 KB before them find a job by any word in it; the 13 KB before them are the mill and an alignment; the 8 before them a thread on the lathe with its stud and passes; the 4 KB before them rings by their load, tools and metals by their European names; the 12 before them the taper with its gauge blocks; the 0.7 KB before them draw the list of jobs before all else; the 11 KB before them are a worksheet of two hole patterns; the 10 before them one more worksheet, and the class that two measured parts keep; the 50 KB before them what is asked, said and refused of every place, limit, tool,
 * warmth, stale figure and false file. No package is new in it.
 */
const wholeLimit = 537_500;

let server: Awaited<ReturnType<typeof startServer>>;

beforeAll(async () => {
  server = await startServer();
});
afterAll(async () => {
  await server.stop();
  await removeTemporaryFolders();
});

test('the first load is at most 45.5 KB of JavaScript, gzipped: the entry and all it imports', () => {
  const files = withTheirImports(entries());
  const bytes = gzipped(files);
  console.log(`first load: ${bytes} bytes of JavaScript, gzipped, in ${files.length} files`);
  expect(files.length).toBeGreaterThan(0);
  expect(bytes).toBeLessThanOrEqual(limit);
});

test('a phone that opens the app for the first time asks for no more JavaScript than that', async () => {
  const { page, close } = await openPhone();
  const asked = new Set<string>();
  page.on('request', (request) => {
    const path = new URL(request.url()).pathname;
    if (path.endsWith('.js') && path !== '/sw.js' && !request.serviceWorker()) asked.add(path.slice(1));
  });
  await page.goto(server.url);
  await page.locator('#app > *').first().waitFor();
  await untilReadyOffline(page);
  await close();
  expect(asked.size).toBeGreaterThan(0);
  expect(gzipped([...asked])).toBeLessThanOrEqual(limit);
});

test('the whole app, its worker too, is at most 537.5 KB of JavaScript, gzipped, in a few files', () => {
  const files = readdirSync('dist', { recursive: true, encoding: 'utf8' }).filter((file) =>
    file.endsWith('.js'),
  );
  const bytes = gzipped(files);
  console.log(`whole app: ${bytes} bytes of JavaScript, gzipped, in ${files.length} files`);
  expect(bytes).toBeLessThanOrEqual(wholeLimit);
  // Each is one more question to the worker, and small ones hardly pack.
  expect(files.length).toBeLessThanOrEqual(20);
});

/** The scripts index.html names. */
function entries(): string[] {
  const page = readFileSync('dist/index.html', 'utf8');
  return [...page.matchAll(/<script[^>]*\ssrc="\.\/([^"]+)"/g)].map((match) => match[1] ?? '');
}

/** With what they import in turn; not what is imported on demand, by `import(...)`. */
function withTheirImports(files: readonly string[]): string[] {
  const found = new Set<string>();
  const follow = (file: string) => {
    if (found.has(file)) return;
    found.add(file);
    const imports = readFileSync(join('dist', file), 'utf8').matchAll(
      /\b(?:from|import)["'`](\.[^"'`]+)["'`]/g,
    );
    for (const [, path = ''] of imports) follow(join(dirname(file), path));
  };
  files.forEach(follow);
  return [...found];
}

function gzipped(files: readonly string[]): number {
  return files
    .map((file) => gzipSync(readFileSync(join('dist', file)), { level: 9 }).length)
    .reduce((sum, size) => sum + size, 0);
}
