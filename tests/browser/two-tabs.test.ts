import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { goTo, typeSize } from './on-a-screen.ts';
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
