import { afterAll, beforeAll, expect, test } from 'vitest';
import { goTo, laidOut } from './on-a-screen.ts';
import { openPhone, removeTemporaryFolders, startServer, type Phone } from './launch.ts';

let server: Awaited<ReturnType<typeof startServer>>;
let phone: Phone;

beforeAll(async () => {
  server = await startServer();
  phone = await openPhone();
  await phone.page.goto(server.url);
  await phone.page.getByRole('button', { name: 'Show me with the demo job' }).click();
  await phone.page.getByText('Outfit 7').first().waitFor();
});
afterAll(async () => {
  await phone.close();
  await server.stop();
  await removeTemporaryFolders();
});

const scrolled = async () => phone.page.locator('.app-place').evaluate(({ scrollTop }) => scrollTop);

test('a place opens at its top, and comes back where it was left', async () => {
  const { page } = phone;
  await goTo(page, '/charts/materials');
  await laidOut(page);
  await page.locator('.app-place').evaluate((place) => place.scrollTo(0, 600));
  await expect.poll(scrolled).toBe(600);
  await page.getByRole('link', { name: 'Shop', exact: true }).click();
  await page.getByRole('heading', { name: 'Records' }).waitFor();
  expect(await scrolled()).toBe(0);
  await page.locator('.app-place').evaluate((place) => place.scrollTo(0, 300));
  await expect.poll(scrolled).toBe(300);
  await page.goBack();
  await expect.poll(scrolled).toBe(600);
  await page.goForward();
  await expect.poll(scrolled).toBe(300);
  await page.getByRole('link', { name: 'Jobs', exact: true }).click();
  await page.getByText('Outfit 7').first().waitFor();
  expect(await scrolled()).toBe(0);
});

test('after another tool was chosen for a size, one back leaves its pad', async () => {
  const { page } = phone;
  await goTo(page, '/job/demo-outfit-7/readings');
  await page
    .getByRole('link', { name: /^Shock-link bore/ })
    .first()
    .click();
  const address = page.url();
  await page.getByRole('link', { name: 'Tool', exact: true }).click();
  await page
    .getByRole('button', { name: /caliper/ })
    .first()
    .click();
  await page.locator('#size').waitFor();
  expect(page.url()).toBe(address);
  await page.goBack();
  await page.getByRole('heading', { name: 'Measure' }).waitFor();
  expect(new URL(page.url()).hash).toBe('#/job/demo-outfit-7/readings');
});
