import type { SheetNode } from '../../store/base/records.ts';
import { isSheetAttribute, sheetTags } from '../../store/kept/sheet-whitelist.ts';

/** What a page has and a signed sheet must not: it is left out with all that is in it. */
const LEFT_OUT: ReadonlySet<string> = new Set(
  [
    'script style template noscript iframe object embed link meta base',
    'button input select textarea form nav dialog audio video canvas',
    'foreignObject animate set image img',
  ].flatMap((names) => names.split(' ')),
);

/** What has a plain twin that says the same on paper. */
const TWINS: Readonly<Record<string, string>> = {
  a: 'span',
  details: 'div',
  summary: 'p',
  main: 'div',
  mark: 'strong',
};

/**
 * What stands on the page, as plain data: text stays text, the whitelist's elements keep the whitelist's attributes,
 * what can be pressed or fetched is left out, and an element not known gives its content only.
 */
export function freeze(root: Element): readonly SheetNode[] {
  return frozen(root);
}

function frozen(node: Node): readonly SheetNode[] {
  if (node.nodeType === node.TEXT_NODE) return node.textContent ? [node.textContent] : [];
  // nodeType has just been asked; `instanceof` would miss an element of another frame.
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion
  return node.nodeType === node.ELEMENT_NODE ? frozenElement(node as Element) : [];
}

function frozenElement(element: Element): readonly SheetNode[] {
  const name = element.localName;
  if (LEFT_OUT.has(name) || element.classList.contains('not-printed')) return [];
  const tag = TWINS[name] ?? name;
  const children = [...element.childNodes].flatMap((child) => frozen(child));
  return sheetTags.has(tag) ? [{ tag, attributes: attributesOf(element), children }] : children;
}

function attributesOf(element: Element): Readonly<Record<string, string>> {
  return Object.fromEntries(
    [...element.attributes]
      .filter(({ name, value }) => isSheetAttribute(name, value))
      .map(({ name, value }) => [name, value]),
  );
}
