import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { goTo, withoutPassingLines } from './on-a-screen.ts';
import { openPhone, removeTemporaryFolders, startServer, temporaryFolder, type Phone } from './launch.ts';
import { measureScreen } from './measure-screen.ts';
import { thumbOn } from './thumb.ts';

/** A backup and a job file from one phone to another, through the real screens and without signal. */

let server: Awaited<ReturnType<typeof startServer>>;
let giver: Phone;
let taker: Phone;
let backup = '';
let jobFile = '';

beforeAll(async () => {
  server = await startServer();
  giver = await phoneOn(server.url);
  taker = await phoneOn(server.url);
  await goTo(giver.page, '/shop');
  await thumbOn(giver.page).press('Show me with the demo job');
  await giver.page.getByRole('button', { name: 'Remove the demo' }).waitFor();
  backup = await downloadBy(giver.page, 'Save a backup');
  await goTo(giver.page, '/job/demo-outfit-7/about');
  jobFile = await downloadBy(giver.page, 'Hand this job over as a file');
});
afterAll(async () => {
  await Promise.all([giver.close(), taker.close()]);
  await server.stop();
  await removeTemporaryFolders();
});

async function phoneOn(url: string): Promise<Phone> {
  const phone = await openPhone();
  // "Save as" and the share sheet wait for a person; without them files go to the downloads.
  await phone.context.addInitScript(() => {
    Reflect.deleteProperty(globalThis, 'showSaveFilePicker');
    Reflect.deleteProperty(Navigator.prototype, 'canShare');
  });
  await phone.page.goto(url);
  await withoutPassingLines(phone.page);
  return phone;
}

async function downloadBy(page: Page, key: string): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent('download'), thumbOn(page).press(key)]);
  const path = join(temporaryFolder('file'), download.suggestedFilename());
  await download.saveAs(path);
  return path;
}

async function choose(page: Page, path: string): Promise<void> {
  await goTo(page, '/shop');
  await page.getByLabel('Backup or job file').setInputFiles(path);
  await page.getByRole('heading', { name: 'Add a file' }).waitFor();
}

const jobNames = async (page: Page) => {
  await goTo(page, '/jobs');
  await page.getByRole('link', { name: 'New job' }).waitFor();
  await page.waitForTimeout(200);
  return page.locator('main li .row-title').allTextContents();
};

test('after a backup the shop says how much has been changed since', async () => {
  const { page } = giver;
  await goTo(page, '/shop');
  await page.getByText('today, nothing changed since').waitFor();
  expect(readFileSync(backup, 'utf8').split('\n', 1)[0]).toContain('"format":"slipfit backup"');
});

test('a job file shows its one job, is put in by a press, and goes out again as one', async () => {
  const { page } = taker;
  const thumb = thumbOn(page);
  await choose(page, jobFile);
  await page.getByText('It is one job, handed over.').waitFor();
  expect(await page.locator('.restore-jobs .row-title').allTextContents()).toEqual(['Outfit 7']);
  await page.getByText(/^new here · \d+ readings/).waitFor();
  expect(await measureScreen(page)).toEqual([]);
  await page.setViewportSize({ width: 320, height: 640 });
  expect(await measureScreen(page)).toEqual([]);
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await jobNames(page)).toEqual([]);
  await goTo(page, '/shop/restore');
  await thumb.press('Put it in');
  await page.getByText('The file is in:').waitFor();
  expect(await jobNames(page)).toEqual(['Outfit 7']);
  await goTo(page, '/shop');
  await thumb.press('Undo: what the file brought');
  await page.locator('main').getByText('Undone: What the file brought.').waitFor();
  expect(await jobNames(page)).toEqual([]);
});

test('a file left half-way waits, also after the app was closed, and is put in later', async () => {
  await choose(taker.page, backup);
  await taker.page.getByRole('button', { name: 'Put it in' }).waitFor();
  await taker.page.reload();
  const { page } = taker;
  await goTo(page, '/shop');
  await page.getByRole('link', { name: /^A file waits to be put in/ }).click();
  await page.getByRole('button', { name: 'Put it in' }).waitFor();
  expect(await page.locator('.restore-jobs .row-title').allTextContents()).toHaveLength(2);
  await thumbOn(page).press('Leave it out');
  await page.getByRole('heading', { name: 'Records' }).waitFor();
  expect(await page.getByText('A file waits').count()).toBe(0);
  await choose(page, backup);
  await thumbOn(page).press('Put it in');
  await page.getByText('The file is in:').waitFor();
  expect(await jobNames(page)).toHaveLength(2);
  await choose(page, backup);
  await page.getByText('Nothing would change here').waitFor();
});

test('a file that is none of Slipfit’s is refused with a sentence, and nothing is changed', async () => {
  const { page } = taker;
  const before = await jobNames(page);
  await choose(page, 'package.json');
  await page.getByRole('alert').getByText('This file is not a Slipfit backup.').waitFor();
  expect(await jobNames(page)).toEqual(before);
  expect(taker.trouble.said).toEqual([]);
  expect([...taker.trouble.refused, ...giver.trouble.refused]).toEqual([]);
});
