import type { Page } from 'playwright-core';

/** A page whose processor is so many times slower, as on a cheap phone. */
export async function slowed(page: Page, times: number): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: times });
}

/** Milliseconds from the start of the page until the thing is in it and has been painted. Set before the page is opened. */
export async function noteWhenUsable(page: Page, selector: string): Promise<void> {
  await page.addInitScript((wanted) => {
    const note = () => {
      if (!document.querySelector(wanted)) return;
      watching.disconnect();
      requestAnimationFrame(() => setTimeout(() => Reflect.set(globalThis, 'usableAt', performance.now())));
    };
    const watching = new MutationObserver(note);
    watching.observe(document, { subtree: true, childList: true });
  }, selector);
}

const STARTED_BY_MS = 2500;

export async function usableAt(page: Page): Promise<{ readonly painted: number; readonly usable: number }> {
  // Asking puts a large script of the driver's own into the page, which would be weighed with what starts there.
  await new Promise((done) => setTimeout(done, STARTED_BY_MS));
  // The browser notes the first paint a little after it was made.
  await page.waitForFunction(
    () =>
      Reflect.has(globalThis, 'usableAt') &&
      performance.getEntriesByName('first-contentful-paint').length > 0,
  );
  return page.evaluate(() => ({
    painted: performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? Number.NaN,
    usable: Number(Reflect.get(globalThis, 'usableAt')),
  }));
}
