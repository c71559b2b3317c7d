import { afterAll, expect, test } from 'vitest';
import { openPhone, removeTemporaryFolders, startServer } from './launch.ts';
import { thumbOn } from './thumb.ts';

afterAll(removeTemporaryFolders);

const quiet = { said: [], refused: [], strayed: [] };

test('a caliper asked to prove .001 says so before the first reading, and names what could', async () => {
  const server = await startServer();
  const phone = await openPhone();
  const { page } = phone;
  await page.goto(server.url);
  const thumb = thumbOn(page);
  await thumb.press('New job');
  await thumb.press('none of these');
  await thumb.press('Make the job');
  await thumb.press('Decide');
  await thumb.press(/^Hole and pin/);
  // How it runs is known only with a bore and a pin: limits of one's own have their fields in the address.
  await page.getByLabel('How wide is the bore?').waitFor();
  const here = page.url().replace(/\/bore$/, '');
  for (const [field, size] of [
    ['lower', '0'],
    ['upper', '.001'],
  ] as const) {
    await page.goto(`${here}/${field}`);
    await thumb.key(size);
    await thumb.press('Use it');
    await page.getByLabel('How wide is the bore?').waitFor();
  }
  const cannot = page.getByText(/can't prove this: .* the limits are only \.001 apart\. The .* can\./);
  await thumb.press('Measure');
  await page.getByLabel('Bore, reading 1').waitFor();
  await cannot.first().waitFor();
  await page.getByText('no readings yet').waitFor();
  expect(phone.trouble).toEqual(quiet);
  await phone.close();
  await server.stop();
});

test('too close to call names the tools and the readings that would settle it, or that none in Shop can', async () => {
  const server = await startServer();
  const phone = await openPhone();
  const { page } = phone;
  await page.goto(server.url);
  const thumb = thumbOn(page);
  await thumb.press('New job');
  await thumb.press('none of these');
  await thumb.press('Make the job');
  await thumb.press('Decide');
  await thumb.press(/^Hole and pin/);
  await thumb.key('.4390');
  await thumb.press('Use it');
  await thumb.key('.4380');
  await thumb.press('Use it');
  await thumb.press(/^Located, fixed by its nut/);
  // .4390 − .4380 = .001, midway between 0 and .002 (common practice): a caliper's band is wider than that.
  await page.getByText(/^Too close to call: slop \.001 /).waitFor();
  await page.getByText(/^The .* settle it, to ±\./).waitFor();
  // For what each tool is, and how often it reads, stands under Why.
  await thumb.press('Why');
  await page.getByText(/with \d+ readings? of each size would settle it, to ±\./).waitFor();
  await thumb.press(/^Sizes/);
  await thumb.press(/^Most clearance/);
  await thumb.key('.001');
  await thumb.press('Use it');
  // Right at the limit: no band is narrow enough.
  await page.getByText('No tool in Shop can settle it', { exact: false }).waitFor();
  expect(phone.trouble).toEqual(quiet);
  await phone.close();
  await server.stop();
});

test('what was struck out comes back by undo, also after a reload; the demo comes and goes in one press each', async () => {
  const server = await startServer();
  const phone = await openPhone();
  const { page } = phone;
  await page.goto(server.url);
  const thumb = thumbOn(page);
  await thumb.press('Show me with the demo job');
  await page.getByText('Outfit 7').first().waitFor();
  await thumb.press('Remove the demo jobs');
  await page.getByText('Outfit 7').first().waitFor({ state: 'detached' });
  await thumb.press('New job');
  await thumb.press('none of these');
  await thumb.press('Make the job');
  await thumb.press('New size');
  await thumb.press(/^Gap/);
  await thumb.key('.010');
  await thumb.press('Log reading');
  await page.getByText('logged, reading 1').waitFor();
  await thumb.press(/^Strike out last/i);
  await page.getByText('Struck out .010 in').first().waitFor();
  await page.reload();
  await thumb.press('Undo');
  await page.getByText('logged, reading 1').waitFor();
  expect(phone.trouble).toEqual(quiet);
  await phone.close();
  await server.stop();
});
