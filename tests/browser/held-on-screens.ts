import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axeFindings } from './axe-findings.ts';
import { chapters, visitScreens } from './every-screen.ts';
import { laidOut } from './on-a-screen.ts';
import { openPhone, removeTemporaryFolders, startServer, type Trouble } from './launch.ts';
import { gathered, measureScreen, type Rule } from './measure-screen.ts';
import { walkedByTab } from './walk-by-tab.ts';

const usual = { width: 390, height: 844 };
// The usual one last: what comes behind it is done at that size.
const sizes = [{ width: 320, height: 640 }, { width: 844, height: 390 }, usual];
const padToo = { width: 360, height: 740 };
// Never a measure of speed: a slow machine walks through a chapter in some minutes.
const WALK_MS = 480_000;

const facts: readonly (readonly [string, Rule])[] = [
  ['no screen scrolls sideways', 'scrolls sideways'],
  ['everything pressed is at least 60 px both ways', 'target too small'],
  ['what is pressed lies 8 px apart, commit and delete 19', 'targets too near'],
  ['delete never faces a digit', 'delete beside a digit'],
  ['a digit is at least 80 × 72 px from 360 px on, for gloves 109 wide', 'digit key too small'],
  ['the commit key is as wide as the pad and 96 px high', 'commit key too small'],
  ['nothing to read is under 17 px', 'text too small'],
  ['nothing in a drawing is under 14 px', 'text in a drawing too small'],
  ['the number that matters is 72 px', 'number that matters too small'],
  ['labels and next steps can be read from the lathe', 'label to read from the lathe too small'],
  ['no text is cut off', 'text cut off'],
  ['no word is broken at the end of a line', 'word broken'],
  ['no text in a drawing lies on another', 'text on text'],
  ['nothing pressed is covered', 'target covered'],
  ['no screen shows two blue keys at once', 'two main keys'],
  ['the figure is seen while the commit key is', 'figure out of sight'],
  ['what is asked, the pad and its commit key stand on one usual phone together', 'pad does not fit'],
];

const factsAtTwiceTheText: readonly (readonly [string, Rule])[] = [
  ['text at twice its size makes no screen scroll sideways', 'scrolls sideways'],
  ['text at twice its size covers nothing pressed', 'target covered'],
  ['text at twice its size pushes nothing pressed onto another', 'targets too near'],
  ['text at twice its size is not cut off', 'text cut off'],
  ['text at twice its size breaks no word', 'word broken'],
];

/** What every screen is held to, on one walk through a chapter. */
export function heldOnScreensOf(what: keyof typeof chapters): void {
  describe.each([what])('%s', () => {
    const found = gathered();
    const atTwiceTheText = gathered();
    const byAxe: string[] = [];
    const byKeys: string[] = [];
    let walked = 0;
    let trouble: Trouble;

    beforeAll(async () => {
      const server = await startServer();
      const phone = await openPhone(usual);
      const { page } = phone;
      ({ trouble } = phone);
      await visitScreens(page, server.url, chapters[what], async ({ name }) => {
        walked += 1;
        const hasPad = (await page.locator('.size-pad').count()) > 0;
        for (const size of hasPad ? [padToo, ...sizes] : sizes) {
          await page.setViewportSize(size);
          await laidOut(page);
          found.add(`${name} at ${size.width}`, await measureScreen(page));
        }
        atTwiceTheText.add(name, await measuredAtTwiceTheText(page));
        for (const line of await axeFindings(page)) byAxe.push(`${name}: ${line}`);
        for (const line of await walkedByTab(page)) byKeys.push(`${name}: ${line}`);
      });
      await phone.close();
      await server.stop();
    }, WALK_MS);
    afterAll(removeTemporaryFolders);

    test('every screen was walked through, and nothing was said, refused or asked of a stranger', () => {
      expect(walked).toBe(chapters[what].screens.length);
      expect(trouble).toEqual({ said: [], refused: [], strayed: [] });
    });

    test.each(facts)('%s', (_fact, rule) => {
      expect(found.of(rule)).toEqual([]);
    });

    test.each(factsAtTwiceTheText)('%s', (_fact, rule) => {
      expect(atTwiceTheText.of(rule)).toEqual([]);
    });

    test('axe finds nothing on any screen: WCAG 2.2 A and AA, target sizes, and contrast at AAA', () => {
      expect(byAxe).toEqual([]);
    });

    test('by Tab every screen can be walked through, with the focus seen and uncovered', () => {
      expect(byKeys).toEqual([]);
    });
  });
}

async function measuredAtTwiceTheText(page: Page) {
  await page.evaluate(() => (document.documentElement.style.fontSize = '200%'));
  await laidOut(page);
  const found = await measureScreen(page);
  await page.evaluate(() => document.documentElement.removeAttribute('style'));
  await laidOut(page);
  return found;
}
