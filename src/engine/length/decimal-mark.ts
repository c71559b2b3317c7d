/** What stands between the whole and its decimals: a comma in shops that type one (ISO 80000-1:2009, 7.3.2 allows both). */
export type DecimalMark = '.' | ',';

// The one thing the engine is told and not handed at every call: how a figure is written. No sum hangs on it.
let mark: DecimalMark = '.';

/** From here on every figure is written so. */
export function writeDecimalsWith(to: DecimalMark): void {
  mark = to;
}

export function decimalMark(): DecimalMark {
  return mark;
}
