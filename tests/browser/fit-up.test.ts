import { afterAll, expect, test } from 'vitest';
import { expectInSight } from './in-sight.ts';
import { openPhone, removeTemporaryFolders, startServer, untilReadyOffline } from './launch.ts';
import { thumbOn, takeAsExact } from './thumb.ts';

afterAll(removeTemporaryFolders);

const SIZES = [
  { width: 320, height: 640 },
  { width: 390, height: 844 },
];

const quiet = { said: [], refused: [], strayed: [] };

test('without signal: a float that fails goes back to its worksheet, is put right, taken again, and holds', async () => {
  const server = await startServer();
  const phone = await openPhone();
  const { page } = phone;
  const thumb = thumbOn(page);
  await page.goto(server.url);
  await untilReadyOffline(page);
  await server.stop();

  await thumb.press('New job');
  await thumb.press('brake');
  await thumb.press('Make the job');
  await thumb.press('Decide');
  await thumb.press(/^Spacer stack/);
  await thumb.key('.970');
  await takenAsExact();
  await takeAsExact(thumb);
  await thumb.key('.960');
  await thumb.press('That’s all');
  // .970 − .960 = .010: by its sizes the float is right.
  await page.getByText(/^Good: float \.010, want \.008 to \.012; assumed: float\./).waitFor();

  await thumb.press(/^Float/);
  await page.getByText('Not done yet; want .008 to .012.').waitFor();
  await thumb.press('Log a reading');
  await thumb.press('Tool');
  await thumb.press(/^test indicator/);
  await logged(['.0042', '.0040', '.0041']);
  // What was found is in sight where it is logged, and on the page of the check on a small phone too.
  await expectInSight(page, ['Too tight: float .0041, want .008 to .012.']);
  await page.setViewportSize({ width: 320, height: 640 });
  await expectInSight(page, [/^too tight$/, 'Log reading']);
  await page.setViewportSize({ width: 390, height: 844 });
  await thumb.press('Back to the check');
  for (const size of SIZES) {
    await page.setViewportSize(size);
    await expectInSight(page, [/^Too tight: float \.0041/]);
  }
  await thumb.press('Back to the worksheet with this reading');
  // (.0042 + .0040 + .0041) / 3 = .0041, read directly: it replaces the sum.
  await page
    .getByText(/^Too tight: float \.0041, want \.008 to \.012; assumed: float\./)
    .first()
    .waitFor();
  await thumb.press('Why');
  await page.getByText(/^read directly: \.0041/).waitFor();

  await thumb.press(/^Float Too tight/);
  await thumb.press('Take it again');
  await page.getByText('To be taken again; want .008 to .012.').waitFor();
  await thumb.press('Log a reading');
  await logged(['.0098', '.0100', '.0099']);
  await thumb.press('Back to the check');
  await page.getByText('Good: float .0099, want .008 to .012.').waitFor();
  // The go that failed stays readable.
  expect(await page.getByText('Too tight: float .0041, want .008 to .012.').isVisible()).toBe(true);
  await thumb.press('Give the worksheet this reading');
  await page.getByRole('heading', { level: 1, name: 'Spacer stack' }).waitFor();
  await page
    .getByText(/^Good: float \.0099, want \.008 to \.012\./)
    .first()
    .waitFor();

  const fitUp = page.url().replace(/worksheets\/.*/, 'fit-up');
  await phone.kill();
  const again = await openPhone({ userDataDir: phone.userDataDir });
  await again.page.goto(fitUp);
  await again.page.getByRole('heading', { name: 'The check is good.' }).waitFor();
  expect(again.trouble).toEqual(quiet);
  await again.close();

  async function takenAsExact(): Promise<void> {
    await takeAsExact(thumb);
    await thumb.press('Use it');
  }

  async function logged(sizes: readonly string[]): Promise<void> {
    for (const [index, size] of sizes.entries()) {
      await thumb.key(size);
      await thumb.press('Log reading');
      await page.getByText(`logged, reading ${index + 1}`).waitFor();
    }
  }
});
