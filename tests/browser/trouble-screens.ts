import type { Page as PageOfChromium } from 'playwright-core';
import type { AppScreen } from './every-screen.ts';
import type { Page } from './hands/hands.ts';
import { chooseInShop, goTo, press, settled, typeSize } from './on-a-screen.ts';

const outfit = '/job/demo-outfit-7';
const pad = `${outfit}/readings/demo-link-bore`;
const lathe = (cut: string) => `${outfit}/cuts/demo-cut-${cut}/lathe`;

/** A full disk, a new version that waits, and records the browser threw away; in this order, as the last can't be undone. */
export const inTrouble: readonly AppScreen[] = [
  {
    name: 'pad-phone-full',
    place: pad,
    arrange: async (page) => {
      await takeNoWriting(page);
      await typeSize(page, '.4488');
      await press(page, 'Log reading');
      await page.locator('.app-notice', { hasText: 'stands on this screen only' }).waitFor();
    },
    leave: takeWritingAgain,
  },
  {
    name: 'lathe-phone-full',
    place: lathe('ring'),
    arrange: async (page) => {
      await takeNoWriting(page);
      await typeSize(page, '1.5185');
      await page.keyboard.press('Enter');
      await page.getByText('The phone is full', { exact: false }).first().waitFor();
    },
    leave: async (page) => {
      await takeWritingAgain(page);
      await typeSize(page, '');
      await page.locator('.app-notice').waitFor({ state: 'detached' });
      await goTo(page, pad);
      await typeSize(page, '');
    },
  },
  {
    name: 'jobs-new-version-waits',
    place: '/jobs',
    arrange: async (page) => {
      await page.evaluate(() => {
        const registration = ServiceWorkerRegistration.prototype;
        Object.defineProperty(registration, 'waiting', { get: () => ({ state: 'installed' }) });
        registration.update = function looked() {
          return Promise.resolve(this);
        };
        document.dispatchEvent(new Event('visibilitychange'));
      });
      await page.getByText('A new version is ready.').first().waitFor();
    },
  },
  { name: 'pad-new-version-waits', place: pad },
  {
    name: 'lathe-new-version-waits',
    place: lathe('spacer'),
    leave: async (page) => {
      await page.getByRole('button', { name: /^OK, put away/ }).click();
      await page.reload(); // a start at which there are jobs, with the browser as it was
      await settled(page);
    },
  },
  {
    name: 'pad-records-thrown-away',
    inChromiumOnly: true,
    place: pad,
    arrange: async (page) => {
      await page.locator('#size').waitFor();
      await throwAway(page);
      await page.getByText('thrown Slipfit’s data away', { exact: false }).first().waitFor();
    },
  },
  { name: 'cannot-open', inChromiumOnly: true, place: '/jobs' },
  { name: 'cannot-open-charts', inChromiumOnly: true, place: '/charts/drills' },
  {
    name: 'records-lost',
    inChromiumOnly: true,
    arrange: async (page) => {
      await page.goto(await page.evaluate(() => location.href.replace(/#.*/, '#/jobs')));
      await page.reload();
      await page.getByText('The browser has lost the records', { exact: false }).first().waitFor();
    },
  },
];

/** What is read most, black on white. */
export const inFullSun: readonly AppScreen[] = [
  { name: 'jobs-sun', place: '/shop', arrange: (page) => inTheSun(page, '/jobs') },
  { name: 'pad-sun', place: pad },
  { name: 'stack-sun', place: `${outfit}/worksheets/demo-bracket-float` },
  { name: 'hole-and-pin-sun', place: `${outfit}/worksheets/demo-link-slop` },
  { name: 'hole-and-pin-too-close-sun', place: '/job/demo-trailer-hub/worksheets/demo-bearing-fit' },
  { name: 'bearing-seat-good-sun', place: '/job/demo-trailer-hub/worksheets/demo-hub-bearings' },
  { name: 'cuts-sun', place: `${outfit}/cuts` },
  { name: 'fit-up-sun', place: `${outfit}/fit-up` },
  { name: 'assembly-sun', place: `${outfit}/assembly` },
  { name: 'lathe-sun', place: lathe('ring') },
  {
    name: 'lathe-past-the-limit-sun',
    place: lathe('bushing'),
    arrange: async (page) => {
      await typeSize(page, '.5625');
      await page.keyboard.press('Enter');
      await page.getByText('No good').waitFor();
    },
    leave: (page) => chooseInShop(page, 'the shop'),
  },
];

async function inTheSun(page: Page, place: string): Promise<void> {
  await press(page, 'full sun');
  await goTo(page, place);
}

/** As a browser does when the disk is full: every write is refused. */
async function takeNoWriting(page: Page): Promise<void> {
  await page.evaluate(() => {
    const writes = Object.getOwnPropertyDescriptor(IDBObjectStore.prototype, 'put');
    Reflect.set(globalThis, 'putBefore', writes);
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
  });
}

async function takeWritingAgain(page: Page): Promise<void> {
  await page.evaluate(() => {
    Object.defineProperty(IDBObjectStore.prototype, 'put', Reflect.get(globalThis, 'putBefore'));
  });
}

async function throwAway(page: Page): Promise<void> {
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- only Chromium's driver can, and only there is it asked to
  const here = page as PageOfChromium;
  const session = await here.context().newCDPSession(here);
  const { origin } = new URL(here.url());
  await session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' });
}
