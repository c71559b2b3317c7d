import { cpSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { someOf } from '../trials/seeded.ts';
import {
  buildApp,
  openPhone,
  removeTemporaryFolders,
  runningVersion,
  startServer,
  onAFreshPhone,
  temporaryFolder,
  untilNewVersionWaits,
  untilReadyOffline,
  type Phone,
  type PhoneOptions,
} from './launch.ts';

type ServerOptions = Parameters<typeof startServer>[0];
type Server = Awaited<ReturnType<typeof startServer>>;

const offer = /new version is ready/i;
const taking = /take it now/i;

let first = '';
let second = '';
let server: Server | undefined;
const phones: Phone[] = [];

beforeAll(async () => {
  first = await buildApp('first');
  second = await buildApp('second');
});
afterEach(async () => {
  await Promise.all(phones.splice(0).map((phone) => phone.close()));
  await server?.stop();
  server = undefined;
});
afterAll(removeTemporaryFolders);

test('after one visit a phone switched off and on again opens the app with nothing to answer it', async () => {
  const { url } = await serve({ folder: first });
  const before = await phone();
  await before.page.goto(url);
  await untilReadyOffline(before.page);
  await before.close();
  await server?.stop();

  const after = await phone({ userDataDir: before.userDataDir });
  await after.page.goto(url);
  await appIsShown(after.page);
  await after.page.goto(`${url}?from=home#/somewhere`);
  await appIsShown(after.page);
  expect(await runningVersion(after.page)).toBe('first');
  expectNoTrouble(before);
  expectNoTrouble(after);
});

test('the app runs from a folder deep in a host that holds other things too', async () => {
  const { url, asked } = await serve({ folder: first, under: '/tools/shop/slipfit/' });
  const { page, trouble } = await phone();
  await page.goto(url);
  await untilReadyOffline(page);
  const scope = await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.scope);
  expect(scope).toBe(url);
  expect(asked.filter((path) => !path.startsWith('/tools/shop/slipfit/'))).toEqual([]);
  expect(trouble.strayed).toEqual([]);
});

test('every file of the build is kept on the phone, and nothing was asked of another host', async () => {
  const { url, asked } = await serve({ folder: first });
  const visitor = await phone();
  await visitor.page.goto(url);
  await untilReadyOffline(visitor.page);
  // The browser itself keeps the worker; the pictures are for its own dialog that offers to install the app.
  const left = ['sw.js', 'licences.md'];
  const files = filesIn(first).filter((file) => !left.includes(file) && !file.startsWith('screenshots/'));
  expect(await keptFiles(visitor.page, url)).toEqual(files);
  expect(asked).toEqual(expect.arrayContaining(files.map((file) => `/${file}`)));
  expectNoTrouble(visitor);
});

test(
  'a new version waits while the old one runs on, also over a reload, until its taking is pressed',
  onAFreshPhone,
  async () => {
    const { url } = await serve({ folder: first });
    const visitor = await phone();
    const { page } = visitor;
    await page.goto(url);
    await untilReadyOffline(page);
    expect(await page.getByText(offer).count()).toBe(0);
    server?.serve(second);
    await untilNewVersionWaits(page);
    await page.getByText(offer).first().waitFor();
    expect(await runningVersion(page)).toBe('first');
    await page.reload();
    await page.getByText(offer).first().waitFor();
    expect(await runningVersion(page)).toBe('first');

    await page.getByRole('button', { name: taking }).tap();
    await untilVersion(page, 'second');
    await appIsShown(page);
    expectNoTrouble(visitor);
  },
);

test(
  'a version taken in one tab reaches the other tab too, whose old parts are gone',
  onAFreshPhone,
  async () => {
    const { url } = await serve({ folder: first });
    const { page, context } = await phone();
    await page.goto(url);
    await untilReadyOffline(page);
    const other = await context.newPage();
    await other.goto(url);
    server?.serve(second);
    await untilNewVersionWaits(other);
    await other.getByRole('button', { name: taking }).tap();
    await untilVersion(other, 'second');
    await untilVersion(page, 'second');
    expect(await runningVersion(page)).toBe('second');
  },
);

test('a first visit cut off half-way is made good when signal comes back, without opening the page again', async () => {
  const { url } = await serve({ folder: first });
  const { page, context } = await phone();
  await context.route('**/icons/icon-512.png', (route) => route.abort());
  await page.goto(url);
  await appIsShown(page);
  await page.waitForTimeout(2000);
  const kept = await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    return Boolean(registration?.active);
  });
  expect(kept).toBe(false);
  await context.unroute('**/icons/icon-512.png');
  await page.evaluate(() => dispatchEvent(new Event('online')));
  await untilReadyOffline(page);
  expect(await keptFiles(page, url)).toContain('icons/icon-512.png');
});

const readyWords = 'Ready to work without signal.';

const waysBack = [
  { what: 'reloaded', again: async (page: Page) => void (await page.reload()) },
  {
    what: 'left for another page and come back to',
    again: async (page: Page, url: string) => {
      await page.goto('about:blank');
      await page.goto(url);
    },
  },
  {
    what: 'closed and opened anew',
    again: async (page: Page, url: string) => {
      const next = await page.context().newPage();
      await page.close();
      await next.goto(url);
    },
  },
] as const;

test.each(someOf(waysBack, 3))(
  'a first visit that is $what while the files are being kept is told when all are there, not before, and once',
  async ({ again }) => {
    const { url } = await serve({ folder: first });
    const { page, context } = await phone();
    // The last file but one is on its way until it is let through.
    let letThrough = () => undefined as void;
    const held = new Promise<void>((done) => (letThrough = done));
    let isAsked = false;
    await context.route('**/icons/icon-512.png', async (route) => {
      isAsked = true;
      await held;
      await route.continue();
    });
    await page.goto(url);
    await expect.poll(() => isAsked).toBe(true);
    await again(page, url);
    const now = context.pages().at(-1) ?? page;
    await appIsShown(now);
    await now.waitForTimeout(500);
    expect(await now.getByText(readyWords).count()).toBe(0);
    letThrough();
    await now.getByText(readyWords).first().waitFor();
    expect(await keptFiles(now, url)).toContain('icons/icon-512.png');
    await now.locator('.app-notice').waitFor({ state: 'detached' });
    await now.reload();
    await appIsShown(now);
    // Longer than the look of a later start is put off.
    await now.waitForTimeout(5000);
    expect(await now.getByText(readyWords).count()).toBe(0);
  },
);

test('what was found out behind another page is told when the app is brought up', async () => {
  const { url } = await serve({ folder: first });
  const { page } = await phone();
  await page.addInitScript(() => {
    Object.defineProperty(document, 'visibilityState', {
      get: () => (sessionStorage.getItem('seen') ? 'visible' : 'hidden'),
    });
  });
  await page.goto(url);
  await untilReadyOffline(page);
  await page.waitForTimeout(3000);
  expect(await page.getByText(readyWords).count()).toBe(0);
  await page.evaluate(() => {
    sessionStorage.setItem('seen', 'yes');
    document.dispatchEvent(new Event('visibilitychange'));
  });
  await page.getByText(readyWords).first().waitFor();
});

test('a release that is put up while the first visit is kept mixes no two versions: neither is kept, then the new one whole', async () => {
  const { url } = await serve({ folder: first });
  // As a host does that keeps the old files for a while: the worker and the parts are the old ones, the frame is new.
  server?.lie((path) => (path === 'index.html' ? readFileSync(join(second, path), 'utf8') : undefined));
  const { page } = await phone();
  await page.goto(url);
  await page.getByText('The app is not kept for work without signal yet.').first().waitFor();
  server?.lie();
  server?.serve(second);
  await page.reload();
  await page.getByText('Ready to work without signal.').first().waitFor();
  await server?.stop();
  await page.reload();
  await appIsShown(page);
  await page.getByRole('link', { name: 'Charts' }).tap();
  await page.locator('#size').waitFor();
  expect(await runningVersion(page)).toBe('second');
});

test('a first visit in the middle of a release comes up or says that it did not, and is whole once the release is', async () => {
  // The page of the new one, and none of its parts yet.
  const early = copyOf(first);
  cpSync(join(second, 'index.html'), join(early, 'index.html'));
  const { url } = await serve({ folder: early });
  const one = await phone();
  await one.page.goto(url);
  await one.page.getByText('Slipfit has not started: a part of it is missing').waitFor();
  server?.serve(second);
  await one.page.getByRole('link', { name: 'Try again' }).tap();
  await appIsShown(one.page);
  expect(await runningVersion(one.page)).toBe('second');

  // The worker of the new one, the page of the old one, and a part of the old one gone already.
  const late = copyOf(second);
  cpSync(first, late, { recursive: true });
  cpSync(join(second, 'sw.js'), join(late, 'sw.js'));
  for (const name of partsOf(first, 'charts')) rmSync(join(late, name));
  server?.serve(late);
  const other = await phone();
  await other.page.goto(url);
  await other.page.getByText('The app is not kept for work without signal yet.').first().waitFor();
  server?.serve(second);
  await other.page.evaluate(() => dispatchEvent(new Event('online')));
  await other.page.getByText(readyWords).first().waitFor();
  await other.page.getByRole('link', { name: 'Charts' }).tap();
  await other.page.getByText('This screen could not be opened. What you logged is safe.').waitFor();
  await other.page.getByRole('button', { name: 'Reload' }).tap();
  await untilVersion(other.page, 'second');
  await other.page.locator('#size').waitFor();
});

test(
  'a version that lost a part which only the next one’s host has says so, and the next one takes its place',
  onAFreshPhone,
  async () => {
    const { url } = await serve({ folder: first });
    const { page } = await phone();
    await page.goto(url);
    await untilReadyOffline(page);
    server?.serve(second);
    await throwAway(page, partsOf(first, 'charts'));
    await page.reload();
    await page.getByRole('link', { name: 'Charts' }).tap();
    await page.getByText('This screen could not be opened. What you logged is safe.').waitFor();
    await page.getByRole('button', { name: taking }).tap();
    await untilVersion(page, 'second');
    await page.locator('#size').waitFor();

    // Its very first part: not a line of the app runs, and the next one has to be let in all the same.
    await throwAway(page, partsOf(second, 'index'));
    server?.serve(first);
    await page.reload();
    await page.getByText('Slipfit has not started: a part of it is missing').waitFor();
    await page.getByRole('link', { name: 'Try again' }).tap();
    await untilVersion(page, 'first');
    await page.locator('#size').waitFor();
    await throwAway(page, ['index.html']);
    server?.serve(second);
    await page.goto(url);
    await page.getByText('Your records are still here.').waitFor();
    await page.getByRole('link', { name: 'Try again' }).tap();
    await untilVersion(page, 'second');
    await page.locator('#size').waitFor();
    expect(new URL(page.url()).search).toBe('');
  },
);

test('the first worker takes over the page of the first visit without reloading it', async () => {
  const { url } = await serve({ folder: first });
  const { page } = await phone();
  let loads = 0;
  page.on('load', () => (loads += 1));
  await page.goto(url);
  await untilReadyOffline(page);
  await page.waitForTimeout(1000);
  expect(loads).toBe(1);
});

test('on a host that sends no headers the page itself refuses eval, text as markup or script, and a strange worker', async () => {
  const { url } = await serve({ folder: first, plain: true });
  const { page, trouble } = await phone();
  await page.goto(url);
  await appIsShown(page);
  await page.evaluate(() => {
    const attempts = [
      // oxlint-disable-next-line eslint/no-eval -- the very thing that must be refused
      () => Reflect.apply(globalThis.eval, undefined, ['document.title = "eval"']),
      () => document.body.insertAdjacentHTML('beforeend', '<b>markup</b>'),
      () => (document.head.appendChild(document.createElement('script')).text = 'document.title = "script"'),
      () => void navigator.serviceWorker.register('./other.js').catch(() => undefined),
    ];
    // From a timer, as code of the page itself: what a test evaluates directly is let through by the browser.
    for (const attempt of attempts) setTimeout(attempt);
  });
  await expect.poll(() => trouble.refused.length).toBe(4);
  expect(new Set(trouble.refused)).toEqual(new Set(['require-trusted-types-for trusted-types-sink']));
  expect(await page.title()).not.toMatch(/eval|script/);
  expect(await page.getByText('markup').count()).toBe(0);
});

test('the worker answers for nothing but the files of its own folder, and only when they are asked for', async () => {
  const under = '/tools/shop/slipfit/';
  const { url, asked } = await serve({ folder: first, under });
  const neighbour = await startServer({ folder: first, under });
  // The policy would refuse some of these before the worker hears of them: here it is the worker that is tried.
  const { page } = await phone({ context: { bypassCSP: true } });
  await page.goto(url);
  await untilReadyOffline(page);
  const origin = new URL(url).origin;
  // Written to, removed, none of its files, beside its folder, the host itself, a name that begins like its own.
  const others = [
    [`${url}index.html`, 'POST'],
    [`${url}icons/icon.svg`, 'DELETE'],
    [`${url}prices.json`, 'GET'],
    [`${origin}/tools/shop/index.html`, 'GET'],
    [`${origin}/`, 'GET'],
    [`${origin}/tools/shop/slipfit-2/index.html`, 'GET'],
  ] as const;
  const asks = (address: string, method: string) =>
    page.evaluate(
      async ([to, how, mode]) =>
        fetch(to, { method: how, mode }).then(
          () => 'answered',
          () => 'nobody',
        ),
      [address, method, address.startsWith(origin) ? 'same-origin' : 'no-cors'] as const,
    );
  const before = asked.length;
  for (const [address, method] of others) await asks(address, method);
  expect(asked.slice(before)).toEqual(others.map(([address]) => new URL(address).pathname));
  await asks(`${neighbour.url}index.html`, 'GET');
  expect(neighbour.asked).toEqual([`${under}index.html`]);
  expect(await asks(`${url}index.html`, 'GET')).toBe('answered');
  expect(asked.length).toBe(before + others.length);

  await server?.stop();
  await neighbour.stop();
  const answers: string[] = [];
  for (const [address, method] of others) answers.push(await asks(address, method));
  expect(answers).toEqual(others.map(() => 'nobody'));
  expect(await asks(`${neighbour.url}index.html`, 'GET')).toBe('nobody');
  expect(await asks(`${url}index.html`, 'GET')).toBe('answered');
});

/** A host whose files are being changed. */
function copyOf(build: string): string {
  const folder = temporaryFolder('host');
  cpSync(build, folder, { recursive: true });
  return folder;
}

/** Scripts and styles of one part of a build. */
function partsOf(build: string, part: string): string[] {
  const names = readdirSync(join(build, 'assets')).filter((name) => name.startsWith(`${part}-`));
  return names.map((name) => `assets/${name}`);
}

/** The cache entries of these files go, as a browser short of room may do with single ones. */
async function throwAway(page: Page, files: readonly string[]): Promise<void> {
  await page.evaluate(async (names) => {
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      for (const request of await cache.keys())
        if (names.includes(new URL(request.url).pathname.slice(1))) await cache.delete(request);
    }
  }, files);
}

async function serve(options: ServerOptions): Promise<Server> {
  server = await startServer(options);
  return server;
}

async function phone(options: PhoneOptions = {}): Promise<Phone> {
  const opened = await openPhone(options);
  phones.push(opened);
  return opened;
}

async function appIsShown(page: Page): Promise<void> {
  await page.locator('#app > *').first().waitFor();
}

async function untilVersion(page: Page, version: string): Promise<void> {
  await page
    .locator(`meta[name=version][content="${version}"]`)
    .waitFor({ state: 'attached', timeout: 30_000 });
}

async function keptFiles(page: Page, url: string): Promise<string[]> {
  const kept = await page.evaluate(async () => {
    const names = await caches.keys();
    const requests = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
    return requests.flat().map((request) => request.url);
  });
  return kept.map((address) => address.slice(url.length).replace(/\?.*$/, '')).toSorted();
}

function filesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)))
    .toSorted();
}

function expectNoTrouble({ trouble }: Phone): void {
  expect(trouble).toEqual({ said: [], refused: [], strayed: [] });
}
