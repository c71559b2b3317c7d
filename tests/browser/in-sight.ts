import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';

/** Fails unless all of these words stand in the window as it is now, every line of them whole and with nothing over it. */
export async function expectInSight(page: Page, words: readonly (string | RegExp)[]): Promise<void> {
  await expect
    .poll(
      async () => {
        const seen = await Promise.all(words.map((one) => isInSight(page.getByText(one))));
        return words.filter((_, index) => seen[index] === false).map(String);
      },
      { message: 'not in sight', timeout: 5000 },
    )
    .toEqual([]);
}

/** Whether each line of one of them can be read without scrolling. */
async function isInSight(said: Locator): Promise<boolean> {
  return said.evaluateAll((all) =>
    all.some((element) => {
      const words = document.createRange();
      words.selectNodeContents(element);
      const lines = [...words.getClientRects()];
      const isFree = (x: number, y: number) => element.contains(document.elementFromPoint(x, y));
      // Letters reach a little over their own line: what is asked is whether they can be read.
      return (
        lines.length > 0 &&
        lines.every(({ left, right, top, bottom }) =>
          [left + 1, (left + right) / 2, right - 1].every((x) =>
            [0.2, 0.8].every((down) => isFree(x, top + down * (bottom - top))),
          ),
        )
      );
    }),
  );
}
