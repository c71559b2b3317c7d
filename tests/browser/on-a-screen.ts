import type { Page } from './hands/hands.ts';

/** Ways through the screens, for walks and tests: each waits until what it did is drawn. */

/** "Ready to work without signal" lies over the heading for some seconds of the first visit. */
export async function withoutPassingLines(page: Page): Promise<void> {
  const line = page.getByText('Ready to work without signal.').first();
  await line.waitFor({ timeout: 30_000 });
  await page.locator('.app-notice').waitFor({ state: 'detached', timeout: 30_000 });
}

export async function goTo(page: Page, place: string): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, `#${place}`);
  await settled(page);
}

/** Waits until the screen is drawn and, for a moment, nothing in it has changed and nothing was read or written. */
export async function settled(page: Page): Promise<void> {
  await page.locator('h1', { hasText: /\S/ }).first().waitFor({ state: 'attached' });
  await page.evaluate(
    () =>
      new Promise<void>((done) => {
        let timer = 0;
        const wait = () => {
          clearTimeout(timer);
          timer = window.setTimeout(() => {
            if (Number(Reflect.get(globalThis, 'openTransactions') ?? 0) > 0) return;
            watcher.disconnect();
            removeEventListener('transactionended', wait);
            done();
          }, 70);
        };
        const watcher = new MutationObserver(wait);
        watcher.observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
        addEventListener('transactionended', wait);
        wait();
      }),
  );
}

/** Runs in the page before its own scripts, so that `settled` can tell when a write is still on its way. */
export function countTransactions(): void {
  let open = 0;
  const count = (by: number) => {
    open += by;
    Reflect.set(globalThis, 'openTransactions', open);
    if (by < 0) dispatchEvent(new Event('transactionended'));
  };
  // oxlint-disable-next-line typescript/unbound-method -- it is called on the database it was asked of
  const begin = IDBDatabase.prototype.transaction;
  IDBDatabase.prototype.transaction = function counted(...how) {
    const transaction = begin.apply(this, how);
    count(1);
    for (const end of ['complete', 'abort'])
      transaction.addEventListener(end, () => count(-1), { once: true });
    return transaction;
  };
}

/** Waits until a new size of the window is laid out. */
export async function laidOut(page: Page): Promise<void> {
  await page.evaluate(
    () => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
  );
}

/** Types into the size field what a keyboard would, in place of what stands there. */
export async function typeSize(page: Page, text: string): Promise<void> {
  const field = page.locator('#size');
  await field.fill('');
  await field.pressSequentially(text);
}

export async function press(page: Page, name: string | RegExp): Promise<void> {
  await page.getByRole('button', { name, exact: true }).first().click();
  await settled(page);
}

export async function follow(page: Page, name: string | RegExp): Promise<void> {
  await page.getByRole('link', { name, exact: true }).first().click();
  await settled(page);
}

export async function chooseInShop(page: Page, name: string): Promise<void> {
  await goTo(page, '/shop');
  await press(page, name);
}

/**
 * What a screen reader is given to say, to be asked until it is what is expected: what is said of a write comes when it
 * is written, on a busy machine later than `settled`, and until then the line holds what was said before.
 */
export const spoken = (page: Page) => () => page.locator('#said').textContent();
