import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { goTo, laidOut, settled, withoutPassingLines } from './on-a-screen.ts';
import { openPhone, removeTemporaryFolders, startServer, type Phone } from './launch.ts';

const bore = '/job/demo-outfit-7/readings/demo-link-bore';

let server: Awaited<ReturnType<typeof startServer>>;
let phone: Phone;

beforeAll(async () => {
  server = await startServer();
  phone = await openPhone();
  await phone.page.goto(server.url);
  await phone.page.getByRole('button', { name: 'Show me with the demo job' }).click();
  await phone.page.getByText('Outfit 7').first().waitFor();
  await withoutPassingLines(phone.page);
});
afterAll(async () => {
  await phone.close();
  await server.stop();
  await removeTemporaryFolders();
});

/** How much of a screen lies above and below the window, in CSS pixels. */
function hidden(page: Page): Promise<number> {
  return page.locator('.app-place').evaluate((place) => place.scrollHeight - place.clientHeight);
}

test('a bore with a name of three lines stands on a usual phone whole, heading and commit key', async () => {
  const { page } = phone;
  await goTo(page, `${bore}/all`);
  await page.getByLabel('Name').fill('Shock-link pivot bore, left side of the arm');
  await goTo(page, bore);
  expect(await hidden(page)).toBe(0);
});

test.each([
  ['the stack’s own reading', '/job/demo-outfit-7/worksheets/demo-bracket-float/direct'],
  ['how far a sleeve stands proud', '/job/demo-trailer-hub/worksheets/demo-hub-bearings/direct'],
  [
    'a part of a stack, with what it is called over the digits',
    '/job/demo-outfit-7/worksheets/demo-bracket-float/part/demo-stack-spacer/size',
  ],
  ['a sleeve’s length', '/job/demo-outfit-7/worksheets/demo-bracket-float/fixed'],
  ['a bore', '/job/demo-outfit-7/worksheets/demo-link-slop/bore'],
  ['a clearance that may be below zero', '/job/demo-outfit-7/worksheets/demo-link-slop/lower'],
])('asked for %s, question and commit key stand on a usual phone together', async (_what, place) => {
  await goTo(phone.page, place);
  expect(await hidden(phone.page)).toBe(0);
});

test('on the narrowest phone places stand in one row and directions in the next', async () => {
  const { page } = phone;
  await goTo(page, bore);
  await page.setViewportSize({ width: 320, height: 640 });
  await laidOut(page);
  const rows = await page
    .locator('.place-keys .button')
    .evaluateAll((keys) => keys.map((key) => `${Math.round(key.getBoundingClientRect().top)}`));
  await page.setViewportSize({ width: 390, height: 844 });
  const [first, , , fourth] = rows;
  expect(rows).toEqual([first, first, first, fourth, fourth]);
  expect(first).not.toBe(fourth);
});

test.each([
  [320, 640],
  [390, 664],
])(
  'on a phone of %i × %i heading and figure stand, with what is asked and the tool',
  async (width, height) => {
    const { page } = phone;
    await page.setViewportSize({ width, height });
    for (const [place, asked] of [
      [bore, /^usual: \S/],
      [
        '/job/demo-outfit-7/worksheets/demo-bracket-float/part/demo-stack-spacer/leastLength',
        /, least length$/,
      ],
      ['/shop/dial-marks', /^Marks round the dial$/],
    ] as const) {
      await goTo(page, place);
      await laidOut(page);
      const words = page.locator('.size-pad-asks, .form-asks').filter({ visible: true });
      expect(await words.textContent()).toMatch(asked);
      for (const line of [words, page.locator('h1')]) {
        const isSeen = await line.evaluate((element) => {
          const lines = document.createRange();
          lines.selectNodeContents(element);
          return [...lines.getClientRects()].every(({ left, top, width: wide, height: tall }) =>
            element.contains(document.elementFromPoint(left + wide / 2, top + tall / 2)),
          );
        });
        expect(isSeen).toBe(true);
      }
      const commit = await page.locator('.size-pad-commit').evaluate((key) => {
        const { left, bottom } = key.getBoundingClientRect();
        return key.contains(document.elementFromPoint(left + 20, bottom - 6));
      });
      expect(commit).toBe(true);
    }
    await page.setViewportSize({ width: 390, height: 844 });
  },
);

test('a count is asked for without a point', async () => {
  const { page } = phone;
  await goTo(page, '/shop/dial-marks');
  expect(await page.locator('.size-pad-keys button').allTextContents()).toEqual([
    '7',
    '8',
    '9',
    '4',
    '5',
    '6',
    '1',
    '2',
    '3',
    '0',
  ]);
});

test('a direction can be pressed by saying what is written on it', async () => {
  const { page } = phone;
  await goTo(page, bore);
  await settled(page);
  const key = page.getByRole('button', { name: '90°' });
  expect(await key.textContent()).toBe('90°');
  await key.click();
  expect(await key.getAttribute('aria-pressed')).toBe('true');
});

test('on a short phone the figure lies over no key: at first, with an undo offered, with the pad for gloves', async () => {
  const { page } = phone;
  await goTo(page, bore);
  await page.setViewportSize({ width: 320, height: 640 });
  const covered = async () => {
    await settled(page);
    await laidOut(page);
    return page.locator('.size-pad-keys button').evaluateAll((keys) =>
      keys
        .filter((key) => {
          const { left, top, width, bottom } = key.getBoundingClientRect();
          const isSeen = (y: number) => key.contains(document.elementFromPoint(left + width / 2, y));
          return !isSeen(top + 3) || !isSeen(bottom - 3);
        })
        .map((key) => key.textContent),
    );
  };
  expect(await covered()).toEqual([]);
  await page.getByRole('button', { name: /^Strike out last/ }).click();
  await page.getByRole('button', { name: 'Undo' }).waitFor();
  await page.locator('.size-pad-commit').scrollIntoViewIfNeeded();
  expect(await covered()).toEqual([]);
  await page.getByRole('button', { name: 'Undo' }).click();
  await goTo(page, '/shop');
  await page.getByRole('button', { name: 'wide, for gloves' }).click();
  await goTo(page, bore);
  expect(await covered()).toEqual([]);
  await goTo(page, '/shop');
  await page.getByRole('button', { name: 'four columns' }).click();
  await page.setViewportSize({ width: 390, height: 844 });
});
