import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { goTo, typeSize } from './on-a-screen.ts';
import { logFeature, thumbOn } from './thumb.ts';
import { openPhone, removeTemporaryFolders, startServer, type Phone } from './launch.ts';

const quiet = { said: [], refused: [], strayed: [] };
const outfit = '/job/demo-outfit-7';
const bore = `${outfit}/readings/demo-link-bore`;

let server: Awaited<ReturnType<typeof startServer>>;
beforeAll(async () => {
  server = await startServer();
});
afterAll(async () => {
  await server.stop();
  await removeTemporaryFolders();
});

/** Two tabs of one phone with the demo job, neither of them loaded again from here on. */
async function twoTabs(): Promise<{ phone: Phone; first: Page; second: Page }> {
  const phone = await openPhone();
  const first = phone.page;
  await first.goto(`${server.url}#/shop`);
  await first.getByRole('button', { name: 'Show me with the demo job' }).click();
  await first.getByRole('button', { name: 'Remove the demo' }).waitFor();
  const second = await phone.context.newPage();
  await second.goto(`${server.url}#/jobs`);
  await second.getByText('Outfit 7').first().waitFor();
  return { phone, first, second };
}

test('what one tab logs, names, strikes out and takes back stands in the other at once', async () => {
  const { phone, first, second } = await twoTabs();
  await goTo(first, bore);
  await goTo(second, `${bore}/all`);
  await typeSize(first, '.4491');
  await first.getByRole('button', { name: 'Log reading' }).click();
  await second.getByText('.4491').first().waitFor();

  await first.getByRole('button', { name: /^Strike out last/ }).click();
  await second.locator('[data-struck=true]', { hasText: '.4491' }).first().waitFor();
  await first.getByRole('button', { name: 'Undo' }).click();
  await second.locator('[data-struck=true]', { hasText: '.4491' }).first().waitFor({ state: 'detached' });

  await goTo(second, '/jobs');
  await goTo(first, `${outfit}/about`);
  await first.getByLabel('Name', { exact: true }).fill('Outfit 8');
  await second.getByText('Outfit 8').first().waitFor();
  expect(phone.trouble).toEqual(quiet);
  await phone.close();
});

test('two tabs with the same field half typed keep their own, also when one of them logs', async () => {
  const { phone, first, second } = await twoTabs();
  await goTo(first, bore);
  await goTo(second, bore);
  await typeSize(first, '.44');
  await typeSize(second, '.451');
  expect(await first.locator('#size').inputValue()).toBe('.44');
  await second.getByRole('button', { name: 'Log reading' }).click();
  await second.locator('#size').and(second.locator('[value=""], :not([value])')).first().waitFor();
  await first.getByText('.451').first().waitFor();
  expect(await first.locator('#size').inputValue()).toBe('.44');
  await first.locator('#size').pressSequentially('9');
  await first.getByRole('button', { name: 'Log reading' }).click();
  await second.getByText('.449').first().waitFor();
  expect(phone.trouble).toEqual(quiet);
  await phone.close();
});

test('a tab that heard nothing of the other’s reading does not sign its old sheet: it reads again, and then it signs', async () => {
  const phone = await openPhone();
  const first = phone.page;
  await first.goto(`${server.url}#/new-job`);
  await first.getByLabel('Name').fill('Hinge pin');
  await first.getByRole('button', { name: 'none of these' }).click();
  await first.getByRole('button', { name: 'Make the job' }).click();
  await first.getByRole('heading', { name: 'Hinge pin' }).waitFor();
  const job = await first.evaluate(() => /#(\/job\/[^/]+)/.exec(location.hash)?.[1] ?? '');
  const deaf = await phone.context.newPage();
  // As a tab that slept: its channel never speaks to it.
  await deaf.addInitScript(() => Object.defineProperty(globalThis, 'BroadcastChannel', { value: undefined }));
  await deaf.goto(`${server.url}#${job}/sign-off`);
  await deaf.getByText('Nothing stands in the way of signing.').waitFor();
  await deaf.getByLabel('Signed by').fill('Jo B.');

  const thumb = thumbOn(first);
  await first.bringToFront();
  await goTo(first, `${job}/readings`);
  await logFeature(first, thumb, 'Length', ['1.1381']);

  await deaf.bringToFront();
  expect(await deaf.locator('article.sheet').innerText()).not.toContain('1.1381');
  await deaf.getByRole('button', { name: 'Sign off' }).click();
  await deaf
    .getByText('Something was changed in another window meanwhile, so this was not signed.')
    .waitFor();
  await deaf.locator('article.sheet', { hasText: '1.1381' }).waitFor();
  await deaf.getByRole('button', { name: 'Sign off' }).click();
  await deaf.getByRole('heading', { name: 'Hinge pin, signed' }).waitFor();
  expect(await deaf.locator('article.sheet').innerText()).toContain('1.1381');
  expect(phone.trouble).toEqual(quiet);
  await phone.close();
});
