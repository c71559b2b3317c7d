import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeEach, expect, test } from 'vitest';
import { goTo, settled, spoken } from './on-a-screen.ts';
import { openPhone, removeTemporaryFolders, startServer, untilReadyOffline, type Phone } from './launch.ts';

const quiet = { said: [], refused: [], strayed: [] };
const lathe = (cut: string) => `/job/demo-outfit-7/cuts/demo-cut-${cut}/lathe`;
/** A gauge's keys come some milliseconds apart, and end with Enter. */
const KEY_MS = 10;
/** Longer than a foot switch bounces. */
const FOOT_MS = 700;

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

/** No signal at the lathe. */
async function cutOff(): Promise<void> {
  await untilReadyOffline(phone.page);
  await server.stop();
}

async function untilFigure(page: Page, label: string, figure: string): Promise<void> {
  await page.waitForFunction(
    (wanted) => {
      const field = document.querySelector<HTMLInputElement>('#size');
      const words = document.querySelector('.left-to-take-label')?.textContent;
      return words === wanted.label && field?.placeholder === wanted.figure;
    },
    { label, figure },
  );
}

async function gauge(page: Page, text: string): Promise<void> {
  await page.keyboard.type(text, { delay: KEY_MS });
  await page.keyboard.press('Enter');
  await settled(page);
}

/** The big figure, as it is drawn. */
async function mainFigure(page: Page): Promise<{ label: string; figure: string }> {
  const label = (await page.locator('.left-to-take-label').textContent()) ?? '';
  return { label, figure: (await page.locator('#size').getAttribute('placeholder')) ?? '' };
}

async function dialIn(page: Page): Promise<number> {
  return Number(await page.locator('.next-pass-figure').first().textContent());
}

const cutIt = (page: Page) => page.getByRole('button', { name: /^Cut it, next/ });
const touchTheFigure = (page: Page) => page.locator('.left-to-take-label').click();

test('whoever cuts what the screen asks and measures comes from the blank to size, with no hand and no signal', async () => {
  const { page } = phone;
  await cutOff();
  await goTo(page, lathe('bushing'));
  await page.getByText('Measure it first').waitFor();
  await gauge(page, '.6253');
  await untilFigure(page, 'left to take on Ø', '.062');
  let size = 0.6253;
  // .6253 to .5631–.5634 on a dial of .001 that reads diameter; a plan of more than 30 passes would be no plan
  for (let pass = 0; pass < 30 && (await page.getByText('To size').count()) === 0; pass += 1) {
    const left = Number((await mainFigure(page)).figure);
    const take = await dialIn(page);
    expect(take).toBeGreaterThan(0);
    expect(left).toBeCloseTo(size - 0.5633, 4);
    size -= take;
    const before = (await mainFigure(page)).figure;
    await gauge(page, size.toFixed(4));
    await page.waitForFunction(
      (old) => document.querySelector<HTMLInputElement>('#size')?.placeholder !== old,
      before,
    );
  }
  await page.getByText('To size').first().waitFor();
  expect(size).toBeGreaterThanOrEqual(0.5631);
  expect(size).toBeLessThanOrEqual(0.5634);
  await expect.poll(spoken(page)).toMatch(/^Logged 0\.563\d in(, from the gauge)?\. To size/);
  expect(phone.trouble).toEqual(quiet);
});

test('a size past the limit is said at once over the whole screen, breaks in on a screen reader, and is struck out when it was measured wrong', async () => {
  const { page } = phone;
  await cutOff();
  await goTo(page, lathe('ring'));
  await gauge(page, '1.4969');
  await page.getByText('No good').waitFor();
  // 1.4975 − 1.4969 = .0006
  expect(await mainFigure(page)).toEqual({ label: 'past the limit on Ø', figure: '.0006' });
  expect(await page.locator('#past-limit').textContent()).toContain('.0006 in past the limit of 1.4975 in');
  await page.getByText('Make a new part').waitFor();
  await page.getByRole('button', { name: /^Measured wrong/ }).click();
  // The ring stands at 1.554 again, with the .020 dialled that the screen had asked for: 1.554 − 1.498 − .020 = .036
  await untilFigure(page, 'should be left on Ø', '.036');
  expect(phone.trouble).toEqual(quiet);
});

test('the ways out lead on: a new part is made again, a short spacer is shimmed with its measured size filled in', async () => {
  const { page } = phone;
  await goTo(page, lathe('spacer'));
  await gauge(page, '1.1100');
  await page.getByText('No good').waitFor();
  // 1.113 − 1.110 = .003 to the target
  await page.getByText(/^\.003 in is missing/).waitFor();
  await page.getByRole('button', { name: /^Shim it/ }).click();
  await settled(page);
  expect(await page.evaluate(() => location.hash)).toBe('#/job/demo-outfit-7/worksheets/demo-bracket-float');
  await page.getByText('1.110', { exact: false }).first().waitFor();
  await goTo(page, lathe('spacer'));
  await page.getByRole('button', { name: /^Make a new part/ }).click();
  await page.getByText('Make it again: in which job?').waitFor();
  expect(phone.trouble).toEqual(quiet);
});

test('a sleeve that brushes over “Cut it, next” counts no pass; a hand that touches the figure first does, and can take it back', async () => {
  const { page } = phone;
  await goTo(page, lathe('ring'));
  // 1.554 − 1.498
  await untilFigure(page, 'left to take on Ø', '.056');
  await cutIt(page).click();
  await page.getByText('Touch the figure first, then the key.').first().waitFor();
  expect((await mainFigure(page)).figure).toBe('.056');
  expect(await dialIn(page)).toBe(0.02);
  await touchTheFigure(page);
  await cutIt(page).click();
  await untilFigure(page, 'should be left on Ø', '.036');
  await expect.poll(spoken(page)).toBe(`Counted as cut, not measured: .020 in. It can be taken back.`);
  await page.getByRole('button', { name: /^Take back/ }).click();
  await untilFigure(page, 'left to take on Ø', '.056');
});

test('a foot switch counts a pass once however it bounces, and never logs or drops what is half typed', async () => {
  const { page } = phone;
  await goTo(page, lathe('ring'));
  await page.keyboard.press('PageDown');
  await page.keyboard.press('PageDown');
  // one pass of .020 of the .056
  await untilFigure(page, 'should be left on Ø', '.036');
  await page.waitForTimeout(FOOT_MS);
  await page.keyboard.press('Enter');
  await untilFigure(page, 'should be left on Ø', '.016');
  await page.keyboard.type('1.51');
  await page.waitForTimeout(FOOT_MS);
  await page.keyboard.press('PageDown');
  await page
    .locator('#app')
    .getByText(/^1\.51 is half typed/)
    .waitFor();
  expect(await page.locator('#size').inputValue()).toBe('1.51');
  expect((await mainFigure(page)).figure).toBe('.016');
});

test('a phone killed in the middle comes back to the cut, with what was dialled and what was half typed', async () => {
  const { page } = phone;
  await goTo(page, lathe('ring'));
  await touchTheFigure(page);
  await cutIt(page).click();
  await untilFigure(page, 'should be left on Ø', '.036');
  await page.keyboard.type('1.53');
  await page.waitForTimeout(300);
  await phone.kill();
  phone = await openPhone({ userDataDir: phone.userDataDir });
  await phone.page.goto(server.url);
  await phone.page.locator('.left-to-take').waitFor();
  await phone.page.waitForFunction(() => document.querySelector<HTMLInputElement>('#size')?.value === '1.53');
  expect(await mainFigure(phone.page)).toEqual({ label: 'measured, Enter logs', figure: '.036' });
  // On from there: the .020 that was dialled before counts as asked.
  await phone.page.keyboard.type('4');
  await phone.page.keyboard.press('Enter');
  await untilFigure(phone.page, 'left to take on Ø', '.036'); // 1.534 − 1.498
});

test('keys alone do it all: Tab to the key, Enter counts the pass, a size and Enter log', async () => {
  const { page } = phone;
  await goTo(page, lathe('ring'));
  for (let stop = 0; stop < 9; stop += 1) {
    const name = await page.evaluate(() => document.activeElement?.textContent ?? '');
    if (name.startsWith('Cut it, next')) break;
    await page.keyboard.press('Tab');
  }
  await page.keyboard.press('Enter');
  await untilFigure(page, 'should be left on Ø', '.036');
  await page.keyboard.type('1.5340', { delay: 150 });
  await page.keyboard.press('Enter');
  await untilFigure(page, 'left to take on Ø', '.036');
  await expect.poll(spoken(page)).toMatch(/^Logged 1\.5340 in\. Thirty-six thou left\./);
});

test('“I measured”, come back to by its address, logs from the pad only after its figure was touched, and asks about a slipped point', async () => {
  const { page } = phone;
  await goTo(page, `${lathe('ring')}/measured`);
  for (const key of ['1', 'decimal point', '5', '3', '4'])
    await page.getByRole('button', { name: key, exact: true }).click();
  await page.getByRole('button', { name: 'Log it' }).click();
  await page
    .locator('#app')
    .getByText(/^Touch the figure first, then “Log it”/)
    .waitFor();
  await page.locator('#size').click();
  await page.getByRole('button', { name: 'Log it' }).click();
  await untilFigure(page, 'left to take on Ø', '.036');
  await gauge(page, '15.180');
  await page.getByText('has the point slipped?', { exact: false }).first().waitFor();
  await page.getByRole('button', { name: 'Log 1.518 in' }).click();
  await untilFigure(page, 'left to take on Ø', '.020');
  await expect.poll(spoken(page)).toMatch(/^Logged 1\.518 in/);
});

test('no bottom bar stands at the lathe, and nothing but captions is under 28 px', async () => {
  const { page } = phone;
  await goTo(page, lathe('ring'));
  await page.locator('.app-notice').waitFor({ state: 'detached', timeout: 30_000 });
  expect(await page.locator('.bottom-bar').count()).toBe(0);
  const small = await page.evaluate(() => {
    const captions = '.page-subtitle, .next-pass-caption, .at-the-lathe-cautions, .unseen';
    const walker = document.createTreeWalker(
      document.querySelector('.app') ?? document.body,
      NodeFilter.SHOW_TEXT,
    );
    const found: string[] = [];
    while (walker.nextNode()) {
      const parent = walker.currentNode.parentElement;
      const text = walker.currentNode.textContent?.trim() ?? '';
      if (!parent || text === '' || parent.closest(captions)) continue;
      const size = Number.parseFloat(getComputedStyle(parent).fontSize);
      if (size < 28) found.push(`${text}: ${size}`);
    }
    return found;
  });
  expect(small).toEqual([]);
  const figure = await page.locator('#size').evaluate((field) => getComputedStyle(field).fontSize);
  expect(Number.parseFloat(figure)).toBeGreaterThanOrEqual(96);
});

/** What is read or set of a cut, and doesn't stand whole on the screen with no key over it. */
async function notInSight(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    document.querySelector('.app-place')?.scrollTo(0, 0);
    const keys = document.querySelector('.at-the-lathe-keys')?.getBoundingClientRect();
    return [...document.querySelectorAll('.at-the-lathe-read *, .next-cut *, .lathe-keys *')].flatMap(
      (part) => {
        const { left, right, top, bottom, width } = part.getBoundingClientRect();
        if (width === 0 || part.childElementCount > 0 || part.closest('.unseen, svg')) return [];
        const isUnder =
          keys !== undefined &&
          part.closest('.lathe-keys') === null &&
          right > keys.left &&
          left < keys.right &&
          bottom > keys.top + 1 &&
          top < keys.bottom;
        return isUnder || top < 0 || bottom > innerHeight ? [part.textContent ?? ''] : [];
      },
    );
  });
}

test('all that is read and pressed stands on one screen, upright, narrow and on its side: nothing lies under a key', async () => {
  const { page } = phone;
  const look = async (what: string) => {
    for (const [width, height] of [
      [390, 844],
      [320, 640],
      [844, 390],
    ] as const) {
      await page.setViewportSize({ width, height });
      await settled(page);
      expect([what, width, await notInSight(page)]).toEqual([what, width, []]);
    }
  };
  for (const cut of ['bushing', 'ring', 'spacer']) {
    await goTo(page, lathe(cut));
    await page.locator('#size').waitFor();
    await look(cut);
  }
  await page.getByRole('button', { name: 'compound' }).click();
  await page.getByText(/^zero it first/).waitFor();
  await look('a slide chosen');
  await goTo(page, lathe('ring'));
  await touchTheFigure(page);
  await cutIt(page).click();
  await untilFigure(page, 'should be left on Ø', '.036');
  await look('a pass dialled');
});

test('the key that opens the pad lies clear of the one that logs: a sleeve over one place does not do both', async () => {
  const { page } = phone;
  await goTo(page, lathe('ring'));
  for (const [width, height] of [
    [390, 844],
    [320, 640],
    [844, 390],
  ] as const) {
    await page.setViewportSize({ width, height });
    await goTo(page, lathe('ring'));
    const opens = page.getByRole('link', { name: 'I measured…' });
    const first = await opens.boundingBox();
    await opens.click();
    const second = await page.getByRole('button', { name: 'Log it' }).boundingBox();
    if (!first || !second) throw new Error('a key is not drawn');
    const isClear = first.y + first.height < second.y || first.x + first.width < second.x;
    expect([width, isClear]).toEqual([width, true]);
  }
});

test('the screen is asked to stay on, and the line says so only when it does', async () => {
  const { page } = phone;
  await goTo(page, lathe('ring'));
  await page.getByText('screen stays on', { exact: false }).waitFor();
  await phone.context.addInitScript(() => {
    Object.defineProperty(navigator, 'wakeLock', {
      value: { request: () => Promise.reject(new DOMException('low battery', 'NotAllowedError')) },
    });
  });
  await page.reload();
  await page.getByText('the phone may let the screen go dark', { exact: false }).waitFor();
  expect(await page.getByText('screen stays on', { exact: false }).count()).toBe(0);
});
