import { afterAll, afterEach, beforeEach, expect, test } from 'vitest';
import { goTo } from './on-a-screen.ts';
import { openPhone, removeTemporaryFolders, startServer, type Phone } from './launch.ts';
import { thumbOn } from './thumb.ts';

let server: Awaited<ReturnType<typeof startServer>>;
let phone: Phone;

beforeEach(async () => {
  server = await startServer();
  phone = await openPhone();
  await phone.page.goto(server.url);
  await phone.page.getByRole('button', { name: 'Show me with the demo job' }).click();
  await phone.page.getByText('Outfit 7').first().waitFor();
});
afterEach(async () => {
  await phone.close();
  await server.stop();
});
afterAll(removeTemporaryFolders);

test('a job that was closed is open again after an undo, also when the page was loaded again', async () => {
  const { page } = phone;
  const thumb = thumbOn(page);
  await goTo(page, '/job/demo-outfit-7/about');
  await thumb.press('Close this job');
  await page.getByRole('button', { name: 'Open this job again' }).waitFor();
  await page.reload();
  await thumb.press(/^Undo: closed/);
  await page.getByRole('button', { name: 'Close this job' }).waitFor();
  expect(await page.getByRole('button', { name: 'Open this job again' }).count()).toBe(0);
});

test('a setting of the shop goes back to what it was, after the page was loaded again', async () => {
  const { page } = phone;
  const thumb = thumbOn(page);
  await goTo(page, '/shop');
  await thumb.press('millimetres');
  await page.getByRole('button', { name: 'millimetres', pressed: true }).waitFor();
  await page.reload();
  await thumb.press('Undo: changed the unit of the figures');
  await page.getByRole('button', { name: 'inches', pressed: true }).waitFor();
  expect(await page.getByRole('button', { name: 'millimetres', pressed: true }).count()).toBe(0);
});
