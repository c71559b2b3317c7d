import { readFileSync } from 'node:fs';
import { chromium, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeEach, expect, test } from 'vitest';
import { findBrowser, launchFlags } from './find-browser.mjs';
import {
  openPhone,
  removeTemporaryFolders,
  startServer,
  untilReadyOffline,
  type Phone,
  type PhoneOptions,
} from './launch.ts';
import { goTo, settled, typeSize } from './on-a-screen.ts';
import { thumbOn } from './thumb.ts';

/** Windows that aren't like the others: left and come back to, private, in a night when the clocks are set back. */

const outfit = '/job/demo-outfit-7';
const bore = `${outfit}/readings/demo-link-bore`;
const quiet = { said: [], refused: [], strayed: [] };

let server: Awaited<ReturnType<typeof startServer>>;
const phones: Phone[] = [];

beforeEach(async () => {
  server = await startServer();
});
afterEach(async () => {
  await Promise.all(phones.splice(0).map((phone) => phone.close()));
  await server.stop();
});
afterAll(removeTemporaryFolders);

async function withTheDemo(options: PhoneOptions = {}): Promise<Phone> {
  const phone = await openPhone(options);
  phones.push(phone);
  await demoIn(phone.page);
  return phone;
}

async function demoIn(page: Page): Promise<void> {
  await page.goto(server.url);
  await page.getByRole('button', { name: 'Show me with the demo job' }).click();
  await page.getByText('Outfit 7').first().waitFor();
}

async function log(page: Page, typed: string): Promise<void> {
  await typeSize(page, typed);
  await thumbOn(page).press('Log reading');
  await page.locator(`#size[placeholder="${typed}"]`).waitFor();
}

test('a page that was left and is come back to shows what another window did meanwhile, with what was half typed', async () => {
  const { page, context } = await withTheDemo({ keepsLeftPages: true });
  await untilReadyOffline(page);
  await goTo(page, bore);
  await page.evaluate(() => {
    Reflect.set(globalThis, 'isTheSamePage', true);
    addEventListener('pageshow', ({ persisted }) => sessionStorage.setItem('persisted', String(persisted)));
  });
  await typeSize(page, '.44');
  await page.goto(`${server.url}not/the-app`);
  const other = await context.newPage();
  // Chromium drops the page that was left once another speaks to it; others, and an update, leave it as it stood.
  await other.addInitScript(() =>
    Object.defineProperty(globalThis, 'BroadcastChannel', { value: undefined }),
  );
  await other.goto(`${server.url}#${outfit}/about`);
  await other.getByLabel('Name', { exact: true }).fill('Outfit 8');
  await settled(other);
  await other.close();
  await page.evaluate(() => history.back());
  await page.getByText('Outfit 8').first().waitFor();
  expect(await page.locator('#size').inputValue()).toBe('.44');
  // It was the page as it had been left that came back first: what this test is about.
  expect(await page.evaluate(() => sessionStorage.getItem('persisted'))).toBe('true');
  expect(await page.evaluate(() => Reflect.get(globalThis, 'isTheSamePage'))).toBeUndefined();
});

test('in a private window readings are logged and saved to a file, nothing claims that they stay, and the next one is empty', async () => {
  const browser = await chromium.launch({ executablePath: findBrowser(), args: launchFlags });
  const privately = async () => {
    const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
    await context.addInitScript(() => Reflect.deleteProperty(globalThis, 'showSaveFilePicker'));
    return context.newPage();
  };
  const page = await privately();
  await demoIn(page);
  await goTo(page, bore);
  await log(page, '.4493');
  await goTo(page, '/shop');
  await page.getByText('This browser has not promised to keep them').waitFor();
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save a backup' }).click();
  expect(readFileSync(await (await saving).path(), 'utf8')).toContain('"typed":".4493"');
  await page.context().close();

  const next = await privately();
  await next.goto(server.url);
  await next.getByRole('button', { name: 'Show me with the demo job' }).waitFor();
  expect(await next.getByText('The browser has lost the records').count()).toBe(0);
  await browser.close();
});

test('a private window without workers and stores of files is told so, and works all the same', async () => {
  const phone = await openPhone();
  phones.push(phone);
  await phone.context.addInitScript(() => {
    const denied = async () =>
      Promise.reject(new DOMException('The operation is insecure.', 'SecurityError'));
    ServiceWorkerContainer.prototype.register = denied;
    CacheStorage.prototype.open = denied;
    StorageManager.prototype.persist = denied;
    StorageManager.prototype.persisted = denied;
    StorageManager.prototype.estimate = denied;
  });
  await demoIn(phone.page);
  await phone.page.getByText('This browser can’t keep the app for work without signal.').first().waitFor();
  await goTo(phone.page, bore);
  await log(phone.page, '.4493');
  await goTo(phone.page, '/shop');
  await phone.page.getByRole('button', { name: 'Save a backup' }).waitFor();
  expect(phone.trouble).toEqual(quiet);
});

test('two readings across the hour that comes twice stay in the order they were logged, on the list, the sheet and in the file', async () => {
  // 25 October 2026: at 3:00 the clocks of Berlin go back to 2:00 (1:00 UTC; EU directive 2000/84/EC).
  const phone = await openPhone({ context: { timezoneId: 'Europe/Berlin' } });
  phones.push(phone);
  const { page } = phone;
  await page.clock.setFixedTime(new Date('2026-10-25T00:40:00Z'));
  await demoIn(page);
  await goTo(page, bore);
  await page.clock.setFixedTime(new Date('2026-10-25T00:50:00Z'));
  await log(page, '.4501'); // 2:50 by the wall
  await page.clock.setFixedTime(new Date('2026-10-25T01:10:00Z'));
  await log(page, '.4502'); // 2:10 by the wall
  await goTo(page, `${bore}/all`);
  const listed = await page.locator('main').innerText();
  expect(listed).toContain('2:50');
  expect(listed).toContain('2:10');
  const newestFirst = listed.indexOf('.4502') < listed.indexOf('.4501');
  expect(newestFirst).toBe(listed.indexOf('2:10') < listed.indexOf('2:50'));
  const order = await page.evaluate(
    () =>
      new Promise<string[]>((done) => {
        const opening = indexedDB.open('slipfit');
        opening.addEventListener('success', () => {
          const store = opening.result.transaction('readings').objectStore('readings');
          const all = store
            .index('featureId+at')
            .getAll(IDBKeyRange.bound(['demo-link-bore'], ['demo-link-bore', []]));
          all.addEventListener('success', () => {
            opening.result.close();
            done(all.result.slice(-2).map(({ typed }: { typed: string }) => typed));
          });
        });
      }),
  );
  expect(order).toEqual(['.4501', '.4502']);
  await goTo(page, `${outfit}/sheet`);
  const sheet = await page.locator('article.sheet').innerText();
  expect(sheet.indexOf('.4501')).toBeGreaterThan(-1);
  expect(sheet.indexOf('.4501')).toBeLessThan(sheet.indexOf('.4502'));
  expect(phone.trouble).toEqual(quiet);
});
