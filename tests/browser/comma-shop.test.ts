import { afterAll, expect, test } from 'vitest';
import { openPhone, removeTemporaryFolders, startServer } from './launch.ts';
import { chooseInShop, goTo } from './on-a-screen.ts';
import { takeAsExact, thumbOn } from './thumb.ts';

afterAll(removeTemporaryFolders);

test('on a phone that writes commas a fitter in millimetres types them and reads them, and can have points', async () => {
  const server = await startServer();
  const { page, trouble, close } = await openPhone({ context: { locale: 'de-DE' } });
  await page.goto(server.url);
  const thumb = thumbOn(page);
  for (const key of ['millimetres', 'New job', 'none of these', 'Make the job', 'Decide'])
    await thumb.press(key);
  await thumb.press(/^Spacer stack/);
  for (const [size, key] of [
    ['25,4', 'Use it'],
    ['10', 'Next part'],
    ['15,3', 'That’s all'],
  ] as const) {
    await takeAsExact(thumb);
    await thumb.key(size);
    await thumb.press(key);
  }
  // 25.4 − 10 − 15.3 = 0.1; the usual float of .008 to .012 in is 0.203 to 0.305 mm (common practice, no source).
  await page.getByText('Too tight: float 0,10 mm, want 0,20 to 0,30 mm; assumed: float.').first().waitFor();
  const place = new URL(page.url()).hash.slice(1);
  // What was typed with a comma is read with a point, in the same shop, from the press on: 0.02 mm is a usual dial.
  await chooseInShop(page, '12.5');
  await page.getByRole('button', { name: '0.02 mm' }).waitFor();
  await goTo(page, place);
  await page.getByText('Too tight: float 0.10 mm, want 0.20 to 0.30 mm; assumed: float.').first().waitFor();
  await chooseInShop(page, '12,5');
  await page.getByRole('button', { name: '0,02 mm' }).waitFor();
  await goTo(page, place);
  await page.getByText('Too tight: float 0,10 mm, want 0,20 to 0,30 mm; assumed: float.').first().waitFor();
  expect(await page.locator('main').innerText()).not.toMatch(/\d\.\d/);
  expect(trouble).toEqual({ said: [], refused: [], strayed: [] });
  await close();
  await server.stop();
});
