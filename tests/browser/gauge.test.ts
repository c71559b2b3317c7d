import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { goTo, settled, spoken } from './on-a-screen.ts';
import { openPhone, removeTemporaryFolders, startServer, type Phone } from './launch.ts';
import { atAnEmptyPad, loggedSizes } from './reading-pad-page.ts';

/**
 * Gauges act as keyboards: they type the figure within some milliseconds a key and end with Enter, some with CR LF, of
 * which iOS makes an ArrowDown after the Enter. Source: threads of makers of scanner and caliper apps.
 */
const KEY_MS = 10;

let server: Awaited<ReturnType<typeof startServer>>;
let phone: Phone;

beforeAll(async () => {
  server = await startServer();
  phone = await openPhone();
  await atAnEmptyPad(phone, server.url);
});
afterAll(async () => {
  await phone.close();
  await server.stop();
  await removeTemporaryFolders();
});
beforeEach(async () => {
  await goTo(phone.page, '/job/demo-outfit-7/readings/new');
  await phone.page.getByRole('button', { name: /^Bore/ }).click();
  await phone.page.locator('#size').waitFor();
  await settled(phone.page);
});

async function gauge(page: Page, text: string): Promise<void> {
  await page.keyboard.type(text, { delay: KEY_MS });
  await page.keyboard.press('Enter');
}

/**
 * The same keys with times that hang on the page alone: on a busy machine the way from here to it takes longer than a
 * gauge would.
 */
async function sentIn(
  page: Page,
  text: string,
  end: 'Enter' | 'Tab',
  pace: number | 'at once' = KEY_MS,
): Promise<void> {
  await page.evaluate(
    async ({ keys, last, wait }) => {
      const field = document.querySelector<HTMLInputElement>('#size');
      const down = (key: string) =>
        field?.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
      for (const key of keys) {
        down(key);
        if (field) field.value += key;
        field?.dispatchEvent(new InputEvent('input', { bubbles: true }));
        if (wait !== 'at once') await new Promise((done) => setTimeout(done, wait));
      }
      down(last);
    },
    { keys: text.split(''), last: end, wait: pace },
  );
}

async function untilLogged(page: Page, count: number): Promise<void> {
  await page.getByText(`reading ${count}`, { exact: false }).and(page.locator('.size-pad-echo')).waitFor();
}

test('a gauge logs one size after another without a finger on the screen', async () => {
  const { page } = phone;
  for (const [index, size] of ['.4487', '.4489', '.4485'].entries()) {
    await gauge(page, size);
    await untilLogged(page, index + 1);
  }
  expect(await loggedSizes(page)).toEqual(['.4485 in', '.4489 in', '.4487 in']);
});

test('a gauge logs in one burst, with no pause between two sizes', async () => {
  const { page } = phone;
  await gauge(page, '.4487');
  await gauge(page, '.4489');
  await untilLogged(page, 2);
  expect(await loggedSizes(page)).toEqual(['.4489 in', '.4487 in']);
});

test('a gauge logs while the focus is on another button, and does not press it', async () => {
  const { page } = phone;
  await page.getByRole('button', { name: 'a/b: fraction bar' }).focus();
  await gauge(page, '.4487');
  await untilLogged(page, 1);
  expect(await loggedSizes(page)).toEqual(['.4487 in']);
  expect(await page.locator('#size').inputValue()).toBe('');
});

test('a gauge set to a decimal comma logs the same size', async () => {
  const { page } = phone;
  await gauge(page, '0,4487');
  await untilLogged(page, 1);
  await expect.poll(spoken(page)).toMatch(/^Logged .4487 in, reading 1 of/);
});

test('the line feed of a gauge that ends with CR LF does nothing more', async () => {
  const { page } = phone;
  await gauge(page, '.4487');
  await page.keyboard.press('ArrowDown');
  await untilLogged(page, 1);
  await gauge(page, '.4489');
  await page.keyboard.press('ArrowDown');
  await untilLogged(page, 2);
  expect(await loggedSizes(page)).toEqual(['.4489 in', '.4487 in']);
});

test('Enter on an empty field logs nothing and refuses nothing', async () => {
  const { page } = phone;
  await gauge(page, '.4487');
  await untilLogged(page, 1);
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await settled(page);
  expect(await page.getByRole('alert').count()).toBe(0);
  expect(phone.trouble).toEqual({ said: [], refused: [], strayed: [] });
  expect(await loggedSizes(page)).toEqual(['.4487 in']);
});

test('what a gauge sent is marked as its own, what a person typed is not', async () => {
  const { page } = phone;
  await sentIn(page, '.4487', 'Enter');
  await page.getByText('logged, reading 1 · gauge').waitFor();
  await page.keyboard.type('.4489', { delay: 160 });
  await page.keyboard.press('Enter');
  await page.getByText('logged, reading 2', { exact: true }).waitFor();
  await expect.poll(spoken(page)).toMatch(/^Logged \.4489 in, reading 2 of [^,]*\.$/);
});

test('a gauge that ends with Tab logs too, and a person’s Tab goes on to the next key', async () => {
  const { page } = phone;
  await sentIn(page, '.4487', 'Tab');
  await untilLogged(page, 1);
  await page.keyboard.type('.44', { delay: 160 });
  await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.activeElement?.id)).not.toBe('size');
  expect(await page.locator('#size').inputValue()).toBe('.44');
  expect(await loggedSizes(page)).toEqual(['.4487 in']);
});

test('a gauge that falters between two digits still logs all of them', async () => {
  const { page } = phone;
  await page.keyboard.type('0.', { delay: KEY_MS });
  await page.waitForTimeout(160);
  await gauge(page, '4487');
  await untilLogged(page, 1);
  expect(await loggedSizes(page)).toEqual(['0.4487 in']);
});

test.each(['#size', '.size-pad-key'])(
  'no key is lost while the phone stalls, with the focus on %s',
  async (place) => {
    const { page } = phone;
    await page.locator(place).first().focus();
    const stalls = page.evaluate(async () => {
      for (let stall = 0; stall < 4; stall += 1) {
        const until = performance.now() + 300;
        while (performance.now() < until);
        await new Promise((done) => setTimeout(done, 20));
      }
    });
    await gauge(page, '0.4487123456');
    await stalls;
    await untilLogged(page, 1);
    expect(await loggedSizes(page)).toEqual(['0.4487123456 in']);
  },
);

test('twelve keys and Enter in one go, before the phone could draw the first, are one size', async () => {
  const { page } = phone;
  await sentIn(page, '0.4487123456', 'Enter', 'at once');
  await untilLogged(page, 1);
  expect(await loggedSizes(page)).toEqual(['0.4487123456 in']);
});

test('a gauge behind what a finger half typed logs its own number', async () => {
  const { page } = phone;
  for (const key of ['decimal point', '4', '4'])
    await page.getByRole('button', { name: key, exact: true }).click();
  await sentIn(page, '.4487', 'Enter');
  await untilLogged(page, 1);
  expect(await loggedSizes(page)).toEqual(['.4487 in']);
});

test('a foot switch goes on to the next feature, and never past what is half typed', async () => {
  const { page } = phone;
  await goTo(page, '/job/demo-outfit-7/readings/demo-link-bore');
  await page.getByRole('button', { name: '4', exact: true }).click();
  await page.keyboard.press('PageDown');
  await settled(page);
  expect(await page.evaluate(() => location.hash)).toContain('demo-link-bore');
  expect(await page.locator('#size').inputValue()).toBe('4');
  await page.getByRole('button', { name: 'delete last digit' }).click();
  await page.keyboard.press('PageDown');
  await page.waitForFunction(() => !location.hash.includes('demo-link-bore'));
  await expect.poll(spoken(page)).toMatch(/^Next: /);
});

test('a gauge fills a worksheet one need after the other, and a foot switch steps over one', async () => {
  const { page } = phone;
  await goTo(page, '/job/demo-outfit-7/worksheets');
  await page.getByRole('button', { name: /^Hole and pin/ }).click();
  await page.getByLabel('How wide is the bore?', { exact: true }).waitFor();
  await gauge(page, '.4487');
  await page.getByLabel('How thick is the pin or bolt?', { exact: true }).waitFor();
  await settled(page);
  await page.waitForTimeout(600); // longer than an Enter's second half
  await page.keyboard.press('PageDown');
  await page.getByText('Located, fixed by its nut').first().waitFor();
  expect(phone.trouble).toEqual({ said: [], refused: [], strayed: [] });
});
