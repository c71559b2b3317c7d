import { afterAll, beforeAll, expect, test } from 'vitest';
import { settled } from './on-a-screen.ts';
import { openPhone, removeTemporaryFolders, startServer, type Phone } from './launch.ts';
import { atAnEmptyPad, loggedSizes } from './reading-pad-page.ts';

/** What a wet thumb, a scanner or a copied text may put into the field, with the words that tell it from all the others. */
const entries: readonly (readonly [typed: string, says: RegExp])[] = [
  ['7/0', /bottom of a fraction can't be zero/i],
  ['1/3', /1\/3 is not a shop fraction/],
  ['..5', /two decimal points/],
  ['1e9', /power of ten/],
  ['٣', /digit from another script/],
  ['1234567890123456789012345678901234567890', /40 digits/],
  ['', /Nothing is typed yet/],
  ['🔧', /does not belong in a size/],
  ['1,234.5', /a comma and a point/],
  ['0x10', /computer notation/],
  ['5-', /minus stands behind/],
  ['/8', /top of the fraction is missing/],
];

const answers = new Set<string | null>();
let server: Awaited<ReturnType<typeof startServer>>;
let phone: Phone;

beforeAll(async () => {
  server = await startServer();
  phone = await openPhone({ width: 320, height: 640 });
  await atAnEmptyPad(phone, server.url);
});
afterAll(async () => {
  await phone.close();
  await server.stop();
  await removeTemporaryFolders();
});

test.each(entries)(
  '“%s” is refused in its own words, stays in the field, and is there after a reload',
  async (typed, says) => {
    const { page } = phone;
    const field = page.locator('#size');
    await field.fill('');
    await page.keyboard.type(typed);
    await page.getByRole('button', { name: 'Log reading' }).click();
    const answer = await page.getByRole('alert').textContent();
    expect(answer).toMatch(says);
    answers.add(answer);
    const { y = -1, height = 0 } = (await page.getByRole('alert').boundingBox()) ?? {};
    expect(y).toBeGreaterThanOrEqual(0);
    expect(y + height).toBeLessThan(640);
    expect(await field.inputValue()).toBe(typed);
    expect(await page.locator('body').innerText()).not.toMatch(/NaN|undefined|Infinity|\[object/);
    await page.reload();
    await settled(page);
    await expect.poll(() => field.inputValue()).toBe(typed);
    expect(await page.locator('body').innerText()).not.toMatch(/NaN|undefined|Infinity|\[object/);
  },
);

test('no two of them were answered alike, and none was logged', async () => {
  expect(answers.size).toBe(entries.length);
  expect(await loggedSizes(phone.page)).toEqual([]);
  expect(phone.trouble).toEqual({ said: [], refused: [], strayed: [] });
});
