import { render } from '@testing-library/preact';
import { afterEach, describe, expect, test } from 'vitest';
import { freeze } from '../../../src/screens/sheet/freeze.ts';
import { FrozenSheet } from '../../../src/screens/sheet/frozen-sheet.tsx';
import { isSheetContent } from '../../../src/store/kept/sheet-schema.ts';
import type { SheetNode } from '../../../src/store/base/records.ts';
import { clearAway } from '../on-screen.tsx';

afterEach(clearAway);

/** The page as a screen would have drawn it. */
function page(html: string): HTMLElement {
  const box = document.createElement('div');
  box.innerHTML = html;
  document.body.append(box);
  return box;
}

const frozen = (html: string) => [...page(html).children].flatMap((one) => freeze(one));

/** What a frozen sheet looks like when it is drawn again. */
function redrawn(html: string): string {
  return drawnRoot(frozen(html)).innerHTML;
}

/** The root of its own that it is drawn in. */
function drawnRoot(content: readonly SheetNode[]): ShadowRoot {
  const { container } = render(<FrozenSheet content={content} />);
  const root = container.firstElementChild?.shadowRoot;
  if (!root) throw new Error('it stands in the page itself');
  return root;
}

describe('a frozen sheet', () => {
  test.each([
    '<article class="sheet"><h2>Outfit 7</h2><p>Gap <strong>.010</strong> in</p></article>',
    '<table><thead><tr><th scope="col">As read</th></tr></thead><tbody><tr data-struck="true"><td>.4950</td></tr></tbody></table>',
    '<ol><li>washer</li><li>spacer</li></ol>',
    '<svg class="drawing" viewBox="0 0 390 236" role="img" aria-label="Two parts"><path d="M0 0h9" stroke-width="2"></path><text x="9" text-anchor="middle">gap .010</text></svg>',
  ])('is drawn again as it stood: %s', (html) => {
    expect(redrawn(html)).toBe(html);
  });

  test('may be kept', () => {
    expect(
      isSheetContent(frozen('<article class="sheet"><p>Gap</p><svg viewBox="0 0 9 9"></svg></article>')),
    ).toBe(true);
  });

  test.each([
    { what: 'a key to press', html: '<p>Gap<button>Undo</button></p>' },
    { what: 'a field', html: '<p>Gap<input value="9"></p>' },
    { what: 'a script', html: '<p>Gap<script>alert(1)</script></p>' },
    { what: 'a style', html: '<p>Gap<style>p{display:none}</style></p>' },
    { what: 'a picture from elsewhere', html: '<p>Gap<img src="https://elsewhere.example/x.png"></p>' },
    { what: 'a frame', html: '<p>Gap<iframe src="https://elsewhere.example"></iframe></p>' },
    { what: 'what is not printed', html: '<p>Gap<span class="not-printed">saved</span></p>' },
    { what: 'a handler', html: '<p onclick="alert(1)">Gap</p>' },
    { what: 'a comment', html: '<p>Gap<!-- note --></p>' },
  ])('leaves out $what', ({ html }) => {
    expect(redrawn(html)).toBe('<p>Gap</p>');
  });

  test('keeps the words of a link and of what was folded, without the link and the folding', () => {
    expect(redrawn('<p><a href="#/jobs">To the jobs</a></p>')).toBe('<p><span>To the jobs</span></p>');
    expect(redrawn('<details open=""><summary>Why?</summary><p>gap = sleeve − parts</p></details>')).toBe(
      '<div><p>Why?</p><p>gap = sleeve − parts</p></div>',
    );
  });

  test('shows a job named like markup as the text it is', () => {
    const name = '<img src=x onerror=alert(1)>';
    const box = document.createElement('article');
    box.textContent = name;
    const root = drawnRoot(freeze(box));
    expect(root.querySelector('img')).toBeNull();
    expect(root.textContent).toBe(name);
  });

  test('from a hostile file draws nothing that could run or fetch', () => {
    const hostile: readonly SheetNode[] = [
      { tag: 'script', attributes: {}, children: ['alert(1)'] },
      {
        tag: 'p',
        attributes: {
          onclick: 'alert(1)',
          style: 'background:url(https://elsewhere.example)',
          dangerouslySetInnerHTML: 'x',
        },
        children: ['Gap'],
      },
      { tag: 'iframe', attributes: { src: 'https://elsewhere.example' }, children: [] },
    ];
    expect(drawnRoot(hostile).innerHTML).toBe('<p>Gap</p>');
  });

  test('that uses the app’s own names has no part in the page they are names of', () => {
    const content: readonly SheetNode[] = [
      {
        tag: 'div',
        attributes: { id: 'app', class: 'app-notice bottom-bar', 'data-passing': 'true' },
        children: ['Update now'],
      },
    ];
    drawnRoot(content);
    expect(document.querySelector('#app, .app-notice, .bottom-bar')).toBeNull();
  });
});
