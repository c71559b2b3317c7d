import { readFileSync, readdirSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeEach, expect, test } from 'vitest';
import { goTo, typeSize } from './on-a-screen.ts';
import { openPhone, removeTemporaryFolders, startServer, untilReadyOffline, type Phone } from './launch.ts';

/** A network that sends its own page with status 200 or never answers, and a browser that throws files of the app away. */

const PORTAL = '<!doctype html><title>Wi-Fi</title><h1>Pay for the Wi-Fi first</h1>';
const ready = 'Ready to work without signal.';
const notYet = 'The app is not kept for work without signal yet.';
const neverComes = 'The app is not kept for work without signal yet. A part of it does not come';
const gone = 'A part of the app is gone from this phone.';
const assets = readdirSync('dist/assets');
// All that a job has.
const rest = assetOf(/^rest-.*\.js$/);

let server: Awaited<ReturnType<typeof startServer>>;
let phone: Phone;
let page: Page;

beforeEach(async () => {
  server = await startServer();
  phone = await openPhone();
  page = phone.page;
  // "Save as" and the share sheet wait for a person; without them files go to the downloads.
  await phone.context.addInitScript(() => {
    Reflect.deleteProperty(globalThis, 'showSaveFilePicker');
    Reflect.deleteProperty(Navigator.prototype, 'canShare');
  });
});
afterEach(async () => {
  await phone.close();
  await server.stop();
});
afterAll(removeTemporaryFolders);

test('a network’s page in place of the frame is never kept: it is not called ready, and the next start is the app', async () => {
  server.lie((path) => (path === 'index.html' ? PORTAL : undefined));
  await page.goto(server.url);
  await page.getByText(notYet).first().waitFor();
  expect(await page.getByText(ready).count()).toBe(0);
  expect(await hasWorker()).toBe(false);

  server.lie();
  await page.evaluate(() => dispatchEvent(new Event('online')));
  await page.getByText(ready).first().waitFor();
  server.lie(() => PORTAL);
  await page.reload();
  await appIsShown();
  await server.stop();
  await page.reload();
  await appIsShown();
});

test('where it comes in place of one script, that screen says so and a backup with all records is saved from it', async () => {
  // No worker yet: what is logged is logged, and nothing of the app is kept.
  server.lie((path) => (path === 'sw.js' ? PORTAL : undefined));
  await page.goto(server.url);
  // Not that the browser won't have it: in another one his records would not be.
  await page.getByText(notYet).first().waitFor();
  await logOne('.4487');
  server.lie((path) => (path === `assets/${rest}` ? PORTAL : undefined));
  await page.goto(server.url);
  await page.reload();
  await page.getByText(notYet).first().waitFor();
  await goTo(page, '/shop');
  await page.getByText('This screen could not be opened. What you logged is safe.').waitFor();
  expect(await savedBackup()).toContain('"typed":".4487"');
  expect(await page.getByText(ready).count()).toBe(0);

  server.lie();
  await page.evaluate(() => dispatchEvent(new Event('online')));
  await page.getByText(ready).first().waitFor();
  await page.reload();
  await page.getByRole('heading', { name: 'Records' }).waitFor();
});

test('what the browser threw away, or keeps spoiled, is put back at the next start with signal, icons and styles too', async () => {
  await page.goto(server.url);
  await untilReadyOffline(page);
  const lost = [`assets/${rest}`, `assets/${assetOf(/^rest-.*\.css$/)}`, 'icons/icon.svg', 'index.html'];
  await throwAway(lost);
  await spoil('manifest.webmanifest');
  await page.reload();
  await appIsShown();
  await expect.poll(async () => keptRight([...lost, 'manifest.webmanifest'])).toBe(true);
  expect(await page.getByText(gone).count()).toBe(0);
  await server.stop();
  await page.reload();
  await goTo(page, '/shop');
  await page.getByRole('heading', { name: 'Records' }).waitFor();
});

test('without signal what was thrown away is said at the start, a backup is saved all the same, and signal mends it', async () => {
  await page.goto(server.url);
  await untilReadyOffline(page);
  await logOne('.4487');
  const mayGo = assets.filter((name) => !name.startsWith('index-')).map((name) => `assets/${name}`);
  await throwAway(mayGo);
  await server.stop();
  await page.reload();
  await page.getByText(gone).first().waitFor();
  await goTo(page, '/charts/drills');
  await page.getByText('This screen could not be opened.').waitFor();
  expect(await savedBackup()).toContain('"typed":".4487"');

  // The network that is found first is one that wants to be paid.
  await server.start();
  server.lie(() => PORTAL);
  await page.evaluate(() => dispatchEvent(new Event('online')));
  await expect
    .poll(() => server.asked.filter((path) => path === `/assets/${rest}`).length)
    .toBeGreaterThan(1);
  expect(await page.getByText(ready).count()).toBe(0);
  server.lie();
  await page.evaluate(() => dispatchEvent(new Event('online')));
  await page.getByText(ready).first().waitFor();
  expect(await keptRight(mayGo)).toBe(true);
});

test('with the app’s own first files gone and no signal, a page that stands on its own saves the backup', async () => {
  await page.goto(server.url);
  await untilReadyOffline(page);
  await logOne('.4487');
  await throwAway(['index.html']);
  await server.stop();
  await page.reload();
  await page.getByText('Your records are still here.').waitFor();
  expect(await savedBackup()).toContain('"typed":".4487"');

  await server.start();
  await page.getByRole('link', { name: 'Try again' }).click();
  await appIsShown();
  await expect.poll(async () => keptRight(['index.html'])).toBe(true);
  await throwAway([`assets/${assetOf(/^index-.*\.js$/)}`]);
  await server.stop();
  await page.goto(`${server.url}?again`);
  await page.getByText('Slipfit has not started').waitFor();
  await page.getByRole('link', { name: 'Save a backup' }).click();
  expect(await savedBackup()).toContain('"typed":".4487"');
});

test('a file that never comes holds nothing up: after a while it is said that the app is not kept, and once it comes it is', async () => {
  await phone.context.addInitScript(quickPatience);
  server.hold((path) => path === 'icons/icon-512.png');
  await page.goto(server.url);
  await page.getByText(neverComes).first().waitFor();
  await logOne('.4487');
  expect(await page.getByText(ready).count()).toBe(0);
  // It breaks off now, and is tried again without a sign from outside.
  server.hold();
  await page.getByText(ready).first().waitFor();

  const charts = assets.filter((name) => name.startsWith('charts')).map((name) => `assets/${name}`);
  await throwAway(['index.html', ...charts]);
  server.hold((path) => ['', 'index.html', ...charts].includes(path));
  await page.reload();
  await page.getByText('Your records are still here.').waitFor();
  expect(await savedBackup()).toContain('"typed":".4487"');
  server.hold((path) => charts.includes(path));
  await page.getByRole('link', { name: 'Try again' }).click();
  await appIsShown();
  expect(new URL(page.url()).search).toBe('');
  await page.getByText(gone).first().waitFor();
  await goTo(page, '/charts/drills');
  await page.getByText('This screen is still on its way: the signal is weak.').waitFor();
  server.hold();
  await expect.poll(async () => keptRight(['index.html', ...charts])).toBe(true);
});

/** Runs in the page: a wait of ten seconds to a minute passes twenty times as quick. */
function quickPatience(): void {
  const usual = globalThis.setTimeout;
  const quick = (run: TimerHandler, ms = 0, ...more: unknown[]) =>
    usual(run, ms >= 10_000 && ms <= 60_000 ? ms / 20 : ms, ...more);
  Object.defineProperty(globalThis, 'setTimeout', { value: quick });
}

/** One reading, of a job of its own. */
async function logOne(typed: string): Promise<void> {
  await goTo(page, '/new-job');
  await page.getByRole('button', { name: 'none of these' }).click();
  await page.getByRole('button', { name: 'Make the job' }).click();
  await page.getByRole('link', { name: 'New size' }).click();
  await page
    .getByRole('button', { name: /^Length/ })
    .or(page.getByRole('link', { name: /^Length/ }))
    .first()
    .click();
  await typeSize(page, typed);
  await page.getByRole('button', { name: 'Log reading' }).click();
  await page.getByText('logged, reading 1').waitFor();
}

async function savedBackup(): Promise<string> {
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save a backup' }).click();
  const file = readFileSync(await (await saving).path(), 'utf8');
  const lines = file.trimEnd().split('\n');
  expect(JSON.parse(lines.at(-1) ?? '')).toMatchObject({ lines: lines.length - 1 });
  return file;
}

async function appIsShown(): Promise<void> {
  await page.locator('#app h1', { hasText: /\S/ }).first().waitFor();
}

async function hasWorker(): Promise<boolean> {
  return page.evaluate(async () => Boolean((await navigator.serviceWorker.getRegistration())?.active));
}

function assetOf(name: RegExp): string {
  return assets.find((asset) => name.test(asset)) ?? '';
}

/** The cache entries of these files go, as a browser short of room may do with single ones. */
async function throwAway(files: readonly string[]): Promise<void> {
  const count = await page.evaluate(async (names) => {
    let thrown = 0;
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      for (const request of await cache.keys())
        if (names.includes(new URL(request.url).pathname.slice(1)) && (await cache.delete(request)))
          thrown += 1;
    }
    return thrown;
  }, files);
  expect(count).toBe(files.length);
}

/** What an earlier worker may have kept: a network's page under the file's name. */
async function spoil(file: string): Promise<void> {
  await page.evaluate(async (path) => {
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      for (const request of await cache.keys())
        if (new URL(request.url).pathname.slice(1) === path)
          await cache.put(request, new Response('<h1>Pay first</h1>'));
    }
  }, file);
}

/** Whether all of these are kept with the bytes of the build. */
async function keptRight(files: readonly string[]): Promise<boolean> {
  const texts = await page.evaluate(async (names) => {
    const found: Record<string, string> = {};
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      for (const request of await cache.keys()) {
        const path = new URL(request.url).pathname.slice(1);
        if (names.includes(path)) found[path] = (await (await cache.match(request))?.text()) ?? '';
      }
    }
    return found;
  }, files);
  return files.every((file) => texts[file] === readFileSync(`dist/${file}`, 'utf8'));
}
