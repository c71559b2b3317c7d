import type { DrawingBox, DrawnSize } from '../frame/drawn.ts';

/** A part's name and size, and the middle of where it is drawn. */
export type Labelled = {
  readonly field: string;
  readonly name: string;
  readonly figure?: string | undefined;
  readonly changes: boolean;
  readonly centre: number;
  /** How wide it is drawn: the widest parts have their names first. */
  readonly width: number;
};

export type PlacedLabel = {
  readonly size: DrawnSize;
  readonly centre: number;
  readonly row: 'top' | 'below';
};

export type Rows = { readonly top: number; readonly below: number };

// Widths of bold letters, measured: names and lines of one row at 16 px, figures at 19.
const LETTER = 9.4;
const DIGIT = 11.4;
const SMALL_DIGIT = 9.8;
const FINGER = 46;
const APART = 6;

/**
 * Every part's size stands once: the widest parts over the stack with name and figure, the others under it, with their names
 * where there is room for all of them. What finds no room in either row is left to the list of sizes.
 */
export function placedLabels(
  parts: readonly Labelled[],
  rows: Rows,
  { width }: DrawingBox,
): readonly PlacedLabel[] {
  const full = chosen(parts, width, twoLines);
  const rest = parts.filter((part) => !full.includes(part));
  const [named, unnamed] = [rest, rest].map((all, index) =>
    fits(all, width, index === 0 ? inOneLine : short),
  );
  if (rest.length === 0 || named || unnamed)
    return [
      ...row(full, width, twoLines).map(({ part, x }) => ({
        size: { ...sizeOf(part), x, y: rows.top },
        centre: part.centre,
        row: 'top' as const,
      })),
      ...below(rest, width, rows, named === true ? inOneLine : short),
    ];
  // Figures alone, the widest parts over the stack.
  const over = chosen(parts, width, short);
  const under = chosen(
    parts.filter((part) => !over.includes(part)),
    width,
    short,
  );
  return [
    ...row(over, width, short).map(({ part, x }) => ({
      size: { ...sizeOf(part), x, y: rows.top + 20, beside: true as const, unnamed: true as const },
      centre: part.centre,
      row: 'top' as const,
    })),
    ...below(under, width, rows, short),
  ];
}

function below(
  parts: readonly Labelled[],
  width: number,
  rows: Rows,
  measure: (part: Labelled) => number,
): readonly PlacedLabel[] {
  return row(parts, width, measure).map(({ part, x }) => ({
    size: {
      ...sizeOf(part),
      x,
      y: rows.below,
      beside: true as const,
      ...(measure === short && part.figure !== undefined && { unnamed: true as const }),
    },
    centre: part.centre,
    row: 'below' as const,
  }));
}

function sizeOf({ field, name, figure, changes }: Labelled) {
  return { field, name, figure, changes, anchor: 'middle' as const };
}

const figureOf = ({ figure = '?' }: Labelled) => figure;
const twoLines = (part: Labelled) =>
  Math.max(FINGER, part.name.length * LETTER, figureOf(part).length * DIGIT);
const inOneLine = (part: Labelled) =>
  Math.max(FINGER, part.name.length * LETTER + (figureOf(part).length + 1) * SMALL_DIGIT);
const short = (part: Labelled) => Math.max(FINGER, figureOf(part).length * SMALL_DIGIT);

/** As many as there is room for in one row, the widest first; in their order. */
function chosen(
  parts: readonly Labelled[],
  width: number,
  measure: (part: Labelled) => number,
): readonly Labelled[] {
  const taken: Labelled[] = [];
  for (const part of parts.toSorted((a, b) => b.width - a.width))
    if (fits([...taken, part], width, measure)) taken.push(part);
  return parts.filter((part) => taken.includes(part));
}

function fits(parts: readonly Labelled[], width: number, measure: (part: Labelled) => number): boolean {
  return parts.reduce((so, part) => so + measure(part) + APART, 0) <= width - APART;
}

/** Each as near its part as its neighbours leave room for. */
function row(
  parts: readonly Labelled[],
  width: number,
  measure: (part: Labelled) => number,
): readonly { readonly part: Labelled; readonly x: number }[] {
  const halves = parts.map((part) => measure(part) / 2);
  const places: number[] = [];
  for (const [index, part] of parts.entries()) {
    const half = halves[index] ?? 0;
    const before = places[index - 1];
    const least = before === undefined ? APART + half : before + (halves[index - 1] ?? 0) + APART + half;
    places.push(Math.max(least, part.centre));
  }
  for (let index = parts.length - 1; index >= 0; index -= 1) {
    const half = halves[index] ?? 0;
    const after = places[index + 1];
    const most = after === undefined ? width - APART - half : after - (halves[index + 1] ?? 0) - APART - half;
    places[index] = Math.min(places[index] ?? 0, most);
  }
  return parts.map((part, index) => ({ part, x: places[index] ?? 0 }));
}
