import { decimalMark } from '../length/decimal-mark.ts';
import { grouped, marked, markWord } from '../length/decimal-text.ts';
import type { Fraction } from '../length/exact-fraction.ts';
import { roundMoney, type MoneyField, type MoneyRefusal } from './money.ts';

function exampleOf(field: MoneyField): string {
  const examples: Record<MoneyField, string> = {
    amount: `an amount such as ${marked('12.50')}`,
    rate: 'what an hour costs, such as 65',
    hours: `hours such as ${marked('1.5')} or 1:30`,
  };
  return examples[field];
}

const NAMES: Record<MoneyField, string> = { amount: 'an amount', rate: 'a rate', hours: 'a time' };

/** Said where the total isn't the sum of what is shown. */
export const LINES_ROUNDED = 'Each line is shown rounded, so the lines may differ from the total by a coin.';

/** The sentence for what can't be taken as money or time. */
export function sayMoney(refusal: MoneyRefusal): string {
  switch (refusal.code) {
    case 'nothing-counted':
      return `Nothing is typed yet. Type ${exampleOf(refusal.field)}.`;
    case 'not-counted':
      return `“${refusal.typed}” can’t be read as ${NAMES[refusal.field]}. Type ${exampleOf(refusal.field)}.`;
    case 'perhaps-thousands':
      return `With a ${refusal.mark} that may be ${refusal.whole} or ${marked(refusal.decimal)}. Type ${refusal.whole} or ${decimalToType(refusal)}.`;
    case 'thousands-marked':
      return `Is that ${marked(refusal.plain)}? Type it without marks between thousands.`;
    case 'too-fine':
      return `${marked(refusal.typed)} has more than ${refusal.places} places behind the ${markWord()}. Leave the last ones out.`;
    case 'too-much':
      return `That is more than ${grouped(refusal.most)} ${refusal.field === 'hours' ? 'hours' : ''} in one line. Check the ${markWord()}, or make two lines of it.`.replace(
        '  ',
        ' ',
      );
    case 'below-nothing':
      return refusal.field === 'hours'
        ? 'A time can’t be below zero. Take the line away instead, or make it shorter.'
        : 'A rate can’t be below zero. Money taken off goes into a line of its own, as an amount.';
    case 'minutes-past-59':
      return `Minutes go from 00 to 59, with two digits; “${refusal.minutes}” does not. Type 1:30 for an hour and a half.`;
    case 'bottom-of-zero':
      return 'The bottom of a fraction can’t be zero. Type 1 1/2 for an hour and a half.';
    default:
      return refusal satisfies never;
  }
}

/** Where a point may stand between thousands, a nought behind it says that it doesn't; so it does where a comma is typed. */
function decimalToType({
  mark,
  decimal,
}: {
  readonly mark: 'comma' | 'point';
  readonly decimal: string;
}): string {
  return mark === 'point' || decimalMark() === ',' ? marked(`${decimal}0`) : decimal;
}

/**
 * An amount as it is read: `$12.50`, `−$20.00`, `EUR 12.50`; from five digits on in groups of three with a thin space
 * (ISO 80000-1:2009, 7.3.1), as a comma would be read as a point. Where commas are typed nothing stands between thousands.
 */
export function showMoney(decimal: string, sign: string): string {
  const [whole = '0', places] = decimal.replace('-', '').split('.');
  const inThousands =
    whole.length < 5 || decimalMark() === ',' ? whole : whole.replace(/\B(?=(\d{3})+$)/g, '\u202f');
  const before = sign === '' || /\p{L}$/u.test(sign) ? `${sign}${sign === '' ? '' : '\u00a0'}` : sign;
  return `${decimal.startsWith('-') ? '−' : ''}${before}${inThousands}${places === undefined ? '' : `${decimalMark()}${places}`}`;
}

/** Hours as they are read: `2.5 h`, `1:20 h` where minutes don't end as a decimal, at most to the minute. */
export function showHours({ top, bottom }: Fraction): string {
  const hundredths = roundMoney({ top, bottom }, 2);
  const isExact = (100n * top) % bottom === 0n;
  if (isExact) return `${marked(hundredths.replace(/\.?0+$/, '') || '0')} h`;
  const minutes = BigInt(roundMoney({ top: 60n * top, bottom }, 0));
  return `${minutes / 60n}:${String(minutes % 60n).padStart(2, '0')} h`;
}
