import type { Page } from 'playwright-core';
import { settled } from './on-a-screen.ts';

/** A keyboard and nothing else: Tab to what is wanted, Enter on it, digits into whatever takes them. */
export type Keys = {
  /** Tabs on until what has the focus is called that. `back` is with Shift. */
  readonly tabTo: (name: string | RegExp, way?: 'back') => Promise<void>;
  /** Tabs to it and presses Enter. */
  readonly press: (name: string | RegExp, way?: 'back') => Promise<void>;
  /** Types it where a field has the focus, and Enter. */
  readonly enter: (text: string) => Promise<void>;
};

// More stops than any screen has.
const MOST_STOPS = 60;
const KEY_MS = 20;

export function keysOn(page: Page): Keys {
  const tabTo = async (name: string | RegExp, way?: 'back') => {
    const passed: string[] = [];
    while (passed.length < MOST_STOPS) {
      // oxlint-disable-next-line no-await-in-loop
      await page.keyboard.press(way === 'back' ? 'Shift+Tab' : 'Tab');
      // oxlint-disable-next-line no-await-in-loop
      const here = await page.evaluate(nameOfFocus);
      if (typeof name === 'string' ? here === name : name.test(here)) return;
      passed.push(here);
    }
    throw new Error(`no Tab stop is called ${String(name)}: ${passed.join(' | ')}`);
  };
  return {
    tabTo,
    press: async (name, way) => {
      await tabTo(name, way);
      await page.keyboard.press('Enter');
      await settled(page);
    },
    enter: async (text) => {
      await page.locator('#size').waitFor();
      await page.keyboard.type(text, { delay: KEY_MS });
      await page.keyboard.press('Enter');
      await settled(page);
    },
  };
}

/** Runs in the page. */
function nameOfFocus(): string {
  const here = document.activeElement;
  const label = here instanceof HTMLInputElement ? here.labels?.[0]?.textContent : undefined;
  return (here?.getAttribute('aria-label') ?? label ?? here?.textContent ?? '').trim();
}
