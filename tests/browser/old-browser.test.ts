import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { openPhone, removeTemporaryFolders, startServer } from './launch.ts';

afterAll(removeTemporaryFolders);

test('a browser too old for the app says so, in place of keys that lead nowhere', async () => {
  const server = await startServer();
  const { page, context, close } = await openPhone();
  await context.addInitScript(() => Reflect.deleteProperty(Array.prototype, 'toSorted'));
  await page.goto(server.url);
  await page.getByRole('alert').getByText('This browser is too old for Slipfit.').waitFor();
  expect(await page.getByRole('link').count()).toBe(0);
  expect(await page.evaluate(async () => (await indexedDB.databases()).length)).toBe(0);
  await close();
  await server.stop();
});

// A pattern that an older engine can't read stops the whole file it stands in, before anything can be said.
test('no pattern in the app looks behind, which Safari reads from 16.4 on only', () => {
  const scripts = readdirSync('dist', { recursive: true, encoding: 'utf8' }).filter((path) =>
    path.endsWith('.js'),
  );
  expect(scripts).toContain('sw.js');
  expect(scripts.length).toBeGreaterThan(5);
  const looksBehind = (path: string) => /\(\?<[=!]/.test(readFileSync(join('dist', path), 'utf8'));
  expect(scripts.filter(looksBehind)).toEqual([]);
});
