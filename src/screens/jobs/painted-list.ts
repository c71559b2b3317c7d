import { PAINTED } from './painted-mark.ts';

/**
 * The list of jobs as it was painted last, in the browser's other storage: a script of its own (`src/painted.ts`) draws it
 * before the app's are read. It holds what can be read and followed, and nothing that would only look as if it could be
 * pressed. It is kept while the list is on the screen and dropped when it is left, so that it never stands for another place.
 */

/** An element with what stands in it. */
type Drawn =
  | string
  | readonly [tag: string, attributes: Readonly<Record<string, string>>, ...inside: Drawn[]];

const TAGS: ReadonlySet<string> = new Set('div header h1 p main ul li a span strong footer'.split(' '));
const ATTRIBUTES: ReadonlySet<string> = new Set('class href data-filled data-long'.split(' '));
// More than the tallest phone shows.
const MOST_CHILDREN = 12;

export function keepPainted(): void {
  const page = document.querySelector('.app-place > .page');
  const drawn = page && drawnAs(page);
  const light = document.documentElement.dataset['light'] ?? '';
  try {
    if (drawn) localStorage.setItem(PAINTED, JSON.stringify({ light, drawn }));
  } catch {
    // A browser may forbid it at the very word: then the list comes with the app, as without it.
  }
}

/** Draws it above what the page itself holds. Where anything in it isn't as it was written, nothing is drawn. */
export function drawPainted(): void {
  try {
    const kept: { light: string; drawn: Drawn } = JSON.parse(localStorage.getItem(PAINTED) ?? 'null');
    const place = document.createElement('div');
    place.className = 'app-place';
    place.dataset['painted'] = '';
    place.append(nodeOf(kept.drawn));
    if (kept.light !== '') document.documentElement.dataset['light'] = kept.light;
    document.querySelector('.app-main')?.prepend(place);
  } catch {
    // as above
  }
}

function drawnAs(element: Element): Drawn | undefined {
  const tag = element.localName;
  if (!TAGS.has(tag)) return undefined;
  const attributes = [...element.attributes]
    .filter(({ name }) => ATTRIBUTES.has(name))
    .map(({ name, value }) => [name, value]);
  const inside = [...element.childNodes]
    .slice(0, MOST_CHILDREN)
    .map((node) => (node instanceof Element ? drawnAs(node) : (node.textContent ?? '')))
    .filter((node) => node !== undefined);
  return [tag, Object.fromEntries(attributes), ...inside];
}

function nodeOf(drawn: Drawn): Node {
  if (typeof drawn === 'string') return document.createTextNode(drawn);
  const [tag, attributes, ...inside] = drawn;
  if (!TAGS.has(tag)) throw new Error(tag);
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (!ATTRIBUTES.has(name) || (name === 'href' && !value.startsWith('#/'))) throw new Error(name);
    element.setAttribute(name, value);
  }
  element.append(...inside.map(nodeOf));
  return element;
}
