import { afterAll, beforeAll, expect, test } from 'vitest';
import { goTo, settled, withoutPassingLines } from './on-a-screen.ts';
import { openPhone, removeTemporaryFolders, startServer, type Phone } from './launch.ts';

/** A signed sheet that a file brought, with the app's own names on it. */

let server: Awaited<ReturnType<typeof startServer>>;
let phone: Phone;

beforeAll(async () => {
  server = await startServer();
  phone = await openPhone();
  await phone.page.goto(server.url);
  await withoutPassingLines(phone.page);
});
afterAll(async () => {
  await phone.close();
  await server.stop();
  await removeTemporaryFolders();
});

test('it lies over nothing of the app, and a true one looks as a sheet does', async () => {
  const { page } = phone;
  await page.getByRole('button', { name: 'Show me with the demo job' }).click();
  await page.getByText('Outfit', { exact: false }).first().waitFor();
  await page.evaluate(async () => {
    const db = await new Promise<IDBDatabase>((done, fail) => {
      const request = indexedDB.open('slipfit');
      request.addEventListener('success', () => done(request.result));
      request.addEventListener('error', () => fail(request.error));
    });
    const notice = {
      tag: 'section',
      attributes: { id: 'app', class: 'app-notice', 'data-passing': 'true' },
      children: ['Slipfit must be updated'],
    };
    const sheet = {
      tag: 'article',
      attributes: { class: 'sheet' },
      children: [{ tag: 'h2', attributes: { class: 'sheet-name' }, children: ['As it was signed'] }, notice],
    };
    const record = {
      id: 'false-sheet',
      stamps: { '*': '001700000000000-0000-other' },
      jobId: 'demo-outfit-7',
      signedAt: 1_700_000_000_000,
      signedBy: 'R. Marsh',
      engineVersion: '0.1.0',
      content: [sheet],
      readingsCsv: '',
      cutsCsv: '',
    };
    await new Promise((done) => {
      const tx = db.transaction('sheets', 'readwrite');
      tx.objectStore('sheets').put(record);
      tx.addEventListener('complete', done);
    });
    db.close();
  });
  await goTo(page, '/job/demo-outfit-7/sheet/signed/false-sheet');
  const name = page.getByText('As it was signed');
  await name.waitFor();
  await settled(page);
  const looks = await name.evaluate((one) => getComputedStyle(one).fontWeight);
  expect(looks).toBe('800'); // .sheet-name
  const lies = page.getByText('Slipfit must be updated');
  expect(await lies.evaluate((one) => getComputedStyle(one).position)).toBe('static');
  const edges = (one: Element) => {
    const { top, bottom } = one.getBoundingClientRect();
    return { top, bottom };
  };
  const host = await page.locator('.frozen-sheet').evaluate(edges);
  const box = await lies.evaluate(edges);
  expect(box.top).toBeGreaterThanOrEqual(host.top);
  expect(box.bottom).toBeLessThanOrEqual(host.bottom);
  expect(await page.locator('body > #app').count()).toBe(1);
});
