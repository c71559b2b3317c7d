import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axeFindings } from './axe-findings.ts';
import { goTo, settled, spoken } from './on-a-screen.ts';
import { someOf } from '../trials/seeded.ts';
import { openPhone, removeTemporaryFolders, startServer, type PhoneOptions } from './launch.ts';

let server: Awaited<ReturnType<typeof startServer>>;

beforeAll(async () => {
  server = await startServer();
});
afterAll(async () => {
  await server.stop();
  await removeTemporaryFolders();
});

const wishes: readonly (readonly [string, NonNullable<PhoneOptions['context']>])[] = [
  ['colours are forced', { forcedColors: 'active' }],
  ['motion is unwanted', { reducedMotion: 'reduce' }],
];

test.each(someOf(wishes, 2))('the job goes on where %s', async (_what, context) => {
  const { page, trouble, close } = await openPhone({ context });
  await fromNothingToAVerdict(page);
  expect(trouble).toEqual({ said: [], refused: [], strayed: [] });
  await close();
});

test('with colours forced, the chosen key, the verdict and the focus still stand out', async () => {
  const { page, close } = await openPhone({ context: { forcedColors: 'active' } });
  await page.goto(server.url);
  await page.getByRole('button', { name: 'Show me with the demo job' }).click();
  await goTo(page, '/job/demo-outfit-7/readings/demo-link-bore');
  const looks = await page.evaluate(() => {
    const lookOf = (name: string) => {
      const key = [...document.querySelectorAll('button')].find((one) => one.textContent === name);
      const { color, backgroundColor, borderColor, outlineStyle, outlineWidth } = getComputedStyle(
        key ?? document.body,
      );
      return [color, backgroundColor, borderColor, outlineStyle, outlineWidth].join(' ');
    };
    return { chosen: lookOf('in'), other: lookOf('mm') };
  });
  expect(looks.chosen).not.toBe(looks.other);
  await goTo(page, '/job/demo-outfit-7/worksheets/demo-link-slop');
  const edge = await page.evaluate(() => {
    const band = document.querySelector('[class^="verdict-band"]');
    const { borderLeftStyle, borderLeftWidth } = getComputedStyle(band ?? document.body);
    return { borderLeftStyle, isSeen: Number.parseFloat(borderLeftWidth) > 0 };
  });
  expect(edge).toEqual({ borderLeftStyle: 'dashed', isSeen: true });
  await close();
});

test('with colours forced on black, a number line and a mark are drawn in the colour of the text', async () => {
  const { page, close } = await openPhone({ context: { forcedColors: 'active', colorScheme: 'dark' } });
  await page.goto(server.url);
  await page.getByRole('button', { name: 'Show me with the demo job' }).click();
  await page.getByText('Outfit 7').first().waitFor();
  await goTo(page, '/job/demo-outfit-7/worksheets/demo-link-slop');
  await page.getByRole('button', { name: 'Why', exact: true }).click();
  const colours = await page.evaluate(() => {
    const of = (selector: string) => getComputedStyle(document.querySelector(selector) ?? document.body);
    return {
      text: of('h1').color,
      axis: of('.number-line-axis').stroke,
      mark: of('.verdict-mark').color,
      drawn: of('.drawing').stroke,
    };
  });
  expect(new Set(Object.values(colours))).toEqual(new Set([colours.text]));
  await close();
});

test('where more contrast is asked for, ink is black on white, and white on black at the lathe', async () => {
  const { page, close } = await openPhone({ context: { contrast: 'more' } });
  await page.goto(server.url);
  await page.getByRole('button', { name: 'Show me with the demo job' }).click();
  await page.getByText('Outfit 7').first().waitFor();
  const colours = () =>
    page.evaluate(() => {
      const { color } = getComputedStyle(document.querySelector('h1') ?? document.body);
      return [color, getComputedStyle(document.documentElement).backgroundColor];
    });
  expect(await colours()).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
  await goTo(page, '/job/demo-outfit-7/cuts/demo-cut-ring/lathe');
  expect(await colours()).toEqual(['rgb(255, 255, 255)', 'rgb(0, 0, 0)']);
  expect(await axeFindings(page)).toEqual([]);
  await close();
});

test('in full sun the page is black on white, the lathe too, kept across a restart and undone by one press', async () => {
  const { page, close } = await openPhone();
  await page.goto(server.url);
  await page.getByRole('button', { name: 'Show me with the demo job' }).click();
  await page.getByText('Outfit 7').first().waitFor();
  await goTo(page, '/shop');
  await page.getByRole('button', { name: 'full sun' }).click();
  const colours = () =>
    page.evaluate(() => {
      const { color } = getComputedStyle(document.querySelector('h1') ?? document.body);
      const bar = document.querySelector<HTMLMetaElement>('meta[name=theme-color]')?.content;
      return [color, getComputedStyle(document.documentElement).backgroundColor, bar];
    });
  const blackOnWhite = ['rgb(0, 0, 0)', 'rgb(255, 255, 255)', '#fff'];
  await expect.poll(colours).toEqual(blackOnWhite);
  for (const place of [
    '/shop',
    '/job/demo-outfit-7/worksheets/demo-bracket-float',
    '/job/demo-outfit-7/cuts/demo-cut-ring/lathe',
    '/job/demo-outfit-7/cuts/demo-cut-ring/lathe/measured',
  ]) {
    await goTo(page, place);
    await page.reload();
    await page.locator('h1').waitFor();
    await expect.poll(colours).toEqual(blackOnWhite);
    expect(await axeFindings(page)).toEqual([]);
    await page.emulateMedia({ media: 'print' });
    const panel = await page.evaluate(() =>
      getComputedStyle(document.documentElement).getPropertyValue('--panel'),
    );
    expect(panel).toMatch(/^#fff(fff)?$/);
    await page.emulateMedia({ media: 'screen' });
  }
  await goTo(page, '/shop');
  await page.getByRole('button', { name: 'Undo: changed the light' }).click();
  await expect.poll(colours).toEqual(['rgb(21, 33, 44)', 'rgb(245, 242, 234)', '#f5f2ea']);
  await close();
});

test('keys alone lead from an empty app to a logged reading and to a verdict, and it is said', async () => {
  const { page, close } = await openPhone();
  expect(await fromNothingToAVerdict(page)).toBe('Too loose: slop .0117, want .002 or less.');
  await close();
});

/** Only Tab, Shift+Tab, Enter, Space, digits and the point. */
async function fromNothingToAVerdict(page: Page): Promise<string> {
  await page.goto(server.url);
  await byTab(page, 'New job');
  await byTab(page, 'none of these');
  await byTab(page, 'Make the job');
  for (const [kind, sizes] of [
    [/^Bore/, ['.4491', '.4487', '.4485']],
    [/^Pin/, ['.4369', '.4373', '.4371']],
  ] as const) {
    await byTab(page, 'New size');
    await byTab(page, kind);
    await page.locator('#size').waitFor();
    for (const [index, size] of sizes.entries()) {
      await page.keyboard.type(size);
      await page.keyboard.press('Enter');
      await expect.poll(spoken(page)).toContain(`Logged ${size} in, reading ${index + 1} of`);
    }
    await byTab(page, /^Back/);
  }
  await byTab(page, /^Back/);
  await byTab(page, /^Decide/);
  await byTab(page, /^Hole and pin/);
  await byTab(page, /^Bore/, 'Space');
  await byTab(page, /^Pin/, 'Space');
  await byTab(page, /^Located/, 'Space');
  // (.4491 + .4487 + .4485) / 3 − .4371 = .0117, and a located bolt of 7/16 may have .002 (common practice).
  const verdict = page.getByText(/^Too loose: slop/);
  await verdict.waitFor();
  return verdict.innerText();
}

/** Presses Tab until the focus is on what has this name, then the key. Shift+Tab, should it lie behind. */
async function byTab(page: Page, name: string | RegExp, key: 'Enter' | 'Space' = 'Enter'): Promise<void> {
  await settled(page);
  const wanted = page
    .getByRole('button', { name, exact: true })
    .or(page.getByRole('link', { name, exact: true }))
    .filter({ visible: true })
    .first();
  await wanted.waitFor();
  for (let presses = 0; presses < 80; presses += 1) {
    if (await wanted.evaluate((element) => element === document.activeElement)) {
      await page.keyboard.press(key);
      return settled(page);
    }
    await page.keyboard.press('Tab');
  }
  throw new Error(`80 presses of Tab do not reach ${String(name)}`);
}
