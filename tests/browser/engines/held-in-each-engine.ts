import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axeFindings } from '../axe-findings.ts';
import { chapters, visitScreens } from '../every-screen.ts';
import type { Phone } from '../hands/hands.ts';
import { closeAllPhones, engine, openPhone } from '../hands/open-phone.ts';
import { removeTemporaryFolders, startServer } from '../launch.ts';
import { gathered, measureScreen, type Rule } from '../measure-screen.ts';
import { laidOut } from '../on-a-screen.ts';

/** What every screen is held to in the engines beside Chromium: laid out at the usual width, then narrowed, and axe once. */

const usual = { width: 390, height: 844 };
const narrow = { width: 320, height: 640 };
const axeRules = process.env['LONG'] === undefined ? 'of the layout' : 'all';
// Never a measure of speed: a slow machine walks through a chapter in some minutes.
const WALK_MS = 480_000;

const rules: readonly Rule[] = [
  'scrolls sideways',
  'target too small',
  'targets too near',
  'delete beside a digit',
  'digit key too small',
  'commit key too small',
  'text too small',
  'text in a drawing too small',
  'number that matters too small',
  'label to read from the lathe too small',
  'text cut off',
  'target covered',
  'pad does not fit',
  'figure out of sight',
];

export function heldInEachEngine(what: keyof typeof chapters): void {
  describe.each([what])('%s', () => {
    const found = gathered();
    const byAxe: string[] = [];
    let phone: Phone;
    let walked = 0;

    beforeAll(async () => {
      const server = await startServer();
      phone = await openPhone({ size: usual });
      const { page } = phone;
      const { demo, screens } = chapters[what];
      const here = engine === 'chromium' ? screens : screens.filter((one) => !('inChromiumOnly' in one));
      await visitScreens(page, server.url, { demo, screens: here }, async ({ name }) => {
        walked += 1;
        found.add(`${name} at ${usual.width}`, await measureScreen(page));
        for (const line of await axeFindings(page, axeRules)) byAxe.push(`${name}: ${line}`);
        await page.setViewportSize(narrow);
        await laidOut(page);
        found.add(`${name} at ${narrow.width}`, await measureScreen(page));
        await page.setViewportSize(usual);
        await laidOut(page);
      });
      await server.stop();
    }, WALK_MS);
    afterAll(async () => {
      await closeAllPhones();
      await removeTemporaryFolders();
    });

    test('every screen was walked through, and the browser complained of nothing', () => {
      expect(walked).toBeGreaterThan(0);
      expect(phone.said).toEqual([]);
    });

    test.each(rules)('nothing of it: %s', (rule) => {
      expect(found.of(rule)).toEqual([]);
    });

    test('axe finds nothing on any screen', () => {
      expect(byAxe).toEqual([]);
    });
  });
}
