import type { Page } from 'playwright-core';
import { afterAll, expect, test } from 'vitest';
import { settled, spoken } from './on-a-screen.ts';
import { keysOn, type Keys } from './keys.ts';
import { openPhone, removeTemporaryFolders, startServer, untilReadyOffline } from './launch.ts';

afterAll(removeTemporaryFolders);

/** Between the keys of a person; faster ones, with a Tab behind them, are a gauge's. */
const HAND_MS = 120;
/** A long walk on a busy machine; it is no measure of speed. */
const PATIENCE_MS = 240_000;
const quiet = { said: [], refused: [], strayed: [] };

/** What a screen reader is given to read. */
const tree = (page: Page) => page.locator('#app').ariaSnapshot();

test(
  'a brake side goes from readings to a signed sheet by the keyboard alone, and each verdict is a sentence',
  async () => {
    const server = await startServer();
    const phone = await openPhone();
    const { page } = phone;
    await page.goto(server.url);
    await untilReadyOffline(page);
    await server.stop();
    const keys = keysOn(page);

    await newJob(page, keys);
    await worksheet(page, keys);
    await atTheLathe(page, keys);
    await fitUp(page, keys);
    await putTogether(page, keys);
    expect(phone.trouble).toEqual(quiet);
    await phone.close();
  },
  PATIENCE_MS,
);

/** A job that touches the brake, and its spacer read three times. */
async function newJob(page: Page, keys: Keys): Promise<void> {
  await keys.press('New job');
  // The screen's name has the focus, so that it is read out and Tab goes on from there.
  expect(await page.evaluate(() => document.activeElement?.localName)).toBe('h1');
  await keys.tabTo('Name');
  await page.keyboard.type('Brake side');
  await keys.press('brake');
  await keys.press('Make the job');
  await keys.press('New size');
  await keys.press(/^Length/);
  await keys.press('Tool', 'back');
  await keys.press(/^0–1 in micrometer/);
  for (const [index, size] of ['.3850', '.3851', '.3850'].entries()) {
    await keys.enter(size);
    await expect
      .poll(spoken(page))
      .toMatch(new RegExp(`^Logged ${size} in, reading ${index + 1} of Length 1`));
  }
  await keys.press('Back to the readings', 'back');
  await keys.press('Back to the job', 'back');
}

/** A typed size with the tool that read it: none is carried over from the readings. */
async function byMicrometer(keys: Keys, size: string): Promise<void> {
  await keys.press(/^Read with: /);
  await keys.press(/^0–1 in micrometer/);
  await keys.enter(size);
}

async function worksheet(page: Page, keys: Keys): Promise<void> {
  await keys.press(/^Decide/);
  await keys.press(/^Spacer stack/);
  await byMicrometer(keys, '.970');
  await byMicrometer(keys, '.583');
  await keys.press(/^Length 1/, 'back');
  await keys.press('That’s all');
  await keys.press('Which may be cut?');
  await keys.press(/^Length 1[^:]*$/);
  // .970 − .583 − .385 = .002; for a float of .010 the spacer is .385 − .008 = .377
  const read = await tree(page);
  expect(read).toContain('img "no good"');
  expect(read).toContain('Too tight: float .002, want .008 to .012; assumed: float.');
  expect(read).toContain('heading "Face Length 1"');
  expect(read).toContain('.385 → .377');
  await keys.press('Cut it');
  await keys.press('Put on the cut list');
  await expect.poll(spoken(page)).toBe('1 cut on the cut list.');
}

/** Cut too far, said at once; a new part made of it, to size, and its size given to the worksheet. */
async function atTheLathe(page: Page, keys: Keys): Promise<void> {
  await keys.press(/^To the lathe/);
  expect(await tree(page)).toContain('textbox "left to take, on length: .008 in.');
  await keys.enter('.3800');
  await expect.poll(spoken(page)).toMatch(/^Logged \.3800 in/);
  await keys.enter('.3730');
  const stop = page.locator('#past-limit');
  expect(await stop.getAttribute('aria-live')).toBe('assertive');
  // .3753, the limit the worksheet gave, less .3730
  expect(await stop.textContent()).toMatch(/^Stop\. \.373 in is \.0023 in past the limit of \.3753 in\./);
  const read = await tree(page);
  expect(read).toContain('region "Ways out"');
  expect(read).toContain('button "Make a new part');
  await keys.press(/^Make a new part/);
  await keys.press(/^Brake side/);
  await expect.poll(spoken(page)).toBe('Length 1, faced to length is on the cut list of Brake side again.');
  expect(await stop.textContent()).toBe('');
  await keys.press(/^To the lathe/);
  await keys.enter('.3850');
  await keys.enter('.3768');
  await expect.poll(spoken(page)).toMatch(/^Logged \.3768 in(, from the gauge)?\. To size/);
  await keys.press('Give the worksheet this size');
  await expect.poll(spoken(page)).toBe('Worked out with .3768 in now.');
  // .970 − .583 − .3768
  expect(await tree(page)).toContain('Good: float .0102, want .008 to .012; assumed: float.');
}

/** Reads too tight on the machine, goes back, is cut once more, and holds. */
async function fitUp(page: Page, keys: Keys): Promise<void> {
  await keys.press(/^Float ?want/);
  await keys.press('Log a reading');
  await keys.press('Tool', 'back');
  await keys.press(/^test indicator/);
  for (const size of ['.0041', '.0040', '.0041']) await keys.enter(size);
  await keys.press('Back to the check', 'back');
  expect(await tree(page)).toContain('Too tight: float .0041, want .008 to .012.');
  await keys.press('Back to the worksheet with this reading');
  // .3768 − (.0100 − .0041) = .3709, left full to the dial's next half thou
  expect(await tree(page)).toContain('.3768 → .371');
  await keys.press('Cut it');
  await keys.press('Put on the list as well');
  await keys.press(/^To the lathe/);
  await keys.enter('.3710');
  await keys.press('Give the worksheet this size');
  expect(await tree(page)).toContain('The gap was read before this cut: Length 1 to .371 in. Read it again.');
  await keys.press(/^To the check/);
  await keys.press('Take it again');
  await keys.press('Log a reading');
  for (const size of ['.0099', '.0100', '.0099']) await keys.enter(size);
  await keys.press('Back to the check', 'back');
  await keys.press('Give the worksheet this reading');
  expect(await tree(page)).toContain('Good: float .0099, want .008 to .012.');
}

async function putTogether(page: Page, keys: Keys): Promise<void> {
  await keys.press('Back to the worksheets', 'back');
  await keys.press('Back to the job', 'back');
  await keys.press(/^Put together/);
  await keys.press('Add a part');
  await keys.tabTo('Name');
  await page.keyboard.type('Outer spacer');
  await keys.press('mock-up');
  await keys.press('Add the part');
  await keys.press('Add steps');
  await keys.tabTo('What is done');
  await page.keyboard.type('Tighten the caliper bolts');
  await keys.press('Add this step');
  await keys.press(/^Torque/);
  await page.keyboard.type('24', { delay: HAND_MS });
  await keys.press('lbf·ft');
  await keys.press('Use it');
  await keys.tabTo('Manual and page');
  await page.keyboard.type('Service manual, page 7-12');
  await keys.press('Use it');
  await keys.press(/^Back/, 'back');
  await keys.press('Sign-off');
  const stopped = await tree(page);
  expect(stopped).toContain('2 things stand in the way of signing.');
  expect(stopped).toContain('link "Outer spacer is still a mock-up Fit the real part');
  expect(stopped).toContain('link "Step 1 is not done Tighten the caliper bolts stops the signing"');
  await keys.press(/^Outer spacer is still a mock-up/);
  await keys.press('Outer spacer: swapped for the real part');
  await keys.press(/^Back/, 'back');
  await keys.press('Step 1 is done');
  await keys.tabTo('Name or initials');
  await page.keyboard.type('Jo B.');
  await keys.press('Use this name, step done');
  await keys.press('Sign-off');
  expect(await tree(page)).toContain('Nothing stands in the way of signing.');
  await keys.press('Sign off');
  await page.getByRole('heading', { name: 'Brake side, signed' }).waitFor();
  await settled(page);
  await expect.poll(spoken(page)).toBe('Signed off by Jo B.');
  const sheet = await tree(page);
  for (const figure of ['.3710 in', '.3730 in', '.0041 in', '.0099 in', '24 lbf·ft', 'page 7-12'])
    expect(sheet).toContain(figure);
}
