import { readFileSync } from 'node:fs';
import { afterAll, afterEach, beforeEach, expect, test } from 'vitest';
import type { Page, Phone } from '../hands/hands.ts';
import { closeAllPhones, openPhone } from '../hands/open-phone.ts';
import { jpegOfAPhone } from '../jpeg-of-a-phone.ts';
import {
  buildApp,
  removeTemporaryFolders,
  startServer,
  untilNewVersionWaits,
  untilReadyOffline,
} from '../launch.ts';
import { goTo } from '../on-a-screen.ts';
import { thumbOn } from '../thumb.ts';

/** A photo, a backup that carries it to another phone, and a new version under two tabs, in the engine of this project. */

const photos = '/job/demo-outfit-7/photos/jobs/demo-outfit-7';
const bore = '/job/demo-outfit-7/readings/demo-link-bore';

let server: Awaited<ReturnType<typeof startServer>>;
beforeEach(async () => {
  server = await startServer();
});
afterEach(async () => {
  await closeAllPhones();
  await server.stop();
});
afterAll(removeTemporaryFolders);

async function phoneWithTheDemo(): Promise<Phone> {
  const phone = await openPhone();
  await phone.page.goto(server.url);
  await phone.page.getByRole('button', { name: 'Show me with the demo job' }).click();
  await phone.page.getByText('Outfit 7').first().waitFor();
  return phone;
}

test('a photo is turned upright, outlives a dead battery, and goes with a backup into another phone', async () => {
  const first = await phoneWithTheDemo();
  const { file, place } = jpegOfAPhone(await plainJpeg(first.page));
  await goTo(first.page, photos);
  await first.page
    .locator('input[type=file]')
    .setInputFiles({ name: 'wheel.jpg', mimeType: 'image/jpeg', buffer: file });
  await first.page.locator('.photos-picture').waitFor();
  // It lies 2400 wide and 1200 high and is to be turned a quarter: 1200 × 2400, brought within 1600.
  const [kept] = await keptPhotos(first.page);
  expect(kept).toMatchObject({ width: 800, height: 1600 });
  expect(kept?.bytes).toBeGreaterThan(1000);

  await first.kill();
  const again = await openPhone({ userDataDir: first.userDataDir });
  await again.page.goto(`${server.url}#/shop`);
  // "Save as" and the share sheet wait for a person; without them files go to the downloads.
  await again.page.evaluate(() => {
    Reflect.deleteProperty(globalThis, 'showSaveFilePicker');
    Reflect.deleteProperty(Navigator.prototype, 'canShare');
  });
  const backup = await again.savedBy(() => thumbOn(again.page).press('Save a backup'));
  await again.page.getByText('today, nothing changed since').first().waitFor();
  expect(readFileSync(backup, 'latin1')).not.toContain(place);

  const other = await openPhone();
  await other.page.goto(`${server.url}#/shop`);
  await other.page.getByLabel('Backup or job file').setInputFiles(backup);
  await thumbOn(other.page).press('Put it in');
  await other.page.getByText('The file is in:').first().waitFor();
  await goTo(other.page, photos);
  await other.page.locator('.photos-picture').waitFor();
  expect(await keptPhotos(other.page)).toEqual([kept]);
  for (const phone of [first, again, other]) expect(phone.said).toEqual([]);
});

test(
  'a new version waits until it is taken, and both tabs keep what is half typed',
  { timeout: 180_000 },
  async () => {
    const next = await buildApp('the next one');
    const { page: first, newTab, said } = await phoneWithTheDemo();
    await untilReadyOffline(first);
    const second = await newTab();
    await second.goto(`${server.url}#${bore}`);
    await second.locator('#size').waitFor();
    await second.keyboard.type('.44', { delay: 20 });
    await goTo(first, '/charts/drills');
    server.serve(next);
    await untilNewVersionWaits(first);
    expect(await versionOf(second)).not.toBe('the next one');
    await thumbOn(first).press('Take it now');
    await expect.poll(() => versionOf(first).catch(String)).toBe('the next one');
    await expect.poll(() => versionOf(second).catch(String)).toBe('the next one');
    await expect.poll(() => second.locator('#size').inputValue().catch(String)).toBe('.44');
    expect(said).toEqual([]);
  },
);

const versionOf = (page: Page) =>
  page.evaluate(() => document.querySelector('meta[name=version]')?.getAttribute('content') ?? '');

async function plainJpeg(page: Page): Promise<Buffer> {
  const text = await page.evaluate(() => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [2400, 1200];
    const context = canvas.getContext('2d');
    if (context) context.fillStyle = '#27c';
    context?.fillRect(0, 0, 1200, 1200);
    return canvas.toDataURL('image/jpeg').split(',')[1] ?? '';
  });
  return Buffer.from(text, 'base64');
}

type KeptPhoto = { width: number; height: number; bytes: number };

async function keptPhotos(page: Page): Promise<readonly KeptPhoto[]> {
  return page.evaluate(async () => {
    const done = <T>(request: IDBRequest<T>) =>
      new Promise<T>((yes, no) => {
        request.addEventListener('success', () => yes(request.result));
        request.addEventListener('error', () => no(request.error ?? new Error('no answer')));
      });
    const db = await done(indexedDB.open('slipfit'));
    const all = (store: string) => done(db.transaction(store).objectStore(store).getAll());
    const [described, pictures] = [await all('photos'), await all('photoBytes')];
    db.close();
    return described.map(({ id, width, height }) => {
      const { bytes } = pictures.find((one) => one.id === id) ?? { bytes: new ArrayBuffer(0) };
      return { width, height, bytes: bytes.byteLength };
    });
  });
}
