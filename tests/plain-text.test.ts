import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { describe, expect, test } from 'vitest';

/** Text of the fitter's, or out of a file, is never read as markup or code. These tests read the sources for ways to do so. */

const root = join(import.meta.dirname, '..');
const places = ['src', 'public'].flatMap((folder) =>
  readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(?:tsx?|html|svg|css|webmanifest)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name)),
);
const sources = [...places, join(root, 'index.html')].map((path) => ({
  path: relative(root, path).replaceAll('\\', '/'),
  text: withoutComments(readFileSync(path, 'utf8')),
}));

const ways: readonly (readonly [what: string, way: RegExp])[] = [
  [
    'markup out of text',
    /\b(?:inner|outer)HTML\b|insertAdjacentHTML|dangerouslySetInnerHTML|createContextualFragment|DOMParser|setHTMLUnsafe|srcdoc/,
  ],
  ['code out of text', /\beval\b|\bnew Function\b|\bFunction\(|\b(?:setTimeout|setInterval)\(\s*['"`]/],
  ['document.write', /document\.write/],
  ['a javascript: address', /javascript:/i],
  [
    'a style written into the page',
    /\sstyle=(?!\{\{)|<style\b|setAttribute\(\s*['"]style|cssText|insertRule|adoptedStyleSheets/,
  ],
  ['a handler written into the page', /\son[a-z]+="/],
  ['a script or frame made on the way', /createElement\(\s*['"](?:script|iframe|object|embed|link|style)/],
  ['an address of someone else', /(?:src|href|url|import|fetch|action)\s*[=(]+\s*['"`]?(?:https?:)?\/\//],
];

/**
 * The places that may: one names such an address in order to refuse it, one writes a name into a rule of print as numbers,
 * two hand the page's own rules on to the root that a signed sheet stands in.
 */
const allowed: Readonly<Record<string, readonly string[]>> = {
  'a javascript: address': ['src/store/kept/sheet-whitelist.ts'],
  'a style written into the page': [
    'src/screens/sheet/use-page-footer.ts',
    'src/screens/sheet/frozen-sheet.tsx',
    'src/screens/sheet/sheet-styles.ts',
  ],
};

describe('no source has', () => {
  test.each(ways)('%s', (what, way) => {
    const found = sources.filter(
      ({ path, text }) => way.test(text) && allowed[what]?.includes(path) !== true,
    );
    expect(found.map(({ path }) => path)).toEqual([]);
  });
});

describe('a breach is seen', () => {
  test.each([
    `element.innerHTML = name;`,
    `<p dangerouslySetInnerHTML={{ __html: note }} />`,
    `new DOMParser().parseFromString(text, 'text/html')`,
    `const sum = eval(typed);`,
    `const sum = new Function('return ' + typed);`,
    `setTimeout('again()', 10);`,
    `document.write(name);`,
    `<a href="javascript:go()">`,
    `<p style="color: red">`,
    `<p style={words}>`,
    `element.setAttribute('style', words);`,
    `<button onclick="go()">`,
    `document.createElement('script')`,
    `<img src="https://elsewhere.example/a.png">`,
    `void fetch('//elsewhere.example/');`,
    `@import url(https://elsewhere.example/a.css);`,
  ])('%s', (line) => {
    expect(ways.some(([, way]) => way.test(line))).toBe(true);
  });
});

function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|[^:'"`])\/\/ .*$/gm, '$1');
}
