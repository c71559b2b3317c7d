import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openPhone, removeTemporaryFolders, startServer, type Phone } from './launch.ts';
import { follow, goTo, press, settled } from './on-a-screen.ts';

/** What a link, a note or a wet thumb may put behind the #: never a blank page, never a loop, never another job's records. */

const outfit = '#/job/demo-outfit-7';
const trailer = '#/job/demo-trailer-hub';
const notHere = 'Not here';

let server: Awaited<ReturnType<typeof startServer>>;
let phone: Phone;

beforeAll(async () => {
  server = await startServer();
  phone = await openPhone();
  await phone.context.addInitScript(() =>
    addEventListener('hashchange', () =>
      Reflect.set(globalThis, 'moves', Number(Reflect.get(globalThis, 'moves')) + 1),
    ),
  );
  await phone.page.goto(server.url);
  await press(phone.page, 'Show me with the demo job');
  await phone.page.getByText('Outfit 7').first().waitFor();
});
afterAll(async () => {
  await phone.close();
  await server.stop();
  await removeTemporaryFolders();
});

/** Each with the heading that stands there. */
const odd: readonly (readonly [hash: string, heading: string])[] = [
  ['##', 'Jobs'],
  ['#///jobs', 'Jobs'],
  ['#/%00', 'Jobs'],
  ['#/%E0%A4%A', 'Jobs'],
  ['#javascript:alert(1)', 'Jobs'],
  [`#/${'a/'.repeat(20_000)}`, 'Jobs'],
  [`#/job/${'x'.repeat(100_000)}`, notHere],
  ['#/job/%00', notHere],
  ['#/job/__proto__', notHere],
  [`${outfit}\u202e/readings`, notHere],
  ['#/charts/__proto__', 'Sizes and drills'],
  [`${outfit}/${'y/'.repeat(500)}`, 'Outfit 7'],
  [`${outfit}/../../shop`, 'Outfit 7'],
  [`${outfit}/readings/demo-cut-ring`, notHere],
  [`${outfit}/worksheets/demo-link-bore`, notHere],
  [`${outfit}/worksheets/demo-link-slop/__proto__`, 'Shock link on its bolt'],
  [`${outfit}/cuts/demo-link-bore/lathe`, notHere],
  [`${outfit}/fit-up/demo-link-bore`, notHere],
  [`${outfit}/assembly/demo-link-bore`, notHere],
  [`${outfit}/photos/__proto__/x`, notHere],
  [`${outfit}/sheet/signed/demo-cut-ring`, notHere],
  [`${outfit}/money/demo-cut-ring`, notHere],
  [`${trailer}/photos/cuts/demo-cut-ring/camera`, notHere],
  [`${trailer}/photos/jobs/demo-outfit-7`, notHere],
  ['#/drawer/piece/demo-cut-ring', notHere],
  ['#/shop/tool/__proto__', notHere],
  ['#/shop/constructor', 'Shop'],
  ['#/job/no-such/readings/new', notHere],
  ['#/job/no-such/cuts/new', notHere],
];

test('an address that leads nowhere shows a place with a way on, at once and after a reload', async () => {
  const { page } = phone;
  for (const [hash, heading] of odd) {
    expect({ hash, ...(await shownAt(page, hash)) }).toEqual({
      hash,
      heading,
      moves: 1,
      hasWayOn: true,
      isWide: false,
    });
  }
  for (const hash of [`#/job/${'x'.repeat(100_000)}`, '#/%E0%A4%A']) {
    await shownAt(page, hash);
    await page.reload();
    await settled(page);
    expect(await page.locator('.app-place').innerText()).toMatch(/\S{3}/);
  }
  expect(phone.trouble).toEqual({ said: [], refused: [], strayed: [] });
});

test('a thing named under another job than its own is shown under its own, and its way back leads there', async () => {
  const { page } = phone;
  for (const [under, own] of [
    ['readings/demo-link-bore', 'readings/demo-link-bore'],
    ['worksheets/demo-link-slop/cuts', 'worksheets/demo-link-slop'],
    ['cuts/demo-cut-ring/name', 'cuts/demo-cut-ring'],
    ['cuts/demo-cut-ring/lathe/measured', 'cuts/demo-cut-ring/lathe'],
  ] as const) {
    await goTo(page, `${trailer.slice(1)}/${under}`);
    await expect.poll(async () => hashOf(page)).toBe(`${outfit}/${own}`);
  }
  expect(phone.trouble).toEqual({ said: [], refused: [], strayed: [] });
});

test('of a job that was removed no place can be worked in, and each leads back to the jobs', async () => {
  const { page } = phone;
  await goTo(page, `${outfit.slice(1)}/about`);
  await press(page, 'Remove this job');
  for (const place of [
    '',
    '/readings/new',
    '/readings/demo-link-bore',
    '/worksheets/demo-link-slop',
    '/cuts/demo-cut-ring',
    '/cuts/demo-cut-ring/again',
    '/cuts/demo-cut-ring/lathe/measured',
    '/cuts/new',
    '/assembly/odometer',
    '/photos/cuts/demo-cut-ring/camera',
  ]) {
    expect({ place, ...(await shownAt(page, `${outfit}${place}`)) }).toMatchObject({
      place,
      heading: notHere,
      moves: 1,
    });
  }
  await follow(page, 'To the jobs');
  await page.getByText('Boat-trailer hub').first().waitFor();
  expect(phone.trouble).toEqual({ said: [], refused: [], strayed: [] });
});

async function shownAt(page: Page, hash: string) {
  await page.evaluate((to) => {
    Reflect.set(globalThis, 'moves', 0);
    location.hash = to;
  }, hash);
  await settled(page);
  return page.evaluate(() => ({
    heading: document.querySelector('h1')?.textContent,
    moves: Number(Reflect.get(globalThis, 'moves')),
    hasWayOn: document.querySelector('.app-place a, .app-place button') !== null,
    isWide: document.documentElement.scrollWidth > innerWidth,
  }));
}

async function hashOf(page: Page): Promise<string> {
  return page.evaluate(() => location.hash);
}
