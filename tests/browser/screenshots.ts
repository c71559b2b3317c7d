import { mkdirSync, rmSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { chapters, visitScreens } from './every-screen.ts';
import { goTo, laidOut, withoutPassingLines } from './on-a-screen.ts';
import { openPhone, removeTemporaryFolders, startServer } from './launch.ts';

/** Not tests: the pictures of the app, drawn anew by `npm run screenshots`. */

const out = 'tests/browser/out';
const sizes = [
  { width: 320, height: 640 },
  { width: 390, height: 844 },
  { width: 844, height: 390 },
  { width: 820, height: 1180 },
  { width: 1280, height: 800 },
] as const;
let server: Awaited<ReturnType<typeof startServer>>;

beforeAll(async () => {
  rmSync(out, { recursive: true, force: true });
  mkdirSync(out, { recursive: true });
  server = await startServer();
});
afterAll(async () => {
  await server.stop();
  await removeTemporaryFolders();
});

test.each(Object.entries(chapters))(
  'every screen of %s: narrow, usual, on its side, on a tablet and on a desk',
  async (_what, chapter) => {
    const { page, close } = await openPhone();
    let drawn = 0;
    await visitScreens(page, server.url, chapter, async ({ name }) => {
      drawn += 1;
      for (const size of sizes) {
        await page.setViewportSize(size);
        await laidOut(page);
        // As the app does when it comes, at whatever size the phone has then.
        await page.evaluate(() =>
          document.querySelector('.size-pad-message')?.scrollIntoView({ block: 'nearest' }),
        );
        await page.screenshot({ path: `${out}/${name}-${size.width}.png` });
      }
      await page.setViewportSize({ width: 390, height: 844 });
      await laidOut(page);
    });
    expect(drawn).toBe(chapter.screens.length);
    await close();
  },
);

test('the four screens of the README, side by side, as the demo shows them at first', async () => {
  const fresh = await openPhone();
  const { page } = fresh;
  await page.goto(server.url);
  await withoutPassingLines(page);
  await page.getByRole('button', { name: 'Show me with the demo job' }).click();
  await page.getByText('Outfit 7').first().waitFor();
  const pictures: string[] = [];
  for (const place of [
    'readings/demo-link-bore',
    'worksheets/demo-bracket-float',
    'cuts/demo-cut-ring/lathe',
    'sheet',
  ]) {
    await goTo(page, `/job/demo-outfit-7/${place}`);
    pictures.push((await page.screenshot()).toString('base64'));
  }
  await page.goto('about:blank');
  await page.setViewportSize({ width: 4 * 390 + 5 * 24, height: 844 + 2 * 24 });
  await page.setContent(
    `<body style="margin:0;display:flex;gap:24px;padding:24px;background:#8b8778">${pictures
      .map((png) => `<img width="390" height="844" alt="" src="data:image/png;base64,${png}">`)
      .join('')}`,
  );
  await page.locator('img').last().waitFor();
  expect(await page.evaluate(() => [...document.images].every((image) => image.naturalWidth > 0))).toBe(true);
  await page.screenshot({ path: '.ci/readme.png', scale: 'css' });
  await fresh.close();
});

/** Small ones, as an installer shows them: see public/manifest.webmanifest. */
test('the pictures by which a browser offers to install the app', async () => {
  const folder = 'public/screenshots';
  mkdirSync(folder, { recursive: true });
  for (const [name, place, size] of [
    ['reading', 'readings/demo-link-bore', { width: 390, height: 844 }],
    ['spacer-stack', 'worksheets/demo-bracket-float', { width: 390, height: 844 }],
    ['lathe', 'cuts/demo-cut-ring/lathe', { width: 390, height: 844 }],
    ['desk', 'worksheets/demo-bracket-float', { width: 1280, height: 800 }],
  ] as const) {
    const { page, close } = await openPhone({ ...size, context: { deviceScaleFactor: 1 } });
    await visitScreens(page, server.url, { demo: true, screens: [] }, async () => undefined);
    await goTo(page, `/job/demo-outfit-7/${place}`);
    await page.screenshot({ path: `${folder}/${name}.png` });
    expect(await page.getByRole('heading', { level: 1 }).count()).toBe(1);
    await close();
  }
});
