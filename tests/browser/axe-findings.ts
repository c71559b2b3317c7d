import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds on a screen: WCAG 2.2 A and AA, target sizes, and contrast at AAA. */
export async function axeFindings(page: Page): Promise<readonly string[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe);
  const { violations } = await page.evaluate(async (): Promise<AxeResults> => {
    // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- axe puts itself on the window, unknown to the types
    const { axe: here } = globalThis as unknown as { axe: typeof import('axe-core') };
    return here.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
      rules: { 'target-size': { enabled: true }, 'color-contrast-enhanced': { enabled: true } },
      resultTypes: ['violations'],
    });
  });
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html, any }) => `${id}: ${html.slice(0, 110)} ${any[0]?.message.slice(0, 120) ?? ''}`),
  );
}
