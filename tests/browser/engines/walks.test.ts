import { extractText, getDocumentProxy } from 'unpdf';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Phone } from '../hands/hands.ts';
import { closeAllPhones, engine, openPhone } from '../hands/open-phone.ts';
import { removeTemporaryFolders, startServer, untilReadyOffline } from '../launch.ts';
import { goTo, settled } from '../on-a-screen.ts';
import { takeAsExact, thumbOn } from '../thumb.ts';

/** The four walks of a fitter's day, in the engine of this project and without signal. */

const outfit = '/job/demo-outfit-7';
let phone: Phone;

beforeAll(async () => {
  const server = await startServer();
  phone = await openPhone();
  await phone.page.goto(server.url);
  await phone.page.getByRole('button', { name: 'Show me with the demo job' }).click();
  await phone.page.getByText('Outfit 7').first().waitFor();
  await untilReadyOffline(phone.page);
  await server.stop();
});
afterAll(async () => {
  await closeAllPhones();
  await removeTemporaryFolders();
});

test('a reading: asked about where its point has slipped, logged, struck out, and taken back', async () => {
  const { page } = phone;
  const thumb = thumbOn(page);
  await goTo(page, `${outfit}/readings/demo-link-bore`);
  await thumb.key('4.486');
  await thumb.press('Log reading');
  // The bore was read .4485 to .4490 before.
  await page
    .getByText(/has the point slipped\?$/)
    .first()
    .waitFor();
  await thumb.press('Log .4486 in');
  await page
    .getByText(/^logged, reading/)
    .first()
    .waitFor();
  await thumb.press(/^Strike out last/);
  await page.getByText('Struck out .4486 in').first().waitFor();
  await thumb.press(/^Undo/);
  await page
    .getByText(/^Undone: /)
    .first()
    .waitFor();
  await goTo(page, `${outfit}/readings/demo-link-bore/all`);
  await page.getByText('.4486 in').first().waitFor();
  expect(await page.locator('[data-struck=true]', { hasText: '.4486' }).count()).toBe(0);
});

test('a worksheet: five parts in a sleeve, which one to face, to what length, and by how much', async () => {
  const { page } = phone;
  const thumb = thumbOn(page);
  await goTo(page, '/new-job');
  for (const name of ['none of these', 'Make the job', 'Decide', /^Spacer stack/]) await thumb.press(name);
  await thumb.key('.970');
  await takeAsExact(thumb);
  await thumb.press('Use it');
  await takeAsExact(thumb);
  for (const size of ['.062', '.385', '.3125', '.1465']) {
    await thumb.key(size);
    await thumb.press('Next part');
  }
  await thumb.key('1/16');
  await thumb.press('That’s all');
  // .062 + .385 + .3125 + .1465 + .0625 = .9685; .970 − .9685 = .0015 in
  await page
    .getByText(/^Too tight: float \.0015, want \.008 to \.012; assumed: float\./)
    .first()
    .waitFor();
  await thumb.press('Which may be cut?');
  await thumb.press(/^part 2[^:]*$/);
  // Aim .010: .0085 has to come off .385, which is .3765, left full to the dial's next thou: .377, so .008 off.
  await page.getByRole('heading', { name: 'Face part 2' }).waitFor();
  expect(await page.locator('.account-lead-figure').textContent()).toBe('.008 in off');
  expect(await page.locator('.account-lead-change').textContent()).toBe('.385 → .377');
});

test('the lathe: a pass counted, measured, and a size past the limit said at once', async () => {
  const { page } = phone;
  const figure = () => page.evaluate(() => document.querySelector<HTMLInputElement>('#size')?.placeholder);
  await goTo(page, `${outfit}/cuts/demo-cut-ring/lathe`);
  // 1.554 − 1.498
  await expect.poll(figure).toBe('.056');
  await page.locator('.left-to-take-label').click();
  await thumbOn(page).press(/^Cut it, next/);
  // one pass of .020 of the .056
  await expect.poll(figure).toBe('.036');
  await page.keyboard.type('1.5340', { delay: 10 });
  await page.keyboard.press('Enter');
  // 1.534 − 1.498
  await page.getByText('left to take on Ø').first().waitFor();
  await expect.poll(figure).toBe('.036');
  await settled(page);
  await page.keyboard.type('1.4969', { delay: 10 });
  await page.keyboard.press('Enter');
  await page.getByText('No good').first().waitFor();
  // 1.4975 − 1.4969
  await expect.poll(figure).toBe('.0006');
});

test('the sheet: what was measured and cut stands on it, on the screen and on paper', async () => {
  const { page } = phone;
  await goTo(page, `${outfit}/sheet`);
  await page.locator('article.sheet .sheet-name', { hasText: 'Outfit 7' }).waitFor();
  await settled(page);
  const { text } = await extractText(await getDocumentProxy(await phone.printed()), { mergePages: false });
  const paper = text.join(' ').replace(/\s+/g, ' ');
  const figures = ['A mistake here can kill.', '1.5340', '1.4969', 'Put together by'];
  expect(figures.filter((one) => !paper.includes(one))).toEqual([]);
  expect(text.length).toBeGreaterThan(1);
  // Firefox numbers the pages in a line of its own, which the paper has where a person prints.
  const number = (page: number) => (engine === 'firefox' ? /./ : new RegExp(`page ${page}\\b`));
  const unmarked = text.filter((words, page) => !words.includes('Outfit 7') || !number(page + 1).test(words));
  expect(unmarked).toEqual([]);
  expect(phone.said).toEqual([]);
});
