import { readFileSync } from 'node:fs';

/** One line of a reference table. Asking for a column it doesn't have fails the test; an empty cell means not found. */
export type ReferenceRow = { readonly cell: (column: string) => string };

/** The rows of a reference table beside this file, as text: quoted fields may hold commas and doubled quotes. */
export function readReference(file: string): readonly ReferenceRow[] {
  const [columns = [], ...lines] = fieldsOf(readFileSync(new URL(file, import.meta.url), 'utf8'));
  return lines.map((fields) => ({
    cell: (column) => {
      const text = fields[columns.indexOf(column)];
      if (text === undefined) throw new Error(`${file} has no ${column} in ${fields[0] ?? 'an empty line'}`);
      return text;
    },
  }));
}

function fieldsOf(text: string): string[][] {
  const lines: string[][] = [];
  let line: string[] = [];
  // A field (quoted or bare) and what ends it: a comma, a line end, or the end of the text.
  for (const [, quoted, bare = '', end] of text.matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r?\n|$)/g)) {
    if (end === '' && line.length === 0 && quoted === undefined && bare === '') break;
    line.push(quoted === undefined ? bare : quoted.replaceAll('""', '"'));
    if (end === ',') continue;
    lines.push(line);
    line = [];
    if (end === '') break;
  }
  return lines;
}
