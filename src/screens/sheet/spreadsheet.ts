/** A spreadsheet reads a file as UTF-8 only with this mark in front; other programs skip it. */
const BYTE_ORDER_MARK = '\ufeff';

export function spreadsheet(name: string, csv: string): File {
  return new File([BYTE_ORDER_MARK, csv], name, { type: 'text/csv' });
}
