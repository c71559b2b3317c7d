import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from './hands/hands.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Its rules that ask how a page is laid out and painted. All others read its elements, which are the same in every engine. */
const ofTheLayout = [
  'color-contrast',
  'color-contrast-enhanced',
  'target-size',
  'scrollable-region-focusable',
];

/** What axe finds on a screen: WCAG 2.2 A and AA, target sizes, and contrast at AAA; or of its rules those of the layout. */
export async function axeFindings(
  page: Page,
  which: 'all' | 'of the layout' = 'all',
): Promise<readonly string[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe);
  const { violations } = await page.evaluate(
    async (only: readonly string[]): Promise<AxeResults> => {
      // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- axe puts itself on the window, unknown to the types
      const { axe: here } = globalThis as unknown as { axe: typeof import('axe-core') };
      if (only.length > 0) return here.run(document, { runOnly: [...only], resultTypes: ['violations'] });
      return here.run(document, {
        runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
        rules: { 'target-size': { enabled: true }, 'color-contrast-enhanced': { enabled: true } },
        resultTypes: ['violations'],
      });
    },
    which === 'all' ? [] : ofTheLayout,
  );
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html, any }) => `${id}: ${html.slice(0, 110)} ${any[0]?.message.slice(0, 120) ?? ''}`),
  );
}
