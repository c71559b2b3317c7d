import '../base/jitless.ts';
import * as z from 'zod/mini';
import { isPlainObject } from '../base/paths.ts';
import type { SheetNode, SignedSheet } from '../base/records.ts';
import { id, line, stamped, time, type RecordKind } from '../base/schema-common.ts';
import { dashed, isSheetAttribute, linesOf, sheetTags } from './sheet-whitelist.ts';

export { isSheetAttribute, sheetTags } from './sheet-whitelist.ts';

/** Chosen, not published: a sheet of twenty pages with its drawings comes to a tenth of it. */
export const MOST_SHEET_CHARACTERS = 2_000_000;
/** Elements inside elements; a note in a drawing in a table stands about twelve deep. */
export const MOST_SHEET_DEPTH = 24;

/** Chosen, not published: a sheet of twenty pages with its drawings comes to a tenth of it. */
export const MOST_SHEET_ELEMENTS = 50_000;

/**
 * Units of drawing, all lines of a sheet together, and those with dashes of their own. Chosen, not published: a sheet of
 * forty drawings comes to a tenth of it. Each dash is a line to be worked out; three hundred circles of half a million
 * dashes held a browser up for good.
 */
export const MOST_SHEET_LINES = 10_000_000;
export const MOST_SHEET_DASHED = 300_000;
/** Chosen, not published: twice what fits into the characters of twenty pages. Each bend of a broad line is worked out by itself. */
export const MOST_SHEET_FIGURES = 60_000;
/** Accents over one another: no script has more than four, and thousands on one letter hold a browser up for good. */
const PILED_UP = /\p{M}{20}/u;

/** Whether these nodes may be kept as a signed sheet: known tags and attributes only, not too deep, not too long. */
export function isSheetContent(value: unknown): value is readonly SheetNode[] {
  let level: unknown = value;
  let characters = 0;
  let elements = 0;
  const lines = { all: 0, dashed: 0, figures: 0 };
  // Level by level instead of recursively, so that no depth can exhaust the stack.
  for (let depth = 0; Array.isArray(level) && depth <= MOST_SHEET_DEPTH; depth += 1) {
    const next: unknown[] = [];
    for (const node of level) {
      const weight = weightOf(node);
      if (weight === undefined) return false;
      characters += weight;
      if (!isElement(node)) continue;
      if (!addLines(lines, node)) return false;
      for (const child of node.children) next.push(child);
    }
    elements += level.length;
    if (characters > MOST_SHEET_CHARACTERS || elements > MOST_SHEET_ELEMENTS) return false;
    if (next.length === 0) return true;
    level = next;
  }
  return false;
}

type Element = {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, unknown>>;
  readonly children: readonly unknown[];
};

function isElement(node: unknown): node is Element {
  return (
    isPlainObject(node) &&
    typeof node['tag'] === 'string' &&
    isPlainObject(node['attributes']) &&
    Array.isArray(node['children'])
  );
}

/** Adds the lengths of an element's lines; false once it is more than any sheet has. */
function addLines(
  lines: { all: number; dashed: number; figures: number },
  { tag, attributes }: Element,
): boolean {
  const { length, figures } = linesOf(tag, attributes);
  const dashes = dashed(tag, attributes);
  lines.all += length;
  lines.figures += figures;
  if (dashes === 'shape') lines.dashed += length;
  const isAsMuchAsASheet =
    lines.all <= MOST_SHEET_LINES && lines.dashed <= MOST_SHEET_DASHED && lines.figures <= MOST_SHEET_FIGURES;
  return dashes !== 'holder' && isAsMuchAsASheet;
}

/** How many characters a node adds by itself; nothing when it may not stand on a sheet. */
function weightOf(node: unknown): number | undefined {
  if (typeof node === 'string') return PILED_UP.test(node) ? undefined : node.length;
  if (!isElement(node) || !sheetTags.has(node.tag)) return undefined;
  let weight = node.tag.length;
  for (const [name, value] of Object.entries(node.attributes)) {
    if (typeof value !== 'string' || !isSheetAttribute(name, value)) return undefined;
    weight += name.length + value.length;
  }
  return weight;
}

const csv = z.string().check(z.maxLength(MOST_SHEET_CHARACTERS));

const sheetFields = z.looseObject({
  ...stamped,
  jobId: id,
  signedAt: time,
  signedBy: line,
  engineVersion: line,
  content: z.custom<readonly SheetNode[]>(isSheetContent),
  readingsCsv: csv,
  cutsCsv: csv,
});

/** Nothing removes a signed sheet, a tombstone in a file from outside neither. */
export const sheetSchema = sheetFields.check(
  z.refine(({ deleted }) => deleted === undefined, { path: ['deleted'] }),
);

export const sheetKind: RecordKind<SignedSheet> = { store: 'sheets', schema: sheetSchema };
