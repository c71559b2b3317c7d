import type { Page } from 'playwright-core';

/** A page whose processor is so many times slower, as on a cheap phone. */
export async function slowed(page: Page, times: number): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: times });
}

/** What is waited for, by the name it is told under: a selector each, and all that it names at once where there are several. */
export type Wanted = Readonly<Record<string, string | readonly string[]>>;

/** Notes when each thing is in the page and has been painted. Set before the page is opened. */
export async function noteWhenThere(page: Page, wanted: Wanted): Promise<void> {
  await page.addInitScript((selectors) => {
    const at: Record<string, number> = {};
    Reflect.set(globalThis, 'paintedAt', at);
    const noted = new Set<string>();
    const note = () => {
      for (const [name, selector] of Object.entries(selectors)) {
        if (noted.has(name) || ![selector].flat().every((one) => document.querySelector(one))) continue;
        noted.add(name);
        requestAnimationFrame(() => setTimeout(() => (at[name] = performance.now())));
      }
      if (noted.size === Object.keys(selectors).length) watching.disconnect();
    };
    const watching = new MutationObserver(note);
    watching.observe(document, { subtree: true, childList: true, attributes: true });
  }, wanted);
}

const STARTED_BY_MS = 2500;

/** Milliseconds from the start of the page, of the first paint and of each thing waited for. */
export async function thereAt(page: Page, wanted: Wanted): Promise<Readonly<Record<string, number>>> {
  // Asking puts a large script of the driver's own into the page, which would be weighed with what starts there.
  await new Promise((done) => setTimeout(done, STARTED_BY_MS));
  // The browser notes the first paint a little after it was made.
  await page.waitForFunction(
    (names) =>
      names.every((name) => name in Object(Reflect.get(globalThis, 'paintedAt'))) &&
      performance.getEntriesByName('first-contentful-paint').length > 0,
    Object.keys(wanted),
  );
  return page.evaluate(() => ({
    ...Object(Reflect.get(globalThis, 'paintedAt')),
    painted: performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? Number.NaN,
  }));
}
