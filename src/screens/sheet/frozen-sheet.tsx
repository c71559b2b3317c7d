import { h, render, type VNode } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import './frozen-sheet.css';
import type { SheetNode } from '../../store/base/records.ts';
import { isSheetAttribute, sheetTags } from '../../store/kept/sheet-whitelist.ts';
import { sheetStyles } from './sheet-styles.ts';

/**
 * A signed sheet drawn from its own data, element by element: no text in it is ever read as markup. It stands in a root
 * of its own, so that no name in it is one of the app's: a file could bring a sheet with a false notice on it.
 */
export function FrozenSheet({ content }: { readonly content: readonly SheetNode[] }) {
  const host = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (!host.current) return undefined;
    const root = host.current.shadowRoot ?? host.current.attachShadow({ mode: 'open' });
    const styles = sheetStyles();
    if (styles) root.adoptedStyleSheets = [styles];
    render(<>{content.map(drawn)}</>, root);
    return () => render(null, root);
  }, [content]);
  return <div class="frozen-sheet" ref={host} />;
}

function drawn(node: SheetNode): VNode | string | null {
  if (typeof node === 'string') return node;
  // The schema has passed it on the way in; asked once more where it becomes a page.
  if (!sheetTags.has(node.tag)) return null;
  const attributes = Object.entries(node.attributes).filter(([name, value]) => isSheetAttribute(name, value));
  return h(node.tag, Object.fromEntries(attributes), ...node.children.map(drawn));
}
