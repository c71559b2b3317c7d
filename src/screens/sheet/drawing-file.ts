/** What of the app's styles a drawing takes with it, as attributes of its own. */
const TAKEN = [
  'fill',
  'fill-rule',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linejoin',
  'stroke-linecap',
  'font-family',
  'font-size',
  'font-weight',
  'text-anchor',
] as const;

const SVG = 'http://www.w3.org/2000/svg';
// Chosen, not published: about the width of a column of A4 or Letter.
const WIDTH_MM = 150;

/** A drawing of the page as a file that stands alone, black on white, with a title and what it says in words. */
export function drawingFile(drawn: SVGSVGElement, title: string): string {
  const copy = drawn.cloneNode(true);
  if (!(copy instanceof SVGSVGElement)) return '';
  takeStyles(drawn, copy);
  for (const words of copy.querySelectorAll('text')) layHaloUnder(words);
  const { x, y, width, height } = viewBoxOf(drawn);
  copy.setAttribute('width', `${WIDTH_MM}mm`);
  copy.setAttribute('height', `${((WIDTH_MM * height) / width).toFixed(2)}mm`);
  copy.prepend(
    element('title', title),
    element('desc', drawn.getAttribute('aria-label') ?? ''),
    element('rect', '', { x, y, width, height, fill: '#fff', stroke: 'none' }),
  );
  copy.removeAttribute('aria-label');
  const text = new XMLSerializer().serializeToString(copy);
  // Control characters may stand in a name, and nowhere in XML.
  return `<?xml version="1.0" encoding="UTF-8"?>\n${text.replace(/[^\P{Cc}\t\n\r]/gu, '')}\n`;
}

function takeStyles(from: Element, to: Element): void {
  const style = getComputedStyle(from);
  to.removeAttribute('class');
  to.removeAttribute('style');
  for (const name of TAKEN) {
    const value = style.getPropertyValue(name).replace(/(\d)px\b/g, '$1');
    if (value !== '') to.setAttribute(name, value);
  }
  for (const [index, child] of [...from.children].entries()) {
    const copied = to.children[index];
    if (copied) takeStyles(child, copied);
  }
}

/** Words keep a clear edge round them. Not every program knows `paint-order`: the edge is a text of its own, below. */
function layHaloUnder(words: Element): void {
  const halo = words.cloneNode(true);
  if (!(halo instanceof Element)) return;
  halo.setAttribute('fill', 'none');
  halo.setAttribute('aria-hidden', 'true');
  words.setAttribute('stroke', 'none');
  words.before(halo);
}

function viewBoxOf(drawn: SVGSVGElement) {
  const [x = 0, y = 0, width = 1, height = 1] = (drawn.getAttribute('viewBox') ?? '')
    .split(/[ ,]+/)
    .map(Number);
  return { x, y, width, height };
}

function element(
  name: string,
  text: string,
  attributes: Readonly<Record<string, string | number>> = {},
): Element {
  const made = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, String(value));
  made.textContent = text;
  return made;
}
