import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { keptIn } from '../trials/kept-in.ts';
import { trialSize } from '../trials/seeded.ts';
import { killWhileMoving } from '../trials/update-kill.ts';
import { release, updateInARow } from '../trials/update.ts';
import {
  buildApp,
  onAFreshPhone,
  openPhone,
  removeTemporaryFolders,
  startServer,
  untilNewVersionWaits,
  untilReadyOffline,
  type Phone,
} from './launch.ts';
import { thumbOn } from './thumb.ts';

type Server = Awaited<ReturnType<typeof startServer>>;

let next = '';
let failing: readonly string[] = [];
let server: Server | undefined;
const phones: Phone[] = [];

beforeAll(async () => {
  [next, ...failing] = await Promise.all([
    release(1),
    buildApp('fails at once', ['fails-at-once']),
    buildApp('fails half-way', ['moves', 'fails-half-way']),
  ]);
});
afterEach(async () => {
  await Promise.all(phones.splice(0).map((phone) => phone.close()));
  await server?.stop();
  server = undefined;
});
afterAll(removeTemporaryFolders);

const { count: updates, seed } = trialSize({ short: 2, long: 30 });
const kills = updates + 1;

test(
  `${updates} updates in a row, every second one after three versions missed: no half-typed size and no record is lost`,
  { timeout: 60_000 + updates * 30_000, ...onAFreshPhone },
  async () => {
    const counts = await updateInARow({ updates, seed, say: (line) => console.info(line) });
    expect(counts).toMatchObject({ updates, draftsLost: 0, recordsLost: 0 });
    expect(counts.skipped).toBeGreaterThanOrEqual(3);
  },
);

test(
  `a phone that dies while a new version moves its data, ${kills} times: all of it is there, in the old form or in the new`,
  { timeout: 60_000 + kills * 20_000 },
  async () => {
    const counts = await killWhileMoving({ kills, seed, say: (line) => console.info(line) });
    expect(counts).toMatchObject({ kills, recordsLost: 0, mixed: 0 });
    expect(counts.insideMove).toBeGreaterThanOrEqual(kills / 2);
  },
);

test(
  'a tab that a newer version has passed by stops writing, says so, keeps what is typed, and takes the new one up',
  onAFreshPhone,
  async () => {
    const { page, context } = await aPadWith('.44');
    server?.serve(next);
    const other = await context.newPage();
    await pastTheWorker(other);
    await other.goto(page.url());
    await fieldIs(other, '.44');
    await page.getByText('A newer Slipfit took over in another window').first().waitFor();
    await page.bringToFront();
    await page.keyboard.type('8', { delay: 20 });
    await page.getByText('What is typed now stands on this screen only.').first().waitFor();
    await page.getByRole('button', { name: 'Log reading' }).click();
    await page.getByText('.448 in was not logged.').waitFor();
    expect(await page.locator('#size').inputValue()).toBe('.448');
    await other.bringToFront();
    await other.keyboard.type('5', { delay: 20 });
    await other.getByRole('button', { name: 'Log reading' }).click();
    await other.getByText(/^logged, reading 2/).waitFor();
    // The other tab's reading is told to this one, which can't read it any more, and stays as it was.
    expect(await page.locator('#size').inputValue()).toBe('.448');

    await page.reload();
    await page.getByText('Your data was last opened with a newer Slipfit').waitFor();
    await page.bringToFront();
    await untilNewVersionWaits(page);
    await page.getByRole('button', { name: 'Take it now' }).click();
    await page.getByLabel('Length 1, reading 3').waitFor();
  },
);

test(
  'a window that won’t let go of the old data is named, and once it is closed the new version opens by itself',
  onAFreshPhone,
  async () => {
    const { page, context, url } = await aPadWith('.44');
    const stubborn = await context.newPage();
    await stubborn.goto(`${url}not/the-app`);
    await stubborn.evaluate(
      () =>
        new Promise<void>((done) => {
          const opening = indexedDB.open('slipfit');
          opening.addEventListener('success', () => {
            Reflect.set(globalThis, 'held', opening.result);
            done();
          });
        }),
    );
    await page.bringToFront();
    await offered(page, next);
    await page.getByRole('button', { name: 'Take it now' }).click();
    await page.getByText('Another window holds Slipfit’s data in an older form. Nothing was lost.').waitFor();
    await stubborn.close();
    await page.locator('#size').waitFor();
    await expect.poll(async () => page.locator('#size').inputValue()).toBe('.44');
  },
);

test(
  'a new version that can’t move the data leaves it as it was and says so, and the next version opens it',
  onAFreshPhone,
  async () => {
    const { page } = await aPadWith('.44');
    for (const [index, folder] of failing.entries()) {
      await offered(page, folder);
      const before = await keptIn(page);
      await page.getByRole('button', { name: 'Take it now' }).click();
      await page
        .getByText(
          `could not be moved to the form this Slipfit needs (step ${before.version + 1 + index}). Nothing was lost`,
        )
        .waitFor();
      expect(await keptIn(page)).toEqual(before);
      // The browser's own dialog can't be answered here: without it the file is a download.
      await page.evaluate(() => Reflect.deleteProperty(globalThis, 'showSaveFilePicker'));
      const saving = page.waitForEvent('download');
      await page.getByRole('button', { name: 'Save a backup' }).click();
      const file = readFileSync(await (await saving).path(), 'utf8');
      expect(file).toContain('"typed":".4487"');
      expect(file.trimEnd().split('\n').at(-1)).toMatch(/^\{"lines":\d+,"checksum"/);
      await page
        .getByText(/in the downloads/)
        .first()
        .waitFor();
      expect(await keptIn(page)).toEqual(before);
    }
    await offered(page, next);
    await page.getByRole('button', { name: 'Take it now' }).click();
    await fieldIs(page, '.44');
    await page.getByLabel('Length 1, reading 2').waitFor();
  },
);

test('data of a newer version is left alone by an older one, which says so', onAFreshPhone, async () => {
  const { page } = await aPadWith('.44');
  await page.goto(`${server?.url}not/the-app`);
  await page.evaluate(
    () =>
      new Promise<void>((done) => {
        const opening = indexedDB.open('slipfit', 99);
        opening.addEventListener('success', () => {
          opening.result.close();
          done();
        });
      }),
  );
  const before = await keptIn(page);
  await page.goto(`${server?.url}`);
  await page.getByText('Your data was last opened with a newer Slipfit. Nothing was touched.').waitFor();
  await page.getByRole('button', { name: 'Try again' }).click();
  await page.getByText('Your data was last opened with a newer Slipfit. Nothing was touched.').waitFor();
  expect(await keptIn(page)).toEqual(before);
});

/** A phone with one reading logged and another one half typed. */
async function aPadWith(half: string): Promise<Phone & { url: string }> {
  server = await startServer();
  const phone = await openPhone();
  phones.push(phone);
  const { page } = phone;
  await page.goto(`${server.url}#/new-job`);
  await untilReadyOffline(page);
  const thumb = thumbOn(page);
  await thumb.press('none of these');
  await thumb.press('Make the job');
  await thumb.press('New size');
  await thumb.press(/^Length/);
  await page.getByLabel('Length 1, reading 1').waitFor();
  await page.keyboard.type('.4487', { delay: 20 });
  await page.getByRole('button', { name: 'Log reading' }).click();
  await page.getByLabel('Length 1, reading 2').waitFor();
  await page.keyboard.type(half, { delay: 20 });
  await draftIs(page, half);
  return { ...phone, url: server.url };
}

async function draftIs(page: Page, typed: string): Promise<void> {
  await expect
    .poll(async () => (await keptIn(page)).stores['drafts']?.some((draft) => draft['typed'] === typed))
    .toBe(true);
}

async function fieldIs(page: Page, typed: string): Promise<void> {
  await page.locator('#size').waitFor();
  await expect.poll(() => page.locator('#size').inputValue()).toBe(typed);
}

/** A release is put where the old one was, and the page finds it. */
async function offered(page: Page, folder: string): Promise<void> {
  server?.serve(folder);
  await untilNewVersionWaits(page);
  await page.getByRole('button', { name: 'Take it now' }).waitFor();
}

/** As a forced reload does: the page comes from the server, whatever the phone has kept. */
async function pastTheWorker(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Network.enable');
  await session.send('Network.setBypassServiceWorker', { bypass: true });
}
