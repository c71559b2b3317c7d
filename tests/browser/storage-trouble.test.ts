import { Buffer } from 'node:buffer';
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeEach, expect, test } from 'vitest';
import { allSteps } from '../../src/store/opening/steps/all-steps.ts';
import { followingSettings } from '../../src/store/base/following-settings.ts';
import { closeAll, openForTest } from '../store/open-for-test.ts';
import { jpeg } from '../store/pictures-for-test.ts';
import { linesOf, sealed } from '../store/sealed-backup.ts';
import { fillWithEveryKind } from '../trials/every-kind.ts';
import { keptIn } from '../trials/kept-in.ts';
import { goTo } from './on-a-screen.ts';
import { thumbOn } from './thumb.ts';
import { openPhone, removeTemporaryFolders, startServer, type Phone } from './launch.ts';

const outfit = '/job/demo-outfit-7';
const pad = `${outfit}/readings/demo-link-bore`;
const full = 'The phone is full, so this was not kept. Everything logged before is still there.';
/** As a gauge types. */
const KEY_MS = 20;

let server: Awaited<ReturnType<typeof startServer>>;
let phone: Phone;

beforeEach(async () => {
  server = await startServer();
  phone = await switchedOn();
});
afterEach(async () => {
  if (thrown.length > 0) throw new Error('the app threw a database away');
  await phone.close();
  await server.stop();
});
afterAll(removeTemporaryFolders);

/** Names of databases the app itself has thrown away: never one. */
const thrown: string[] = [];

async function switchedOn(userDataDir?: string): Promise<Phone> {
  const opened = await openPhone({ ...(userDataDir && { userDataDir }) });
  await opened.context.exposeFunction('tellThrown', (name: string) => thrown.push(name));
  await opened.context.addInitScript(() => {
    IDBFactory.prototype.deleteDatabase = (name) => {
      const wire = Reflect.get(globalThis, 'tellThrown');
      if (typeof wire === 'function') wire(name);
      throw new Error('the app threw its data away');
    };
    // "Save as" and the share sheet wait for a person; without them files go to the downloads.
    Reflect.deleteProperty(globalThis, 'showSaveFilePicker');
    Reflect.deleteProperty(Navigator.prototype, 'canShare');
  });
  return opened;
}

async function withTheDemo(page: Page): Promise<void> {
  await page.goto(server.url);
  await page.getByRole('button', { name: 'Show me with the demo job' }).click();
  await page.getByText('Outfit 7').first().waitFor();
}

/** A phone with the demo on it whose disk is full from when it is switched on: set later, the browser still has room to give. */
async function fullPhone(before = withTheDemo): Promise<{ page: Page; makeRoom: () => Promise<void> }> {
  await before(phone.page);
  await phone.close();
  phone = await switchedOn(phone.userDataDir);
  const { page, context } = phone;
  const session = await context.newCDPSession(page);
  const { origin } = new URL(server.url);
  await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
  return {
    page,
    makeRoom: async () => {
      await session.send('Storage.overrideQuotaForOrigin', { origin });
    },
  };
}

const field = (page: Page) => page.locator('#size').inputValue();
const press = async (page: Page, name: string | RegExp) => thumbOn(page).press(name);

/** What the pad shows as the last reading logged. */
async function logged(page: Page, size: string): Promise<void> {
  await page.locator(`#size[placeholder="${size}"]`).waitFor();
  await page.getByText(/^logged, reading/).waitFor();
}

test('a full phone says so at every screen that keeps something, keeps what is typed, and goes on when there is room', async () => {
  const { page, makeRoom } = await fullPhone();
  await page.goto(`${server.url}#${pad}`);
  await page.locator('#size').waitFor();
  const before = await keptIn(page);
  await page.keyboard.type('.4481', { delay: KEY_MS });
  await press(page, 'Log reading');
  await page.getByText(`.4481 in was not logged. ${full}`).waitFor();
  await page.getByText('What is typed now stands on this screen only: the phone is full.').first().waitFor();
  expect(await field(page)).toBe('.4481');

  await goTo(page, `${outfit}/cuts/demo-cut-bushing/lathe`);
  await page.locator('#size').waitFor();
  await page.keyboard.type('.6253', { delay: KEY_MS });
  await page.keyboard.press('Enter');
  await page.getByText(`.6253 in was not logged. ${full}`).waitFor();
  expect(await field(page)).toBe('.6253');

  await goTo(page, `${outfit}/photos/jobs/demo-outfit-7/camera`);
  await press(page, 'Take it');
  await page.getByText(full).first().waitFor();
  await goTo(page, `${outfit}/cuts/demo-cut-ring`);
  await press(page, /^Strike out/);
  await page.getByText(full).first().waitFor();
  const after = await keptIn(page);
  for (const store of ['readings', 'cuts', 'photos', 'photoBytes', 'undo'])
    expect(after.stores[store]).toEqual(before.stores[store]);

  await goTo(page, '/shop');
  const download = page.waitForEvent('download');
  await press(page, 'Save a backup');
  await download;

  // What could not be written down stands in the window, on whichever screen it was typed.
  await goTo(page, pad);
  await page.locator('#size').waitFor();
  expect(await field(page)).toBe('.4481');

  await makeRoom();
  await press(page, 'Log reading');
  await logged(page, '.4481');
  await page.keyboard.type('.4', { delay: KEY_MS });
  const onlyHere = page.locator('.app-notice', { hasText: 'stands on this screen only' });
  await onlyHere.waitFor({ state: 'detached' });
  // With room again it is all written: the size at the lathe as well, which was not touched since.
  await page.goto(`${server.url}#${outfit}/cuts/demo-cut-bushing/lathe`);
  await page.reload();
  await page.locator('#size').waitFor();
  await expect.poll(() => field(page)).toBe('.6253');
});

/** One of each kind of write, at the screen where a finger does it; `above` where the screen has no line of its own. */
const WRITES: readonly {
  readonly what: string;
  readonly at: string;
  readonly above?: true;
  readonly by: (page: Page) => Promise<unknown>;
}[] = [
  { what: 'unit', at: '/shop', above: true, by: (page) => press(page, 'millimetres') },
  { what: 'demo', at: '/jobs', above: true, by: (page) => press(page, 'Remove the demo jobs') },
  {
    what: 'job',
    at: '/new-job',
    by: async (page) => {
      await press(page, 'none of these');
      await press(page, 'Make the job');
    },
  },
  {
    what: 'name of a job',
    at: `${outfit}/about`,
    by: (page) => page.getByLabel('Name', { exact: true }).fill('Outfit 8'),
  },
  { what: 'feature', at: `${outfit}/readings/new`, by: (page) => press(page, /^Bore/) },
  { what: 'reading struck out', at: `${pad}/all`, by: (page) => press(page, /^Strike out/) },
  {
    what: 'worksheet',
    at: `${outfit}/worksheets`,
    by: (page) => page.getByRole('button', { name: /^Bushing/ }).click(),
  },
  {
    what: 'step',
    at: `${outfit}/assembly/steps/new`,
    by: async (page) => {
      await page.getByLabel('What is done').fill('Fit it');
      await press(page, 'Add this step');
    },
  },
  {
    what: 'part',
    at: `${outfit}/assembly/parts/new`,
    by: async (page) => {
      await page.getByLabel('Name').fill('Outer spacer');
      await press(page, 'Add the part');
    },
  },
  {
    what: 're-check',
    at: `${outfit}/assembly/rechecks/new`,
    by: (page) => press(page, /^Cotter pins/),
  },
  { what: 'check', at: `${outfit}/fit-up/new/list`, by: (page) => press(page, /^Hose/) },
  {
    what: 'piece in the drawer',
    at: '/drawer/new',
    by: async (page) => {
      await page.locator('#size').waitFor();
      await page.keyboard.type('.010', { delay: KEY_MS });
      await press(page, 'Put it in');
    },
  },
  { what: 'tool', at: '/shop/tool/digital-caliper', by: (page) => press(page, 'Checked today') },
  {
    what: 'reading struck out on the pad',
    at: pad,
    above: true,
    by: (page) => press(page, /^Strike out last/),
  },
  {
    what: 'name of a worksheet',
    at: `${outfit}/worksheets/demo-link-slop/about`,
    by: (page) => page.getByLabel('Name', { exact: true }).fill('Link'),
  },
  { what: 'undo', at: '/shop', above: true, by: (page) => press(page, /^Undo/) },
  {
    what: 'sign-off',
    at: '/job/last/sign-off',
    by: async (page) => {
      await page.getByLabel('Signed by').fill('Jo B.');
      await press(page, 'Sign off');
    },
  },
];

test('on a full phone each kind of write says so where it is done, and nothing of any is half there', async () => {
  let last = '';
  const { page } = await fullPhone(async (before) => {
    await withTheDemo(before);
    await goTo(before, '/shop');
    await press(before, 'full sun');
    await goTo(before, '/new-job');
    await press(before, 'none of these');
    await press(before, 'Make the job');
    await before.getByRole('link', { name: 'New size' }).waitFor();
    last = await before.evaluate(() => /[^/]+$/.exec(location.hash.replace('/readings', ''))?.[0] ?? '');
  });
  await page.goto(`${server.url}#/shop`);
  await page.locator('h1').first().waitFor();
  // Where the fitter was last is kept the light way, and needs no words.
  const kept = async () => {
    const { settings, ...stores } = (await keptIn(page)).stores;
    return { ...stores, settings: settings?.filter(({ id }) => !followingSettings.has(id)) };
  };
  const before = await kept();
  for (const { what, at, by, above } of WRITES) {
    await goTo(page, at.replace('/last/', `/${last}/`));
    const said = page
      .locator(above ? '.app-notice' : '.app-place')
      .getByText('was not kept')
      .first();
    expect(await said.count()).toBe(0);
    await by(page);
    await expect.poll(async () => said.count(), { message: what }).toBe(1);
    expect({ what, ...(await kept()) }).toEqual({ what, ...before });
    if (above) await page.getByRole('button', { name: /^OK, put away: The phone is full/ }).click();
  }
  expect(phone.trouble.said).toEqual([]);
});

test('a file that the phone has no room for is refused whole, read or put in, and with room the same press puts it in', async () => {
  const store = await openForTest({ now: Date.now });
  await fillWithEveryKind(store, jpeg(24, 16));
  const buffer = Buffer.from(await sealed(await linesOf(store)));
  closeAll();
  const choose = (page: Page) =>
    page
      .getByLabel('Backup or job file')
      .setInputFiles({ name: 'backup.txt', mimeType: 'text/plain', buffer });
  const isRefused = async (page: Page) => page.getByRole('alert').getByText(full).waitFor();
  const reading = await fullPhone(async (page) => void (await page.goto(`${server.url}#/shop`)));
  await reading.page.goto(`${server.url}#/shop`);
  const before = await keptIn(reading.page);
  await choose(reading.page);
  await isRefused(reading.page);
  expect(await keptIn(reading.page)).toEqual(before);
  await reading.makeRoom();
  await choose(reading.page);
  await reading.page.getByRole('button', { name: 'Put it in' }).waitFor();

  const { page, makeRoom } = await fullPhone(async () => undefined);
  await page.goto(`${server.url}#/shop/restore`);
  await page.getByRole('button', { name: 'Put it in' }).waitFor();
  const waiting = await keptIn(page);
  await press(page, 'Put it in');
  await isRefused(page);
  expect(await keptIn(page)).toEqual(waiting);
  await makeRoom();
  await press(page, 'Put it in');
  await page.getByText('The file is in:').waitFor();
});

test('a database that lost one of its stores is not opened: which one is said, and the rest is saved from there', async () => {
  const { page } = phone;
  await page.goto(`${server.url}not/the-app`);
  await page.evaluate(
    (version) =>
      new Promise<void>((done) => {
        const opening = indexedDB.open('slipfit', version);
        opening.addEventListener('upgradeneeded', () => {
          for (const name of ['jobs', 'features', 'readings', 'settings', 'device'])
            opening.result.createObjectStore(name, { keyPath: 'id' }).put({ id: 'a', name: 'Outfit 7' });
        });
        opening.addEventListener('success', () => {
          opening.result.close();
          done();
        });
      }),
    allSteps.length,
  );
  const before = await keptIn(page);
  await page.goto(server.url);
  await page
    .getByText('The browser has damaged your data: the place of each part is gone or broken.')
    .waitFor();
  const download = page.waitForEvent('download');
  await press(page, 'Save a backup');
  const file = readFileSync(await (await download).path(), 'utf8');
  expect(file.match(/^\{"unreadable":.*Outfit 7/gm)).toHaveLength(4); // all but the phone's own notes
  expect(await keptIn(page)).toEqual(before);
});

/** Before the app's own code runs, in every page of this phone. */
async function browserThat(does: keyof typeof BROWSERS): Promise<Page> {
  await phone.context.addInitScript(BROWSERS[does]);
  return phone.page;
}

const BROWSERS = {
  'has no databases': () => Object.defineProperty(globalThis, 'indexedDB', { value: undefined }),
  'throws at the word': () =>
    Object.defineProperty(globalThis, 'indexedDB', {
      get: () => {
        throw new DOMException('denied', 'SecurityError');
      },
    }),
  'forbids databases': () => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('denied', 'SecurityError');
    };
  },
  // As in some private windows.
  'takes no writing': () => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('A mutation operation was attempted', 'InvalidStateError');
    };
  },
  'never answers': () => {
    // Called with its own factory below.
    // oxlint-disable-next-line typescript/unbound-method
    const open = IDBFactory.prototype.open;
    IDBFactory.prototype.open = function silent(name, version) {
      const request = open.call(this, name, version);
      request.addEventListener = () => undefined;
      return request;
    };
  },
} as const;

test.each([
  { does: 'has no databases', says: 'This browser lets no page keep anything here' },
  { does: 'throws at the word', says: 'This browser lets no page keep anything here' },
  { does: 'forbids databases', says: 'This browser lets no page keep anything here' },
  { does: 'takes no writing', says: 'The browser could not open your data. Nothing was deleted.' },
  { does: 'never answers', says: 'The browser does not answer when asked for your data. Nothing was lost.' },
] as const)(
  'a browser that $does: that is said, no list looks empty, and the charts work',
  async ({ does, says }) => {
    const page = await browserThat(does);
    await page.goto(`${server.url}#/jobs`);
    await page.getByText(says).waitFor();
    expect(await page.getByRole('alert').count()).toBe(1);
    expect(await page.getByText(/no jobs|demo job/i).count()).toBe(0);

    await page.getByRole('link', { name: 'To the charts' }).click();
    await page.locator('#size').waitFor();
    await page.keyboard.type('1/2', { delay: KEY_MS });
    await page.getByText('12.7 mm').first().waitFor(); // 1/2 × 25.4, exactly
    await page.getByRole('link', { name: 'More charts' }).click();
    await page.getByRole('link', { name: /^Fits/ }).click();
    await page.getByRole('heading', { name: 'Fits' }).waitFor();
    await page.getByRole('link', { name: /^Nothing is kept just now/ }).click();
    await page.getByText(says).waitFor();
    expect(phone.trouble.refused).toEqual([]);
  },
);

test('a browser that has promised nothing is reported so in Shop', async () => {
  const { page } = phone;
  await page.goto(`${server.url}#/shop`);
  await page.getByText('This browser has not promised to keep them').waitFor();
  expect(await page.evaluate(async () => navigator.storage.persisted())).toBe(false);
});

test('data that the browser throws away under the open app is missed at once, not drawn as an empty shop', async () => {
  const { page, context } = phone;
  await withTheDemo(page);
  await goTo(page, pad);
  await page.locator('#size').waitFor();
  await page.keyboard.type('.4481', { delay: KEY_MS });
  const session = await context.newCDPSession(page);
  const { origin } = new URL(server.url);
  await session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' });
  await page.getByText('The browser has thrown Slipfit’s data away while it was open.').first().waitFor();
  expect(await field(page)).toBe('.4481');
  await press(page, 'Log reading');
  await page.getByText('.4481 in was not logged. The browser has thrown Slipfit’s data away').waitFor();
  expect(await field(page)).toBe('.4481');
  await page.evaluate(() => (location.hash = '#/jobs'));
  await page.getByRole('alert').getByText('thrown Slipfit’s data away').waitFor();
  expect(await page.getByRole('button', { name: 'Show me with the demo job' }).count()).toBe(0);
});

test('data that the browser lost while the app was closed is told of at the next start, once', async () => {
  await withTheDemo(phone.page);
  await phone.page.reload(); // a start at which there are jobs
  await phone.page.getByText('Outfit 7').first().waitFor();
  await phone.page.goto(`${server.url}not/the-app`);
  const session = await phone.context.newCDPSession(phone.page);
  const { origin } = new URL(server.url);
  await session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' });
  await phone.page.goto(server.url);
  await phone.page.getByText('The browser has lost the records that were here on').first().waitFor();
  await press(phone.page, 'Add it');
  await phone.page.getByRole('heading', { name: 'Add a file' }).waitFor();
  await phone.page.reload();
  await phone.page.getByRole('heading', { name: 'Add a file' }).waitFor();
  expect(await phone.page.getByText('The browser has lost the records').count()).toBe(0);
});

test('a new phone, and one whose jobs were removed by hand, are told of no loss', async () => {
  const { page } = phone;
  await withTheDemo(page);
  await page.reload();
  await press(page, 'Remove the demo jobs');
  await page.getByRole('button', { name: 'Show me with the demo job' }).waitFor();
  await page.reload();
  await page.getByRole('button', { name: 'Show me with the demo job' }).waitFor();
  expect(await page.getByText('The browser has lost the records').count()).toBe(0);
});

test('a line to the data that the browser drops is taken up again; where it can’t be, the size stays on the pad', async () => {
  const { page, context } = phone;
  await context.addInitScript(() => {
    const held: IDBDatabase[] = [];
    // Called with its own factory below.
    // oxlint-disable-next-line typescript/unbound-method
    const open = IDBFactory.prototype.open;
    IDBFactory.prototype.open = function noted(name, version) {
      if (Reflect.get(globalThis, 'refusing') === true)
        throw new DOMException('Connection to Indexed Database server lost', 'UnknownError');
      const request = open.call(this, name, version);
      request.addEventListener('success', () => held.push(request.result));
      return request;
    };
    Reflect.set(globalThis, 'drop', () => held.splice(0).forEach((db) => db.close()));
  });
  const drop = async (refusing: boolean) =>
    page.evaluate((refused) => {
      Reflect.set(globalThis, 'refusing', refused);
      Reflect.apply(Reflect.get(globalThis, 'drop'), undefined, []);
    }, refusing);
  await withTheDemo(page);
  await goTo(page, pad);
  await page.locator('#size').waitFor();
  await drop(false);
  await page.keyboard.type('.4481', { delay: KEY_MS });
  await press(page, 'Log reading');
  await logged(page, '.4481');

  await drop(true);
  await page.keyboard.type('.4482', { delay: KEY_MS });
  await press(page, 'Log reading');
  await page.getByText('.4482 in was not logged. The browser dropped the line to your data').waitFor();
  expect(await field(page)).toBe('.4482');

  await drop(false);
  await press(page, 'Log reading');
  await logged(page, '.4482');
});
