import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Page, Phone } from '../hands/hands.ts';
import { closeAllPhones, openPhone } from '../hands/open-phone.ts';
import { removeTemporaryFolders, startServer } from '../launch.ts';
import { measureScreen } from '../measure-screen.ts';
import { goTo, laidOut, withoutPassingLines } from '../on-a-screen.ts';

/** What an engine lays out once and not again, what it scrolls and what it leaves: each was a fault in one of them. */

const outfit = '/job/demo-outfit-7';
// The smallest of phones: there a line that keeps the width it had on its side goes over the edge.
const upright = { width: 320, height: 640 };
const onItsSide = { width: 640, height: 320 };

const placesByTab = [
  '/new-job',
  '/shop/slide-lead-screw',
  `${outfit}/worksheets`,
  `${outfit}/cuts`,
  `${outfit}/sheet/files`,
  // WebKit's windows share one bare screen, where only one of them has the keyboard: there in the long trial only.
].filter(() => process.env['ENGINE'] !== 'webkit' || process.env['LONG'] !== undefined);

// More than any screen has.
const MOST_STOPS = 60;

let server: Awaited<ReturnType<typeof startServer>>;
let phone: Phone;
beforeAll(async () => {
  server = await startServer();
  phone = await openPhone({ size: upright });
  await phone.page.goto(server.url);
  await withoutPassingLines(phone.page);
});
afterAll(async () => {
  await closeAllPhones();
  await server.stop();
  await removeTemporaryFolders();
});

test('in Shop nothing moves once it is drawn: what is read late has its room from the start', async () => {
  const { page } = phone;
  await goTo(page, '/charts/drills');
  expect(await placesOfKeysIn(page, '#/shop')).toEqual([]);
});

test('what was laid out on its side is laid out anew when the phone is turned upright', async () => {
  const { page } = phone;
  await goTo(page, '/shop');
  await page.getByRole('button', { name: 'Show me with the demo job' }).click();
  await page.getByRole('button', { name: 'Remove the demo' }).waitFor();
  const found: string[] = [];
  const places = [
    '/shop',
    '/shop/slide-lead-screw',
    `${outfit}/again`,
    `${outfit}/worksheets`,
    `${outfit}/cuts`,
  ];
  for (const place of places) {
    await page.setViewportSize(onItsSide);
    await goTo(page, '/jobs');
    await goTo(page, place);
    await page.setViewportSize(upright);
    await laidOut(page);
    for (const { rule, what } of await measureScreen(page))
      if (rule === 'scrolls sideways' || rule === 'text cut off') found.push(`${place}: ${rule}, ${what}`);
  }
  expect(found).toEqual([]);
});

test.each(placesByTab)(
  'by Tab nothing that gets the focus stays under the main action, nor without its ring: %s',
  async (place) => {
    const { page } = phone;
    await page.setViewportSize({ width: 390, height: 640 });
    await goTo(page, '/jobs');
    await goTo(page, place);
    await page.evaluate(() => {
      if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
      document.querySelector('.app-place')?.scrollTo(0, 0);
    });
    const hidden: string[] = [];
    let stops = 0;
    // Not on to the bar at the bottom: from there one engine's focus goes into its own bar and never comes back.
    for (let isLast = false; !isLast && stops < MOST_STOPS; stops += 1) {
      await page.keyboard.press('Tab');
      const [fault, last] = await page.evaluate(faultOfFocus);
      isLast = last;
      if (fault !== '') hidden.push(fault);
    }
    expect(stops).toBeGreaterThan(2);
    expect(stops).toBeLessThan(MOST_STOPS);
    expect(hidden).toEqual([]);
  },
);

/** Runs in the page: what is wrong with where the focus is, nothing where it is well seen, and whether it is the last stop. */
function faultOfFocus(): [string, boolean] {
  const now = document.activeElement;
  if (!now || now === document.body) return ['nothing has the focus', false];
  const { left, top, width, height } = now.getBoundingClientRect();
  const hit = document.elementFromPoint(left + width / 2, top + height / 2);
  const { outlineStyle, outlineWidth } = getComputedStyle(now);
  const name = (now.getAttribute('aria-label') ?? now.textContent ?? '').slice(0, 40);
  const stops = '.app-place :is(a[href], button:not(:disabled), input, textarea, summary)';
  const isLast = [...document.querySelectorAll(stops)].at(-1) === now;
  if (now !== hit && !now.contains(hit)) return [`covered: ${name}`, isLast];
  const hasRing = outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2;
  return [hasRing ? '' : `no ring: ${name}`, isLast];
}

/** The keys of a place that stood elsewhere in one of its first frames than in the end, with how far they went. */
async function placesOfKeysIn(page: Page, hash: string): Promise<readonly string[]> {
  return page.evaluate(async (address) => {
    const first = new Map<string, number>();
    const last = new Map<string, number>();
    location.hash = address;
    const end = performance.now() + 1500;
    while (performance.now() < end) {
      for (const key of document.querySelectorAll('.app-place :is(button, a[href])')) {
        const name = key.textContent ?? '';
        const { top } = key.getBoundingClientRect();
        if (!key.checkVisibility({ visibilityProperty: true })) continue; // it can't be pressed yet
        if (location.hash === address && !first.has(name)) first.set(name, top);
        last.set(name, top);
      }
      await new Promise((done) => requestAnimationFrame(done));
    }
    return [...first]
      .filter(([name, top]) => Math.abs((last.get(name) ?? top) - top) > 1)
      .map(([name, top]) => `${name.slice(0, 30)}: ${top} → ${last.get(name)}`);
  }, hash);
}
