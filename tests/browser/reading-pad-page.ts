import type { Page } from 'playwright-core';
import { goTo } from './on-a-screen.ts';
import type { Phone } from './launch.ts';

/** A phone with the demo in it, at the pad of a feature that has no readings yet: nothing typed there can look like a slip. */
export async function atAnEmptyPad({ page }: Phone, url: string, kind: RegExp = /^Bore/): Promise<void> {
  await page.goto(url);
  await page.getByRole('button', { name: 'Show me with the demo job' }).click();
  await page.getByText('Outfit 7').first().waitFor();
  await goTo(page, '/job/demo-outfit-7/readings/new');
  await page.getByRole('button', { name: kind }).click();
  await page.locator('#size').waitFor();
}

/** The counted readings of the feature, newest first, as its list of all readings shows them. */
export async function loggedSizes(page: Page): Promise<readonly string[]> {
  const pad = await page.evaluate(() => location.hash.slice(1));
  await goTo(page, `${pad}/all`);
  const sizes = await page
    .locator('.all-readings-row:not([data-struck="true"]) .all-readings-size')
    .allTextContents();
  await goTo(page, pad);
  return sizes;
}
