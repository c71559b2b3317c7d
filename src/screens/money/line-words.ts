import { lineMoney, readHours, readMoney, roundMoney } from '../../engine/job/money.ts';
import { showHours, showMoney } from '../../engine/job/say-money.ts';
import { minorPlaces } from '../../engine/job/tables/minor-units.ts';
import type { MoneyLine } from '../../store/base/records.ts';

/** A line as it is read: what it is, how it comes about, what it comes to. */
export type LineWords = { readonly what: string; readonly how: string; readonly money: string };

export function lineWords(line: MoneyLine, sign: string): LineWords {
  const exact = lineMoney(line);
  return {
    what: line.what || nameOfLine(line.hours === undefined ? 'amount' : 'hours'),
    how: howItComes(line, sign),
    money: exact ? showMoney(roundMoney(exact, minorPlaces(sign)), sign) : 'no rate yet',
  };
}

/** What a line is called while the fitter gave it no name. */
export function nameOfLine(field: 'amount' | 'hours'): string {
  return field === 'hours' ? 'Hours' : 'Part or cost';
}

/** "1:30 h at $65.00 an hour"; an amount comes from nothing. */
function howItComes({ hours, rate }: MoneyLine, sign: string): string {
  if (hours === undefined) return '';
  return rate === undefined
    ? hoursAsTyped(hours)
    : `${hoursAsTyped(hours)} at ${shownMoney(rate, sign)} an hour`;
}

/** Hours as typed where that is plain: `1:30 h`, `1 1/2 h`. */
export function hoursAsTyped(hours: string): string {
  const read = readHours(hours);
  if (!read.ok) return `${hours} h`;
  return /[:/]/.test(hours) ? `${read.value.text} h` : showHours(read.value.exact);
}

/** An amount as kept, with no place of it lost: `$0.125` stays so. */
export function shownMoney(text: string, sign: string): string {
  const read = readMoney(text, 'amount');
  if (!read.ok) return text;
  const typedPlaces = read.value.text.split('.')[1]?.length ?? 0;
  return showMoney(roundMoney(read.value.exact, Math.max(typedPlaces, minorPlaces(sign))), sign);
}
