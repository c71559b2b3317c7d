import type { Page } from './hands/hands.ts';

/** A thumb on the phone: presses what can be pressed, and counts. */
export type Thumb = {
  readonly presses: () => number;
  /** Those of them that were no key of a size: no digit, point, bar or space. */
  readonly besideDigits: () => number;
  /** A button or link by its words. */
  readonly press: (name: string | RegExp) => Promise<void>;
  /** A size, key by key on the pad: digits, point, bar, space. */
  readonly key: (size: string) => Promise<void>;
};

export function thumbOn(page: Page): Thumb {
  let count = 0;
  let digits = 0;
  const press = async (name: string | RegExp) => {
    const exact = typeof name === 'string';
    const target = page
      .getByRole('button', { name, exact })
      .or(page.getByRole('link', { name, exact }))
      .filter({ visible: true })
      .first();
    await target.click();
    count += 1;
    // Two presses at one place within 350 ms are a glove's bounce to the app; no thumb is that fast, a test is.
    if (typeof name === 'string' && COMMITS.has(name)) await page.waitForTimeout(400);
  };
  return {
    presses: () => count,
    besideDigits: () => count - digits,
    press,
    key: async (size) => {
      for (const character of size) await press(KEYS[character] ?? character);
      digits += size.length;
    },
  };
}

const COMMITS: ReadonlySet<string> = new Set([
  'Log reading',
  'Use it',
  'Put it in',
  'Next part',
  'That’s all',
]);
const KEYS: Readonly<Record<string, string>> = {
  '.': 'decimal point',
  ',': 'decimal comma',
  '/': 'a/b: fraction bar',
  ' ': '1 a/b: space, for a fraction after a whole number',
};

/** Says of the size on the pad that it is a figure from a drawing: no tool's band counts. */
export async function takeAsExact(thumb: Thumb): Promise<void> {
  await thumb.press(/^Read with: /);
  await thumb.press(/^Not measured: taken as exact/);
}

/** Logs readings of one new feature from the job's readings, and comes back to them. */
export async function logFeature(
  page: Page,
  thumb: Thumb,
  kind: string,
  sizes: readonly string[],
): Promise<void> {
  await thumb.press('New size');
  await thumb.press(new RegExp(`^${kind}`));
  for (const [index, size] of sizes.entries()) {
    await thumb.key(size);
    await thumb.press('Log reading');
    await page.getByText(`logged, reading ${index + 1}`).waitFor();
  }
}
