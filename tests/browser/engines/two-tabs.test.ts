import { afterAll, afterEach, beforeEach, expect, test } from 'vitest';
import { closeAllPhones, openPhone } from '../hands/open-phone.ts';
import { removeTemporaryFolders, startServer } from '../launch.ts';
import { goTo, typeSize } from '../on-a-screen.ts';

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

test('what one tab logs stands in the other at once, and each keeps its own half-typed size', async () => {
  const { page: first, newTab, said } = await openPhone();
  await first.goto(server.url);
  await first.getByRole('button', { name: 'Show me with the demo job' }).click();
  await first.getByText('Outfit 7').first().waitFor();
  const second = await newTab();
  await second.goto(`${server.url}#${bore}`);
  await second.locator('#size').waitFor();
  await goTo(first, bore);
  await typeSize(first, '.44');
  await typeSize(second, '.4491');
  await second.getByRole('button', { name: 'Log reading' }).click();
  await first.getByText('.4491').first().waitFor();
  expect(await first.locator('#size').inputValue()).toBe('.44');
  expect(await second.locator('#size').inputValue()).toBe('');
  expect(said).toEqual([]);
});
