import { afterAll, beforeAll, expect, test } from 'vitest';
import { openPhone, removeTemporaryFolders, startServer } from './launch.ts';

let server: Awaited<ReturnType<typeof startServer>>;

beforeAll(async () => {
  server = await startServer();
});
afterAll(async () => {
  await server.stop();
  await removeTemporaryFolders();
});

test.each([
  { width: 320, height: 640 },
  { width: 390, height: 844 },
  { width: 844, height: 390 },
])('“ready to work without signal” never lies over a figure or a key at $width × $height', async (size) => {
  const { page, close } = await openPhone(size);
  await page.goto(`${server.url}#/charts/drills`);
  await page.locator('#size').waitFor();
  const line = page.locator('.app-notice');
  await line.waitFor({ timeout: 30_000 });
  const covered = await line.evaluate((notice) => {
    const over = notice.getBoundingClientRect();
    return [...document.querySelectorAll('.size-pad input, .size-pad button')]
      .filter((element) => {
        const { left, right, top, bottom } = element.getBoundingClientRect();
        const isSeen = bottom > 0 && top < innerHeight;
        return isSeen && left < over.right && right > over.left && top < over.bottom && bottom > over.top;
      })
      .map((element) => element.getAttribute('aria-label') ?? element.textContent);
  });
  expect(covered).toEqual([]);
  await close();
});
