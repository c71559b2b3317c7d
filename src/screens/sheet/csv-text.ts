type Cell = { readonly text: string; readonly quoted: boolean };

const NEEDS_QUOTES = /[",\r\n]|^ | $/;

/**
 * Rows as comma-separated text: lines end in CR LF, a cell is quoted where it has to be or is asked to be, a quote in it is
 * doubled. RFC 4180.
 */
export function csvText(rows: readonly (readonly Cell[])[]): string {
  return rows.map((row) => row.map(cellText).join(',')).join('\r\n');
}

function cellText({ text, quoted }: Cell): string {
  return quoted || NEEDS_QUOTES.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** The cells of comma-separated text, whatever ends its lines; what stands behind a closing quote belongs to the cell. */
export function csvCells(text: string): string[][] {
  const rows: string[][] = [[]];
  let cell = '';
  let isQuoted = false;
  const closeCell = () => {
    rows.at(-1)?.push(cell);
    cell = '';
  };
  for (let at = 0; at < text.length; at += 1) {
    const character = text.charAt(at);
    if (isQuoted) {
      const isDoubled = character === '"' && text.charAt(at + 1) === '"';
      if (isDoubled) at += 1;
      if (character === '"' && !isDoubled) isQuoted = false;
      else cell += character;
    } else if (character === '"' && cell === '') isQuoted = true;
    else if (character === ',') closeCell();
    else if (character === '\n' || character === '\r') {
      if (character === '\r' && text.charAt(at + 1) === '\n') at += 1;
      closeCell();
      rows.push([]);
    } else cell += character;
  }
  closeCell();
  return rows;
}
