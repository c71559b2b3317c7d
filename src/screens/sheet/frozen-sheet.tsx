import { h, type VNode } from 'preact';
import './frozen-sheet.css';
import type { SheetNode } from '../../store/records.ts';
import { isSheetAttribute, sheetTags } from '../../store/schemas/sheet-whitelist.ts';

/** A signed sheet drawn from its own data, element by element: no text in it is ever read as markup. */
export function FrozenSheet({ content }: { readonly content: readonly SheetNode[] }) {
  return <>{content.map(drawn)}</>;
}

function drawn(node: SheetNode): VNode | string | null {
  if (typeof node === 'string') return node;
  // The schema has passed it on the way in; asked once more where it becomes a page.
  if (!sheetTags.has(node.tag)) return null;
  const attributes = Object.entries(node.attributes).filter(([name, value]) => isSheetAttribute(name, value));
  return h(node.tag, Object.fromEntries(attributes), ...node.children.map(drawn));
}
