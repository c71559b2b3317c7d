import { markWord } from '../length/decimal-text.ts';
import { absolute, decimalText, isNegative, lengthOf, isLess, type Length } from '../length/length.ts';
import type { ShownUnit } from '../length/show.ts';

const ONES =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const TENS = 'zero ten twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');
const TENTHS = [
  '',
  'a tenth',
  'two tenths',
  'three tenths',
  'four tenths',
  'half',
  'six tenths',
  'seven tenths',
  'eight tenths',
  'nine tenths',
];
const ONE_INCH = lengthOf('1 in');

/** A whole number in words, up to 999,999: `forty-six`, `one hundred twenty-five`. */
export function wordsFor(count: number): string {
  if (count < 20) return ONES[count] ?? '';
  if (count < 100)
    return [TENS[Math.floor(count / 10)], ONES[count % 10]].slice(0, count % 10 ? 2 : 1).join('-');
  const [size, name] = count < 1000 ? [100, 'hundred'] : [1000, 'thousand'];
  const rest = count % size;
  return [wordsFor(Math.floor(count / size)), name, ...(rest ? [wordsFor(rest)] : [])].join(' ');
}

/**
 * An amount to take or a dial figure in words, so that a voice can't read it as a date or a price: `eighteen thou`,
 * `four and a half thou`, `zero point four six millimetres`.
 *
 * Units:   inches under one as thou and tenths of a thou; from an inch up, and in millimetres, digit by digit.
 */
export function spokenAmount(amount: Length, unit: ShownUnit): string {
  const bare = spokenBare(amount, unit);
  if (unit === 'mm') return `${bare} millimetres`;
  if (!isThou(amount)) return `${bare} inches`;
  return bare.endsWith('a thou') ? bare : `${bare} thou`;
}

/** The same without its unit, where the sentence before named it: `Dial in eighteen.` */
export function spokenBare(amount: Length, unit: ShownUnit): string {
  if (isNegative(amount)) return `minus ${spokenBare(absolute(amount), unit)}`;
  if (unit === 'mm') return digitByDigit(decimalText(amount, 'mm', 3), 2);
  return isThou(amount)
    ? thouInWords(decimalText(amount, 'thou', 1))
    : digitByDigit(decimalText(amount, 'in', 4), 3);
}

/** A size in words, digit by digit: `one point four nine eight inches`. */
export function spokenSize(size: Length, unit: ShownUnit): string {
  const text = unit === 'mm' ? decimalText(size, 'mm', 3) : decimalText(size, 'in', 4);
  const words = digitByDigit(text, unit === 'mm' ? 2 : 3);
  return `${words} ${unit === 'mm' ? 'millimetres' : 'inches'}`;
}

function isThou(amount: Length): boolean {
  return isLess(absolute(amount), ONE_INCH);
}

function thouInWords(text: string): string {
  const [whole = '0', tenth = '0'] = text.split('.');
  const count = wordsFor(Number(whole));
  const part = TENTHS[Number(tenth)] ?? '';
  if (part === '') return count;
  if (whole === '0') return part === 'half' ? 'half a thou' : `${part} of a thou`;
  return `${count} and ${part === 'half' ? 'a half' : part}`;
}

/** Places that hold nothing are not read out, past the fewest that a size has. */
function digitByDigit(text: string, leastPlaces: number): string {
  const [whole = '0', places = ''] = text.split('.');
  const kept = places.replace(/0+$/, '').padEnd(leastPlaces, '0');
  return `${wordsFor(Number(whole))} ${markWord()} ${kept
    .split('')
    .map((digit) => ONES[Number(digit)] ?? '')
    .join(' ')}`;
}
