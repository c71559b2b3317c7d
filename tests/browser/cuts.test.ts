import { afterAll, expect, test } from 'vitest';
import { openPhone, removeTemporaryFolders, startServer, untilReadyOffline } from './launch.ts';
import { thumbOn, type Thumb, takeAsExact } from './thumb.ts';

afterAll(removeTemporaryFolders);

const quiet = { said: [], refused: [], strayed: [] };

/** A size typed on the pad, taken as exact: a caliper's band would leave nothing of a float of .004. */
async function exactly(thumb: Thumb, size: string): Promise<void> {
  await thumb.key(size);
  await takeAsExact(thumb);
  await thumb.press('Use it');
}

test('a stack that is too tight goes to the cut list, and from there to all there is to cut, without signal', async () => {
  const server = await startServer();
  const phone = await openPhone();
  const { page } = phone;
  await page.goto(server.url);
  await untilReadyOffline(page);
  await server.stop();
  const thumb = thumbOn(page);
  await thumb.press('New job');
  await page.getByLabel('Name').fill('Bracket');
  await thumb.press('none of these');
  await thumb.press('Make the job');
  await thumb.press('Decide');
  await thumb.press(/^Spacer stack/);
  await exactly(thumb, '.970');
  await takeAsExact(thumb);
  await thumb.key('.583');
  await thumb.press('Next part');
  await thumb.key('.385');
  await thumb.press('That’s all');
  await thumb.press('Which may be cut?');
  await thumb.press(/^part 2[^:]*$/);
  // .970 − .968 = .002; a float of .010 wants .008 off .385: .377, good from .375 to .379
  await thumb.press('Cut it');
  await page.getByRole('heading', { name: 'Part 2, faced to length' }).waitFor();
  await page.getByText('good from .375 to .379').waitFor();
  await thumb.press('Material: material not said');
  await thumb.press(/^Stainless 303/);
  await thumb.press('Put on the cut list');
  await page.getByText('.008 in to take').waitFor();
  expect(page.url()).toMatch(/\/cuts$/);

  await thumb.press('Back to the job');
  await thumb.press('Back to the jobs');
  await thumb.press(/^All I have to cut/);
  await page.getByRole('heading', { name: 'Stainless 303, HSS' }).waitFor();
  await thumb.press(/^.*Part 2, faced to length/);
  await page.getByRole('heading', { name: 'Left to take' }).waitFor();
  expect(await page.locator('.lead-next').textContent()).toBe('.385 → .377');
  expect(await page.getByRole('link', { name: 'To the lathe' }).getAttribute('href')).toMatch(/\/lathe$/);

  // The list is as it was after the phone was switched off and on.
  await page.reload();
  await page.getByRole('heading', { name: 'Left to take' }).waitFor();
  expect(phone.trouble).toEqual(quiet);
  await phone.close();
});
