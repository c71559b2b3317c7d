import { ringWorksheet } from './ring/worksheet.ts';
import type { AnyWorksheet } from './worksheet.ts';

/** Every kind of worksheet, in the order a job meets them. A new kind is one line here and one in the drawings. */
export const worksheets = {
  ring: ringWorksheet,
} as const satisfies Readonly<Record<string, AnyWorksheet>>;

export type WorksheetKind = keyof typeof worksheets;

/** A record may hold a kind of a newer Slipfit. */
export function isWorksheetKind(kind: string): kind is WorksheetKind {
  return Object.hasOwn(worksheets, kind);
}

/** The kind by its name in a record; nothing where it is newer than this Slipfit. */
export function worksheetOf(kind: string): AnyWorksheet | undefined {
  return isWorksheetKind(kind) ? worksheets[kind] : undefined;
}

/** The first thing it can't do without and hasn't got. */
export function nextNeed(
  { needs }: Pick<AnyWorksheet, 'needs'>,
  given: {
    readonly sizes: Readonly<Record<string, unknown>>;
    readonly choices: Readonly<Record<string, unknown>>;
  },
): string | undefined {
  return needs.find((name) => given.sizes[name] === undefined && given.choices[name] === undefined);
}
