import type { Page } from 'playwright-core';
import { afterAll, expect, test } from 'vitest';
import { goTo, settled, typeSize } from './on-a-screen.ts';
import { openPhone, removeTemporaryFolders, startServer, untilReadyOffline } from './launch.ts';
import { logFeature, thumbOn } from './thumb.ts';

afterAll(removeTemporaryFolders);

const quiet = { said: [], refused: [], strayed: [] };

/** Where the job that is open lives, `/job/<id>`. */
async function jobOf(page: Page): Promise<string> {
  const hash = await page.evaluate(() => location.hash);
  return /#(\/job\/[^/]+)/.exec(hash)?.[1] ?? '';
}

/** The sheet as a reader sees it. */
async function sheetText(page: Page): Promise<string> {
  await settled(page);
  return page.locator('article.sheet').innerText();
}

test('a brake job goes together, is caught with its mock-up in, and what is signed stays as it was, all without signal', async () => {
  const server = await startServer();
  const phone = await openPhone();
  const { page } = phone;
  await page.goto(server.url);
  await untilReadyOffline(page);
  await server.stop();
  const thumb = thumbOn(page);

  await thumb.press('New job');
  await page.getByLabel('Name').fill('Brake side');
  await thumb.press('brake');
  await thumb.press('Make the job');
  await logFeature(page, thumb, 'Length', ['1.1381']);
  const job = await jobOf(page);

  // A mock-up, a step with the manual's torque, and a step that is only words.
  await goTo(page, `${job}/assembly/parts/new`);
  await page.getByLabel('Name').fill('Outer spacer');
  await thumb.press('mock-up');
  await thumb.press('Add the part');
  await thumb.press('Add steps');
  await page.getByLabel('What is done').fill('Tighten the caliper bolts');
  await thumb.press('Add this step');
  await thumb.press(/^Torque/);
  await typeSize(page, '24');
  await thumb.press('lbf·ft');
  await thumb.press('Use it');
  await page.getByLabel('Manual and page').fill('Service manual, page 7-12');
  await thumb.press('Use it');
  await page.getByRole('heading', { name: 'Step 1 of 1' }).waitFor();
  await goTo(page, `${job}/assembly`);
  // 24 × 1.355818 = 32.54 N·m and 24 × 12 = 288 (NIST SP 811).
  await page.getByText('32.5 N·m · 288 lbf·in').waitFor();

  // The sign-off catches the mock-up, the step and the check that nobody made.
  await thumb.press('Sign-off');
  await page.getByText('3 things stand in the way of signing.').waitFor();
  await thumb.press(/^Outer spacer is still a mock-up/);
  await thumb.press('Outer spacer: swapped for the real part');
  await page.getByRole('button', { name: 'The mock-up is in after all' }).waitFor();
  await goTo(page, `${job}/assembly`);
  await thumb.press('Step 1 is done');
  await page.getByLabel('Name or initials').fill('Jo B.');
  await thumb.press('Use this name, step done');
  await page.getByRole('heading', { name: 'The one step is done' }).waitFor();
  await goTo(page, `${job}/sign-off`);
  await page.getByText('One thing stands in the way of signing.').waitFor();
  await thumb.press(/^No fit-up check at all/);
  await goTo(page, `${job}/fit-up/new/list`);
  await thumb.press(/^Hose and cables at both full locks/);
  await thumb.press('Good');
  await settled(page);

  await goTo(page, `${job}/assembly/rechecks/new`);
  await thumb.press(/^Cotter pins, paint marks, leaks/);
  await page.getByText('Not yet: 7 days to go.').waitFor();
  await goTo(page, `${job}/sign-off`);
  await page.getByText('Nothing stands in the way of signing.').waitFor();
  expect(await page.getByLabel('Signed by').inputValue()).toBe('Jo B.');
  await thumb.press('Sign off');
  await page.getByRole('heading', { name: 'Brake side, signed' }).waitFor();
  const signedAt = await page.evaluate(() => location.hash);
  const signed = await sheetText(page);
  for (const figure of ['Signed off by Jo B.', '1.1381', '24 lbf·ft', 'Service manual, page 7-12'])
    expect(signed).toContain(figure);

  // Another reading changes the job's sheet, not the signed one; after the phone was switched off too.
  await goTo(page, `${job}/readings`);
  await page.locator('a.row').first().click();
  await typeSize(page, '1.1402');
  await thumb.press('Log reading');
  await page.getByText('logged, reading 2').waitFor();
  await phone.kill();
  const again = await openPhone({ userDataDir: phone.userDataDir });
  await again.page.goto(`${server.url}${signedAt}`);
  await again.page.getByRole('heading', { name: 'Brake side, signed' }).waitFor();
  expect(await sheetText(again.page)).toBe(signed);
  await goTo(again.page, `${job}/sheet`);
  expect(await sheetText(again.page)).toContain('1.1402');
  await again.page.getByRole('link', { name: /^Signed off .* by Jo B\./ }).waitFor();
  await goTo(again.page, '/jobs');
  await again.page.getByText(/signed off/).waitFor();
  expect(phone.trouble).toEqual(quiet);
  expect(again.trouble).toEqual(quiet);
  await again.close();
});
