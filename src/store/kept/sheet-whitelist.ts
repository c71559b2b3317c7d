/**
 * What a signed sheet may be made of: plain text, lists, tables, drawings. Nothing in it can fetch, run or be pressed, and
 * nothing draws another part of it once more: five kilobytes of such could unfold to gigabytes.
 */
export const sheetTags: ReadonlySet<string> = words(
  'article section header footer aside div span p br hr',
  'h1 h2 h3 h4 h5 h6 strong em b i u s del ins small sub sup',
  'ul ol li dl dt dd time output figure figcaption blockquote pre code',
  'table caption colgroup col thead tbody tfoot tr th td',
  'svg g path line polyline polygon rect circle ellipse text tspan',
  'title desc',
);

/** Attributes that hold words for a person, any words. */
const wordAttributes: ReadonlySet<string> = new Set([
  'aria-label',
  'title',
  'alt',
  'abbr',
  'lang',
  'datetime',
]);

const plainAttributes: ReadonlySet<string> = words(
  'id class role dir scope headers start value reversed',
  'aria-hidden aria-labelledby aria-describedby aria-level aria-roledescription',
  'xmlns viewBox preserveAspectRatio width height focusable overflow',
  'x y x1 y1 x2 y2 cx cy r rx ry dx dy d points',
  'transform rotate textLength lengthAdjust opacity color display visibility',
  'fill fill-opacity fill-rule stroke stroke-width stroke-opacity stroke-dasharray',
  'stroke-dashoffset stroke-linecap stroke-linejoin stroke-miterlimit vector-effect',
  'font-size font-weight font-family font-style text-anchor dominant-baseline',
  'alignment-baseline baseline-shift letter-spacing paint-order shape-rendering',
);

const dataAttribute = /^data-[a-z][a-z-]{0,40}$/;
// `url(...)` fetches, or draws something of the sheet again; a backslash could hide the letters of it.
const fetches = /\\|:\/\/|url\s*\(|javascript:|image(?:-set)?\s*\(/i;
// Words and figures of print; nothing that moves a piece over another place of the screen.
const printed =
  'font-[a-z]+|text-[a-z]+|fill|stroke(?:-[a-z]+)?|opacity|width|height|white-space|break-[a-z]+';
const plainStyle = new RegExp(`^(?:(?:${printed}):[ \\w.,#%-]{1,60}(?:; ?|$)){1,12}$`);
const drawnIn = 'http://www.w3.org/2000/svg';

/** Whether an attribute may stand on a signed sheet with this value. */
export function isSheetAttribute(name: string, value: string): boolean {
  if (wordAttributes.has(name)) return true;
  if (name === 'stroke-dasharray') return areDashes(value);
  if (name === 'style') return plainStyle.test(value) && dashesIn(value).every(areDashes);
  if (isSpan.has(name)) return /^\d{1,3}$/.test(value) && Number(value) <= MOST_CELLS_SPANNED;
  if (name === 'xmlns') return value === drawnIn;
  return (plainAttributes.has(name) || dataAttribute.test(name)) && !fetches.test(value);
}

/** Columns or rows under one cell; a thousand under each of many are millions to lay out. */
const MOST_CELLS_SPANNED = 50;
const isSpan: ReadonlySet<string> = words('colspan rowspan span');

/** Dashes of one unit and more: finer ones are millions on a line. */
function areDashes(value: string): boolean {
  if (value === 'none') return true;
  const all = value.trim().split(/[ ,]+/);
  return (
    all.length <= 12 &&
    all.every((one) => /^\d{1,4}(?:\.\d{1,3})?(?:px)?$/.test(one) && Number.parseFloat(one) >= 1)
  );
}

function dashesIn(style: string): readonly string[] {
  return [...style.matchAll(/stroke-dasharray:([^;]*)/g)].map(([, dashes = '']) => dashes.trim());
}

const geometry = ['d', 'points', 'r', 'rx', 'ry', 'width', 'height', 'x1', 'x2', 'y1', 'y2'];
const shapes = words('path line polyline polygon rect circle ellipse');

/** The lines of one element: how long they are together, in units of its drawing, and by how many figures they go. */
export type Lines = { readonly length: number; readonly figures: number };

/**
 * How long a shape's lines are at most, roughly: the sum of its figures. No `scale` lengthens it, as dashes are laid out
 * before. A hundredth of what it stands in, or so many widths of a letter, may be any length: then it is without end.
 */
export function linesOf(tag: string, attributes: Readonly<Record<string, unknown>>): Lines {
  let [length, figures] = [0, 0];
  for (const name of geometry) {
    const value = attributes[name];
    if (typeof value !== 'string') continue;
    const isPath = name === 'd' || name === 'points';
    if (shapes.has(tag) && !isPath && !/^[-+\d.eE]*$/.test(value)) return ENDLESS;
    for (const [figure] of value.matchAll(/\d*\.?\d+(?:e[-+]?\d+)?/gi)) {
      length += Number(figure);
      figures += 1;
    }
  }
  const { style } = attributes;
  return shapes.has(tag) && /(?:^|[ ;])(?:width|height):/.test(String(style)) ? ENDLESS : { length, figures };
}

const ENDLESS: Lines = { length: Infinity, figures: 0 };

/** The one class of a drawing whose lines are dashed by the app's own rules (`drawing.css`). */
const DASHED_CLASS = 'drawing-centre';

/** Whether its lines are dashed; what holds others hands its dashes down to all of them, and may have none. */
export function dashed(
  tag: string,
  attributes: Readonly<Record<string, unknown>>,
): 'no' | 'shape' | 'holder' {
  const { style = '', class: names = '' } = attributes;
  const has =
    attributes['stroke-dasharray'] !== undefined ||
    String(style).includes('dasharray') ||
    String(names).split(/\s+/).includes(DASHED_CLASS);
  return !has ? 'no' : shapes.has(tag) ? 'shape' : 'holder';
}

function words(...lines: readonly string[]): ReadonlySet<string> {
  return new Set(lines.flatMap((line) => line.split(' ')));
}
