import { afterAll, beforeAll, expect, test } from 'vitest';
import { openPhone, removeTemporaryFolders, startServer, untilReadyOffline, type Phone } from './launch.ts';

let server: Awaited<ReturnType<typeof startServer>>;

beforeAll(async () => {
  server = await startServer();
});
afterAll(async () => {
  await server.stop();
  await removeTemporaryFolders();
});

const ROW = 'main li a.row';

/** The phone switched on again, with every state of its list noted from the first one on. */
async function again(before: Phone): Promise<Phone> {
  const phone = await openPhone({ userDataDir: before.userDataDir });
  await phone.page.addInitScript((row) => {
    const states: string[] = [];
    Reflect.set(globalThis, 'states', states);
    const note = () => {
      const by = document.querySelector('[data-painted]') ? 'painted' : 'app';
      const state = `${by}: ${document.querySelectorAll(row).length}`;
      if (document.querySelector('.app-place') && states.at(-1) !== state) states.push(state);
    };
    new MutationObserver(note).observe(document, { subtree: true, childList: true, attributes: true });
  }, ROW);
  await phone.page.goto(server.url);
  await phone.page.locator('.app-place:not([data-painted]) .page-main').waitFor();
  return phone;
}

const statesOf = async ({ page }: Phone) => page.evaluate(() => Reflect.get(globalThis, 'states'));

test('the next start begins with the list as it was, which the app takes over without a moment that is empty', async () => {
  const first = await openPhone();
  await first.page.goto(server.url);
  await untilReadyOffline(first.page);
  await first.page.getByRole('button', { name: 'Show me with the demo job' }).click();
  await first.page.waitForFunction(() => localStorage.getItem('slipfit-painted')?.includes('Outfit 7'));
  await first.close();

  const second = await again(first);
  expect(await statesOf(second)).toEqual(['painted: 2', 'app: 2']);
  await second.page.getByRole('link', { name: /Outfit 7/ }).click();
  await second.page.getByRole('heading', { name: 'Outfit 7' }).waitFor();
  expect(await second.page.evaluate(() => localStorage.getItem('slipfit-painted'))).toBeNull();
  expect([...second.trouble.said, ...second.trouble.refused]).toEqual([]);
  await second.close();
});

test('a phone that lost its records begins with the old list once at most: the same start empties it and says so', async () => {
  const first = await openPhone();
  await first.page.goto(server.url);
  await first.page.getByRole('button', { name: 'Show me with the demo job' }).click();
  await first.page.waitForFunction(() => localStorage.getItem('slipfit-painted')?.includes('Outfit 7'));
  const { page } = first;
  // As a browser that throws the database away and leaves its other storage.
  await page.goto(`${server.url}rescue.html`);
  await page.evaluate(
    (kept) => {
      localStorage.setItem('slipfit-painted', kept);
      localStorage.setItem('slipfit-records', String(Date.now() - 86_400_000));
      return new Promise((done) => {
        indexedDB.deleteDatabase('slipfit').addEventListener('success', done);
      });
    },
    JSON.stringify({
      light: '',
      drawn: [
        'div',
        { class: 'page' },
        [
          'main',
          {},
          ['ul', {}, ['li', {}, ['a', { class: 'row', href: '#/job/demo-outfit-7' }, 'Outfit 7']]],
        ],
      ],
    }),
  );
  await first.close();

  const second = await again(first);
  await second.page.locator('.app-notice', { hasText: 'The browser has lost the records' }).waitFor();
  expect(await second.page.locator(ROW).count()).toBe(0);
  expect(await statesOf(second)).toEqual(['painted: 1', 'app: 0']);
  await expect.poll(() => second.page.evaluate(() => localStorage.getItem('slipfit-painted'))).toBeNull();
  await second.close();
});
